using ClubCycle.Data.Fixtures;
using ClubCycle.Data.Plans;
using ClubCycle.Data.Seasons;
using ClubCycle.Planning;
using ClubCycle.Planning.Seasons;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Tests.Plans;

public sealed class PublishManyTests(ClubData data) : IClassFixture<ClubData>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Each_squad_gets_its_revision_its_stamps_its_outbox_row_and_its_note()
    {
        var (club, squads) = await ThreeSquadsAsync();

        var outcomes = await club.Store<PlanStore>().PublishManyAsync(Asked(squads), ClubData.By, " New dates ", null, Cancel);

        Assert.Equal(squads, outcomes.Select(o => o.SquadId));
        Assert.All(outcomes, o => Assert.Equal(new Revision(1, ClubData.Start, ClubData.By, "New dates"), o.Result.OrThrow()));
        await using var db = await club.OpenAsync();
        Assert.Equal(squads.Order(), (await db.Outbox.Select(o => o.SquadId).ToListAsync(Cancel)).Order());
        Assert.Equal(squads.Order(), (await db.Audit.Where(a => a.What == "plan.published").Select(a => a.SquadId!.Value).ToListAsync(Cancel)).Order());
        foreach (var squad in squads)
        {
            var published = (await club.Store<PlanStore>().PublishedAsync(squad, Cancel)).OrThrow();
            Assert.Equal(published.Plan.Sessions.Select(s => s.Uid).Order(), published.Stamps.Keys.Order());
        }
    }

    [Fact]
    public async Task Squads_that_cannot_be_published_are_left_out_with_the_reason_and_the_others_go_through()
    {
        var (club, squads) = await ThreeSquadsAsync();
        (await club.Store<FixtureStore>().AddAsync(squads[0], new LocalDate(2026, 5, 9), null, "Marrowby", null, ClubData.By, Cancel)).OrThrow();
        await club.PublishAsync(squads[1]);
        var nobody = NewId.Create();

        var outcomes = await club.Store<PlanStore>().PublishManyAsync(Asked([.. squads, nobody]), ClubData.By, "", null, Cancel);

        Problems.AssertProblem("plan.must-findings", outcomes[0].Result);
        Problems.AssertProblem("plan.changed-meanwhile", outcomes[1].Result);
        Assert.Equal(1, outcomes[2].Result.OrThrow().Number);
        Problems.AssertProblem("squad.not-found", outcomes[3].Result);
        Assert.Empty(await club.Store<RevisionStore>().ListAsync(squads[0], Cancel));
        await using var db = await club.OpenAsync();
        Assert.False(await db.Sessions.AnyAsync(s => s.SquadId == squads[0], Cancel));
    }

    [Fact]
    public async Task The_same_commands_publish_once()
    {
        var (club, squads) = await ThreeSquadsAsync();
        var asked = Asked(squads);

        var first = await club.Store<PlanStore>().PublishManyAsync(asked, ClubData.By, "", null, Cancel);
        var second = await club.Store<PlanStore>().PublishManyAsync(asked, ClubData.By, "", null, Cancel);

        Assert.Equal(first.Select(o => o.Result.OrThrow()), second.Select(o => o.Result.OrThrow()));
        await using var db = await club.OpenAsync();
        Assert.Equal(squads.Count, await db.Revisions.CountAsync(Cancel));
    }

    [Fact]
    public async Task A_coach_who_cancels_has_published_nothing()
    {
        var (club, squads) = await ThreeSquadsAsync();
        using var cancel = CancellationTokenSource.CreateLinkedTokenSource(Cancel);

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() =>
            club.Store<PlanStore>().PublishManyAsync(Asked(squads), ClubData.By, "", new Told(_ => cancel.Cancel()), cancel.Token));

        await using var db = await club.OpenAsync();
        Assert.Equal((0, 0, 0), (await db.Revisions.CountAsync(Cancel), await db.Sessions.CountAsync(Cancel), await db.Outbox.CountAsync(Cancel)));
    }

    [Fact]
    public async Task Progress_counts_every_squad()
    {
        var (club, squads) = await ThreeSquadsAsync();
        List<SquadsDone> told = [];

        await club.Store<PlanStore>().PublishManyAsync(Asked(squads), ClubData.By, "", new Told(told.Add), Cancel);

        Assert.Equal([new(1, 3), new(2, 3), new(3, 3)], told.OrderBy(t => t.Done));
    }

    [Fact]
    public async Task Two_who_publish_the_same_squads_in_opposite_order_both_get_an_answer_and_each_squad_is_published_once()
    {
        var (club, squads) = await ThreeSquadsAsync();
        IReadOnlyList<Guid> backwards = [.. squads.Reverse()];

        var answers = await Task.WhenAll(Enumerable.Range(0, 8).Select(i =>
            data.TestClub(club.Id).Store<PlanStore>().PublishManyAsync(Asked(i % 2 == 0 ? squads : backwards), ClubData.By, "", null, Cancel)));

        Assert.All(squads, squad => Assert.Single(answers.SelectMany(a => a), o => o.SquadId == squad && o.Result is Result<Revision>.Ok));
        Assert.All(answers.SelectMany(a => a).Select(o => o.Result).OfType<Result<Revision>.Failed>(), f => Assert.Equal("plan.changed-meanwhile", f.First.Code));
    }

    [Fact]
    public async Task Only_sessions_that_changed_are_written()
    {
        var (club, squads) = await ThreeSquadsAsync();
        await club.Store<PlanStore>().PublishManyAsync(Asked(squads), ClubData.By, "", null, Cancel);
        var before = await VersionsAsync(club);
        (await club.Store<ClosedDayStore>().AddAsync(null, new ClosedDays(new(2026, 6, 8), new(2026, 6, 9), "Flooded"), ClubData.By, Cancel)).OrThrow();
        data.Clock.Now += Duration.FromHours(1);

        (await club.Store<PlanStore>().PublishManyAsync(Asked(squads, 1), ClubData.By, "", null, Cancel)).ToList().ForEach(o => o.Result.OrThrow());

        var after = await VersionsAsync(club);
        await using var db = await club.OpenAsync();
        var told = await db.Sessions.Where(s => s.ChangedAt == data.Clock.Now).Select(s => s.Uid).ToListAsync(Cancel);
        Assert.InRange(told.Count, 1, before.Count / 10);
        Assert.Equal(told.Order(), after.Where(v => before.GetValueOrDefault(v.Key) != v.Value).Select(v => v.Key).Order());
    }

    [Fact]
    public async Task A_note_that_is_too_long_publishes_nothing()
    {
        var (club, squads) = await ThreeSquadsAsync();

        var outcomes = await club.Store<PlanStore>().PublishManyAsync(Asked(squads), ClubData.By, new string('x', PlanStore.LongestNote + 1), null, Cancel);

        Assert.All(outcomes, o => Problems.AssertProblem("plan.note-too-long", o.Result));
        Assert.Empty(await club.Store<RevisionStore>().ListAsync(squads[0], Cancel));
    }

    private async Task<(TestClub Club, IReadOnlyList<Guid> Squads)> ThreeSquadsAsync()
    {
        var club = await data.NewClubAsync();
        await club.SeasonAsync();
        return (club, [await club.SquadAsync("Women 1"), await club.SquadAsync("Women 2"), await club.SquadAsync("Women 3")]);
    }

    private static IReadOnlyList<SquadToPublish> Asked(IReadOnlyList<Guid> squads, int revision = 0) => [.. squads.Select(s => new SquadToPublish(s, revision, NewId.Create()))];

    /// <summary>Where each row lies and which transaction wrote it: both change with any write, even of the same values.</summary>
    private static async Task<Dictionary<Guid, string>> VersionsAsync(TestClub club)
    {
        await using var db = await club.OpenAsync();
        return (await db.Database.SqlQuery<RowVersion>($"select uid, ctid::text || ' ' || xmin::text as version from club.sessions where club_id = {club.Id}").ToListAsync(Cancel))
            .ToDictionary(v => v.Uid, v => v.Version);
    }

    private sealed record RowVersion(Guid Uid, string Version);

    /// <summary>Tells at once; <see cref="Progress{T}"/> tells later.</summary>
    private sealed class Told(Action<SquadsDone> tell) : IProgress<SquadsDone>
    {
        public void Report(SquadsDone value)
        {
            lock (tell)
            {
                tell(value);
            }
        }
    }
}
