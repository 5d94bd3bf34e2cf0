using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace ClubCycle.Browser.Tests.Pages;

[Collection(Chromium.FirstLane)]
public sealed partial class RemovingTests(Chromium chromium, DemoApp demo) : IClassFixture<Chromium>, IClassFixture<DemoApp>
{
    [Fact]
    public async Task A_player_is_erased_only_after_a_second_word()
    {
        await using var head = await chromium.NewPersonAsync();
        var page = await head.NewPageAsync();
        await page.GotoAsync(demo.App.Printed("Head coach sign-in"));
        await page.GetByRole(AriaRole.Button, new() { NameRegex = SignIn() }).ClickAsync();
        await page.LiveAsync();
        var year = await page.Locator(".board-squad a[href$='/year']").First.GetAttributeAsync("href");
        await page.OpenAsync(demo.App.Address + year![..^"/year".Length] + "/players");
        var remove = page.Locator("td").GetByRole(AriaRole.Button, new() { NameRegex = Remove() });
        var name = await remove.First.GetAttributeAsync("aria-label");
        var players = await remove.CountAsync();
        var question = page.GetByRole(AriaRole.Dialog);

        await remove.First.ClickAsync();
        await Assertions.Expect(question).ToContainTextAsync(name + "?");
        Assert.Empty(await page.BarriersAsync("remove-player"));
        await page.PictureAsync("remove-player");
        await question.GetByRole(AriaRole.Button, new() { Name = "Leave as it is" }).ClickAsync();
        await Assertions.Expect(question).ToHaveCountAsync(0);
        await Assertions.Expect(remove).ToHaveCountAsync(players);

        await remove.First.ClickAsync();
        await question.GetByRole(AriaRole.Button, new() { Name = name }).ClickAsync();
        await Assertions.Expect(remove).ToHaveCountAsync(players - 1);
    }

    [GeneratedRegex("Sign in")]
    private static partial Regex SignIn();

    [GeneratedRegex("^Remove ")]
    private static partial Regex Remove();
}
