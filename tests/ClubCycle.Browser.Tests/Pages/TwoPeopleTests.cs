using System.Diagnostics;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace ClubCycle.Browser.Tests.Pages;

/// <summary>Two coaches at the same squad, each at their own machine.</summary>
[Collection(Chromium.OneAtATime)]
public sealed partial class TwoPeopleTests(Chromium chromium, DemoApp demo) : IClassFixture<Chromium>, IClassFixture<DemoApp>
{
    private static readonly TimeSpan Soon = TimeSpan.FromSeconds(1);

    [Fact]
    public async Task Each_sees_what_the_other_does_within_a_second_and_keeps_what_is_half_done()
    {
        await using var office = await chromium.NewPersonAsync();
        await using var home = await chromium.NewPersonAsync();
        var head = await SignInAsync(office, "Head coach sign-in");
        var coach = await SignInAsync(home, "Squad coach sign-in");
        var squad = (await coach.Locator(".board-squad a[href$='/year']").Last.GetAttributeAsync("href"))![..^"/year".Length];
        await OpenWeekAsync(coach, squad);
        await head.OpenAsync(coach.Url);
        var skip = coach.GetByRole(AriaRole.Button, new() { NameRegex = Skip() });
        var sessions = await head.Locator(".week-session").CountAsync();

        // 1. One leaves a session out; the other's week follows.
        var seen = await SeenAsync(head, $"document.querySelectorAll('.week-session').length < {sessions}", () => skip.Last.ClickAsync());
        Assert.InRange(seen, TimeSpan.Zero, Soon);
        Say("a session left out", seen);

        // 2. Somebody who is moving a session is told, and loses nothing.
        await head.GetByRole(AriaRole.Button, new() { NameRegex = Move() }).First.ClickAsync();
        await head.Locator("#move-day").SelectOptionAsync(new SelectOptionValue { Index = 6 });
        seen = await SeenAsync(head, "document.querySelector('.live-notice') !== null", () => coach.GetByRole(AriaRole.Button, new() { Name = "Bring it back" }).First.ClickAsync());
        Assert.InRange(seen, TimeSpan.Zero, Soon);
        Say("a line above an open form", seen);
        Assert.Equal("6", await head.Locator("#move-day").InputValueAsync());
        Assert.Empty(await head.BarriersAsync("live-notice"));
        await head.PictureAsync("live-notice");
        await head.GetByRole(AriaRole.Button, new() { Name = "Show it" }).ClickAsync();
        await Assertions.Expect(head.Locator(".week-session")).ToHaveCountAsync(sessions);
        await Assertions.Expect(head.Locator(".live-notice")).ToHaveCountAsync(0);

        // 3. One publishes; on the other's board the squad no longer waits for it.
        await skip.Last.ClickAsync();
        await Assertions.Expect(coach.Locator(".week-session")).ToHaveCountAsync(sessions - 1);
        await head.OpenAsync(demo.App.Address + "/?show=draft");
        await Assertions.Expect(head.Locator($".board-squad a[href='{squad}/year']")).ToHaveCountAsync(1);
        await coach.OpenAsync(demo.App.Address + squad + "/year");
        seen = await SeenAsync(head, $"document.querySelector(\".board-squad a[href='{squad}/year']\") === null", () => coach.GetByRole(AriaRole.Button, new() { Name = "Publish to players" }).ClickAsync());
        Say("publishing on the board", seen);
        Assert.InRange(seen, TimeSpan.Zero, Soon);

        // 4. What changed for players can be copied, without being asked for anything.
        var notice = coach.Locator(".change-notice");
        await Assertions.Expect(notice).ToContainTextAsync("Called off: ");
        await coach.GetByRole(AriaRole.Button, new() { Name = "Copy the notice" }).ClickAsync();
        await Assertions.Expect(coach.Locator("[data-copied]")).ToHaveTextAsync("Copied.");
        await home.GrantPermissionsAsync(["clipboard-read"]);
        Assert.Equal(await notice.TextContentAsync(), await coach.EvaluateAsync<string>("navigator.clipboard.readText()"));
        Assert.Empty(await coach.BarriersAsync("change-notice"));
        await coach.PictureAsync("change-notice-light-1366");
        await coach.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Dark });
        await coach.PictureAsync("change-notice-dark-1366");
        await coach.SetViewportSizeAsync(390, 844);
        await coach.PictureAsync("change-notice-dark-390");
        await coach.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Light });
        await coach.PictureAsync("change-notice-light-390");

        // 5. It can be seen again later.
        await coach.OpenAsync(demo.App.Address + squad + "/year");
        await coach.GetByRole(AriaRole.Button, new() { NameRegex = NoticeOf() }).First.ClickAsync();
        await Assertions.Expect(coach.Locator("ol .change-notice")).ToContainTextAsync("Called off: ");
    }

    /// <summary>A week that has a session to leave out within the next days: this one or the next.</summary>
    private async Task OpenWeekAsync(IPage page, string squad)
    {
        await page.OpenAsync(demo.App.Address + squad + "/week");
        if (await page.GetByRole(AriaRole.Button, new() { NameRegex = Skip() }).CountAsync() == 0)
        {
            await page.GetByRole(AriaRole.Link, new() { Name = "Week after" }).ClickAsync();
            await page.GetByRole(AriaRole.Button, new() { NameRegex = Skip() }).First.WaitForAsync();
        }

        await page.OpenAsync(page.Url.Contains("/week/", StringComparison.Ordinal) ? page.Url : page.Url + "/" + DateOnly.FromDateTime(TimeProvider.System.GetUtcNow().UtcDateTime).ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture));
    }

    /// <summary>From the act to its being seen on the page, the act's own way through its browser included.</summary>
    private static async Task<TimeSpan> SeenAsync(IPage page, string sign, Func<Task> act)
    {
        Assert.False(await page.EvaluateAsync<bool>(sign), "It is to be seen before it is done.");
        var seen = page.WaitForFunctionAsync(sign, null, new() { PollingInterval = 20 });
        var watch = Stopwatch.StartNew();
        await act();
        await seen;
        return watch.Elapsed;
    }

    private static void Say(string what, TimeSpan seen) => TestContext.Current.SendDiagnosticMessage($"Seen by the other coach after {seen.TotalMilliseconds:0} ms: {what}");

    private async Task<IPage> SignInAsync(IBrowserContext person, string link)
    {
        var page = await person.NewPageAsync();
        await page.GotoAsync(demo.App.Printed(link));
        await page.GetByRole(AriaRole.Button, new() { NameRegex = SignIn() }).ClickAsync();
        await page.LiveAsync();
        return page;
    }

    [GeneratedRegex("Sign in")]
    private static partial Regex SignIn();

    [GeneratedRegex("^Skip ")]
    private static partial Regex Skip();

    [GeneratedRegex("^Move to… ")]
    private static partial Regex Move();

    [GeneratedRegex("^Notice of revision ")]
    private static partial Regex NoticeOf();
}
