using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace ClubCycle.Browser.Tests.Journeys;

/// <summary>A head coach changes what many squads share, sees what it does to each, and publishes all of them in one act.</summary>
[Collection(Chromium.SecondLane)]
public sealed partial class ManySquadsTests(Chromium chromium, DemoApp demo) : IClassFixture<Chromium>, IClassFixture<DemoApp>
{
    [Fact]
    public async Task New_season_dates_and_a_new_template_version_reach_every_squad_in_one_act_each()
    {
        await using var head = await chromium.NewPersonAsync();
        var page = await head.NewPageAsync();
        await page.GotoAsync(demo.App.Printed("Head coach sign-in"));
        await page.GetByRole(AriaRole.Button, new() { NameRegex = SignIn() }).ClickAsync();
        await page.LiveAsync();

        // Season dates: a week more.
        await page.OpenAsync(demo.App.Address + "/seasons");
        var last = page.Locator("#stint-last-1");
        await last.FillAsync(DateOnly.Parse(await last.InputValueAsync(), System.Globalization.CultureInfo.InvariantCulture).AddDays(7).ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture));
        await last.DispatchEventAsync("change");
        await page.Locator(".effect").First.WaitForAsync();
        Assert.True(await page.Locator(".effect").CountAsync() > 2);
        await page.Locator(".effect summary").First.ClickAsync();
        Assert.Empty(await page.BarriersAsync("season-effects"));
        await PicturesAsync(page, "season-effects");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save the dates" }).ClickAsync();
        await page.GetByText("Saved. Drafts follow at once").WaitForAsync();

        // A template of our own for two squads, changed for both.
        await page.OpenAsync(demo.App.Address + "/templates");
        await page.GetByRole(AriaRole.Button, new() { Name = "Clone Senior standard" }).ClickAsync();
        await page.GetByLabel("Title of the clone").FillAsync("Two squads together");
        await page.GetByRole(AriaRole.Button, new() { Name = "Clone it" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Two squads together" }).WaitForAsync();
        foreach (var squad in new[] { "Women 1", "Men 1" })
        {
            await page.GetByRole(AriaRole.Button, new() { Name = "Use version 1 for " + squad }).ClickAsync();
            await page.GetByRole(AriaRole.Button, new() { Name = "Use version 1 for " + squad }).WaitForAsync(new() { State = WaitForSelectorState.Hidden });
        }

        var minutes = page.GetByLabel("Minutes of session 1 in In season");
        await minutes.FillAsync("45");
        await minutes.PressAsync("Tab");
        await page.Locator(".effect summary", new() { HasText = "moved" }).First.WaitForAsync();
        Assert.Equal(2, await page.Locator(".effect").CountAsync());
        Assert.Empty(await page.BarriersAsync("template-effects"));
        await PicturesAsync(page, "template-effects");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save as version 2" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Use version 2 for all 2 of them" }).ClickAsync();
        await page.GetByText("Version 2 is now used by 2 squads more").WaitForAsync();

        // All that are ready, at once.
        await page.OpenAsync(demo.App.Address + "/");
        await page.GetByRole(AriaRole.Button, new() { Name = "Publish all that are ready" }).ClickAsync();
        var publish = page.GetByRole(AriaRole.Button, new() { NameRegex = Publish() });
        await publish.WaitForAsync();
        Assert.Empty(await page.BarriersAsync("publish-all"));
        await PicturesAsync(page, "publish-all");
        await publish.ClickAsync();
        await page.GetByText("published as revision").First.WaitForAsync();
        Assert.True(await page.GetByText("published as revision").CountAsync() > 2);
        await PicturesAsync(page, "publish-all-outcome");
    }

    /// <summary>Light, dark and on a phone.</summary>
    private static async Task PicturesAsync(IPage page, string name)
    {
        await page.PictureAsync(name + "-light-1366");
        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Dark });
        await page.PictureAsync(name + "-dark-1366");
        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Light });
        await page.SetViewportSizeAsync(390, 844);
        Assert.True(await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= 390"), $"{name} is wider than a phone");
        await page.PictureAsync(name + "-light-390");
        await page.SetViewportSizeAsync(1366, 900);
    }

    [GeneratedRegex("sign in", RegexOptions.IgnoreCase)]
    private static partial Regex SignIn();

    [GeneratedRegex("^Publish \\d+ squads?$")]
    private static partial Regex Publish();
}
