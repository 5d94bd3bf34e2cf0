using System.Globalization;

namespace ClubCycle.Planning.Rules;

internal static class ReturnRules
{
    public static readonly Rule R19 = new(
        "R19", Strength.Should, "After two weeks off, training comes back in four steps.",
        "minutes of the added sessions in weeks 1 to 4 ≤ 50, 70, 80 and 90 % of what the phase's mix asks for in a full week with as many practices and matches; weeks begin with the first active day; sessions inside practice are not counted",
        "everyone, after 14 days or more without session, practice or match; a squad that joins in mid-year counts as returning",
        "Shorten these weeks' sessions or leave one out.",
        "Caterisano et al. 2019 (Strength Cond J 41(3):1), from memory",
        TrainingComesBackInFourSteps);

    private static IEnumerable<Finding> TrainingComesBackInFourSteps(Rule rule, CheckedPlan plan)
    {
        foreach (var (i, back) in plan.Returns.Index())
        {
            for (var n = 0; n < RuleLimits.ReturnShares.Count; n++)
            {
                var first = back.PlusWeeks(n);
                var last = first.PlusDays(6);
                if ((i + 1 < plan.Returns.Count && plan.Returns[i + 1] <= last) || plan.PhaseOn(first) is not { } phase)
                {
                    break;
                }

                List<PlannedSession> week = [.. plan.Active.Where(s => first <= s.Date && s.Date <= last)];
                List<PlannedSession> own = [.. week.Where(s => s is { Kind: SessionKind.Session, InsidePractice: false })];
                var minutes = own.Sum(s => s.Minutes);
                var full = plan.WantedSlots(phase.Kind, week.Count(s => s.Kind is SessionKind.Practice or SessionKind.Match)).Sum(s => s.Minutes);
                if (full > 0 && minutes > RuleLimits.ReturnShares[n] * full)
                {
                    var forcedBy = plan.Decided(own) ?? (plan.AtShortest(own) ? Cause.ShortestSessions : null);
                    yield return rule.Finding(
                        plan.PlanningWeekOf(first),
                        string.Create(CultureInfo.InvariantCulture, $"{minutes} min of added sessions in week {n + 1} after time off, {100.0 * minutes / full:0} % of a full week's {full}; {RuleLimits.ReturnShares[n]:0 %} at most.{(forcedBy == Cause.ShortestSessions ? " They are already at their shortest." : "")}"),
                        new(minutes, RuleLimits.ReturnShares[n] * full, "min", [.. own.Select(s => s.Uid)], forcedBy));
                }
            }
        }
    }
}
