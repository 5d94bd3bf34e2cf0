using ClubCycle.Data;
using ClubCycle.Data.Plans;
using ClubCycle.Planning;
using ClubCycle.Planning.Phases;
using ClubCycle.Web.Features.Plans;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace ClubCycle.Web.Tests.Features;

/// <summary>Two coaches who move boundaries of the same gap, each before the other has saved.</summary>
public sealed class BoundaryRaceTests(TestApp app) : IClassFixture<TestApp>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Of_two_coaches_who_move_boundaries_at_once_one_is_told_of_the_other()
    {
        var club = await app.NewClubAsync();
        var seen = await BoundariesAsync(club);

        var answers = await AtOnceAsync(club, () => Move(club, club.Head, seen[0]), () => Move(club, club.Coach, seen[1]));

        Assert.Equal("phase.changed-meanwhile", Assert.Single(answers.OfType<Result<Guid>.Failed>()).First.Code);
        var (winner, loser) = answers[0] is Result<Guid>.Ok ? (seen[0], seen[1]) : (seen[1], seen[0]);
        var now = await BoundariesAsync(club);
        Assert.Equal(winner.Before.Weeks + 1, now[winner.Index].Before.Weeks);
        Assert.NotEqual(loser.Before.Last.PlusWeeks(1), now[loser.Index].Before.Last);
    }

    [Fact]
    public async Task Who_lets_the_planner_choose_again_does_not_throw_away_what_another_coach_just_set()
    {
        var club = await app.NewClubAsync();
        var seen = await BoundariesAsync(club);
        (await Move(club, club.Head, seen[0])).OrThrow();
        var lengths = await LengthsAsync(club);
        (await Move(club, club.Head, (await BoundariesAsync(club))[1])).OrThrow();

        var cleared = await app.AsAsync(club.Coach, s => s.GetRequiredService<PlanActions>().ClearLengthsAsync(club.OwnSquad, seen[0].Gap, lengths, Cancel));

        Assert.Equal("phase.changed-meanwhile", Assert.IsType<Result<Guid>.Failed>(cleared).First.Code);
        Assert.NotEmpty(await LengthsAsync(club));
    }

    private Task<Result<Guid>> Move(TestClub club, Guid coach, PhaseBoundary boundary) =>
        app.AsAsync(coach, s => s.GetRequiredService<PlanActions>().MoveBoundaryAsync(club.OwnSquad, boundary, boundary.Before.Weeks + 1, Cancel));

    private Task<IReadOnlyList<PhaseLength>> LengthsAsync(TestClub club) =>
        app.InClubAsync(club.Id, s => s.GetRequiredService<PhaseLengthStore>().ListAsync(club.OwnSquad, Cancel));

    /// <summary>Of the cycle's first gap.</summary>
    private Task<List<PhaseBoundary>> BoundariesAsync(TestClub club) => app.InClubAsync(club.Id, async s =>
    {
        var draft = (await s.GetRequiredService<PlanStore>().DraftAsync(club.OwnSquad, Cancel)).OrThrow();
        return PhaseBoundary.Of(draft.Request, draft.Plan).Where(b => b.Gap == 0).ToList();
    });

    /// <summary>Both have read what they rest on, and neither has saved, when the squad is let go.</summary>
    private Task<Result<Guid>[]> AtOnceAsync(TestClub club, Func<Task<Result<Guid>>> first, Func<Task<Result<Guid>>> second) => app.InClubAsync(club.Id, async s =>
    {
        await using var db = await s.GetRequiredService<IClubDbFactory>().OpenAsync(Cancel);
        await using var held = await db.Database.BeginTransactionAsync(Cancel);
        await db.Database.ExecuteSqlAsync($"select 1 from club.squads where id = {club.OwnSquad} for no key update", Cancel);
        Task<Result<Guid>>[] both = [first(), second()];
        while (await db.Database.SqlQuery<long>($"select count(*) as \"Value\" from pg_stat_activity where datname = current_database() and wait_event_type = 'Lock'").SingleAsync(Cancel) < both.Length)
        {
            Assert.DoesNotContain(both, act => act.IsCompleted);
            await Task.Delay(20, Cancel);

            // A transaction sees others as they were when it first asked.
            await db.Database.ExecuteSqlAsync($"select pg_stat_clear_snapshot()", Cancel);
        }

        await held.RollbackAsync(Cancel);
        return await Task.WhenAll(both);
    });
}
