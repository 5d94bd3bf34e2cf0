using Microsoft.Playwright;

namespace ClubCycle.Browser.Tests;

/// <summary>One browser for all tests: Debian's Chromium, driven by Playwright.</summary>
public sealed class Chromium : IAsyncLifetime
{
    /// <summary>Each class runs a whole app, its PostgreSQL and a browser: on two cores two at once are busy, and more only wait. Both lanes take about as long.</summary>
    public const string FirstLane = "first lane";

    public const string SecondLane = "second lane";

    /// <summary>Milliseconds. Generous: a busy machine is slow, not wrong.</summary>
    private const float Patience = 60_000;

    private static readonly string[] Arguments =
    [
        "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync",
    ];

    private IPlaywright? _playwright;
    private IBrowser? _browser;
    private string? _missing;

    public async ValueTask InitializeAsync()
    {
        var path = Environment.GetEnvironmentVariable("CLUBCYCLE_CHROMIUM") ?? (Environment.GetEnvironmentVariable("PATH") ?? "")
            .Split(Path.PathSeparator).Select(folder => Path.Combine(folder, "chromium")).FirstOrDefault(File.Exists);
        if (path is null)
        {
            _missing = "Chromium is missing: install Debian's 'chromium', or name one in CLUBCYCLE_CHROMIUM.";
            return;
        }

        Assertions.SetDefaultExpectTimeout(Patience);
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions { ExecutablePath = path, Args = Arguments });
    }

    /// <summary>A person's own browser: no cookies of others.</summary>
    public async Task<IBrowserContext> NewPersonAsync(int width = 1366, int height = 900, bool dark = false, bool scripts = true, float zoom = 1)
    {
        if (_missing is not null)
        {
            Assert.SkipUnless(Environment.GetEnvironmentVariable("CI") == "true", _missing);
            Assert.Fail(_missing);
        }

        var context = await _browser!.NewContextAsync(new BrowserNewContextOptions
        {
            ViewportSize = new ViewportSize { Width = width, Height = height },
            ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light,
            ReducedMotion = ReducedMotion.Reduce,
            DeviceScaleFactor = zoom,
            Locale = "en-GB",
            JavaScriptEnabled = scripts,

            // The app's certificate is of the test's own making.
            IgnoreHTTPSErrors = true,
        });
        context.SetDefaultTimeout(Patience);
        return context;
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.DisposeAsync();
        }

        _playwright?.Dispose();
    }
}
