using ClubCycle.Planning.Phases;

namespace ClubCycle.Planning.Rules;

/// <remarks>A session of strength is any for muscular endurance and any heavy lift: circuits, technique lifting, upkeep and body weight count (editorial).</remarks>
internal static class StrengthRules
{
    private const string Counts = "circuits, technique lifting, upkeep, body weight and heavy lifts count as strength (editorial)";

    /// <summary>Points of percent of maximum.</summary>
    private const int LighterAtMost = 5;

    public static readonly Rule R17 = new(
        "R17", Strength.Should, "Between recovery and the first match strength is built for six weeks in a row.",
        $"≥ 6 consecutive weeks with ≥ 2 sessions of strength once in the cycle; {Counts}", "youngest player 15 or older, the whole cycle",
        "Put a second session of strength into the weekly mix of the building phases.",
        "Haff and Triplett 2016 and ACSM 2009 for blocks of 6 to 12 weeks (from memory)",
        StrengthIsBuiltForSixWeeks);

    public static readonly Rule R22 = new(
        "R22", Strength.Should, "In season, one session of strength a week keeps what was built.",
        $"sessions of strength a week ≥ 1; as a note: at most 5 points of percent of maximum below the last pre-season lifts; {Counts}", "in season, youngest player 15 or older",
        "Add a short upkeep session, or swap an easy run for it.",
        "Spiering et al. 2021 (J Strength Cond Res 35:1449); Haff and Triplett 2016. The load as a note is editorial: upkeep stays lighter so that matches come first",
        StrengthIsKeptInSeason);

    public static readonly Rule R24 = new(
        "R24", Strength.Should, "Each phase has its number of strength sessions a week.",
        $"recovery and restore ≤ 3; aerobic build, mixed and pre-season 2 to 4; break 1 to 3; in season ≤ 3 (the least is R22's); {Counts}", "youngest player 15 or older",
        "Add a session of strength to the phase's weekly mix, or take one out.",
        "Haff and Triplett 2016 (from memory); the most are editorial",
        PhasesHaveTheirStrengthSessions);

    /// <summary>R24: sessions of strength a week, least and most.</summary>
    internal static (int Least, int Most) Usual(PhaseKind phase) => phase switch
    {
        PhaseKind.Recovery or PhaseKind.Restore or PhaseKind.InSeason => (0, 3),
        PhaseKind.Break => (1, 3),
        _ => (2, 4),
    };

    /// <summary>Length of the longest run of true.</summary>
    internal static int LongestRun(IEnumerable<bool> weeks)
    {
        var (longest, run) = (0, 0);
        foreach (var week in weeks)
        {
            run = week ? run + 1 : 0;
            longest = Math.Max(longest, run);
        }

        return longest;
    }

    private static IEnumerable<Finding> StrengthIsBuiltForSixWeeks(Rule rule, CheckedPlan plan)
    {
        if (plan.Squad.AgeGroup.YoungestAge < RuleLimits.StrengthFromAge || plan.Weeks.Count == 0)
        {
            yield break;
        }

        // The best of the year's times between recovery and matches decides.
        var (weeks, longest) = BuildingTimes(plan)
            .Select(time => (Weeks: time, Longest: LongestRun(time.Select(w => w.StrengthSessions >= RuleLimits.StrengthWhileBuilding))))
            .OrderByDescending(time => time.Longest).ThenByDescending(time => time.Weeks.Count).FirstOrDefault();
        if (longest < RuleLimits.StrengthWeeks)
        {
            var forcedBy = weeks is null || weeks.Count < RuleLimits.StrengthWeeks ? Cause.SeasonDates
                : weeks.Count(w => w.Whole) < RuleLimits.StrengthWeeks ? Cause.JoinedLate
                : CheckedPlan.Together(weeks.Where(w => w.StrengthSessions < RuleLimits.StrengthWhileBuilding).Select(w => plan.WhyFewer(w, CheckedPlan.IsStrength, RuleLimits.StrengthWhileBuilding)));
            yield return rule.Finding(
                null,
                $"{(longest == 1 ? "1 week" : $"{longest} weeks")} in a row with two sessions of strength between recovery and the first match; {RuleLimits.StrengthWeeks} build it.{(forcedBy == Cause.SeasonDates ? $" The season dates leave {weeks?.Count ?? 0} weeks." : "")}",
                new(longest, RuleLimits.StrengthWeeks, "weeks", [], forcedBy));
        }
    }

