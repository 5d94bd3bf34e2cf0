using System.Globalization;
using System.Text;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Rules;

namespace ClubCycle.Planning.Tests;

/// <summary>Whole plans over the grid, each made once.</summary>
public class GridTests(GridTests.Planned planned) : IClassFixture<GridTests.Planned>
{
    [Fact]
    public void The_grid_has_two_thousand_squads() => Assert.InRange(planned.Squads, 2_000, 3_000);

    /// <summary>Forty-four weeks of matches leave a youth squad no two months without hockey: only the club can change its dates.</summary>
    [Fact]
    public void No_plan_breaks_a_must_rule_that_the_planner_can_keep() =>
        Assert.All(planned.Findings.Where(f => f.Finding.Strength == Strength.Must), f => Assert.True(f.Squad.StartsWith("D U", StringComparison.Ordinal) && f.Finding.Rule == "R07", f.ToString()));

    [Fact]
    public void Every_warning_names_what_forced_it() =>
        Assert.Empty(planned.Findings.Where(f => f.Finding.Strength == Strength.Should && f.Finding.Facts?.ForcedBy is null).Take(20));

    [Fact]
    public void The_planner_keeps_spacing_and_rest_by_itself() =>
        Assert.Empty(planned.Findings.Where(f => f.Finding.Rule is "R01" or "R02" or "R03" or "R04" or "R25" or "R33" or "R36" or "R37" or "R38" or "R39").Take(20));

    [Fact]
    public void Every_plan_holds_together() => Assert.Empty(planned.Broken.Take(20));

    /// <summary>The page is the grid's own account: run <c>bash deploy/grid.sh</c> and read the diff.</summary>
    [Fact]
    public void The_counts_by_rule_are_those_of_the_page() => GoldenFile.Matches("../../docs/grid.md", planned.Page());

    [Fact]
    public void Practices_stay_out_of_the_phases_without_hockey()
    {
        var plan = A.Plan(A.Request());
        var free = plan.Phases.Where(p => p.Kind is not (PhaseKind.InSeason or PhaseKind.PreSeason));

        Assert.DoesNotContain(plan.Sessions, s => s.Kind is SessionKind.Practice && free.Any(p => p.First <= s.Date && s.Date <= p.Last));
        Assert.Contains(plan.Sessions, s => s.Kind == SessionKind.Practice);
    }

    public sealed class Planned
    {
        private readonly List<(string Squad, Finding Finding)> _findings = [];
        private readonly List<string> _broken = [];

        public Planned()
        {
            foreach (var (found, broken) in PlanGrid.All().AsParallel().AsOrdered().Select(Look))
            {
                Squads++;
                _findings.AddRange(found);
                _broken.AddRange(broken);
            }
        }

        public int Squads { get; }

        internal IReadOnlyList<(string Squad, Finding Finding)> Findings => _findings;

        internal IReadOnlyList<string> Broken => _broken;

        public string Page()
        {
            var text = new StringBuilder();
            text.Append("# Findings over the grid\n\n")
                .Append(CultureInfo.InvariantCulture, $"{Squads} squads: seasons × age groups × training ages × practice patterns (`PlanGrid` in the planning tests), each with the built-in template of\n")
                .Append("its age group. What the planner could not avoid, by rule, and what left it no choice most often. `bash deploy/grid.sh` writes this page again.\n\n")
                .Append("| rule | strength | findings | squads | forced by |\n|---|---|---|---|---|\n");
            foreach (var rule in _findings.GroupBy(f => (f.Finding.Rule, f.Finding.Strength)).OrderBy(g => g.Key.Rule, StringComparer.Ordinal).ThenBy(g => g.Key.Strength))
            {
                var causes = rule.GroupBy(f => f.Finding.Facts?.ForcedBy).OrderByDescending(c => c.Count()).ThenBy(c => c.Key).Select(c =>
                    string.Create(CultureInfo.InvariantCulture, $"{(c.Key is { } cause ? FileName.Of(cause) : "nothing")} {c.Count()}"));
                text.Append(CultureInfo.InvariantCulture, $"| {rule.Key.Rule} | `{FileName.Of(rule.Key.Strength)}` | {rule.Count()} | {rule.Select(f => f.Squad).Distinct().Count()} | {string.Join(", ", causes)} |\n");
            }

            return text.ToString();
        }

        private static (List<(string, Finding)> Findings, List<string> Broken) Look((string Name, PlanRequest Request) squad)
        {
            var plan = A.Plan(squad.Request);
            return ([.. plan.Findings.Select(f => (squad.Name, f))], [.. WhatIsBroken(squad.Request, plan).Select(b => $"{squad.Name}: {b}")]);
        }

        private static IEnumerable<string> WhatIsBroken(PlanRequest request, SquadPlan plan)
        {
            var expected = plan.Cycle.Start;
            foreach (var phase in plan.Phases)
            {
                if (phase.First != expected || phase.Last < phase.First)
                {
                    yield return $"phase from {phase.First}";
                }

                expected = phase.Last.PlusDays(1);
            }

            if (expected != plan.Cycle.End.PlusDays(1))
            {
                yield return "phases end early";
            }

            if (!plan.Sessions.All(s => plan.Cycle.Contains(s.Date)) || plan.Sessions.Select(s => s.Uid).Distinct().Count() != plan.Sessions.Count)
            {
                yield return "sessions outside the cycle or with the same id";
            }

            foreach (var week in plan.Weeks)
            {
                var load = plan.Sessions.Where(s => s.Date >= week.First && s.Date <= week.Last && s.Kind != SessionKind.ActiveRecovery && !s.InsidePractice).Sum(s => s.PlannedLoadAu);
                if (load != week.PlannedLoadAu)
                {
                    yield return $"load of {week.Name}";
                }
            }

            if (request.Squad.AgeGroup.Under <= 10 && plan.Sessions.Any(s => s.Kind == SessionKind.Session && s is not { InsidePractice: true, Workout: "movement-games" }))
            {
                yield return "the youngest get more than games inside practice";
            }
        }
    }
}
