using System.Net;
using ClubCycle.Data.Accounts;
using ClubCycle.Data.Players;
using ClubCycle.Web.Features.Welfare;
using Microsoft.Extensions.DependencyInjection;

namespace ClubCycle.Web.Tests.Features.Welfare;

public sealed class WelfarePageTests(TestApp app) : IClassFixture<TestApp>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_welfare_officer_sees_players_those_protected_too_and_who_looked_at_one()
    {
        var club = await app.NewClubAsync();
        await app.InClubAsync(club.Id, async services =>
        {
            var welfare = services.GetRequiredService<WelfareStore>();
            await welfare.NoteReadAsync(club.OwnSquad, club.Player, club.Coach, Cancel);
            return await welfare.ProtectAsync(club.Player, true, club.Head, Cancel);
        });
        var officer = await club.SignedInAsync(await club.NewCoachAsync(ClubRole.WelfareOfficer));

        var page = await officer.GetStringAsync("/welfare", Cancel);

        Assert.Contains("End the protection of Ines Kestrel", page, StringComparison.Ordinal);
        Assert.Contains("Coach SquadCoach looked at the tests of Ines Kestrel (Blue).", page, StringComparison.Ordinal);
        Assert.Contains("href=\"welfare\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_head_coach_is_sent_away_and_not_shown_the_way()
    {
        var club = await app.NewClubAsync();
        var head = await club.SignedInAsync(club.Head);

        var answer = await head.GetAsync("/welfare", Cancel);

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Contains("/account/denied", answer.Headers.Location!.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("href=\"welfare\"", await head.GetStringAsync("/settings", Cancel), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_assistant_is_told_that_changes_are_refused()
    {
        var club = await app.NewClubAsync();
        var assistant = await club.SignedInAsync(await club.NewCoachAsync(ClubRole.Assistant, club.OwnSquad));

        Assert.Contains("You may look at plans; changes to them are refused.", await assistant.GetStringAsync($"/squads/{club.OwnSquad}/year", Cancel), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_daily_sweep_goes_through_every_club()
    {
        var clubs = new[] { await app.NewClubAsync(), await app.NewClubAsync() };
        var now = app.Clock.Now;
        app.Clock.Now = now + NodaTime.Duration.FromDays(500);
        try
        {
            await RetentionWorker.SweepAsync(app.Services.GetRequiredService<IServiceScopeFactory>(), Cancel);
        }
        finally
        {
            app.Clock.Now = now;
        }

        foreach (var club in clubs)
        {
            Assert.Empty(await app.InClubAsync(club.Id, s => s.GetRequiredService<PlayerStore>().ListAsync(club.OwnSquad, Cancel)));
        }
    }
}
