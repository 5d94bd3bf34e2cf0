using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace ClubCycle.Browser.Tests.Pages;

/// <summary>What protects children on the screens: a guardian's page, exports told to a second adult, and assistants who only look.</summary>
[Collection(Chromium.SecondLane)]
public sealed partial class ChildrenScreenTests(Chromium chromium, DemoApp demo) : IClassFixture<Chromium>, IClassFixture<DemoApp>
{
    [Fact]
    public async Task Guardians_confirm_on_their_own_page_and_a_second_adult_and_assistants_see_what_is_theirs()
    {
        await using var office = await chromium.NewPersonAsync();
        var head = await office.NewPageAsync();
        await head.GotoAsync(demo.App.Printed("Head coach sign-in"));
        await head.GetByRole(AriaRole.Button, new() { NameRegex = SignIn() }).ClickAsync();
        await head.LiveAsync();
        var year = await head.GetByRole(AriaRole.Link, new() { Name = "Under 14", Exact = true }).First.GetAttributeAsync("href");
        var squad = demo.App.Address + year![..^"/year".Length];
        List<string> wrong = [];

        // 1. The coach asks, and a guardian confirms on a phone without scripts.
        await head.OpenAsync(squad + "/players");
        wrong.AddRange(await head.LookEverywhereAsync("players-children"));
        await head.OpenAsync(squad + "/players/sheet");
        wrong.AddRange(await head.LookEverywhereAsync("link-sheet-children"));
        await head.OpenAsync(squad + "/players");
        var ask = head.GetByRole(AriaRole.Link, new() { NameRegex = AskGuardian() });
        var child = (await ask.GetAttributeAsync("href"))!;
        await head.OpenAsync(demo.App.Address + child);
        wrong.AddRange(await head.LookEverywhereAsync("player-guardian"));
        await head.GetByRole(AriaRole.Button, new() { Name = "Make the guardian's link" }).ClickAsync();
        var address = await head.Locator("#guardian-address").InnerTextAsync();
        wrong.AddRange(await head.LookEverywhereAsync("player-guardian-link"));

        await using (var phone = await chromium.NewPersonAsync(390, 844, scripts: false))
        {
            var page = await phone.NewPageAsync();
            await page.GotoAsync(address);
            await page.GetByRole(AriaRole.Button, new() { Name = "I confirm" }).ClickAsync();
            await page.GetByText("You confirmed on").WaitForAsync();
        }

        await using (var home = await chromium.NewPersonAsync())
        {
            var page = await home.NewPageAsync();
            await page.GotoAsync(address);
            wrong.AddRange(await page.LookEverywhereAsync("guardian-page-confirmed"));
            await page.GetByRole(AriaRole.Button, new() { Name = "Take it back" }).ClickAsync();
            await page.GetByText("You took your confirmation back").WaitForAsync();
            wrong.AddRange(await page.LookEverywhereAsync("guardian-page"));
        }

        // 2. An export is told to the welfare officer.
        var officer = await InviteAsync(head, "Wren", "welfare officer");
        await head.OpenAsync(demo.App.Address + child);
        await head.GetByLabel("Why it is needed").FillAsync("The mother asked for it");
        var download = await head.RunAndWaitForDownloadAsync(() => head.GetByRole(AriaRole.Button, new() { Name = "Save as JSON" }).ClickAsync());
        Assert.StartsWith("player-exported-", download.SuggestedFilename, StringComparison.Ordinal);
        await using (var welfare = await chromium.NewPersonAsync())
        {
            var page = await SignInAsync(welfare, officer);
            await page.GetByRole(AriaRole.Link, new() { Name = "See who did it and why" }).ClickAsync();
            await page.GetByText("The mother asked for it").WaitForAsync();
            wrong.AddRange(await page.LookEverywhereAsync("exports"));
            await page.GetByRole(AriaRole.Button, new() { Name = "I have seen these" }).ClickAsync();
            await page.GetByText("Nothing new").WaitForAsync();
            await Assertions.Expect(page.GetByText("The data of a player was exported.")).ToHaveCountAsync(0);
        }

        // 3. An assistant looks.
        var assistant = await InviteAsync(head, "Ash", "assistant");
        await head.GetByRole(AriaRole.Group, new() { Name = "May look at" }).GetByRole(AriaRole.Checkbox, new() { Name = "Under 14" }).CheckAsync();
        await head.GetByText("squad coaches set").First.WaitForAsync();
        await using (var helper = await chromium.NewPersonAsync())
        {
            var page = await SignInAsync(helper, assistant);
            foreach (var (name, path) in new[] { ("year", "/year"), ("week", "/week"), ("players", "/players"), ("settings", ""), ("matches", "/matches") })
            {
                await page.OpenAsync(squad + path);
                wrong.AddRange(await page.LookEverywhereAsync($"assistant-{name}"));
            }

            foreach (var (name, path) in new[] { ("player", child), ("seasons", "/seasons"), ("templates", "/templates") })
            {
                await page.OpenAsync(demo.App.Address + path);
                wrong.AddRange(await page.LookEverywhereAsync($"assistant-{name}"));
            }
        }

        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    private async Task<string> InviteAsync(IPage head, string name, string role)
    {
        await head.OpenAsync(demo.App.Address + "/settings");
        await head.Locator("#invite-name").FillAsync(name);
        await head.Locator("#invite-email").FillAsync($"{name}@example.org");
        await head.Locator("#invite-role").SelectOptionAsync(new SelectOptionValue { Label = role });
        await head.GetByRole(AriaRole.Button, new() { Name = "Make the sign-in link" }).ClickAsync();
        return await head.Locator("#invite-link").InputValueAsync();
    }

    private static async Task<IPage> SignInAsync(IBrowserContext person, string invitation)
    {
        var page = await person.NewPageAsync();
        await page.GotoAsync(invitation);
        await page.GetByRole(AriaRole.Button, new() { NameRegex = SignIn() }).ClickAsync();
        await page.LiveAsync();
        return page;
    }

    [GeneratedRegex("Sign in")]
    private static partial Regex SignIn();

    [GeneratedRegex("^Ask a guardian of ")]
    private static partial Regex AskGuardian();
}
