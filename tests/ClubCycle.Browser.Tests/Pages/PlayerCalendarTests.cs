using System.Collections.Concurrent;
using Microsoft.Playwright;

namespace ClubCycle.Browser.Tests.Pages;

/// <summary>The player page as a phone sees it.</summary>
[Collection(Chromium.SecondLane)]
public sealed class PlayerCalendarTests(Chromium chromium, DemoApp demo) : IClassFixture<Chromium>, IClassFixture<DemoApp>
{
    [Fact]
    public async Task The_page_asks_nobody_but_the_club_for_anything_and_tells_nobody_where_it_came_from()
    {
        await using var person = await chromium.NewPersonAsync(390, 844);
        var page = await person.NewPageAsync();
        ConcurrentQueue<IRequest> asked = new();
        await page.RouteAsync("**/*", async route =>
        {
            asked.Enqueue(route.Request);
            await route.ContinueAsync();
        });

        var answer = await page.GotoAsync(demo.App.Printed("Player page"), new PageGotoOptions { WaitUntil = WaitUntilState.NetworkIdle });

        Assert.Equal("no-referrer", answer!.Headers["referrer-policy"]);
        Assert.Equal("noindex, nofollow", answer.Headers["x-robots-tag"]);
        Assert.True(asked.Count > 1, "the style sheet is fetched too");
        Assert.All(asked, request => Assert.StartsWith(demo.App.Address + "/", request.Url, StringComparison.Ordinal));
        Assert.All(asked, request => Assert.DoesNotContain("/p/", request.Headers.GetValueOrDefault("referer", ""), StringComparison.Ordinal));
    }

    [Fact]
    public async Task Without_scripts_the_calendar_is_added_by_button_address_or_code()
    {
        await using var person = await chromium.NewPersonAsync(390, 844, scripts: false);
        var page = await person.NewPageAsync();
        await page.GotoAsync(demo.App.Printed("Player page"));

        Assert.Equal(demo.App.Printed("Player feed").Replace("http:", "webcal:", StringComparison.Ordinal), await page.GetByRole(AriaRole.Link, new() { Name = "Add to my calendar" }).GetAttributeAsync("href"));
        Assert.Equal(demo.App.Printed("Player feed"), await page.Locator("#feed").InnerTextAsync());
        Assert.False(await page.GetByText("Copy the address", new() { Exact = true }).IsVisibleAsync(), "a button that could do nothing");
        await page.GetByText("On another phone or tablet").ClickAsync();
        await page.GetByRole(AriaRole.Img, new() { Name = "QR code of this page" }).WaitForAsync();
        await page.GetByText("When do changes show up?").ClickAsync();
        await page.GetByText("To make it look now").WaitForAsync();
    }

    [Fact]
    public async Task What_can_be_pressed_is_44_px_high_and_the_help_reads_in_every_light()
    {
        await using var person = await chromium.NewPersonAsync(390, 844);
        var page = await person.NewPageAsync();
        await page.GotoAsync(demo.App.Printed("Player page"));
        await page.GetByText("Copy the address", new() { Exact = true }).WaitForAsync();
        var small = await page.EvaluateAsync<string[]>("[...document.querySelectorAll('a, button, summary, input')].filter(e => e.checkVisibility() && e.getBoundingClientRect().height < 44).map(e => e.outerHTML)");
        await page.EvaluateAsync("for (const part of document.querySelectorAll('#calendar ~ details')) part.open = true");
        var wrong = await page.LookEverywhereAsync("player-calendar");
        await page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });
        await page.PictureAsync("player-calendar-print");

        Assert.Empty(small);
        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    [Fact]
    public async Task Copying_says_what_happened()
    {
        await using var person = await chromium.NewPersonAsync(390, 844);
        var page = await person.NewPageAsync();
        await page.GotoAsync(demo.App.Printed("Player page"));

        await page.GetByText("Copy the address", new() { Exact = true }).ClickAsync();

        await page.GetByText("Copied.").WaitForAsync();
    }
}
