using ClubCycle.TestKit;
using Microsoft.Playwright;
using NodaTime;
using Cookie = Microsoft.Playwright.Cookie;

namespace ClubCycle.Browser.Tests;

/// <summary>An app whose only club has as many squads and weeks as the board must hold.</summary>
public sealed class FullClubApp : IAsyncLifetime
{
    private TestDatabase? _database;
    private RunningApp? _app;
    private IReadOnlyList<Cookie>? _signedIn;

    public string Address => _app!.Address;

    public async ValueTask InitializeAsync() => _database = await TestDatabase.CreateAsync(_ => Task.CompletedTask, "empty");

    /// <summary>The head coach's own browser, signed in.</summary>
    public async Task<IPage> HeadCoachAsync(Chromium chromium, int width = 1366, int height = 768)
    {
        var person = await chromium.NewPersonAsync(width, height);
        if (_signedIn is null)
        {
            await StartAsync(person);
        }
        else
        {
            await person.AddCookiesAsync(_signedIn);
        }

        return await person.NewPageAsync();
    }

    public async ValueTask DisposeAsync()
    {
        if (_app is not null)
        {
            await _app.DisposeAsync();
        }

        await _database!.DisposeAsync();
    }

    private async Task StartAsync(IBrowserContext person)
    {
        _app = await RunningApp.StartAsync("--empty", _database);
        var page = await person.NewPageAsync();
        await page.GotoAsync(Address);
        await page.GetByLabel("Name of the club").FillAsync("Quarry Bank Hockey");
        await page.GetByLabel("Time zone").FillAsync("Europe/Dublin");
        await page.GetByLabel("Your name").FillAsync("Robin");
        await page.GetByLabel("E-mail").FillAsync("robin@example.org");
        foreach (var password in await page.Locator("input[type=password]").AllAsync())
        {
            await password.FillAsync("a long enough sentence 42");
        }

        await page.GetByLabel("second factor").UncheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Create the club" }).ClickAsync();
        await page.LiveAsync();
        await FullClub.FillAsync(_database!.ConnectionString, new WallClock());
        _signedIn = [.. (await person.CookiesAsync()).Select(c => new Cookie { Name = c.Name, Value = c.Value, Domain = c.Domain, Path = c.Path, HttpOnly = c.HttpOnly })];
        await page.CloseAsync();
    }

    private sealed class WallClock : NodaTime.IClock
    {
        public Instant GetCurrentInstant() => Instant.FromDateTimeOffset(TimeProvider.System.GetUtcNow());
    }
}
