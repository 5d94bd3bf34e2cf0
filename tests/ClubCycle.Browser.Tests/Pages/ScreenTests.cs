using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace ClubCycle.Browser.Tests.Pages;

/// <summary>Every screen of the demo club, light and dark, on a laptop and on a phone, and what opens on it: pictures for people, accessibility rules for everybody.</summary>
[Collection(Chromium.FirstLane)]
public sealed partial class ScreenTests(Chromium chromium, DemoApp demo) : IClassFixture<Chromium>, IClassFixture<DemoApp>
{
    private const string Question = "[role=dialog]";

    [Fact]
    public async Task Every_screen_dialog_and_form_is_usable_by_all_in_light_and_dark_on_laptop_phone_and_enlarged()
    {
        // The one-time link is used once; the other browsers take over its cookies.
        await using var first = await chromium.NewPersonAsync();
        var page = await first.NewPageAsync();
        await page.GotoAsync(demo.App.Printed("Head coach sign-in"));
        List<string> wrong = [.. await page.BarriersAsync("sign-in link")];
        await page.GetByRole(AriaRole.Button, new() { NameRegex = SignIn() }).ClickAsync();
        await page.LiveAsync();
        var screens = await ScreensAsync(page);
        var cookies = (await first.CookiesAsync()).Select(c => new Cookie { Name = c.Name, Value = c.Value, Domain = c.Domain, Path = c.Path, HttpOnly = c.HttpOnly }).ToList();

        foreach (var width in new[] { 1366, 390 })
        {
            await using var person = await chromium.NewPersonAsync(width, width > 1000 ? 900 : 844);
            await person.AddCookiesAsync(cookies);
            var own = await person.NewPageAsync();
            foreach (var (name, path) in screens)
            {
                await own.OpenAsync(demo.App.Address + path);
                wrong.AddRange(await LookAsync(own, name, width));
            }

            foreach (var (name, address) in new[] { ("player-page", demo.App.Printed("Player page")), ("sign-in", demo.App.Address + "/account/sign-in"), ("not-found", demo.App.Address + "/nowhere"), ("password", demo.App.Address + "/account/password"), ("passkeys", demo.App.Address + "/account/passkeys"), ("second-factor", demo.App.Address + "/account/second-factor"), ("sign-ins", demo.App.Address + "/account/sign-ins") })
            {
                await own.GotoAsync(address);
                wrong.AddRange(await LookAsync(own, name, width));
            }
        }

        wrong.AddRange(await EnlargedAsync(cookies, screens));
        wrong.AddRange(await OpenedAsync(page, screens.Single(s => s.Name == "squad-settings").Path));
        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    [Fact]
    public async Task A_player_page_needs_no_script_and_stays_small()
    {
        await using var person = await chromium.NewPersonAsync(390, 844);
        var page = await person.NewPageAsync();
        var bytes = 0L;
        var sockets = 0;
        page.Response += (_, response) => bytes += response.Headers.TryGetValue("content-length", out var length) ? long.Parse(length, System.Globalization.CultureInfo.InvariantCulture) : 0;
        page.WebSocket += (_, _) => sockets++;

        var answer = await page.GotoAsync(demo.App.Printed("Player page"));
        var html = (await answer!.BodyAsync()).Length;

        Assert.Equal(200, answer.Status);
        Assert.Equal(0, sockets);
        Assert.InRange(html, 1, 60 * 1024);
        Assert.DoesNotContain("blazor", await page.ContentAsync(), StringComparison.OrdinalIgnoreCase);
        TestContext.Current.SendDiagnosticMessage($"Player page: {html} bytes of HTML, {bytes} bytes with a stated length in all");
    }

    private static async Task<IReadOnlyList<(string Name, string Path)>> ScreensAsync(IPage page)
    {
        // The youngest have games inside practice only: take the first squad that has a session of its own this week.
        var squads = await page.Locator(".board-squad a[href$='/year']").EvaluateAllAsync<string[]>("links => links.map(link => link.getAttribute('href'))");
        string? session = null;
        var squad = "";
        for (var i = squads.Length - 1; session is null; i--)
        {
            squad = squads[i];
            await page.OpenAsync(new Uri(new Uri(page.Url), squad.Replace("/year", "/week", StringComparison.Ordinal)).ToString());
            session = await page.Locator(".week-session h4 a").CountAsync() > 0 ? await page.Locator(".week-session h4 a").First.GetAttributeAsync("href") : null;
        }

        var squadPath = squad[..^"/year".Length];
        await page.OpenAsync(new Uri(new Uri(page.Url), squadPath + "/players").ToString());
        var player = await page.Locator("td a[href*='/players/']").First.GetAttributeAsync("href");
        await page.OpenAsync(new Uri(new Uri(page.Url), "/templates").ToString());
        var template = await page.Locator("td a[href^='/templates/']").First.GetAttributeAsync("href");
        return
        [
            ("year-board", "/"), ("season-dates", "/seasons"), ("next-season", "/seasons?next=club"), ("squads", "/squads"), ("squad-settings", squadPath), ("squad-year", squad), ("week", squadPath + "/week"), ("matches", squadPath + "/matches"),
            ("session", session), ("templates", "/templates"), ("template", template!), ("plan-check", "/check"), ("players", squadPath + "/players"), ("link-sheet", squadPath + "/players/sheet"), ("player-tests", player!),
            ("exercises", "/exercises"), ("exercise", "/exercises/Shadow%20the%20runner"), ("club-settings", "/settings"),
        ];
    }

    /// <summary>A laptop's page at 200 %: half as wide, each point twice as large.</summary>
    private async Task<IReadOnlyList<string>> EnlargedAsync(IEnumerable<Cookie> cookies, IReadOnlyList<(string Name, string Path)> screens)
    {
        List<string> wrong = [];
        await using var person = await chromium.NewPersonAsync(683, 450, zoom: 2);
        await person.AddCookiesAsync(cookies);
        var page = await person.NewPageAsync();
        foreach (var (name, path) in screens)
        {
            await page.OpenAsync(demo.App.Address + path);
            await page.PictureAsync($"{name}-light-200-percent");
            if (await page.OverflowAsync() is { } overflow)
            {
                wrong.Add($"{name} at 200 % {overflow}");
            }
        }

        return wrong;
    }

    /// <summary>Questions and forms that open on a press, on a laptop in light and on a phone in dark.</summary>
    private async Task<IReadOnlyList<string>> OpenedAsync(IPage page, string squad)
    {
        var week = await WeekToChangeAsync(page, squad);
        List<string> wrong = [];
        foreach (var (name, path, press, shown) in new[]
        {
            ("open-remove-person", "/settings", "^Remove ", Question), ("open-remove-squad", squad, "^Remove the squad", Question),
            ("open-remove-player", squad + "/players", "^Remove ", Question), ("open-make-sheet", squad + "/players/sheet", "^Make ", Question), ("open-new-link", squad + "/players", "^New link", "#link-heading"),
            ("open-add-squad", "/squads", "^Add a squad", "#add-heading"), ("open-clone", "/templates", "^Clone ", "#clone-heading"),
            ("open-move", week, "^Move to", "#move-heading"), ("open-edit", week, "^Edit ", "#edit-heading"), ("open-add-session", week, "^Add a session", "#edit-heading"),
        })
        {
            await page.SetViewportSizeAsync(1366, 900);
            await page.OpenAsync(demo.App.Address + path);
            await page.Locator("#page").GetByRole(AriaRole.Button, new() { NameRegex = new Regex(press) }).First.ClickAsync();
            await page.Locator(shown).WaitForAsync();
            foreach (var (dark, width) in new[] { (false, 1366), (true, 390) })
            {
                await page.EmulateMediaAsync(new() { ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light });
                await page.SetViewportSizeAsync(width, 900);
                var picture = $"{name}-{(dark ? "dark" : "light")}-{width}";
                await page.PictureAsync(picture);
                wrong.AddRange(await page.BarriersAsync(picture));
                if (await page.OverflowAsync() is { } overflow)
                {
                    wrong.Add($"{picture} {overflow}");
                }
            }
        }

        return wrong;
    }

    /// <summary>The first week to come that holds a session.</summary>
    private async Task<string> WeekToChangeAsync(IPage page, string squad)
    {
        for (var day = DateOnly.FromDateTime(TimeProvider.System.GetUtcNow().UtcDateTime).AddDays(7); ; day = day.AddDays(7))
        {
            var week = $"{squad}/week/{day:yyyy-MM-dd}";
            await page.OpenAsync(demo.App.Address + week);
            if (await page.GetByRole(AriaRole.Button, new() { NameRegex = Edit() }).CountAsync() > 0)
            {
                return week;
            }
        }
    }

    /// <summary>The colours follow the person's preference while the page stands; what it shows does not depend on them.</summary>
    private static async Task<IReadOnlyList<string>> LookAsync(IPage page, string screen, int width)
    {
        List<string> wrong = [];
        foreach (var dark in new[] { false, true })
        {
            var name = $"{screen}-{(dark ? "dark" : "light")}-{width}";
            await page.EmulateMediaAsync(new() { ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light });
            await page.PictureAsync(name);
            wrong.AddRange(Looking.ShowsAll(dark, width) ? await page.BarriersAsync(name) : []);
            if (await page.OverflowAsync() is { } overflow)
            {
                wrong.Add($"{name} {overflow}");
            }
        }

        return wrong;
    }

    [GeneratedRegex("^Edit ")]
    private static partial Regex Edit();

    [GeneratedRegex("Sign in")]
    private static partial Regex SignIn();
}
