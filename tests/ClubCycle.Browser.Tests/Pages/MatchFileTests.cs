using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace ClubCycle.Browser.Tests.Pages;

[Collection(Chromium.FirstLane)]
public sealed partial class MatchFileTests(Chromium chromium, DemoApp demo) : IClassFixture<Chromium>, IClassFixture<DemoApp>
{
    private static readonly DateTime Tomorrow = TimeProvider.System.GetUtcNow().Date.AddDays(1);

    [Fact]
    public async Task Forty_matches_come_from_a_file_and_its_next_version_updates_them()
    {
        await using var head = await chromium.NewPersonAsync();
        var page = await head.NewPageAsync();
        await page.GotoAsync(demo.App.Printed("Head coach sign-in"));
        await page.GetByRole(AriaRole.Button, new() { NameRegex = SignIn() }).ClickAsync();
        await page.LiveAsync();
        await page.Locator(".board-squad a", new() { HasText = "Women 2" }).First.ClickAsync();
        await page.LiveAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Matches", Exact = true }).ClickAsync();
        await page.LiveAsync();

        var take = page.GetByRole(AriaRole.Button, new() { Name = "Take these matches" });

        await ChooseAsync(page, Lines(0));
        await Assertions.Expect(page.GetByText("40 new, 0 changed")).ToBeVisibleAsync();
        Assert.Empty(await page.BarriersAsync("match-file"));
        await page.PictureAsync("match-file");
        await take.ClickAsync();
        await Assertions.Expect(page.GetByText("40 matches taken")).ToBeVisibleAsync();

        await ChooseAsync(page, Lines(0));
        await Assertions.Expect(page.GetByText("0 new, 0 changed, 40 as they are")).ToBeVisibleAsync();
        await Assertions.Expect(take).ToBeDisabledAsync();

        await ChooseAsync(page, [.. Lines(1), "31/06/2027;14:00;Nowhere"]);
        await Assertions.Expect(page.GetByText("0 new, 1 changed, 39 as they are")).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByText("1 rows could not be read")).ToBeVisibleAsync();
        await Assertions.Expect(take).ToBeDisabledAsync();
        await page.PictureAsync("match-file-bad-row");
        await page.GetByLabel("Take the 40 good ones all the same").CheckAsync();
        await take.ClickAsync();
        await Assertions.Expect(page.GetByText("1 matches taken")).ToBeVisibleAsync();

        await page.ChooseFileAsync("#match-file", new FilePayload { Name = "matches.csv", MimeType = "text/csv", Buffer = [0x50, 0x4B, 0x03, 0x04] });
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToBeVisibleAsync();
    }

    /// <param name="moved">How many of the matches are a day later than in the first file.</param>
    private static string[] Lines(int moved) =>
    [
        "Date;Time;Opponent",
        .. Enumerable.Range(0, 40).Select(i => $"{Tomorrow.AddDays((2 * i) + (i < moved ? 1 : 0)).ToString("dd/MM/yyyy", CultureInfo.InvariantCulture)};10:30;Riverside {i + 1}"),
    ];

    private static Task ChooseAsync(IPage page, string[] lines) => page.ChooseFileAsync(
        "#match-file",
        new FilePayload { Name = "matches.csv", MimeType = "text/csv", Buffer = Encoding.UTF8.GetBytes(string.Join("\r\n", lines)) });

    [GeneratedRegex("Sign in")]
    private static partial Regex SignIn();
}
