using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using ClubCycle.Data;
using ClubCycle.Web.Account;
using Microsoft.AspNetCore.RateLimiting;
using Microsoft.AspNetCore.Routing;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace ClubCycle.Web.Tests.Account;

public sealed partial class SecondFactorTests(TestApp app) : IClassFixture<TestApp>
{
    private const string Page = "/account/second-factor";
    private const string CodePage = "/account/sign-in/code";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    /// <summary>The numbers of RFC 6238, appendix B (from memory), cut to six digits.</summary>
    [Theory]
    [InlineData(59, "287082")]
    [InlineData(1111111109, "081804")]
    [InlineData(20000000000, "353130")]
    public void The_app_of_these_tests_shows_the_codes_of_the_standard(long seconds, string code) =>
        Assert.Equal(code, Authenticator.Code(Encoding.ASCII.GetBytes("12345678901234567890"), seconds / 30));

    [Fact]
    public async Task With_it_on_the_password_alone_opens_nothing()
    {
        var (club, _, _) = await WithItOnAsync();

        var (browser, answer) = await PasswordAsync(club.Head);

        Assert.Equal("/account/sign-in/code?returnUrl=%2Fsquads", answer.Headers.Location!.ToString());
        Assert.Equal(HttpStatusCode.Redirect, (await browser.GetAsync("/account/password", Cancel)).StatusCode);
    }

