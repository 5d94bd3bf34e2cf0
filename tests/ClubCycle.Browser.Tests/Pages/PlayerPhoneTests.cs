using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace ClubCycle.Browser.Tests.Pages;

/// <summary>The player page on a phone that loses its connection, its link, or its patience.</summary>
[Collection(Chromium.SecondLane)]
public sealed partial class PlayerPhoneTests(Chromium chromium, DemoApp demo) : IClassFixture<Chromium>, IClassFixture<DemoApp>
{
    private const int MostBytes = 60 * 1024;
    private const int MostTaps = 3;
    private const double MostJumps = 0.01;
    private const string KeptAddresses = "async () => (await Promise.all((await caches.keys()).map(async name => (await (await caches.open(name)).keys()).map(kept => new URL(kept.url).pathname)))).flat()";

    [Fact]
    public async Task Offline_the_week_that_was_seen_last_stays_until_the_club_takes_the_link_back()
    {
        await using var head = await chromium.NewPersonAsync();
        var desk = await head.NewPageAsync();
        var address = await MakeLinkAsync(desk);
        await using var player = await chromium.NewPersonAsync(390, 844);
        var page = await player.NewPageAsync();
        await page.GotoAsync(address);
        Assert.False(await page.GetByText("You are offline").IsVisibleAsync(), "said while there is a connection");
        await KeptAsync(page);

        await player.SetOfflineAsync(true);
        await page.ReloadAsync();
        await page.GetByText("You are offline: this is what was there on ").WaitForAsync();
        await page.GetByRole(AriaRole.Heading, new() { NameRegex = Today() }).WaitForAsync();
        Assert.Equal(6, await page.Locator(".day").CountAsync());
        Assert.Equal("650", await page.GetByRole(AriaRole.Heading, new() { Level = 1 }).EvaluateAsync<string>("title => getComputedStyle(title).fontWeight"));
        var wrong = await page.LookEverywhereAsync("player-offline");
        await page.GotoAsync(new Uri(new Uri(address), "/p/").ToString());
        Assert.Equal(address, page.Url);

        await desk.GetByRole(AriaRole.Button, new() { Name = "I have handed it over" }).ClickAsync();
        await desk.Locator("button[aria-label^='Links of']").First.ClickAsync();
        await desk.GetByRole(AriaRole.Button, new() { NameRegex = RevokeOwnPhone() }).ClickAsync();
        await desk.GetByRole(AriaRole.Button, new() { NameRegex = RevokeOwnPhone() }).WaitForAsync(new() { State = WaitForSelectorState.Detached });
        await player.SetOfflineAsync(false);
        var gone = await page.ReloadAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "This page is not here" }).WaitForAsync();
        Assert.Equal(404, gone!.Status);
        Assert.Empty(await page.EvaluateAsync<string[]>(KeptAddresses));

        await player.SetOfflineAsync(true);
        await Assert.ThrowsAsync<PlaywrightException>(() => page.ReloadAsync());
        Assert.Equal(0, await page.Locator(".day").CountAsync());
        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    [Fact]
    public async Task A_first_visit_costs_at_most_60_KB_with_all_that_is_kept_and_nothing_jumps()
    {
        await using var wire = new CountedWire(demo.App.Address);
        await using var player = await chromium.NewPersonAsync(390, 844);
        var page = await player.NewPageAsync();
        await page.GotoAsync(wire.Through(demo.App.Printed("Player page")), new PageGotoOptions { WaitUntil = WaitUntilState.NetworkIdle });
        await KeptAsync(page);
        var (jumps, what) = await JumpsAsync(page);

        TestContext.Current.TestOutputHelper!.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Player page, first visit: {wire.Bytes} bytes, layout shift {jumps:0.000} {what}"));
        Assert.InRange(wire.Bytes, 20_000, MostBytes);
        Assert.True(jumps <= MostJumps, $"{jumps}: {what}");
    }

    [Theory]
    [InlineData("**/*.woff2")]
    [InlineData("**/player.js")]
    [InlineData("**/copy.js")]
    public async Task Nothing_jumps_and_all_is_kept_although_a_part_comes_late(string part)
    {
        await using var player = await chromium.NewPersonAsync(390, 844);
        var page = await player.NewPageAsync();
        await page.RouteAsync(part, async late =>
        {
            await Task.Delay(TimeSpan.FromSeconds(2));
            await late.ContinueAsync();
        });
        await page.GotoAsync(demo.App.Printed("Player page"), new PageGotoOptions { WaitUntil = WaitUntilState.NetworkIdle });
        await KeptAsync(page);

        var (jumps, what) = await JumpsAsync(page);
        Assert.True(jumps <= MostJumps, $"{jumps}: {what}");
    }

    [Theory]
    [InlineData(320, 100)]
    [InlineData(390, 100)]
    [InlineData(390, 200)]
    public async Task Nothing_scrolls_sideways(int width, int percent)
    {
        await using var player = await chromium.NewPersonAsync(width, 844);
        var page = await player.NewPageAsync();
        await page.GotoAsync(demo.App.Printed("Player page"));
        await page.EvaluateAsync($"document.documentElement.style.fontSize = '{percent}%'; for (const part of document.querySelectorAll('details')) part.open = true");
        await page.PictureAsync($"player-{width}-{percent}");

        Assert.InRange(await page.EvaluateAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth"), 0, 0);
    }

    [Fact]
    public async Task A_calendar_is_added_with_at_most_three_taps()
    {
        await using var player = await chromium.NewPersonAsync(390, 844);
        var page = await player.NewPageAsync();
        await page.GotoAsync(demo.App.Printed("Player page"));
        await page.EvaluateAsync("addEventListener('click', tapped => { window.taps = (window.taps ?? 0) + 1; window.leads = tapped.target.closest('a')?.href; tapped.preventDefault(); })");

        await page.GetByRole(AriaRole.Link, new() { Name = "Add to my calendar" }).ClickAsync();

        Assert.StartsWith("webcal://", await page.EvaluateAsync<string>("window.leads"), StringComparison.Ordinal);
        Assert.InRange(await page.EvaluateAsync<int>("window.taps"), 1, MostTaps);
    }

    /// <summary>Until page, style sheet, font and script are on the phone. Asked again and again from here: a function that the browser waits for counts as true as soon as it returns a promise.</summary>
    private static async Task KeptAsync(IPage page)
    {
        string[] parts = [new Uri(page.Url).AbsolutePath, "/css/clubcycle.css", "/fonts/source-sans-3-latin.woff2", "/js/player.js", "/p/", "/js/start.js"];
        for (var waited = Stopwatch.StartNew(); ; await Task.Delay(50))
        {
            var missing = parts.Except(await page.EvaluateAsync<string[]>(KeptAddresses)).ToList();
            if (missing.Count == 0)
            {
                return;
            }

            Assert.True(waited.Elapsed < TimeSpan.FromMinutes(1), $"Not kept within a minute: {string.Join(' ', missing)}");
        }
    }

    /// <summary>The sum of all layout shifts so far, and what moved.</summary>
    private static async Task<(double Sum, string What)> JumpsAsync(IPage page)
    {
        var seen = await page.EvaluateAsync<string>(
            """
            () => new Promise(tell => {
              new PerformanceObserver(seen => tell(seen.getEntries().map(shift => `${shift.value} ${shift.sources.map(part => part.node?.outerHTML?.slice(0, 80) ?? part.node?.nodeName)}`).join("\n")))
                .observe({ type: "layout-shift", buffered: true });
              setTimeout(() => tell(""), 500);
            })
            """);
        return (seen.Split('\n', StringSplitOptions.RemoveEmptyEntries).Sum(line => double.Parse(line.Split(' ')[0], CultureInfo.InvariantCulture)), seen);
    }

    private async Task<string> MakeLinkAsync(IPage page)
    {
        await page.GotoAsync(demo.App.Printed("Head coach sign-in"));
        await page.GetByRole(AriaRole.Button, new() { NameRegex = SignIn() }).ClickAsync();
        await page.LiveAsync();
        var year = await page.GetByRole(AriaRole.Link, new() { Name = "Women 1", Exact = true }).First.GetAttributeAsync("href");
        await page.OpenAsync(demo.App.Address + year![..^"/year".Length] + "/players");
        await page.GetByRole(AriaRole.Button, new() { NameRegex = NewLink() }).First.ClickAsync();
        await page.GetByLabel("Whose phone or computer").FillAsync("own phone");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make the link" }).ClickAsync();
        await page.Locator("#feed-address").WaitForAsync();
        return (await page.Locator("#feed-address").InnerTextAsync()).Replace("/calendar/", "/p/", StringComparison.Ordinal).Replace(".ics", "", StringComparison.Ordinal);
    }

    [GeneratedRegex("^Sign in")]
    private static partial Regex SignIn();

    [GeneratedRegex("^New link")]
    private static partial Regex NewLink();

    [GeneratedRegex("^Revoke own phone")]
    private static partial Regex RevokeOwnPhone();

    [GeneratedRegex("^Today, ")]
    private static partial Regex Today();
}
