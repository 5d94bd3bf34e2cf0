using System.Net;
using ClubCycle.Data;
using ClubCycle.Planning;
using ClubCycle.Web.Account;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace ClubCycle.Web.Tests.Account;

public sealed class SignInsTests(TestApp app) : IClassFixture<TestApp>
{
    private const string Page = "/account/sign-ins";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_cookie_that_was_copied_opens_nothing_after_signing_out()
    {
        var club = await app.NewClubAsync();
        var (browser, cookie) = await SignInAsync(club.Head);
        Assert.Equal(HttpStatusCode.OK, await StatusWithAsync(cookie));

        await TestApp.SendFormAsync(browser, Page, "/account/sign-out");

        Assert.Equal(HttpStatusCode.Redirect, await StatusWithAsync(cookie));
    }

    [Fact]
    public async Task A_page_that_is_still_open_does_nothing_more_after_signing_out()
    {
        var club = await app.NewClubAsync();

        var (before, after) = await app.AsAsync(club.Head, async page =>
        {
            var before = await page.GetRequiredService<CurrentCoach>().FindAsync(Cancel);
            var person = (await page.GetRequiredService<AuthenticationStateProvider>().GetAuthenticationStateAsync()).User;
            await page.GetRequiredService<SignIns>().EndAsync(person, Cancel);
            return (before, await page.GetRequiredService<CurrentCoach>().FindAsync(Cancel));
        });

        Assert.IsType<Result<Coach>.Ok>(before);
        Assert.Equal("account.signed-out", Assert.IsType<Result<Coach>.Failed>(after).Problems[0].Code);
    }

    [Theory]
    [InlineData(29, 11 * 60, HttpStatusCode.OK)]
    [InlineData(31, 60, HttpStatusCode.Redirect)]
    [InlineData(0, (12 * 60) + 1, HttpStatusCode.Redirect)]
    public async Task A_sign_in_ends_half_an_hour_after_its_last_use_and_twelve_hours_after_its_start(int minutesIdle, int minutesOld, HttpStatusCode status)
    {
        var club = await app.NewClubAsync();
        var (_, cookie) = await SignInAsync(club.Head);
        var now = Instant.FromDateTimeOffset(TimeProvider.System.GetUtcNow());
        await using (var db = await ContextAsync())
        {
            await db.SignIns.Where(s => s.UserId == club.Head).ExecuteUpdateAsync(
                row => row.SetProperty(s => s.SeenAt, now - Duration.FromMinutes(minutesIdle)).SetProperty(s => s.StartedAt, now - Duration.FromMinutes(minutesOld)), Cancel);
        }

        Assert.Equal(status, await StatusWithAsync(cookie));
    }

    [Fact]
    public async Task The_eleventh_sign_in_ends_the_one_that_was_used_longest_ago()
    {
        var club = await app.NewClubAsync();
        List<string> cookies = [];
        for (var i = 0; i < SignInTimes.AtOnce + 1; i++)
        {
            cookies.Add((await SignInAsync(club.Head)).Cookie);
        }

        Assert.Equal(HttpStatusCode.Redirect, await StatusWithAsync(cookies[0]));
        Assert.Equal(HttpStatusCode.OK, await StatusWithAsync(cookies[1]));
    }

    [Fact]
    public async Task A_person_sees_and_ends_own_sign_ins_elsewhere()
    {
        var club = await app.NewClubAsync();
        var (_, elsewhere) = await SignInAsync(club.Head);
        var row = await OnlyOneOfAsync(club.Head);
        var (own, _) = await SignInAsync(club.Head);
        Assert.Contains(row.ToString(), await own.GetStringAsync(Page, Cancel), StringComparison.Ordinal);

        await TestApp.SendFormAsync(own, Page, Page, ("signIn", row.ToString()));

        Assert.Equal(HttpStatusCode.Redirect, await StatusWithAsync(elsewhere));
        Assert.Equal(HttpStatusCode.OK, (await own.GetAsync(Page, Cancel)).StatusCode);
    }

    [Fact]
    public async Task Nobody_ends_the_sign_in_of_another_person()
    {
        var club = await app.NewClubAsync();
        var (_, cookie) = await SignInAsync(club.Head);
        var (other, _) = await SignInAsync(club.Coach);

        await TestApp.SendFormAsync(other, Page, Page, ("signIn", (await OnlyOneOfAsync(club.Head)).ToString()));

        Assert.Equal(HttpStatusCode.OK, await StatusWithAsync(cookie));
    }