    [Fact]
    public async Task A_code_signs_in_and_leads_where_the_person_wanted_to_go()
    {
        var (club, key, _) = await WithItOnAsync();
        var (browser, _) = await PasswordAsync(club.Head);

        var answer = await CodeAsync(browser, NextCode(key));

        Assert.Equal((HttpStatusCode.Redirect, "/squads"), (answer.StatusCode, answer.Headers.Location!.ToString()));
        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync("/account/password", Cancel)).StatusCode);
    }

    [Fact]
    public async Task A_code_counts_in_a_known_browser_although_strangers_locked_the_account_meanwhile()
    {
        var (club, key, _) = await WithItOnAsync();
        var (browser, _) = await PasswordAsync(club.Head);
        await CodeAsync(browser, NextCode(key));
        await TestApp.SendFormAsync(browser, "/account/password", "/account/sign-out");
        await SignInAsync(browser, club.Head, TestApp.Password);
        for (var i = 0; i < 5; i++)
        {
            await SignInAsync(app.Browser(), club.Head, "not the password");
        }

        Assert.Equal(HttpStatusCode.Redirect, (await CodeAsync(browser, NextCode(key))).StatusCode);
    }

    [Fact]
    public async Task A_code_counts_once()
    {
        var (club, key, _) = await WithItOnAsync();
        var code = NextCode(key);
        var (first, _) = await PasswordAsync(club.Head);
        var (second, _) = await PasswordAsync(club.Head);
        Assert.Equal(HttpStatusCode.Redirect, (await CodeAsync(first, code)).StatusCode);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await CodeAsync(second, code)).StatusCode);
    }

    /// <summary>Seconds after the app first showed the code, which it does for thirty.</summary>
    [Theory]
    [InlineData(-1, false)]
    [InlineData(0, true)]
    [InlineData(29, true)]
    [InlineData(39, true)]
    [InlineData(40, false)]
    public void A_code_counts_while_the_app_shows_it_and_ten_seconds_more(int seconds, bool counts)
    {
        var shown = Instant.FromUnixTimeSeconds(1_800_000_000);
        var key = "GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ";

        Assert.Equal(counts, AppCode.Counts(key, Authenticator.Code(key, shown), shown + Duration.FromSeconds(seconds)));
    }

    [Fact]
    public async Task A_code_that_the_app_no_longer_shows_does_not_sign_in()
    {
        var (club, key, _) = await WithItOnAsync();
        var (browser, _) = await PasswordAsync(club.Head);
        var code = NextCode(key);
        app.Clock.Now += Duration.FromSeconds(41);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await CodeAsync(browser, code)).StatusCode);
    }

    [Fact]
    public async Task A_sign_in_link_asks_for_the_code_too()
    {
        var (club, _, _) = await WithItOnAsync();
        var link = $"/account/sign-in-link/{await club.SignInTokenAsync(club.Head)}";
        var browser = app.Browser();

        var answer = await TestApp.SendFormAsync(browser, link, link);

        Assert.Equal(CodePage, answer.Headers.Location!.ToString());
        Assert.Equal(HttpStatusCode.Redirect, (await browser.GetAsync("/account/password", Cancel)).StatusCode);
    }

    [Fact]
    public async Task A_recovery_code_signs_in_once_however_it_is_written()
    {
        var (club, _, codes) = await WithItOnAsync();
        var (first, _) = await PasswordAsync(club.Head);
        var (second, _) = await PasswordAsync(club.Head);
        Assert.Equal(HttpStatusCode.Redirect, (await CodeAsync(first, codes[3].ToUpperInvariant().Replace('-', ' '))).StatusCode);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await CodeAsync(second, codes[3])).StatusCode);
    }

    [Fact]
    public async Task Recovery_codes_are_long_all_different_and_stored_as_hashes()
    {
        var (club, _, codes) = await WithItOnAsync();
        await using var db = await app.Services.GetRequiredService<IDbContextFactory<ClubCycleDb>>().CreateDbContextAsync(Cancel);
        var stored = await db.UserTokens.Where(t => t.UserId == club.Head && t.Name == "RecoveryCodes").Select(t => t.Value!).SingleAsync(Cancel);

        Assert.Equal((10, 10), (codes.Count, codes.Distinct().Count()));
        Assert.All(codes, code => Assert.Matches("^([a-z0-9]{6}-){3}[a-z0-9]{6}$", code));
        Assert.All(stored.Split(';'), hash => Assert.Matches("^[0-9A-F]{64}$", hash));
    }

    [Theory]
    [InlineData(true, false)]
    [InlineData(false, true)]
    public async Task It_is_turned_on_with_the_password_and_a_code_of_the_app(bool rightPassword, bool rightCode)
    {
        var club = await app.NewClubAsync();
        var browser = await club.SignedInAsync(club.Head);
        var key = Key().Match(await browser.GetStringAsync(Page, Cancel)).Groups[1].Value;

        var refused = await SendAsync(browser, "on", rightCode ? Authenticator.Code(key, app.Clock.Now) : "000000", key, rightPassword ? TestApp.Password : "not the password");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Equal("/squads", (await PasswordAsync(club.Head)).Answer.Headers.Location!.ToString());
    }

    [Fact]
    public async Task It_is_turned_off_with_the_password_and_a_code()
    {
        var (club, key, _) = await WithItOnAsync();
        var (browser, _) = await PasswordAsync(club.Head);
        await CodeAsync(browser, NextCode(key));

        await SendAsync(browser, "off", NextCode(key), null, TestApp.Password);

        Assert.Equal("/squads", (await PasswordAsync(club.Head)).Answer.Headers.Location!.ToString());
    }

    [Fact]
    public async Task Five_wrong_codes_lock_the_account_for_the_right_one()
    {
        var (club, key, _) = await WithItOnAsync();
        var (browser, _) = await PasswordAsync(club.Head);
        for (var i = 0; i < 5; i++)
        {
            await CodeAsync(browser, "000000");
        }

        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await CodeAsync(browser, NextCode(key))).StatusCode);
    }

    [Fact]
    public void Trying_codes_is_braked_for_an_address() => Assert.All(
        new[] { CodePage, Page },
        page => Assert.Contains(
            app.Services.GetServices<EndpointDataSource>().SelectMany(source => source.Endpoints).OfType<RouteEndpoint>().Where(endpoint => endpoint.RoutePattern.RawText == page),
            endpoint => endpoint.Metadata.GetMetadata<HttpMethodMetadata>()!.HttpMethods.Contains("POST") && endpoint.Metadata.GetMetadata<EnableRateLimitingAttribute>()?.PolicyName == "sign-in"));

    /// <summary>A club whose head coach has it on, the app's key, and the recovery codes. The code of now is used up.</summary>
    private async Task<(TestClub Club, string Key, IReadOnlyList<string> Codes)> WithItOnAsync()
    {
        var club = await app.NewClubAsync();
        var browser = await club.SignedInAsync(club.Head);
        var key = Key().Match(await browser.GetStringAsync(Page, Cancel)).Groups[1].Value;
        var page = await (await SendAsync(browser, "on", Authenticator.Code(key, app.Clock.Now), key, TestApp.Password)).Content.ReadAsStringAsync(Cancel);
        return (club, key, [.. RecoveryCode().Matches(page).Select(m => m.Groups[1].Value)]);
    }

    /// <summary>Of a while later, when the one before can no longer be mistaken for it.</summary>
    private string NextCode(string key)
    {
        app.Clock.Now += Duration.FromMinutes(1);
        return Authenticator.Code(key, app.Clock.Now);
    }

    private static Task<HttpResponseMessage> SendAsync(HttpClient browser, string what, string code, string? key, string password) =>
        TestApp.SendFormAsync(browser, Page, Page, [("what", what), ("code", code), ("current", password), .. key is null ? Array.Empty<(string, string)>() : [("key", key)]]);

    private async Task<(HttpClient Browser, HttpResponseMessage Answer)> PasswordAsync(Guid person)
    {
        var browser = app.Browser();
        return (browser, await SignInAsync(browser, person, TestApp.Password));
    }

    private static Task<HttpResponseMessage> SignInAsync(HttpClient browser, Guid person, string password) =>
        TestApp.SendFormAsync(browser, "/account/sign-in", "/account/sign-in", ("email", $"{person:N}@example.org"), ("password", password), ("returnUrl", "/squads"));

    private static Task<HttpResponseMessage> CodeAsync(HttpClient browser, string code) => TestApp.SendFormAsync(browser, CodePage, CodePage, ("code", code), ("returnUrl", "/squads"));

    [GeneratedRegex("name=\"key\" value=\"([A-Z2-7]{32})\"")]
    private static partial Regex Key();

    [GeneratedRegex("<code>([a-z0-9-]+)</code>")]
    private static partial Regex RecoveryCode();
}
