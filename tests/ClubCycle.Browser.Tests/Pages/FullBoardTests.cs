using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using ClubCycle.TestKit;
using Microsoft.Playwright;

namespace ClubCycle.Browser.Tests.Pages;

/// <summary>The year board with all that it must hold: 24 squads and 60 weeks.</summary>
[Collection(Chromium.FirstLane)]
public sealed partial class FullBoardTests(Chromium chromium, FullClubApp club) : IClassFixture<Chromium>, IClassFixture<FullClubApp>
{
    private const int MostElements = 1_500;
    private const double MostBytes = 300_000;
    private const double MostShift = 0.1;

    [Fact]
    public async Task The_fullest_board_fits_on_a_laptop_and_stays_light()
    {
        var page = await club.HeadCoachAsync(chromium);
        await page.AddInitScriptAsync("window.shift = 0; new PerformanceObserver(list => list.getEntries().forEach(e => { if (!e.hadRecentInput) shift += e.value; })).observe({ type: 'layout-shift', buffered: true });");
        var devtools = await page.Context.NewCDPSessionAsync(page);
        await devtools.SendAsync("Network.clearBrowserCache");
        var bytes = 0.0;
        devtools.Event("Network.loadingFinished").OnEvent += (_, e) => bytes += e!.Value.GetProperty("encodedDataLength").GetDouble();
        await devtools.SendAsync("Network.enable");
        await page.OpenAsync(club.Address + "/");

        Assert.Equal(FullClub.Squads, await page.Locator(".board-row").CountAsync());
        Assert.Equal(60, await page.Locator(".board-week").CountAsync());
        Assert.InRange(await page.EvaluateAsync<int>("document.querySelectorAll('*').length"), FullClub.Squads * 10, MostElements);
        Assert.Equal(0, await OverflowAsync(page));
        Assert.InRange(bytes, 150_000, MostBytes);
        Assert.InRange(await page.EvaluateAsync<double>("shift"), 0, MostShift);
        TestContext.Current.SendDiagnosticMessage($"Full board: {await page.EvaluateAsync<int>("document.querySelectorAll('*').length")} elements, {bytes:0} bytes, shift {await page.EvaluateAsync<double>("shift"):0.000}");
    }

    [Fact]
    public async Task The_fullest_board_reads_in_light_and_dark_on_laptop_and_phone()
    {
        var page = await club.HeadCoachAsync(chromium);
        await page.OpenAsync(club.Address + "/");

        var wrong = await page.LookEverywhereAsync("full-board");

        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    [Fact]
    public async Task The_board_is_one_tab_stop_that_keys_walk_and_enter_opens()
    {
        var page = await club.HeadCoachAsync(chromium);
        await page.OpenAsync(club.Address + "/");
        Assert.Equal(0, await page.Locator("[role=grid] a:not([tabindex='-1']), [role=grid] button").CountAsync());

        await page.GetByRole(AriaRole.Button, new() { Name = "Later" }).FocusAsync();
        await page.Keyboard.PressAsync("Tab");
        Assert.Equal("grid", await page.EvaluateAsync<string>("document.activeElement.getAttribute('role')"));
        await page.Locator(".board-card").WaitForAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        await Assertions.Expect(page.Locator("#board-active-cell")).ToHaveAttributeAsync("aria-colindex", "26");
        await page.Keyboard.PressAsync("PageDown");
        await Assertions.Expect(page.Locator(".board-row[aria-rowindex='7'] #board-active-cell")).ToBeVisibleAsync();
        await page.PictureAsync("full-board-keys");
        Assert.Empty(await page.BarriersAsync("full-board-keys"));
        await page.Keyboard.PressAsync("Enter");

        await Assertions.Expect(page).ToHaveURLAsync(WeekAddress());
    }

    [Fact]
    public async Task Pointing_at_a_week_shows_it_and_a_press_opens_it()
    {
        var page = await club.HeadCoachAsync(chromium);
        await page.OpenAsync(club.Address + "/");
        var weeks = (await page.Locator(".board-row .board-weeks").Nth(2).BoundingBoxAsync())!;

        await page.Mouse.MoveAsync(weeks.X + (weeks.Width / 2), weeks.Y + 8);
        await Assertions.Expect(page.Locator(".board-card")).ToContainTextAsync("planned load");
        await page.PictureAsync("full-board-pointed");
        await page.Mouse.ClickAsync(weeks.X + (weeks.Width / 2), weeks.Y + 8);

        await Assertions.Expect(page).ToHaveURLAsync(WeekAddress());
    }

    [Fact]
    public async Task Two_compared_squads_stand_alone_and_are_printed_alone()
    {
        var page = await club.HeadCoachAsync(chromium);
        await page.OpenAsync(club.Address + "/");

        await page.Locator("select[name=first]").SelectOptionAsync(new SelectOptionValue { Index = 3 });
        await page.Locator("select[name=second]").SelectOptionAsync(new SelectOptionValue { Index = 5 });

        await Assertions.Expect(page.Locator(".board-row")).ToHaveCountAsync(2);
        var chart = await page.GetByRole(AriaRole.Link, new() { NameRegex = WallChart() }).First.GetAttributeAsync("href");
        var printed = await TextAsync(await (await page.APIRequest.GetAsync(club.Address + chart)).BodyAsync());
        Assert.Equal(await page.Locator(".board-name").AllInnerTextsAsync(), Names().Matches(printed).Select(m => m.Value).Distinct());
    }

    [Fact]
    public async Task A_squads_year_reads_in_light_and_dark_on_laptop_and_phone()
    {
        var page = await club.HeadCoachAsync(chromium);
        await page.OpenAsync(club.Address + "/");
        await page.OpenAsync(club.Address + await page.Locator(".board-name a").Nth(5).GetAttributeAsync("href"));

        var wrong = await page.LookEverywhereAsync("full-year");

        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    [Fact]
    public async Task A_squads_year_printed_by_the_browser_takes_two_pages_at_most()
    {
        var page = await club.HeadCoachAsync(chromium);
        await page.OpenAsync(club.Address + "/");
        var year = await page.Locator(".board-name a").Nth(2).GetAttributeAsync("href");
        await page.OpenAsync(club.Address + year);

        var pdf = await page.PdfAsync(new PagePdfOptions { PreferCSSPageSize = true, PrintBackground = true, Path = Path.Combine(Looking.Pictures, "squad-year.pdf") });

        Assert.InRange(int.Parse(Pages().Match(await RunAsync("pdfinfo", ["-"], pdf)).Groups[1].Value, CultureInfo.InvariantCulture), 1, 2);
    }

    private static Task<int> OverflowAsync(IPage page) => page.EvaluateAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth");

    private static Task<string> TextAsync(byte[] pdf) => RunAsync("pdftotext", ["-", "-"], pdf);

    private static async Task<string> RunAsync(string program, IReadOnlyList<string> arguments, byte[] input)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardInput = true, RedirectStandardOutput = true })!;
        await process.StandardInput.BaseStream.WriteAsync(input, TestContext.Current.CancellationToken);
        process.StandardInput.Close();
        var output = await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return output;
    }

    [GeneratedRegex("/squads/[^/]+/week/")]
    private static partial Regex WeekAddress();

    [GeneratedRegex("wall chart")]
    private static partial Regex WallChart();

    [GeneratedRegex("(Girls and women|Boys and men) \\d+")]
    private static partial Regex Names();

    [GeneratedRegex("Pages:\\s+(\\d+)")]
    private static partial Regex Pages();
}
