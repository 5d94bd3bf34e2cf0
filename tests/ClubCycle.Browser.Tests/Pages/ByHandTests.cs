using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace ClubCycle.Browser.Tests.Pages;

/// <summary>What a coach changes by hand, with mouse, keyboard and buttons.</summary>
[Collection(Chromium.SecondLane)]
public sealed partial class ByHandTests(Chromium chromium, DemoApp demo) : IClassFixture<Chromium>, IClassFixture<DemoApp>
{
    [Fact]
    public async Task A_coach_moves_phases_and_adds_and_edits_sessions()
    {
        await using var first = await chromium.NewPersonAsync();
        var page = await first.NewPageAsync();
        await page.GotoAsync(demo.App.Printed("Head coach sign-in"));
        await page.GetByRole(AriaRole.Button, new() { NameRegex = SignIn() }).ClickAsync();
        await page.LiveAsync();
        var year = await YearWithBoundaryAsync(page);

        // The slider over the picture: by keyboard, then by mouse, then back.
        var slider = page.GetByRole(AriaRole.Slider).Last;
        var words = await slider.GetAttributeAsync("aria-valuetext");
        await slider.FocusAsync();
        await page.Keyboard.PressAsync("ArrowLeft");
        await Assertions.Expect(slider).Not.ToHaveAttributeAsync("aria-valuetext", words!);
        await Assertions.Expect(page.GetByText("A coach set the lengths")).ToBeVisibleAsync();
        var shorter = await slider.GetAttributeAsync("aria-valuetext");
        await DragAsync(page, slider, weeks: 2);
        await Assertions.Expect(slider).Not.ToHaveAttributeAsync("aria-valuetext", shorter!);
        Assert.Equal(Number(words!) + 1, Number((await slider.GetAttributeAsync("aria-valuetext"))!));
        await PicturesAsync(first, year, "by-hand-year");
        await page.GetByRole(AriaRole.Button, new() { Name = "Let the planner choose again" }).ClickAsync();
        await Assertions.Expect(slider).ToHaveAttributeAsync("aria-valuetext", words!);

        // The buttons in the table do the same.
        await page.GetByRole(AriaRole.Button, new() { NameRegex = OneWeekShorter() }).Last.ClickAsync();
        await Assertions.Expect(slider).ToHaveAttributeAsync("aria-valuetext", shorter!);

        // A session of the coach's own, with a note.
        var week = year.Replace("/year", "/week/", StringComparison.Ordinal) + TimeProvider.System.GetUtcNow().UtcDateTime.AddDays(21).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        await page.OpenAsync(week);
        await page.GetByRole(AriaRole.Button, new() { Name = "Add a session" }).ClickAsync();
        await page.Locator("#edit-day").SelectOptionAsync(new SelectOptionValue { Index = 6 });
        await page.GetByLabel("What it is").SelectOptionAsync("body-weight");
        await page.Locator("#edit-minutes").FillAsync("25");
        await page.GetByLabel("Note to the players").FillAsync("In the sports hall.\nBring a mat.");
        await PictureAsync(page, "by-hand-add");
        await page.GetByRole(AriaRole.Button, new() { Name = "Add it" }).ClickAsync();
        await Assertions.Expect(page.Locator(".session-note")).ToContainTextAsync("Bring a mat.");

        // Edited: another length.
        await page.GetByRole(AriaRole.Button, new() { NameRegex = EditBodyWeight() }).ClickAsync();
        await page.Locator("#edit-minutes").FillAsync("35");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save it" }).ClickAsync();
        await Assertions.Expect(page.Locator(".week-session", new() { HasText = "Bring a mat." })).ToContainTextAsync("35 min");
        await PicturesAsync(first, week, "by-hand-week");

        // The sheet stands beside the seven days and follows them; printed, it stands alone.
        var sheet = page.Locator(".week-sheet");
        await Assertions.Expect(sheet).ToContainTextAsync("Bring a mat.");
        var (days, paper) = ((await page.Locator(".week-grid").BoundingBoxAsync())!, (await sheet.BoundingBoxAsync())!);
        Assert.InRange(paper.X, days.X + days.Width, page.ViewportSize!.Width - paper.Width);
        Assert.InRange(paper.Y, days.Y - 5, days.Y + 5);
        await page.EmulateMediaAsync(new() { Media = Media.Print });
        await page.PictureAsync("by-hand-week-printed");
        await Assertions.Expect(sheet).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator(".week-grid")).ToBeHiddenAsync();
        await page.EmulateMediaAsync(new() { Media = Media.Screen });

