using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace ClubCycle.Browser.Tests.Pages;

[Collection(Chromium.SecondLane)]
public sealed partial class BothAtOnceTests(Chromium chromium, DemoApp demo) : IClassFixture<Chromium>, IClassFixture<DemoApp>
{
    [Fact]
    public async Task Of_two_people_on_one_template_the_second_sees_both_and_loses_no_typing()
    {
        await using var office = await chromium.NewPersonAsync();
        await using var home = await chromium.NewPersonAsync();
        var head = await SignedInAsync(office, "Head coach sign-in");
        await head.OpenAsync(demo.App.Address + "/templates");
        await head.GetByRole(AriaRole.Button, new() { Name = "Clone Senior standard", Exact = true }).ClickAsync();
        await head.GetByLabel("Title of the clone").FillAsync("House plan");
        await head.GetByRole(AriaRole.Button, new() { Name = "Clone it" }).ClickAsync();
        await head.GetByRole(AriaRole.Heading, new() { Name = "House plan" }).WaitForAsync();
        await head.LiveAsync();
        var coach = await SignedInAsync(home, "Squad coach sign-in");
        await coach.OpenAsync(head.Url);

        await TypeAsync(head, "Weeks rise by percent at most", "5");
        await head.GetByRole(AriaRole.Button, new() { Name = "Save as version 2" }).ClickAsync();
        await head.GetByText("Saved as version 2").WaitForAsync();
        await TypeAsync(coach, "A phase starts with percent of its minutes", "60");
        await TypeAsync(coach, "What changed (optional)", "Gentler start");
        await coach.GetByRole(AriaRole.Button, new() { Name = "Save as version 2" }).ClickAsync();

        var both = coach.GetByRole(AriaRole.Alert).Filter(new() { HasText = "Somebody else was first" });
        await Assertions.Expect(both).ToContainTextAsync("saved version 2");
        await Assertions.Expect(both.Locator(".differences")).ToContainTextAsync("A phase starts with 60 %");
        await Assertions.Expect(both.Locator(".differences")).ToContainTextAsync("Weeks rise by");
        await Assertions.Expect(coach.GetByLabel("A phase starts with percent of its minutes")).ToHaveValueAsync("60");
        await Assertions.Expect(coach.GetByLabel("What changed (optional)")).ToHaveValueAsync("Gentler start");
        Assert.Empty(await coach.BarriersAsync("both-versions"));
        await coach.PictureAsync("both-versions");
        await coach.SetViewportSizeAsync(390, 844);
        await both.ScreenshotAsync(new() { Path = PicturePath("both-versions-390") });
        await coach.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Dark });
        await both.ScreenshotAsync(new() { Path = PicturePath("both-versions-390-dark") });

        await both.GetByRole(AriaRole.Button, new() { Name = "Keep mine, as version 3" }).ClickAsync();
        await coach.GetByText("Saved as version 3").WaitForAsync();
        await Assertions.Expect(coach.GetByLabel("A phase starts with percent of its minutes")).ToHaveValueAsync("60");

        // The first is now the one who comes too late, and takes what is there.
        await TypeAsync(head, "Weeks rise by percent at most", "4");
        await head.GetByRole(AriaRole.Button, new() { Name = "Save as version 3" }).ClickAsync();
        await head.GetByRole(AriaRole.Button, new() { Name = "Take theirs" }).ClickAsync();
        await Assertions.Expect(head.GetByLabel("A phase starts with percent of its minutes")).ToHaveValueAsync("60");
        await head.GetByRole(AriaRole.Button, new() { Name = "Save as version 4" }).WaitForAsync();

        await head.GetByRole(AriaRole.Button, new() { Name = "Retire", Exact = true }).ClickAsync();
        await head.GetByText("Retired: squads that use it go on").WaitForAsync();
        await head.OpenAsync(demo.App.Address + "/templates");
        await head.GetByRole(AriaRole.Button, new() { Name = "Bring it back: House plan" }).WaitForAsync();
        await Assertions.Expect(head.GetByRole(AriaRole.Button, new() { Name = "Clone House plan" })).ToHaveCountAsync(0);
        Assert.Empty(await head.BarriersAsync("templates-retired"));
        await head.PictureAsync("templates-retired");
        await head.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Dark });
        await head.PictureAsync("templates-retired-dark");
        await head.SetViewportSizeAsync(390, 844);
        await head.PictureAsync("templates-retired-390-dark");
        await head.GetByRole(AriaRole.Button, new() { Name = "Bring it back: House plan" }).ClickAsync();
        await head.GetByRole(AriaRole.Button, new() { Name = "Clone House plan" }).WaitForAsync();
    }

    private async Task<IPage> SignedInAsync(IBrowserContext person, string link)
    {
        var page = await person.NewPageAsync();
        await page.GotoAsync(demo.App.Printed(link));
        await page.GetByRole(AriaRole.Button, new() { NameRegex = SignIn() }).ClickAsync();
        await page.LiveAsync();
        return page;
    }

    private static async Task TypeAsync(IPage page, string label, string text)
    {
        await page.GetByLabel(label).FillAsync(text);
        await page.GetByLabel(label).PressAsync("Tab");
    }

    private static string PicturePath(string name) => Path.Combine(Looking.Pictures, name + ".png");

    [GeneratedRegex("Sign in")]
    private static partial Regex SignIn();
}
