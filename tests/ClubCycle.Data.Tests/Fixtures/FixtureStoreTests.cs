using ClubCycle.Data.Fixtures;
using ClubCycle.Data.Seasons;
using ClubCycle.Planning;
using ClubCycle.Planning.Seasons;
using NodaTime;
using NodaTime.Text;

namespace ClubCycle.Data.Tests.Fixtures;

public sealed class FixtureStoreTests(ClubData data) : IClassFixture<ClubData>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_match_that_somebody_changed_meanwhile_is_not_removed()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        var store = club.Store<FixtureStore>();
        var seen = (await store.AddAsync(squad, new LocalDate(2026, 5, 9), null, "Marrowby", null, ClubData.By, Cancel)).OrThrow();
        (await store.SaveAsync(squad, seen, new LocalDate(2026, 5, 16), null, "Marrowby", null, 1, ClubData.By, Cancel)).OrThrow();

        Problems.AssertProblem("fixture.changed-meanwhile", await store.RemoveAsync(squad, seen, 1, ClubData.By, Cancel));
    }

    [Fact]
    public async Task A_squad_without_matches_plays_on_the_match_days_the_planner_would_use_itself()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        await club.Store<ClosedDayStore>().AddAsync(null, new ClosedDays(new(2026, 10, 10), new(2026, 10, 10), "Flooded"), ClubData.By, Cancel);

        var request = (await club.DraftAsync(squad)).Request;
        var ofThePlanner = AnnualPlanner.Plan(request with { Fixtures = null }).OrThrow();

        Assert.Equal(ofThePlanner.Sessions.Where(s => s.Kind == SessionKind.Match).Select(s => s.Date), request.Fixtures!.Select(f => f.Date));
        Assert.NotEmpty(request.Fixtures!);
    }

    [Fact]
    public async Task A_match_that_is_added_leaves_the_usual_ones_as_they_are()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        var before = (await club.DraftAsync(squad)).Plan.Sessions.Select(s => (s.Uid, s.StartsAt)).ToList();
        var store = club.Store<FixtureStore>();

        var added = (await store.AddAsync(squad, new LocalDate(2026, 5, 9), null, "Marrowby", null, ClubData.By, Cancel)).OrThrow();
        Assert.Equal((await store.ListAsync(squad, Cancel)).OrThrow().Count, (await store.EnteredAsync(squad, Cancel)).Count);
        (await store.RemoveAsync(squad, added, 1, ClubData.By, Cancel)).OrThrow();

        Assert.Equal(before, (await club.DraftAsync(squad)).Plan.Sessions.Select(s => (s.Uid, s.StartsAt)));
    }

    [Fact]
    public async Task Moving_a_usual_match_keeps_the_others_where_they_are()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        var usual = (await club.Store<FixtureStore>().ListAsync(squad, Cancel)).OrThrow();
        var match = usual[2];
        Assert.Equal(0, match.Version);

        (await club.Store<FixtureStore>().SaveAsync(squad, match.Id, match.Fixture.Date.PlusDays(1), new LocalTime(11, 0), " Quillford ", " Pitch 2 ", 0, ClubData.By, Cancel)).OrThrow();

        var after = (await club.Store<FixtureStore>().ListAsync(squad, Cancel)).OrThrow();
        Assert.Equal(usual.Where(f => f.Id != match.Id).Select(f => f.Fixture), after.Where(f => f.Id != match.Id).Select(f => f.Fixture));
        Assert.Equal(new Fixture(match.Fixture.Date.PlusDays(1), new LocalTime(11, 0), "Quillford", match.Id, "Pitch 2"), after.Single(f => f.Id == match.Id).Fixture);
    }

    [Fact]
    public async Task Two_people_who_move_the_same_usual_match_do_not_overwrite_each_other()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        var match = (await club.Store<FixtureStore>().ListAsync(squad, Cancel)).OrThrow()[0];
        (await club.Store<FixtureStore>().SaveAsync(squad, match.Id, match.Fixture.Date.PlusDays(1), null, null, null, 0, ClubData.By, Cancel)).OrThrow();

        Problems.AssertProblem("fixture.changed-meanwhile", await club.Store<FixtureStore>().SaveAsync(squad, match.Id, match.Fixture.Date.PlusDays(-1), null, null, null, 0, ClubData.By, Cancel));
    }

    [Fact]
    public async Task Removing_a_usual_match_leaves_the_rest()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        var usual = (await club.Store<FixtureStore>().ListAsync(squad, Cancel)).OrThrow();

        (await club.Store<FixtureStore>().RemoveAsync(squad, usual[0].Id, usual[0].Version, ClubData.By, Cancel)).OrThrow();

        Assert.Equal(usual.Skip(1).Select(f => f.Fixture.Date), (await club.Store<FixtureStore>().ListAsync(squad, Cancel)).OrThrow().Select(f => f.Fixture.Date));
    }

    [Fact]
    public async Task Matches_of_another_cycle_do_not_reach_the_planner()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        (await club.Store<FixtureStore>().AddAsync(squad, new LocalDate(2028, 10, 7), null, "Marrowby", null, ClubData.By, Cancel)).OrThrow();

        Assert.All((await club.DraftAsync(squad)).Request.Fixtures!, f => Assert.True(f.Date < new LocalDate(2027, 3, 1)));
        Assert.Equal(new LocalDate(2028, 10, 7), (await club.Store<FixtureStore>().EnteredAsync(squad, Cancel))[^1].Match.Fixture.Date);
    }

    [Fact]
    public async Task A_file_brings_changes_and_calls_off_matches_in_one_go()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        var store = club.Store<FixtureStore>();
        (await store.TakeFileAsync(squad, [FromFile("2026-10-03", "a"), FromFile("2026-10-10", "b"), FromFile("2026-10-17", "c")], [], ClubData.By, Cancel)).OrThrow();
        var entered = await store.EnteredAsync(squad, Cancel);

        var taken = (await store.TakeFileAsync(
            squad,
            [FromFile("2026-10-04", null) with { Known = (entered[0].Match.Id, entered[0].Match.Version) }, FromFile("2026-10-24", "d")],
            [(entered[2].Match.Id, entered[2].Match.Version)], ClubData.By, Cancel)).OrThrow();

        Assert.Equal(3, taken);
        Assert.Equal(
            [("2026-10-04", "a"), ("2026-10-10", "b"), ("2026-10-24", "d")],
            (await store.EnteredAsync(squad, Cancel)).Select(e => (LocalDatePattern.Iso.Format(e.Match.Fixture.Date), e.SourceKey!)));
        Assert.Equal(entered[0].Match.Id, (await store.EnteredAsync(squad, Cancel))[0].Match.Id);
    }

    [Fact]
    public async Task A_file_that_meets_a_match_somebody_changed_meanwhile_takes_nothing()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        var store = club.Store<FixtureStore>();
        (await store.TakeFileAsync(squad, [FromFile("2026-10-03", "a")], [], ClubData.By, Cancel)).OrThrow();
        var seen = (await store.EnteredAsync(squad, Cancel))[0].Match;
        (await store.SaveAsync(squad, seen.Id, new LocalDate(2026, 10, 5), null, null, null, seen.Version, ClubData.By, Cancel)).OrThrow();

        Problems.AssertProblem("fixture.changed-meanwhile", await store.TakeFileAsync(squad, [FromFile("2026-10-31", "z"), FromFile("2026-10-04", "a") with { Known = (seen.Id, seen.Version) }], [], ClubData.By, Cancel));
        Problems.AssertProblem("fixture.changed-meanwhile", await store.TakeFileAsync(squad, [], [(seen.Id, seen.Version)], ClubData.By, Cancel));

        Assert.Equal(new LocalDate(2026, 10, 5), Assert.Single(await store.EnteredAsync(squad, Cancel)).Match.Fixture.Date);
    }

    private static FixtureFromFile FromFile(string date, string? key) => new(null, LocalDatePattern.Iso.Parse(date).Value, null, "Northgate", null, key);
}
