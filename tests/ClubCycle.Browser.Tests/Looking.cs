using System.Runtime.CompilerServices;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace ClubCycle.Browser.Tests;

/// <summary>Opening a page, waiting until it answers, taking its picture, checking that everybody can use it.</summary>
internal static class Looking
{
    public static string Pictures { get; } = Path.Combine(Root(), "artifacts", "screenshots");

    /// <summary>Goes to a screen and waits until its buttons work.</summary>
    public static async Task OpenAsync(this IPage page, string address)
    {
        await page.GotoAsync(address);
        await page.LiveAsync();
    }

    public static async Task LiveAsync(this IPage page)
    {
        await page.Locator("#page[data-live=yes]").WaitForAsync();
        await page.Locator("#page h1").First.WaitForAsync();
        await page.Locator(".busy").WaitForAsync(new LocatorWaitForOptions { State = WaitForSelectorState.Hidden });
    }

    public static async Task PictureAsync(this IPage page, string name)
    {
        Directory.CreateDirectory(Pictures);
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Pictures, name + ".png"), FullPage = true });
    }

    /// <summary>The accessibility rules of axe-core that the page breaks, a line each.</summary>
    public static async Task<IReadOnlyList<string>> BarriersAsync(this IPage page, string what)
    {
        var result = await page.RunAxe();
        return [.. result.Violations.Select(v => $"{what}: {v.Id}: {v.Help}\n  {string.Join("\n  ", v.Nodes.Take(3).Select(n => n.Html))}")];
    }

    private static string Root([CallerFilePath] string here = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", ".."));
}
