using ClubCycle.Data.Backups;
using ClubCycle.Data.Fixtures;
using ClubCycle.Data.Outbox;
using ClubCycle.Data.Plans;
using ClubCycle.Data.Seasons;
using ClubCycle.Planning;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Seasons;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Tests.Plans;

public sealed class PublishTests(ClubData data) : IClassFixture<ClubData>
{
    private static readonly LocalDate Saturday = new(2026, 10, 10);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Publishing_stores_the_plan_a_stamp_for_each_session_and_the_work_to_follow()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        var draft = await club.DraftAsync(squad);
        Assert.True(draft.HasUnpublishedChanges);

        var revision = (await club.Store<PlanStore>().PublishAsync(squad, 0, NewId.Create(), ClubData.By, " First plan ", Cancel)).OrThrow();

        Assert.Equal(new Revision(1, ClubData.Start, ClubData.By, "First plan"), revision);
        var published = (await club.Store<PlanStore>().PublishedAsync(squad, Cancel)).OrThrow();
        Assert.Equal(PlanFile.WritePlan(draft.Plan), PlanFile.WritePlan(published.Plan));
        Assert.Equal(draft.Plan.Sessions.Select(s => s.Uid).Order(), published.Stamps.Keys.Order());
        Assert.All(published.Stamps.Values, stamp => Assert.Equal(new SessionStamp(0, ClubData.Start), stamp));
        await using var db = await club.OpenAsync();
        Assert.Equal([(OutboxKinds.RenderFeeds, squad)], (await db.Outbox.ToListAsync(Cancel)).Select(o => (o.Kind, o.SquadId)));
        Assert.False((await club.DraftAsync(squad)).HasUnpublishedChanges);
    }

    [Fact]
    public async Task The_same_command_publishes_once()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        var command = NewId.Create();

        var first = (await club.Store<PlanStore>().PublishAsync(squad, 0, command, ClubData.By, "", Cancel)).OrThrow();
        var second = (await club.Store<PlanStore>().PublishAsync(squad, 0, command, ClubData.By, "", Cancel)).OrThrow();

        Assert.Equal(first, second);
        await using var db = await club.OpenAsync();
        Assert.Equal(1, await db.Revisions.CountAsync(Cancel));
        Assert.Equal(1, await db.Outbox.CountAsync(Cancel));
    }

    [Fact]
    public async Task Of_two_coaches_who_publish_at_once_one_is_told_of_the_other()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();

        var results = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ =>
            data.TestClub(club.Id).Store<PlanStore>().PublishAsync(squad, 0, NewId.Create(), ClubData.By, "", Cancel)));

        Assert.Single(results, r => r is Result<Revision>.Ok);
        Assert.All(results.OfType<Result<Revision>.Failed>(), r => Assert.Equal("plan.changed-meanwhile", r.First.Code));
        Assert.Single(await club.Store<RevisionStore>().ListAsync(squad, Cancel));
    }

    [Fact]
    public async Task When_one_part_fails_nothing_is_published()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        await using var db = await club.OpenAsync();
        await using var owner = await PlainSql.OpenEverywhereAsync(data.OwnerConnectionString, Cancel);
        await owner.RunAsync(
            """
            create function club.refuse() returns trigger language plpgsql as 'begin raise exception ''refused''; end';
            create trigger refuse before insert on club.outbox execute function club.refuse();
            """,
            Cancel);
        try
        {
            await Assert.ThrowsAsync<DbUpdateException>(() => club.Store<PlanStore>().PublishAsync(squad, 0, NewId.Create(), ClubData.By, "", Cancel));
        }
        finally
        {
            await owner.RunAsync("drop function club.refuse() cascade", Cancel);
        }

        Assert.Equal(0, await db.Revisions.CountAsync(Cancel));
        Assert.Equal(0, await db.Sessions.CountAsync(Cancel));
        Problems.AssertProblem("plan.not-published", await club.Store<PlanStore>().PublishedAsync(squad, Cancel));
    }

    [Fact]
    public async Task A_moved_match_keeps_its_uid_and_raises_only_the_stamps_of_what_changed()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        await club.PublishAsync(squad);
        var before = (await club.Store<PlanStore>().PublishedAsync(squad, Cancel)).OrThrow();
        var match = (await club.Store<FixtureStore>().ListAsync(squad, Cancel)).OrThrow().Single(f => f.Fixture.Date == Saturday);
        var uid = before.Plan.Sessions.Single(s => s.Kind == SessionKind.Match && s.Date == Saturday).Uid;

        (await club.Store<FixtureStore>().SaveAsync(squad, match.Id, Saturday.PlusDays(1), null, "Quillford", null, match.Version, ClubData.By, Cancel)).OrThrow();
        var draft = await club.DraftAsync(squad);
        var later = data.Clock.Now += Duration.FromHours(1);
        await club.PublishAsync(squad, 1);

        var after = (await club.Store<PlanStore>().PublishedAsync(squad, Cancel)).OrThrow();
        Assert.Equal(Saturday.PlusDays(1), after.Plan.Sessions.Single(s => s.Uid == uid).Date);
        Assert.Equal(new SessionStamp(1, later), after.Stamps[uid]);
        var old = before.Plan.Sessions.ToDictionary(s => s.Uid);
        foreach (var session in after.Plan.Sessions.Where(s => old.ContainsKey(s.Uid)))
        {
            var same = (session.StartsAt, session.Minutes, session.Title) == (old[session.Uid].StartsAt, old[session.Uid].Minutes, old[session.Uid].Title);
            Assert.Equal(same ? new SessionStamp(0, ClubData.Start) : new SessionStamp(1, later), after.Stamps[session.Uid]);
        }

        Assert.True(draft.HasUnpublishedChanges);
        Assert.InRange(after.Stamps.Values.Count(s => s.Sequence > 0), 1, 8);
    }

    [Fact]
    public async Task A_dropped_session_is_told_as_cancelled_for_fourteen_days_and_comes_back_under_a_higher_sequence()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        await club.PublishAsync(squad);
        var match = (await club.DraftAsync(squad)).Plan.Sessions.Single(s => s.Kind == SessionKind.Match && s.Date == Saturday);
        var closed = (await club.Store<ClosedDayStore>().AddAsync(squad, new ClosedDays(Saturday, Saturday, "Flooded"), ClubData.By, Cancel)).OrThrow();
        var cancelledAt = data.Clock.Now += Duration.FromHours(1);
        await club.PublishAsync(squad, 1);

        var cancelled = Assert.Single((await PublishedAsync()).Cancelled, c => c.Uid == match.Uid);
        Assert.Equal(new SessionStamp(1, cancelledAt), cancelled.Stamp);
        Assert.Equal(Saturday, cancelled.Date);

        // A feed never changes by itself: what is over goes when the squad is published the next time.
        data.Clock.Now = cancelledAt + Duration.FromDays(15);
        Assert.Contains((await PublishedAsync()).Cancelled, c => c.Uid == match.Uid);
        await club.PublishAsync(squad, 2);
        Assert.DoesNotContain((await PublishedAsync()).Cancelled, c => c.Uid == match.Uid);

        (await club.Store<ClosedDayStore>().RemoveAsync(squad, closed, ClubData.By, Cancel)).OrThrow();
        await club.PublishAsync(squad, 3);
        Assert.Equal(new SessionStamp(2, data.Clock.Now), (await PublishedAsync()).Stamps[match.Uid]);

        async Task<PublishedPlan> PublishedAsync() => (await club.Store<PlanStore>().PublishedAsync(squad, Cancel)).OrThrow();
    }

    [Fact]
    public async Task What_lies_in_the_past_is_never_cancelled()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        await club.PublishAsync(squad);
        data.Clock.Now = Instant.FromUtc(2026, 6, 10, 12, 0);
        await club.Store<ClosedDayStore>().AddAsync(squad, new ClosedDays(new(2026, 5, 1), new(2026, 7, 31), "Ground lost"), ClubData.By, Cancel);

        await club.PublishAsync(squad, 1);

        await using var db = await club.OpenAsync();
        var dates = await db.Sessions.Where(s => s.CancelledAt != null).Select(s => s.Date).ToListAsync(Cancel);
        Assert.NotEmpty(dates);
        Assert.All(dates, d => Assert.True(d >= new LocalDate(2026, 6, 10)));
    }

    [Fact]
    public async Task A_binding_finding_stands_in_the_way_until_somebody_accepts_it_with_a_reason()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        (await club.Store<FixtureStore>().AddAsync(squad, new LocalDate(2026, 5, 9), null, "Marrowby", null, ClubData.By, Cancel)).OrThrow();

        var inTheWay = (await club.DraftAsync(squad)).InTheWay.ToList();
        Assert.NotEmpty(inTheWay);
        Problems.AssertProblem("plan.must-findings", await club.Store<PlanStore>().PublishAsync(squad, 0, NewId.Create(), ClubData.By, "", Cancel));

        var accepted = club.Store<AcceptedFindingStore>();
        Problems.AssertProblem("finding.not-found", await accepted.AcceptAsync(squad, "R49", null, "The storm is far away", ClubData.By, Cancel));
        Problems.AssertProblem("finding.not-found", await accepted.AcceptAsync(squad, "R50", null, "She feels fine", ClubData.By, Cancel));
        Problems.AssertProblem("finding.reason", await accepted.AcceptAsync(squad, inTheWay[0].Rule, inTheWay[0].Week, " ", ClubData.By, Cancel));
        foreach (var finding in inTheWay)
        {
            (await accepted.AcceptAsync(squad, finding.Rule, finding.Week, "A charity match without contact", ClubData.By, Cancel)).OrThrow();
        }

        await club.PublishAsync(squad);
        (await accepted.WithdrawAsync(squad, inTheWay[0].Rule, inTheWay[0].Week, ClubData.By, Cancel)).OrThrow();
        Problems.AssertProblem("plan.must-findings", await club.Store<PlanStore>().PublishAsync(squad, 1, NewId.Create(), ClubData.By, "", Cancel));
    }

    [Fact]
    public async Task An_earlier_revision_can_be_read_as_it_was()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        var first = PlanFile.WritePlan((await club.DraftAsync(squad)).Plan);
        await club.PublishAsync(squad);
        await club.Store<ClosedDayStore>().AddAsync(squad, new ClosedDays(new(2026, 5, 1), new(2026, 5, 31), "Away"), ClubData.By, Cancel);
        await club.PublishAsync(squad, 1);

        Assert.Equal(first, PlanFile.WritePlan((await club.Store<RevisionStore>().FindAsync(squad, 1, Cancel)).OrThrow()));
        Assert.Equal([2, 1], (await club.Store<RevisionStore>().ListAsync(squad, Cancel)).Select(r => r.Number));
        Problems.AssertProblem("revision.not-found", await club.Store<RevisionStore>().FindAsync(squad, 3, Cancel));
    }
}
