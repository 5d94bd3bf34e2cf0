using ClubCycle.Planning.Phases;
using NodaTime;
using NodaTime.Text;

namespace ClubCycle.Planning.Rules;

internal static class PhaseRules
{
    public static readonly Rule R14 = new(
        "R14", Strength.Should, "Recovery after the season lasts long enough, and for adults not too long.",
        "adults 2 to 5 weeks, under 18 at least 4", "recovery phases",
        "Change the length of recovery in the template.",
        "Bompa and Haff; American Academy of Pediatrics",
        RecoveryLastsLongEnough);

    public static readonly Rule R15 = new(
        "R15", Strength.Should, "The aerobic build lasts at least four weeks.",
        "≥ 4 weeks; 3 with at least 6 interval sessions (maximal sprints repeated)", "aerobic build phases",
        "Give the aerobic build more weeks in the template.",
        "Koral et al. 2018 (J Strength Cond Res 32:617); Helgerud et al. 2007 (from memory)",
        AerobicBuildLastsFourWeeks);

    public static readonly Rule R16 = new(
        "R16", Strength.Should, "Pre-season lasts at least three weeks.",
        "≥ 3 weeks before the first match", "pre-season phases",
        "Give pre-season more weeks in the template.",
        "Editorial",
        PreSeasonLastsThreeWeeks);

    public static readonly Rule R18 = new(
        "R18", Strength.Must, "The phases fill the cycle without gap or overlap, and every match lies in season or in pre-season.",
        "each phase starts the day after the one before; matches only in in-season and pre-season phases; a cycle may be shorter or longer than a year", "the whole cycle",
        "Move the match, or change the season dates so that the match lies inside.",
        "Editorial",
        PhasesTileTheCycleAndHoldTheMatches);

    private static IEnumerable<Finding> RecoveryLastsLongEnough(Rule rule, CheckedPlan plan)
    {
        var youth = plan.Squad.AgeGroup.IsYouth;
        return from phase in plan.Plan.Phases
               where phase.Kind == PhaseKind.Recovery && (youth ? phase.Weeks < 4 : phase.Weeks is < 2 or > 5)
               select WrongLength(rule, plan, phase, $"Recovery lasts {Weeks(phase)}; {(youth ? "young players need 4 or more" : "2 to 5 are usual")}.", phase.Weeks > 5 ? 5 : LeastWeeks(plan, PhaseKind.Recovery));
    }

    private static IEnumerable<Finding> AerobicBuildLastsFourWeeks(Rule rule, CheckedPlan plan) =>
        from phase in plan.Plan.Phases
        where phase.Kind == PhaseKind.AerobicBuild && phase.Weeks < 4 && !(phase.Weeks == 3 && Intervals(plan, phase) >= RuleLimits.IntervalSessionsForAWeek)
        select WrongLength(rule, plan, phase, $"The aerobic build lasts {Weeks(phase)}; endurance needs 4 or more to change, or 3 with {RuleLimits.IntervalSessionsForAWeek} interval sessions.", LeastWeeks(plan, PhaseKind.AerobicBuild));

    private static IEnumerable<Finding> PreSeasonLastsThreeWeeks(Rule rule, CheckedPlan plan) =>
        from phase in plan.Plan.Phases
        where phase.Kind == PhaseKind.PreSeason && phase.Weeks < 3
        select WrongLength(rule, plan, phase, $"Pre-season lasts {Weeks(phase)}; 3 or more let players get used to sprints and matches.", LeastWeeks(plan, PhaseKind.PreSeason));

    private static IEnumerable<Finding> PhasesTileTheCycleAndHoldTheMatches(Rule rule, CheckedPlan plan)
    {
        var expected = plan.Plan.Cycle.Start;
        foreach (var phase in plan.Plan.Phases)
        {
            if (phase.First != expected)
            {
                yield return rule.Finding(
                    plan.WeekOf(phase.First), $"A phase starts on {Iso(phase.First)}; the one before ended on {Iso(expected.PlusDays(-1))}.", new(Period.DaysBetween(expected, phase.First), 0, "days", [], null));
            }

            expected = phase.Last.PlusDays(1);
        }

        if (expected != plan.Plan.Cycle.End.PlusDays(1))
        {
            yield return rule.Finding(
                null, $"The last phase ends on {Iso(expected.PlusDays(-1))}, the cycle on {Iso(plan.Plan.Cycle.End)}.", new(Period.DaysBetween(expected, plan.Plan.Cycle.End.PlusDays(1)), 0, "days", [], null));
        }

        foreach (var match in plan.Matches)
        {
            var phase = plan.PhaseOn(match.Date);
            if (phase?.Kind is not (PhaseKind.InSeason or PhaseKind.PreSeason))
            {
                yield return rule.Finding(
                    plan.WeekOf(match.Date),
                    $"The match on {Iso(match.Date)} lies in {(phase is null ? "no phase" : FileName.Of(phase.Kind))}, neither in season nor in pre-season.",
                    new(1, 0, "sessions", [match.Uid], Cause.Fixtures));
            }
        }
    }

    private static string Weeks(Phase phase) => phase.Weeks == 1 ? "1 week" : $"{phase.Weeks} weeks";

    /// <summary>What the rules on phases ask of each, weeks.</summary>
    private static int LeastWeeks(CheckedPlan plan, PhaseKind kind) => kind switch
    {
        PhaseKind.Recovery or PhaseKind.Restore => plan.Squad.AgeGroup.IsYouth ? 4 : 2,
        PhaseKind.AerobicBuild => 4,
        PhaseKind.PreSeason => 3,
        _ => 1,
    };

    private static Finding WrongLength(Rule rule, CheckedPlan plan, Phase phase, string message, int limit)
    {
        var gap = plan.GapOf(phase);
        var weeks = gap.Sum(p => p.Weeks);
        var chain = plan.Request.Template.Chains.FirstOrDefault(c => c.Name == phase.Chain)?.Phases ?? [];
        var (forcedBy, why) = chain.Where((p, i) => p.Kind == phase.Kind && (p.FixedWeeks == phase.Weeks || IsGiven(i))).Any()
            ? (Cause.Coach, " A coach fixed that length.")
            : weeks < gap.Sum(p => LeastWeeks(plan, p.Kind)) ? (Cause.SeasonDates, $" The season dates leave {weeks} weeks.")
            : (Cause.Template, $" The template splits the {weeks} weeks between the seasons so.");
        return rule.Finding(plan.PlanningWeekOf(phase.First), message + why, new(phase.Weeks, limit, "weeks", [], forcedBy));

        bool IsGiven(int number) => plan.Request.Lengths?.Any(l => l.Chain == phase.Chain && l.Phase == number && l.Weeks == phase.Weeks) == true;
    }

    private static int Intervals(CheckedPlan plan, Phase phase) =>
        plan.Active.Count(s => phase.First <= s.Date && s.Date <= phase.Last && CheckedPlan.WorkoutOf(s) is { Sprint: true });

    private static string Iso(LocalDate date) => LocalDatePattern.Iso.Format(date);
}