        await page.GetByRole(AriaRole.Link, new() { Name = "Body-weight strength" }).Last.ClickAsync();
        await page.LiveAsync();
        await PicturesAsync(first, page.Url, "by-hand-session");
        await page.OpenAsync(week);
        await page.GetByRole(AriaRole.Button, new() { NameRegex = RemoveBodyWeight() }).ClickAsync();
        await Assertions.Expect(page.Locator(".session-note")).ToHaveCountAsync(0);
    }

    /// <summary>The demo's squads play at different times of the year: whatever the date, one has phases to come.</summary>
    private async Task<string> YearWithBoundaryAsync(IPage page)
    {
        var squads = await page.Locator(".board-squad a[href$='/year']").EvaluateAllAsync<string[]>("links => links.map(link => link.getAttribute('href'))");
        foreach (var squad in squads.Reverse())
        {
            await page.OpenAsync(demo.App.Address + squad);
            if (await page.GetByRole(AriaRole.Slider).CountAsync() > 0)
            {
                return demo.App.Address + squad;
            }
        }

        throw new InvalidOperationException("No squad of the demo has a boundary to come");
    }

    private static async Task DragAsync(IPage page, ILocator slider, int weeks)
    {
        var box = (await slider.BoundingBoxAsync())!;
        var (value, least, most) = (await AttributeAsync("value"), await AttributeAsync("min"), await AttributeAsync("max"));
        const float grip = 20;
        float At(int at) => box.X + (grip / 2) + ((box.Width - grip) * (at - least) / (most - least));
        var y = box.Y + (box.Height / 2);
        await page.Mouse.MoveAsync(At(value), y);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(At(value + 1), y, new() { Steps = 4 });
        await page.Mouse.MoveAsync(At(value + weeks), y, new() { Steps = 4 });
        await Assertions.Expect(page.Locator(".year-chart-moved")).ToBeVisibleAsync();
        await page.Mouse.UpAsync();
        await Assertions.Expect(page.Locator(".year-chart-moved")).ToHaveCountAsync(0);

        async Task<int> AttributeAsync(string name) => int.Parse(await slider.EvaluateAsync<string>($"s => s.{name}"), CultureInfo.InvariantCulture);
    }

    /// <summary>Light, dark and on a phone; none may break an accessibility rule or scroll sideways.</summary>
    private async Task PicturesAsync(IBrowserContext known, string address, string name)
    {
        var cookies = (await known.CookiesAsync()).Select(c => new Cookie { Name = c.Name, Value = c.Value, Domain = c.Domain, Path = c.Path, HttpOnly = c.HttpOnly }).ToList();
        foreach (var (dark, width) in new[] { (false, 1366), (true, 1366), (false, 390) })
        {
            await using var person = await chromium.NewPersonAsync(width, width > 1000 ? 900 : 844, dark);
            await person.AddCookiesAsync(cookies);
            var own = await person.NewPageAsync();
            await own.OpenAsync(address);
            await PictureAsync(own, $"{name}-{(dark ? "dark" : "light")}-{width}");
        }
    }

    private static async Task PictureAsync(IPage page, string name)
    {
        await page.PictureAsync(name);
        var barriers = await page.BarriersAsync(name);
        Assert.True(barriers.Count == 0, string.Join("\n", barriers));
        Assert.InRange(await page.EvaluateAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth"), 0, 1);
    }

    /// <summary>Weeks of the phase before: the first number.</summary>
    private static int Number(string words) => int.Parse(FirstNumber().Match(words).Value, CultureInfo.InvariantCulture);

    [GeneratedRegex("Sign in")]
    private static partial Regex SignIn();

    [GeneratedRegex("− 1 week: .* shorter, .* longer")]
    private static partial Regex OneWeekShorter();

    [GeneratedRegex("Edit Body-weight strength")]
    private static partial Regex EditBodyWeight();

    [GeneratedRegex("Remove Body-weight strength")]
    private static partial Regex RemoveBodyWeight();

    [GeneratedRegex("[0-9]+")]
    private static partial Regex FirstNumber();
}
