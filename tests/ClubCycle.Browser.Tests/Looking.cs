using System.Diagnostics;
using System.Runtime.CompilerServices;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace ClubCycle.Browser.Tests;

/// <summary>Opening a page, waiting until it answers, taking its picture, checking that everybody can use it.</summary>
internal static class Looking
{
    public static string Pictures { get; } = Path.Combine(Root(), "artifacts", "screenshots");

    /// <summary>Every rule runs; what passes is not described, which takes longer than the rules.</summary>
    private static readonly AxeRunOptions OnlyWhatIsWrong = new() { ResultTypes = [ResultType.Violations] };

    private const float HalfAMinute = 30_000;
    private const float TwoMinutes = 120_000;

    /// <summary>Goes to a screen and waits until its buttons work.</summary>
    public static async Task OpenAsync(this IPage page, string address)
    {
        try
        {
            await page.GotoAsync(address);
        }
        catch (PlaywrightException other) when (other.Message.Contains("ERR_ABORTED", StringComparison.Ordinal))
        {
            // Seen once, on a very busy machine, cause unknown: another navigation took its place. A person would press again, and the run says so.
            TestContext.Current.SendDiagnosticMessage($"{new Uri(address).AbsolutePath} was opened again: {other.Message}");
            await page.GotoAsync(address);
        }

        try
        {
            await page.LiveAsync(HalfAMinute);
        }
        catch (TimeoutException)
        {
            // Seen about once in a thousand pages on a busy machine, cause unknown; a person would load it again, and the run says so.
            TestContext.Current.SendDiagnosticMessage($"{new Uri(address).AbsolutePath} did not come alive within half a minute and was loaded again");
            await page.ReloadAsync();
            await page.LiveAsync();
        }
    }

    /// <param name="patience">Milliseconds.</param>
    public static async Task LiveAsync(this IPage page, float patience = TwoMinutes)
    {
        await page.Locator("#page[data-live=yes]").WaitForAsync(new LocatorWaitForOptions { Timeout = patience });
        await page.Locator("#page h1").First.WaitForAsync();
        await page.Locator(".busy").WaitForAsync(new LocatorWaitForOptions { State = WaitForSelectorState.Hidden });
    }

    /// <summary>Chooses a file in a field of the page.</summary>
    public static async Task ChooseFileAsync(this IPage page, string field, FilePayload file)
    {
        // The field listens only once Blazor has marked it. Playwright's own wait asks more than once by eval, which the pages' policy forbids.
        var watch = Stopwatch.StartNew();
        while (!await page.Locator(field).EvaluateAsync<bool>("f => f._blazorInputFileNextFileId !== undefined"))
        {
            Assert.InRange(watch.ElapsedMilliseconds, 0, HalfAMinute);
            await Task.Delay(50, TestContext.Current.CancellationToken);
        }

        await page.Locator(field).SetInputFilesAsync(file);
    }

    public static async Task PictureAsync(this IPage page, string name)
    {
        Directory.CreateDirectory(Pictures);
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Pictures, name + ".png"), FullPage = true });
    }

    /// <summary>The accessibility rules of axe-core that the page breaks, a line each.</summary>
    public static async Task<IReadOnlyList<string>> BarriersAsync(this IPage page, string what)
    {
#pragma warning disable CS0618 // The newer way asks each frame and judges again in an empty page, three times as slow; ours have no frames.
        var result = await page.Locator("html").RunAxeLegacy(OnlyWhatIsWrong);
#pragma warning restore CS0618
        return [.. result.Violations.Select(v => $"{what}: {v.Id}: {v.Help}\n  {string.Join("\n  ", v.Nodes.Take(3).Select(n => n.Html))}")];
    }

    /// <summary>How far the page runs out of the window; null when it does not.</summary>
    public static async Task<string?> OverflowAsync(this IPage page) =>
        await page.EvaluateAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth") is > 1 and var beyond ? $"scrolls sideways by {beyond} px" : null;

    /// <summary>Looks at the page as it stands in light and dark, on a laptop and on a phone; answers what is wrong.</summary>
    public static async Task<IReadOnlyList<string>> LookEverywhereAsync(this IPage page, string name)
    {
        List<string> wrong = [];
        foreach (var (dark, width) in new[] { (false, 1366), (true, 1366), (false, 390), (true, 390) })
        {
            await page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light });
            await page.SetViewportSizeAsync(width, 900);
            var picture = $"{name}-{(dark ? "dark" : "light")}-{width}";
            await page.PictureAsync(picture);
            wrong.AddRange(ShowsAll(dark, width) ? await page.BarriersAsync(picture) : []);
            if (await page.OverflowAsync() is { } overflow)
            {
                wrong.Add($"{picture} {overflow}");
            }
        }

        return wrong;
    }

    /// <summary>Light on a laptop and dark on a phone: between them every colour and every width is judged, in half the time of all four.</summary>
    public static bool ShowsAll(bool dark, int width) => dark == width < 1000;

    private static string Root([CallerFilePath] string here = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", ".."));
}
