using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Planning.Rules;

internal static class UpkeepRules
{
    public static readonly Rule R23 = new(
        "R23", Strength.Should, "In season and in the break, endurance is kept by two efforts a week.",
        "≥ 2 a week; a match of 40 min or more, a practice and a run of 13 min or more count (practices: editorial)", "in season and break; children under 11 play, they are not judged (editorial)",
        "Add an easy run, or lengthen the one that is there.",
        "Spiering et al. 2021 (J Strength Cond Res 35:1449)",
        EnduranceIsKeptInSeason, TemplateDecides: true);

    internal static bool KeepsEndurance(PlannedSession session) => session.Kind switch
    {
        SessionKind.Match => session.Minutes >= RuleLimits.AerobicMatchMinutes,
        SessionKind.Practice => session.Minutes >= RuleLimits.AerobicMinutes,
        _ => Gives(session.Qualities) && MainMinutes(session) >= RuleLimits.AerobicMinutes,
    };

    /// <summary>Minutes of the main part; of the whole session where it has no sheet.</summary>
    private static int MainMinutes(PlannedSession session) =>
        session.Steps.Count == 0 ? session.Minutes : session.Steps.Where(s => s.Part == "main").Sum(s => s.Minutes ?? 0);

    private static bool Gives(IReadOnlyList<Quality> qualities) => qualities.Contains(Quality.AerobicEndurance);

    private static IEnumerable<Finding> EnduranceIsKeptInSeason(Rule rule, CheckedPlan plan)
    {
        if (plan.Squad.AgeGroup.YoungestAge < RuleLimits.QualitiesFromAge)
        {
            yield break;
        }

        foreach (var phase in plan.Plan.Phases.Where(p => p.Kind is PhaseKind.InSeason or PhaseKind.Break))
        {
            var weeks = plan.WeeksOf(phase);
            List<CheckedWeek> fewer = [.. weeks.Where(w => w.Active.Count(KeepsEndurance) < RuleLimits.AerobicStimuli)];
            if (fewer.Count > 0)
            {
                var fewest = fewer.Min(w => w.Active.Count(KeepsEndurance));
                yield return rule.Finding(
                    fewer[0].Week.First,
                    $"{fewer.Count} of {weeks.Count} weeks of this {FileName.Of(phase.Kind)} phase hold fewer than {RuleLimits.AerobicStimuli} efforts for endurance, the fewest {fewest}.",
                    new(fewest, RuleLimits.AerobicStimuli, "sessions", [], CheckedPlan.Together(fewer.Select(w => WhyFewer(plan, w)))));
            }
        }
    }

    private static Cause? WhyFewer(CheckedPlan plan, CheckedWeek week) =>
        plan.WhyFewer(week, w => Gives(w.Qualities), RuleLimits.AerobicStimuli - week.Contacts.Count(KeepsEndurance))
        ?? (week.Week.WeekInPhase == 1 ? Cause.EasierWeek : null);
}
