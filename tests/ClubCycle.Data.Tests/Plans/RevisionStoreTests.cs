using ClubCycle.Data.Clubs;
using ClubCycle.Data.Edits;
using ClubCycle.Data.Fixtures;
using ClubCycle.Data.Plans;
using ClubCycle.Data.Seasons;
using ClubCycle.Data.Squads;
using ClubCycle.Data.Templates;
using ClubCycle.Planning;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Seasons;
using NodaTime;

namespace ClubCycle.Data.Tests.Plans;

public sealed class RevisionStoreTests(ClubData data) : IClassFixture<ClubData>
{
    private static readonly LocalDate Saturday = new(2026, 10, 10);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Going_back_and_publishing_gives_players_the_same_year_again()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        await club.PublishAsync(squad);
        var first = await SessionsAsync(club, squad);
        await ChangeEverythingAsync(club, squad);
        await club.PublishAsync(squad, 1);
        Assert.NotEqual(first, await SessionsAsync(club, squad));

        var draft = (await club.Store<RevisionStore>().RestoreAsync(squad, 1, ClubData.By, Cancel)).OrThrow();
        await club.PublishAsync(squad, 2);

        Assert.Equal(first, await SessionsAsync(club, squad));
        Assert.True(draft.HasUnpublishedChanges);
        Assert.False((await club.DraftAsync(squad)).HasUnpublishedChanges);
    }

    [Fact]
    public async Task What_has_happened_stays_when_an_older_year_comes_back()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        await club.PublishAsync(squad);
        var skipped = (await club.DraftAsync(squad)).Plan.Sessions.First(s => s.Kind == SessionKind.Session && s.Date >= new LocalDate(2026, 4, 6));
        var week = skipped.Date.With(DateAdjusters.PreviousOrSame(IsoDayOfWeek.Monday));
        (await club.Store<PinStore>().PinAsync(squad, new Pin(week, skipped.Slot, null, null, true), ClubData.By, Cancel)).OrThrow();
        await club.PublishAsync(squad, 1);
        var second = await SessionsAsync(club, squad);
        var today = week.PlusWeeks(3);
        data.Clock.Now = today.At(LocalTime.Noon).InUtc().ToInstant();

        (await club.Store<RevisionStore>().RestoreAsync(squad, 1, ClubData.By, Cancel)).OrThrow();
        await club.PublishAsync(squad, 2);

        var third = await SessionsAsync(club, squad);
        Assert.Equal(second.Where(s => s.At.Date < today), third.Where(s => s.At.Date < today));
        Assert.DoesNotContain(third, s => s.Uid == skipped.Uid);
    }

    [Fact]
    public async Task Going_back_is_one_edit_that_undo_takes_back()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        await club.PublishAsync(squad);
        await ChangeEverythingAsync(club, squad);
        await club.PublishAsync(squad, 1);
        var before = PlanFile.WriteRequest((await club.DraftAsync(squad)).Request);

        (await club.Store<RevisionStore>().RestoreAsync(squad, 1, ClubData.By, Cancel)).OrThrow();
        Assert.NotEqual(before, PlanFile.WriteRequest((await club.DraftAsync(squad)).Request));
        var edit = (await club.Store<EditStore>().StateAsync(squad, ClubData.By, Cancel)).Undo!;
        Assert.Equal("Go back to revision 1", edit.Words);
        (await club.Store<EditStore>().UndoAsync(squad, edit.Id, ClubData.By, Cancel)).OrThrow();

        Assert.Equal(before, PlanFile.WriteRequest((await club.DraftAsync(squad)).Request));
    }

    [Fact]
    public async Task A_preview_says_the_same_as_going_back_and_stores_nothing()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        await club.PublishAsync(squad);
        await ChangeEverythingAsync(club, squad);
        await club.PublishAsync(squad, 1);
        var before = PlanFile.WriteRequest((await club.DraftAsync(squad)).Request);

        var preview = (await club.Store<RevisionStore>().PreviewAsync(squad, 1, Cancel)).OrThrow();

        Assert.Equal(before, PlanFile.WriteRequest((await club.DraftAsync(squad)).Request));
        var restored = (await club.Store<RevisionStore>().RestoreAsync(squad, 1, ClubData.By, Cancel)).OrThrow();
        Assert.Equal(PlanFile.WritePlan(restored.Plan), PlanFile.WritePlan(preview.Plan));
    }

    [Fact]
    public async Task The_club_s_own_dates_and_the_squad_s_name_are_not_taken_back()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        await club.PublishAsync(squad);
        (await club.Store<ClosedDayStore>().AddAsync(null, new ClosedDays(Saturday, Saturday, "Flooded"), ClubData.By, Cancel)).OrThrow();
        var stored = (await club.Store<SquadStore>().FindAsync(squad, Cancel)).OrThrow();
        (await club.Store<SquadStore>().SaveAsync(stored.Squad with { Name = "Women A" }, stored.Version, ClubData.By, Cancel)).OrThrow();

        (await club.Store<RevisionStore>().RestoreAsync(squad, 1, ClubData.By, Cancel)).OrThrow();

        Assert.Contains((await club.DraftAsync(squad)).Request.Closed, c => c.Why == "Flooded");
        Assert.Equal("Women A", (await club.Store<SquadStore>().FindAsync(squad, Cancel)).OrThrow().Squad.Name);
    }

    [Fact]
    public async Task A_revision_of_another_year_is_not_gone_back_to()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        await club.PublishAsync(squad);
        (await club.Store<SeasonStore>().AddAsync(null, ClubData.Stints[^1].Last, [new Stint(new(2027, 10, 1), new(2028, 2, 28))], ClubData.By, Cancel)).OrThrow();
        data.Clock.Now = Instant.FromUtc(2027, 3, 5, 12, 0);

        Problems.AssertProblem("revision.other-year", await club.Store<RevisionStore>().RestoreAsync(squad, 1, ClubData.By, Cancel));
        Problems.AssertProblem("revision.not-found", await club.Store<RevisionStore>().RestoreAsync(squad, 7, ClubData.By, Cancel));
    }

    [Fact]
    public async Task Two_revisions_are_compared_in_sessions_and_findings()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        await club.PublishAsync(squad);
        var session = (await club.DraftAsync(squad)).Plan.Sessions.First(s => s.Kind == SessionKind.Session && s.Date >= new LocalDate(2026, 5, 4));
        (await club.Store<PinStore>().PinAsync(squad, new Pin(session.Date.With(DateAdjusters.PreviousOrSame(IsoDayOfWeek.Monday)), session.Slot, null, null, true), ClubData.By, Cancel)).OrThrow();
        var draft = await club.DraftAsync(squad);
        await club.PublishAsync(squad, 1);

        var changes = (await club.Store<RevisionStore>().CompareAsync(squad, 1, 2, Cancel)).OrThrow();

        Assert.Equal(draft.Plan.Changes.Dropped.Select(d => d.Uid), changes.Changes.Dropped.Select(d => d.Uid));
        Assert.Contains(changes.Changes.Dropped, d => d.Uid == session.Uid);
        var back = (await club.Store<RevisionStore>().CompareAsync(squad, 2, 1, Cancel)).OrThrow();
        Assert.Equal(changes.NewFindings.Select(f => f.Message), back.GoneFindings.Select(f => f.Message));
        Problems.AssertProblem("revision.not-found", await club.Store<RevisionStore>().CompareAsync(squad, 1, 9, Cancel));
    }

    private static async Task ChangeEverythingAsync(TestClub club, Guid squad)
    {
        var store = club.Store<FixtureStore>();
        var match = (await store.ListAsync(squad, Cancel)).OrThrow().Single(f => f.Fixture.Date == Saturday);
        (await store.SaveAsync(squad, match.Id, Saturday.PlusDays(1), null, "Quillford", null, match.Version, ClubData.By, Cancel)).OrThrow();
        (await club.Store<ClosedDayStore>().AddAsync(squad, new ClosedDays(new(2026, 6, 1), new(2026, 6, 7), "Camp"), ClubData.By, Cancel)).OrThrow();
        var stored = (await club.Store<SquadStore>().FindAsync(squad, Cancel)).OrThrow();
        (await club.Store<SquadStore>().SaveAsync(stored.Squad with { Practices = [stored.Squad.Practices[0] with { Start = new LocalTime(20, 0) }, stored.Squad.Practices[1]] }, stored.Version, ClubData.By, Cancel)).OrThrow();
        var clone = (await club.Store<TemplateStore>().CloneAsync(stored.TemplateId, null, $"Ours {NewId.Create():N}", ClubData.By, Cancel)).OrThrow();
        (await club.Store<TemplateStore>().UseForSquadAsync(squad, clone, 1, stored.Version + 1, ClubData.By, Cancel)).OrThrow();
        (await club.Store<SeasonStore>().AddAsync(squad, ClubData.Stints[^1].Last.PlusYears(-1), [new Stint(new(2026, 10, 1), new(2027, 2, 21))], ClubData.By, Cancel)).OrThrow();
    }

    private static async Task<List<(Guid Uid, LocalDateTime At, int Minutes, string Title)>> SessionsAsync(TestClub club, Guid squad) =>
        [.. (await club.Store<PlanStore>().PublishedAsync(squad, Cancel)).OrThrow().Plan.Sessions.Select(s => (s.Uid, s.StartsAt, s.Minutes, s.Title))];
}
