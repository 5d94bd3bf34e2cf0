using System.Net;

namespace ClubCycle.Web.Tests.Account;

public sealed class SetupTests : IAsyncLifetime
{
    private readonly TestApp _app = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public ValueTask InitializeAsync() => _app.InitializeAsync();

    public ValueTask DisposeAsync() => _app.DisposeAsync();

    [Fact]
    public async Task The_first_person_makes_the_club_and_is_signed_in_and_then_the_page_is_gone()
    {
        var browser = _app.Browser();
        Assert.Equal("/setup", (await browser.GetAsync("/", Cancel)).Headers.Location!.ToString());

        var wrong = await SetUpAsync(browser, timeZone: "Europe/Nowhere", email: "robin@example.org");
        var right = await SetUpAsync(browser, timeZone: "Europe/Lisbon", email: "robin@example.org");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong.StatusCode);
        Assert.Contains("time zone", await wrong.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        Assert.Equal((HttpStatusCode.Redirect, "/"), (right.StatusCode, right.Headers.Location!.ToString()));
        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync("/account/password", Cancel)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await browser.GetAsync("/setup", Cancel)).StatusCode);
    }

    private static Task<HttpResponseMessage> SetUpAsync(HttpClient browser, string timeZone, string email) => TestApp.SendFormAsync(
        browser, "/setup", "/setup",
        ("club", "Sandhaven"), ("timeZone", timeZone), ("firstWeekday", "Monday"), ("name", "Robin"), ("email", email), ("password", TestApp.Password));
}
