using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using NodaTime;

namespace ClubCycle.Planning.Tests;

/// <summary>Whole plans over a grid of seasons, ages, training ages and practice patterns.</summary>
public class GridTests
{
    public static IEnumerable<(string Name, PlanRequest Request)> Grid()
    {
        (string Name, Season Season)[] seasons =
        [
            ("A", A.SeasonA), ("B", A.SeasonB), ("C", A.SeasonC), ("D", A.SeasonD), ("E", A.SeasonE),
            ("mid-week", A.Season(null, "2026-09-02/2026-12-09")),
            ("leap", A.Season("2027-05-30", "2028-02-29/2028-05-27")),
            ("one day", A.Season("2026-08-30", "2027-06-12/2027-06-12")),
            ("winter break", A.Season("2026-05-31", "2026-09-12/2026-12-13", "2027-02-06/2027-05-30")),
            ("over new year", A.Season("2026-03-15", "2026-11-07/2027-03-14")),
            ("three stints", A.Season("2027-10-31", "2028-04-01/2028-05-14", "2028-06-10/2028-07-09", "2028-09-02/2028-10-29")),
            ("longest", A.Season("2026-05-31", "2027-05-22/2027-07-18")),
            ("southern winter", A.Season("2026-08-29", "2027-03-20/2027-08-28")),
        ];
        Practice[][] patterns =
        [
            [],
            [A.Practice(IsoDayOfWeek.Wednesday, "18:00", 60)],
            [A.Practice(IsoDayOfWeek.Tuesday), A.Practice(IsoDayOfWeek.Thursday)],
            [A.Practice(IsoDayOfWeek.Monday, "18:00", 75), A.Practice(IsoDayOfWeek.Wednesday, "18:00", 75), A.Practice(IsoDayOfWeek.Friday, "18:00", 75)],
        ];
        foreach (var (name, season) in seasons)
        {
            foreach (var ages in AgeGroup.All)
            {
                foreach (var training in Enum.GetValues<TrainingAge>())
                {
                    foreach (var practices in patterns)
                    {
                        var day = practices.Length == 3 ? IsoDayOfWeek.Sunday : IsoDayOfWeek.Saturday;
                        yield return ($"{name} {ages} {training} {practices.Length} practices", A.Request(season, A.Squad(ages, training, practices, day)));
                    }
                }
            }
        }
    }

    [Fact]
    public void No_plan_breaks_a_must_rule_that_the_planner_can_keep()
    {
        var broken = Grid().SelectMany(g => A.Plan(g.Request).Findings.Where(f => f.Strength == Strength.Must).Select(f => $"{g.Name}: {f.Rule} {f.Week} {f.Message}")).ToList();

        // Forty-four weeks of matches leave a youth squad no two months without hockey: only the club can change its dates.
        Assert.All(broken, line => Assert.True(line.StartsWith("D U", StringComparison.Ordinal) && line.Contains("R07", StringComparison.Ordinal), line));
    }

    /// <summary>Every fifth plan: five shares no factor with the ages, training ages and patterns, so each of them comes up.</summary>
    private static IEnumerable<(string Name, PlanRequest Request)> Sample() => Grid().Index().Where(g => g.Index % 5 == 0).Select(g => g.Item);

    [Fact]
    public void The_grid_has_two_thousand_squads() => Assert.InRange(Grid().Count(), 2_000, 3_000);

    [Fact]
    public void Phases_tile_every_cycle()
    {
        foreach (var (name, request) in Sample())
        {
            var plan = A.Plan(request);
            var expected = plan.Cycle.Start;
            foreach (var phase in plan.Phases)
            {
                Assert.True(phase.First == expected && phase.Last >= phase.First, name);
                expected = phase.Last.PlusDays(1);
            }

            Assert.True(expected == plan.Cycle.End.PlusDays(1), name);
        }
    }

    [Fact]
    public void Every_session_lies_in_the_cycle_in_one_week_and_week_loads_are_their_sums()
    {
        foreach (var (name, request) in Sample())
        {
            var plan = A.Plan(request);
            Assert.True(plan.Sessions.All(s => plan.Cycle.Contains(s.Date)), name);
            Assert.True(plan.Sessions.Select(s => s.Uid).Distinct().Count() == plan.Sessions.Count, name);
            Assert.True(plan.Sessions.All(s => plan.Weeks.Count(w => w.First <= s.Date && s.Date <= w.Last) == 1 || s.Date < plan.Weeks[0].First), name);
            foreach (var week in plan.Weeks)
            {
                var load = plan.Sessions.Where(s => s.Date >= week.First && s.Date <= week.Last && s.Kind != SessionKind.ActiveRecovery && !s.InsidePractice).Sum(s => s.PlannedLoadAu);
                Assert.True(load == week.PlannedLoadAu, $"{name} {week.Name}");
            }
        }
    }

    [Fact]
    public void The_planner_keeps_spacing_and_rest_by_itself()
    {
        var broken = Sample().SelectMany(g => A.Plan(g.Request).Findings.Where(f => f.Rule is "R01" or "R02" or "R03" or "R04" or "R36" or "R37" or "R38" or "R39").Select(f => $"{g.Name}: {f.Rule} {f.Week} {f.Message}")).ToList();

        Assert.Empty(broken);
    }

    [Fact]
    public void The_youngest_get_games_inside_practice_and_nothing_else()
    {
        foreach (var (name, request) in Grid().Where(g => g.Request.Squad.AgeGroup.Under <= 10))
        {
            Assert.True(A.Plan(request).Sessions.Where(s => s.Kind == SessionKind.Session).All(s => s is { InsidePractice: true, Workout: "movement-games" }), name);
        }
    }

    [Fact]
    public void Practices_stay_out_of_the_phases_without_hockey()
    {
        var plan = A.Plan(A.Request());
        var free = plan.Phases.Where(p => p.Kind is not (PhaseKind.InSeason or PhaseKind.PreSeason));

        Assert.DoesNotContain(plan.Sessions, s => s.Kind is SessionKind.Practice && free.Any(p => p.First <= s.Date && s.Date <= p.Last));
        Assert.Contains(plan.Sessions, s => s.Kind == SessionKind.Practice);
    }
}
