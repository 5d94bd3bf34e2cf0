using System.Globalization;
using Microsoft.Playwright;

namespace ClubCycle.Browser.Tests;

/// <summary>Using a page without a mouse: the focus goes where it must by Tab alone, then keys do the rest.</summary>
internal static class Keyboard
{
    /// <summary>More than any page has stops.</summary>
    private const int MostStops = 300;

    /// <summary>Puts the focus there. Whatever was typed before is settled by leaving its field.</summary>
    public static async Task ReachAsync(this ILocator what)
    {
        var page = what.Page;
        await what.First.WaitForAsync();
        for (var stops = 0; stops < MostStops; stops++)
        {
            if (stops > 0 || !await HasFocusAsync(what))
            {
                await page.Keyboard.PressAsync("Tab");
            }

            if (await HasFocusAsync(what))
            {
                return;
            }
        }

        Assert.Fail($"No key leads to {what} on {page.Url}");
    }

    /// <summary>A button or a link.</summary>
    public static Task EnterAsync(this ILocator what) => ReachedAsync(what, "Enter");

    /// <summary>A box to tick.</summary>
    public static Task TickAsync(this ILocator what) => ReachedAsync(what, "Space");

    /// <summary>In place of what a field holds.</summary>
    public static async Task WriteAsync(this ILocator what, string text)
    {
        await ReachedAsync(what, "Control+A");
        await what.Page.Keyboard.TypeAsync(text);
    }

    /// <summary>A day in the browser's own field, part by part in the order of the browser's own language, which is American English without a desktop.</summary>
    public static async Task WriteDayAsync(this ILocator what, DateOnly day)
    {
        await what.ReachAsync();
        await what.Page.Keyboard.TypeAsync(day.ToString("MMddyyyy", CultureInfo.InvariantCulture));
        // Its parts and its calendar are stops too.
        while (await HasFocusAsync(what))
        {
            await what.Page.Keyboard.PressAsync("Tab");
        }

        await Assertions.Expect(what).ToHaveValueAsync(day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
    }

    /// <summary>One of a list, by the beginning of its name.</summary>
    public static async Task ChooseAsync(this ILocator what, string name)
    {
        await what.ReachAsync();
        await what.Page.Keyboard.TypeAsync(name);
        await what.Page.Keyboard.PressAsync("Tab");
        Assert.StartsWith(name, await what.EvaluateAsync<string>("list => list.selectedOptions[0].label"), StringComparison.Ordinal);
    }

    private static async Task ReachedAsync(ILocator what, string key)
    {
        await what.ReachAsync();
        await what.Page.Keyboard.PressAsync(key);
    }

    private static Task<bool> HasFocusAsync(ILocator what) => what.First.EvaluateAsync<bool>("it => it === document.activeElement");
}