    /// <summary>The weeks after each recovery phase up to the next match or in-season week.</summary>
    private static IEnumerable<IReadOnlyList<CheckedWeek>> BuildingTimes(CheckedPlan plan)
    {
        for (var i = 1; i < plan.Weeks.Count; i++)
        {
            if (plan.Weeks[i - 1].Week.Phase == PhaseKind.Recovery && plan.Weeks[i].Week.Phase != PhaseKind.Recovery)
            {
                yield return [.. plan.Weeks.Skip(i).TakeWhile(w => w.Week.Phase != PhaseKind.InSeason && w.Matches == 0)];
            }
        }
    }

    private static IEnumerable<Finding> StrengthIsKeptInSeason(Rule rule, CheckedPlan plan)
    {
        if (plan.Squad.AgeGroup.YoungestAge < RuleLimits.StrengthFromAge)
        {
            yield break;
        }

        foreach (var phase in plan.Plan.Phases.Where(p => p.Kind == PhaseKind.InSeason))
        {
            var weeks = plan.WeeksOf(phase);
            List<CheckedWeek> without = [.. weeks.Where(w => w.StrengthSessions == 0)];
            if (without.Count > 0)
            {
                yield return rule.Finding(
                    without[0].Week.First,
                    $"{without.Count} of {weeks.Count} weeks of this part of the season have no session of strength; one a week keeps what was built.",
                    new(0, 1, "sessions", [], CheckedPlan.Together(without.Select(w => plan.WhyFewer(w, CheckedPlan.IsStrength, 1)))));
            }

            var before = plan.Plan.Phases.Where(p => p.Kind == PhaseKind.PreSeason && p.Last < phase.First).SelectMany(plan.WeeksOf).Select(Heaviest).LastOrDefault(p => p is not null);
            List<CheckedWeek> lighter = [.. weeks.Where(w => Heaviest(w) < before - LighterAtMost)];
            if (lighter.Count > 0)
            {
                var heaviest = lighter.Max(Heaviest)!.Value;
                yield return rule.Finding(
                    lighter[0].Week.First,
                    $"In {lighter.Count} of {weeks.Count} weeks the heaviest lifts reach {heaviest} % of maximum at most; the last in pre-season had {before} %.",
                    new(heaviest, before!.Value - LighterAtMost, "%", [.. lighter.SelectMany(w => w.Active).Where(CheckedPlan.IsStrength).Select(s => s.Uid)], CheckedPlan.Together(lighter.Select(w => plan.WhyFewer(w, w => w.HeavyLift, 1)))),
                    Strength.Note);
            }
        }
    }

    private static int? Heaviest(CheckedWeek week) => week.Active.Where(CheckedPlan.IsStrength).SelectMany(s => s.Steps).Max(s => s.PercentOfMaximum);

    private static IEnumerable<Finding> PhasesHaveTheirStrengthSessions(Rule rule, CheckedPlan plan)
    {
        if (plan.Squad.AgeGroup.YoungestAge < RuleLimits.StrengthFromAge)
        {
            yield break;
        }

        foreach (var phase in plan.Plan.Phases)
        {
            var (least, most) = Usual(phase.Kind);
            var weeks = plan.WeeksOf(phase);
            List<CheckedWeek> fewer = [.. weeks.Where(w => w.StrengthSessions < least)];
            if (fewer.Count > 0)
            {
                var fewest = fewer.Min(w => w.StrengthSessions);
                yield return rule.Finding(
                    fewer[0].Week.First,
                    $"{fewer.Count} of {weeks.Count} weeks of this {FileName.Of(phase.Kind)} phase have fewer than {least} sessions of strength, the fewest {fewest}.",
                    new(fewest, least, "sessions", [], CheckedPlan.Together(fewer.Select(w => plan.WhyFewer(w, CheckedPlan.IsStrength, least)))));
            }

            List<CheckedWeek> more = [.. weeks.Where(w => w.StrengthSessions > most)];
            if (more.Count > 0)
            {
                var highest = more.Max(w => w.StrengthSessions);
                yield return rule.Finding(
                    more[0].Week.First,
                    $"{more.Count} of {weeks.Count} weeks of this {FileName.Of(phase.Kind)} phase have more than {most} sessions of strength, the most {highest}.",
                    new(highest, most, "sessions", [.. more.SelectMany(w => w.Active).Where(CheckedPlan.IsStrength).Select(s => s.Uid)], CheckedPlan.Together(more.Select(w => (Cause?)(plan.Decided(w.Active.Where(CheckedPlan.IsStrength)) ?? Cause.Template)))));
            }
        }
    }
}