    [Fact]
    public async Task Signing_in_again_ends_the_sign_in_before()
    {
        var club = await app.NewClubAsync();
        var (browser, cookie) = await SignInAsync(club.Head);

        var link = $"/account/sign-in-link/{await club.SignInTokenAsync(club.Head)}";
        await TestApp.SendFormAsync(browser, link, link);

        Assert.Equal(HttpStatusCode.Redirect, await StatusWithAsync(cookie));
    }

    [Fact]
    public async Task A_new_password_ends_all_other_sign_ins_at_once()
    {
        var club = await app.NewClubAsync();
        var (_, elsewhere) = await SignInAsync(club.Head);
        var (own, _) = await SignInAsync(club.Head);

        await TestApp.SendFormAsync(own, "/account/password", "/account/password", ("current", TestApp.Password), ("password", "seven quiet lanterns"));

        Assert.Equal(HttpStatusCode.Redirect, await StatusWithAsync(elsewhere));
        Assert.Equal(HttpStatusCode.OK, (await own.GetAsync(Page, Cancel)).StatusCode);
    }

    [Fact]
    public async Task Choosing_a_language_leaves_the_sign_in_as_it_is()
    {
        var club = await app.NewClubAsync();
        var (browser, _) = await SignInAsync(club.Head);
        var before = await OnlyOneOfAsync(club.Head);

        await TestApp.SendFormAsync(browser, "/account/password", "/account/language", ("language", "nl"));

        Assert.Equal(before, await OnlyOneOfAsync(club.Head));
        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync(Page, Cancel)).StatusCode);
    }

    [Fact]
    public async Task Over_https_the_cookie_is_bound_to_this_host()
    {
        var club = await app.NewClubAsync();
        var browser = app.Browser();
        browser.BaseAddress = new Uri("https://localhost/");
        var link = $"/account/sign-in-link/{await club.SignInTokenAsync(club.Head)}";

        var answer = await TestApp.SendFormAsync(browser, link, link);

        var cookie = answer.Headers.GetValues("Set-Cookie").Single(c => c.StartsWith("__Host-ClubCycle.SignIn=", StringComparison.Ordinal));
        Assert.Contains("; secure", cookie, StringComparison.Ordinal);
        Assert.Contains("; path=/;", cookie, StringComparison.Ordinal);
        Assert.DoesNotContain("domain=", cookie, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Mozilla/5.0 (Windows NT 10.0; Win64; x64; rv:140.0) Gecko/20100101 Firefox/140.0", "Firefox on Windows")]
    [InlineData("Mozilla/5.0 (iPhone; CPU iPhone OS 18_0 like Mac OS X) AppleWebKit/605.1.15 Version/18.0 Mobile/15E148 Safari/604.1", "Safari on iPhone")]
    [InlineData("", "A browser")]
    public void A_browser_is_named_as_its_owner_would(string userAgent, string name) => Assert.Equal(name, BrowserName.Of(userAgent));

    private async Task<(HttpClient Browser, string Cookie)> SignInAsync(Guid person)
    {
        var browser = app.Browser();
        var answer = await TestApp.SendFormAsync(browser, "/account/sign-in", "/account/sign-in", ("email", $"{person:N}@example.org"), ("password", TestApp.Password));
        return (browser, answer.Headers.GetValues("Set-Cookie").Single(c => c.StartsWith("ClubCycle.SignIn=", StringComparison.Ordinal)).Split(';')[0]);
    }

    private async Task<HttpStatusCode> StatusWithAsync(string cookie)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, Page) { Headers = { { "Cookie", cookie } } };
        return (await app.Browser().SendAsync(request, Cancel)).StatusCode;
    }

    private async Task<Guid> OnlyOneOfAsync(Guid person)
    {
        await using var db = await ContextAsync();
        return await db.SignIns.Where(s => s.UserId == person).Select(s => s.Id).SingleAsync(Cancel);
    }

    private Task<ClubCycleDb> ContextAsync() => app.Services.GetRequiredService<IDbContextFactory<ClubCycleDb>>().CreateDbContextAsync(Cancel);
}
