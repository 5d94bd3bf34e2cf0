using System.Net;
using System.Text.RegularExpressions;
using ClubCycle.Data.Accounts;
using ClubCycle.Data.Clubs;
using ClubCycle.Planning;
using ClubCycle.Web.Account;
using ClubCycle.Web.Features.Settings;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.Extensions.DependencyInjection;

namespace ClubCycle.Web.Tests.Account;

/// <summary>ASVS 6.3.3.</summary>
public sealed partial class SecondFactorDutyTests(TestApp app) : IClassFixture<TestApp>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(ClubRole.HeadCoach, false)]
    [InlineData(ClubRole.WelfareOfficer, false)]
    [InlineData(ClubRole.SquadCoach, true)]
    [InlineData(ClubRole.Assistant, true)]
    public async Task Without_one_head_coaches_and_welfare_officers_open_nothing_where_it_is_asked(ClubRole role, bool opens)
    {
        var club = await AskingClubAsync();
        var browser = await club.SignedInAsync(await club.NewCoachAsync(role, club.OwnSquad));

        var page = await OpenAsync(browser, "/squads");

        Assert.Equal(opens, page.StatusCode == HttpStatusCode.OK);
        Assert.Equal(opens ? null : "/account/second-factor", page.Headers.Location?.ToString());
    }

    [Fact]
    public async Task Neither_a_live_connection_nor_a_file_opens_without_one()
    {
        var club = await AskingClubAsync();
        var browser = await club.SignedInAsync(club.Head);

        Assert.Equal(HttpStatusCode.Forbidden, (await TestApp.SendFormAsync(browser, "/account/second-factor", "/_blazor/negotiate?negotiateVersion=1")).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await browser.GetAsync("/openapi/v1.json", Cancel)).StatusCode);
    }

    [Fact]
    public async Task A_page_that_was_open_before_it_was_asked_does_nothing_more()
    {
        var club = await app.NewClubAsync();

        var (before, after) = await app.AsAsync(club.Head, async page =>
        {
            var before = await page.GetRequiredService<ClubActions>().AskSecondFactorAsync(true, Cancel);
            return (before, await page.GetRequiredService<ClubActions>().AskSecondFactorAsync(false, Cancel));
        });

        Assert.IsType<Result<bool>.Ok>(before);
        Assert.Equal("account.second-factor-owed", Assert.IsType<Result<bool>.Failed>(after).First.Code);
    }

    [Fact]
    public async Task An_authenticator_app_opens_everything()
    {
        var club = await AskingClubAsync();
        var browser = await club.SignedInAsync(club.Head);
        var key = Key().Match(await browser.GetStringAsync("/account/second-factor", Cancel)).Groups[1].Value;

        await TestApp.SendFormAsync(browser, "/account/second-factor", "/account/second-factor", ("what", "on"), ("code", Authenticator.Code(key, app.Clock.Now)), ("current", TestApp.Password), ("key", key));

        Assert.Equal(HttpStatusCode.OK, (await OpenAsync(browser, "/squads")).StatusCode);
    }

    [Fact]
    public async Task A_passkey_counts_for_the_sign_in_in_which_it_was_shown()
    {
        var club = await AskingClubAsync();

        var (before, after) = await app.AsAsync(club.Head, async page =>
        {
            var person = (await page.GetRequiredService<AuthenticationStateProvider>().GetAuthenticationStateAsync()).User;
            var before = await page.GetRequiredService<CurrentCoach>().HeadAsync(Cancel);
            await page.GetRequiredService<SignIns>().ShowedPasskeyAsync(person, true, Cancel);
            return (before, await page.GetRequiredService<CurrentCoach>().HeadAsync(Cancel));
        });

        Assert.IsType<Result<Coach>.Failed>(before);
        Assert.IsType<Result<Coach>.Ok>(after);
        Assert.IsType<Result<Coach>.Failed>(await app.AsAsync(club.Head, page => page.GetRequiredService<CurrentCoach>().HeadAsync(Cancel)));
    }

    [Fact]
    public void A_new_club_asks_for_it_unless_told_otherwise() => Assert.True(SetupForm.Empty.AsksSecondFactor);

    private async Task<TestClub> AskingClubAsync()
    {
        var club = await app.NewClubAsync();
        await app.InClubAsync(club.Id, async s => (await s.GetRequiredService<ClubStore>().AskSecondFactorAsync(true, club.Head, Cancel)).OrThrow());
        return club;
    }

    private static async Task<HttpResponseMessage> OpenAsync(HttpClient browser, string page)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, page) { Headers = { { "Accept", "text/html" } } };
        return await browser.SendAsync(request, Cancel);
    }

    [GeneratedRegex("name=\"key\" value=\"([A-Z2-7]{32})\"")]
    private static partial Regex Key();
}
