using System.Net;
using ClubCycle.Data.Accounts;
using ClubCycle.Data.Squads;
using ClubCycle.Planning;
using ClubCycle.Web.Account;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.StaticAssets;
using Microsoft.Extensions.DependencyInjection;

namespace ClubCycle.Web.Tests.Account;

public sealed class RightsTests(TestApp app) : IClassFixture<TestApp>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public void Only_these_addresses_are_open_to_everyone() => Assert.Equal(
        [
            "/account/denied", "/account/language", "/account/sign-in", "/account/sign-in-link/{token}", "/account/sign-in/code", "/account/sign-in/passkey", "/account/sign-in/passkey/challenge", "/error", "/g/{token}", "/health/live", "/health/ready", "/not-found", "/p/app.webmanifest", "/p/{**token}", "/p/{token}/health", "/setup",
        ],
        app.Services.GetServices<EndpointDataSource>().SelectMany(source => source.Endpoints).OfType<RouteEndpoint>()
            .Where(endpoint => endpoint.Metadata.GetMetadata<IAllowAnonymous>() is not null && endpoint.Metadata.GetMetadata<StaticAssetDescriptor>() is null)
            .Select(endpoint => "/" + endpoint.RoutePattern.RawText!.TrimStart('/'))
            .Distinct().Order(StringComparer.Ordinal));

    [Theory]
    [InlineData("/")]
    [InlineData("/squads")]
    [InlineData("/settings")]
    [InlineData("/account/password")]
    public async Task A_stranger_who_opens_a_page_is_asked_to_sign_in(string page)
    {
        await app.NewClubAsync();

        var answer = await app.Browser().GetAsync(page, Cancel);

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Contains("/account/sign-in", answer.Headers.Location!.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_squad_coach_may_touch_the_own_squad_only()
    {
        var club = await app.NewClubAsync();

        Assert.IsType<Result<Coach>.Ok>(await AsAsync(club.Coach, c => c.ForSquadAsync(club.OwnSquad, Cancel)));
        Assert.Equal("squad.not-found", ProblemOf(await AsAsync(club.Coach, c => c.ForSquadAsync(club.OtherSquad, Cancel))));
        Assert.Equal("account.head-coach-only", ProblemOf(await AsAsync(club.Coach, c => c.HeadAsync(Cancel))));
    }

    [Fact]
    public async Task A_head_coach_may_touch_every_squad()
    {
        var club = await app.NewClubAsync();

        Assert.IsType<Result<Coach>.Ok>(await AsAsync(club.Head, c => c.ForSquadAsync(club.OtherSquad, Cancel)));
        Assert.IsType<Result<Coach>.Ok>(await AsAsync(club.Head, c => c.HeadAsync(Cancel)));
    }

    [Fact]
    public async Task A_coach_who_is_taken_off_a_squad_is_refused_while_the_page_is_still_open()
    {
        var club = await app.NewClubAsync();

        var refused = await AsAsync(club.Coach, async current =>
        {
            Assert.IsType<Result<Coach>.Ok>(await current.ForSquadAsync(club.OwnSquad, Cancel));
            await app.InClubAsync(club.Id, async s => (await s.GetRequiredService<SquadStore>().SetCoachesAsync(club.OwnSquad, [], club.Head, Cancel)).OrThrow());
            return await current.ForSquadAsync(club.OwnSquad, Cancel);
        });

        Assert.Equal("squad.not-found", ProblemOf(refused));
    }

    [Fact]
    public async Task Only_a_head_coach_invites_and_the_invited_coach_gets_the_named_squads()
    {
        var club = await app.NewClubAsync();

        Assert.Equal("account.head-coach-only", ProblemOf(await app.AsAsync(club.Coach, s => s.GetRequiredService<CoachInvitations>().InviteAsync("Kim", "kim@example.org", ClubRole.HeadCoach, [], Cancel))));
        var token = (await app.AsAsync(club.Head, s => s.GetRequiredService<CoachInvitations>().InviteAsync("Kim", "kim@example.org", ClubRole.SquadCoach, [club.OtherSquad], Cancel))).OrThrow();

        var kim = await app.InClubAsync(club.Id, s => s.GetRequiredService<SignInLinks>().LookAsync(token, Cancel));
        Assert.IsType<Result<Coach>.Ok>(await AsAsync(kim!.Id, c => c.ForSquadAsync(club.OtherSquad, Cancel)));
        Assert.Equal("squad.not-found", ProblemOf(await AsAsync(kim.Id, c => c.ForSquadAsync(club.OwnSquad, Cancel))));
    }

    private Task<T> AsAsync<T>(Guid person, Func<CurrentCoach, Task<T>> ask) => app.AsAsync(person, services => ask(services.GetRequiredService<CurrentCoach>()));

    private static string ProblemOf<T>(Result<T> result) => Assert.IsType<Result<T>.Failed>(result).First.Code;
}
