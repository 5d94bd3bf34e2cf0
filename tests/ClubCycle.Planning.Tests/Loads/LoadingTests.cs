using ClubCycle.Planning.Loads;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Weeks;
using CsCheck;

namespace ClubCycle.Planning.Tests.Loads;

/// <summary>
/// Loading patterns 3:1 and 2:1 (Bompa and Haff), the taper (Bosquet et al. 2007: 41 to 60 % less), the return after time off (Caterisano et al. 2019),
/// seen in whole plans. Squads without practice show what the planner itself decides.
/// </summary>
public class LoadingTests
{
    private static readonly Squad Alone = A.Squad(practices: []);

    [Fact]
    public void Any_year_has_three_building_weeks_in_a_row_at_most_and_two_for_the_young_and_the_new() => Any.Planned.Sample((request, plan) =>
    {
        var most = request.Squad.AgeGroup.YoungestAge < 16 || request.Squad.TrainingAge == TrainingAge.New ? 2 : 3;
        var run = 0;
        foreach (var week in plan.Weeks)
        {
            run = LoadingWave.Builds(week.Phase) && week.Loading == WeekLoading.Loading && week.PlannedLoadAu > 0 ? run + 1 : 0;
            Assert.True(run <= most, $"{week.Name}: {run} building weeks in a row");
        }
    }, iter: 60, threads: 1);

    [Fact]
    public void Unloading_weeks_hold_40_to_80_percent_of_the_loading_weeks_before() => Assert.All([A.SeasonA, A.SeasonB, A.SeasonC], season =>
    {
        var weeks = A.Plan(A.Request(season, Alone)).Weeks;
        var unloading = weeks.Index().Where(w => w.Item.Loading == WeekLoading.Unloading && LoadingWave.Builds(w.Item.Phase)).ToList();

        Assert.InRange(unloading.Count, 5, 9);
        Assert.All(unloading, w => Assert.InRange(w.Item.PlannedLoadAu / Before(weeks, w.Index).Average(), 0.4, 0.8));
    });

    /// <summary>40 to 59 % is the published range; four sessions of twenty minutes, which get no shorter, may hold a little more.</summary>
    [Fact]
    public void The_week_before_the_first_match_tapers_to_about_half() => Assert.All([A.SeasonA, A.SeasonB, A.SeasonC], season =>
    {
        var weeks = A.Plan(A.Request(season, Alone)).Weeks;
        var taper = weeks.Index().Single(w => w.Item.Loading == WeekLoading.Taper);

        Assert.Equal(PhaseKind.InSeason, weeks[taper.Index + 1].Phase);
        Assert.InRange(taper.Item.PlannedLoadAu / Before(weeks, taper.Index).Average(), 0.40, 0.63);
    });

    [Fact]
    public void Without_practices_and_matches_no_week_rises_by_more_than_a_tenth() => Assert.All([A.SeasonA, A.SeasonB, A.SeasonC], season =>
        Assert.DoesNotContain(A.Plan(A.Request(season, Alone)).Findings, f => f.Rule == "R09" && !f.Message.Contains("match", StringComparison.Ordinal)));

    /// <summary>Three closed weeks in the build: 50, 70, 80 and 90 % at most in the four weeks after.</summary>
    [Fact]
    public void After_weeks_off_training_comes_back_in_four_steps()
    {
        var request = A.Request(squad: Alone, closed: [new ClosedDays(A.Date("2026-05-04"), A.Date("2026-05-24"), "away")]);
        var full = request.Template.Mixes.Single(m => m.Phase == PhaseKind.AerobicBuild).Slots.Sum(s => s.Minutes);
        var plan = A.Plan(request);

        Assert.All(new[] { 0.5, 0.7, 0.8, 0.9 }.Index(), step =>
        {
            var first = A.Date("2026-05-25").PlusWeeks(step.Index);
            var minutes = plan.Sessions.Where(s => s.Kind == SessionKind.Session && first <= s.Date && s.Date <= first.PlusDays(6)).Sum(s => s.Minutes);
            Assert.InRange(minutes, 1, step.Item * full);
        });
    }

    [Fact]
    public void Two_matches_a_week_leave_room_for_one_added_session_and_none_for_two()
    {
        var season = A.SeasonA;
        var (none, one, two) = (Added([]), Added([new(A.Date("2026-10-17"))]), Added([new(A.Date("2026-10-14")), new(A.Date("2026-10-17"))]));

        Assert.Equal((3, 2, 1), (none, one, two));

        int Added(Fixture[] fixtures) => A.Plan(A.Request(season, fixtures: fixtures)).Sessions
            .Count(s => s.Kind == SessionKind.Session && A.Date("2026-10-12") <= s.Date && s.Date <= A.Date("2026-10-18"));
    }

    [Fact]
    public void A_week_with_a_match_in_season_is_a_match_week() => Any.Planned.Sample((_, plan) => Assert.All(plan.Weeks.Where(w => w.Phase == PhaseKind.InSeason), week =>
        Assert.Equal(plan.Sessions.Any(s => s.Kind == SessionKind.Match && week.First <= s.Date && s.Date <= week.Last), week.Loading == WeekLoading.Match)), iter: 60, threads: 1);

    /// <summary>The loading weeks right before, four at most.</summary>
    private static IEnumerable<int> Before(IReadOnlyList<PlanWeek> weeks, int index) =>
        weeks.Take(index).Reverse().TakeWhile(w => w.Loading == WeekLoading.Loading).Take(4).Select(w => w.PlannedLoadAu);
}
