using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace ClubCycle.Browser.Tests.Journeys;

/// <summary>A new head coach's first hour, on sample squads: what is asked of the hand is counted, and the main things go by keyboard alone.</summary>
[Collection(Chromium.SecondLane)]
public sealed partial class FirstHourTests(Chromium chromium) : IClassFixture<Chromium>
{
    private const string Password = "a long enough sentence 42";

    private int presses;

    [Fact]
    public async Task A_new_head_coach_tries_the_sample_publishes_with_few_presses_reads_German_and_clears_it()
    {
        await using var app = await RunningApp.StartAsync("--empty");
        await using var office = await chromium.NewPersonAsync();
        var page = await office.NewPageAsync();
        await SetUpAsync(page, app);

        // The guide says what comes first; the sample is a press away.
        await page.GetByRole(AriaRole.Heading, new() { Name = "Your first hour" }).WaitForAsync();
        List<string> wrong = [.. await page.LookEverywhereAsync("first-hour")];
        await page.SetViewportSizeAsync(1366, 900);
        await page.GetByRole(AriaRole.Button, new() { Name = "Try it with sample squads first" }).ClickAsync();
        await Assertions.Expect(page.Locator(".board-row")).ToHaveCountAsync(3);

        // From the sign-in page to a published change.
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();
        presses = 0;
        await page.GetByLabel("E-mail").FillAsync("robin@example.org");
        await page.GetByLabel("Password").FillAsync(Password);
        await PressAsync(page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }));
        await page.LiveAsync();
        await PressAsync(page.GetByRole(AriaRole.Link, new() { Name = "Women 1 (sample)" }).First);
        await PressAsync(page.GetByRole(AriaRole.Link, new() { Name = "Week", Exact = true }));
        await page.LiveAsync();
        await WeekWithSessionAsync(page);
        await PressAsync(page.GetByRole(AriaRole.Button, new() { NameRegex = Skip() }).First);
        await page.GetByText("Left out this week").WaitForAsync();
        await PressAsync(page.GetByRole(AriaRole.Button, new() { Name = "Publish to players" }));
        await page.GetByText("Published as revision 1").WaitForAsync();
        TestContext.Current.SendDiagnosticMessage($"From signing in to a published change: {presses} presses");
        Assert.InRange(presses, 1, 8);

        // A template cloned and its week adjusted.
        presses = 0;
        await PressAsync(page.GetByRole(AriaRole.Link, new() { Name = "Templates" }));
        await PressAsync(page.GetByRole(AriaRole.Button, new() { Name = "Clone Senior standard" }));
        await PressAsync(page.GetByRole(AriaRole.Button, new() { Name = "Clone it" }));
        await page.GetByRole(AriaRole.Heading, new() { Name = "Senior standard, ours" }).WaitForAsync();
        var minutes = page.GetByLabel("Minutes of session 1 in Mixed");
        await PressAsync(minutes);
        await minutes.FillAsync("45");
        await minutes.PressAsync("Tab");
        await PressAsync(page.GetByRole(AriaRole.Button, new() { Name = "Save as version 2" }));
        await page.GetByText("Saved as version 2").WaitForAsync();
        await PressAsync(page.GetByRole(AriaRole.Button, new() { Name = "Use version 2 for Women 1 (sample)" }));
        await page.GetByText("uses this version").WaitForAsync();
        TestContext.Current.SendDiagnosticMessage($"A template cloned, a week adjusted and used: {presses} presses");
        Assert.InRange(presses, 1, 12);

        // The same change and its publishing without a mouse; left where it was last, it would point at a week.
        await page.Mouse.MoveAsync(0, 0);
        await page.OpenAsync(app.Address + "/");
        await page.Locator("[role=grid]").ReachAsync();
        await page.Keyboard.PressAsync("ArrowDown");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page).ToHaveURLAsync(Week());
        await page.LiveAsync();
        await WeekWithSessionAsync(page);
        await page.GetByRole(AriaRole.Button, new() { NameRegex = Skip() }).EnterAsync();
        await page.GetByText("Left out this week").WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Publish to players" }).EnterAsync();
        await page.GetByText("Published as revision 1").WaitForAsync();

        // In German nothing runs out of its place.
        await page.GetByRole(AriaRole.Button, new() { Name = "Deutsch" }).ClickAsync();
        await page.LiveAsync();
        Assert.Equal("de", await page.Locator("html").GetAttributeAsync("lang"));
        var squad = new Uri(page.Url).AbsolutePath.Split("/week")[0];
        foreach (var (name, path) in new[] { ("week", squad + "/week"), ("year", squad + "/year"), ("templates", "/templates"), ("settings", "/settings"), ("board", "/") })
        {
            await page.OpenAsync(app.Address + path);
            wrong.AddRange(await page.LookEverywhereAsync("german-" + name));
            await page.SetViewportSizeAsync(1366, 900);
        }

        // The question before the sample goes, by the rules of accessibility too.
        await page.GetByRole(AriaRole.Button, new() { Name = "Beispiel löschen" }).ClickAsync();
        await page.GetByRole(AriaRole.Dialog).WaitForAsync();
        wrong.AddRange(await page.BarriersAsync("clear-sample dialog"));
        await page.PictureAsync("first-hour-clear");
        await page.GetByRole(AriaRole.Dialog).GetByRole(AriaRole.Button, new() { Name = "Löschen", Exact = true }).ClickAsync();
        await page.GetByText("Noch keine Teams").WaitForAsync();

        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    private static async Task SetUpAsync(IPage page, RunningApp app)
    {
        await page.GotoAsync(app.Address);
        await page.GetByLabel("Name of the club").FillAsync("Quarry Bank Hockey");
        await page.GetByLabel("Time zone").FillAsync("Europe/Dublin");
        await page.GetByLabel("Your name").FillAsync("Robin");
        await page.GetByLabel("E-mail").FillAsync("robin@example.org");
        await page.Locator("input[type=password]").FillAsync(Password);
        await page.GetByLabel("second factor").UncheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Create the club" }).ClickAsync();
        await page.LiveAsync();
    }

    /// <summary>Goes on by a week while there is nothing to leave out; not counted, since a coach opens the week that matters from the board.</summary>
    private static async Task WeekWithSessionAsync(IPage page)
    {
        while (await page.GetByRole(AriaRole.Button, new() { NameRegex = Skip() }).CountAsync() == 0)
        {
            var heading = await page.Locator(".print-week h2").First.InnerTextAsync();
            await page.GetByRole(AriaRole.Link, new() { Name = "Week after" }).ClickAsync();
            await Assertions.Expect(page.Locator(".print-week h2").First).Not.ToHaveTextAsync(heading);
        }
    }

    private async Task PressAsync(ILocator what)
    {
        presses++;
        await what.ClickAsync();
    }

    [GeneratedRegex("^Skip ")]
    private static partial Regex Skip();

    [GeneratedRegex("/week")]
    private static partial Regex Week();
}
