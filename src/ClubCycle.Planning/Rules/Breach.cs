using System.Globalization;

namespace ClubCycle.Planning.Rules;

/// <summary>What is wrong with one session.</summary>
/// <param name="Measured">What the sheet has, in <paramref name="Unit"/>.</param>
/// <param name="Limit">What the rule asks for.</param>
/// <param name="Step">Position of the step that is meant; null when the whole sheet is.</param>
internal readonly record struct Breach(double Measured, double Limit, string Unit, int? Step = null)
{
    /// <summary>How far off, as a share of the limit: worse is larger, whatever the unit.</summary>
    public double Size => Math.Abs(Measured - Limit) / Math.Max(1, Limit);
}

internal static class Breaches
{
    /// <summary>One finding for each phase: its worst session in words, and in how many weeks it happens. Sheets repeat from week to week, so would the words.</summary>
    /// <param name="say">What is wrong, as a sentence, for the worst.</param>
    public static IEnumerable<Finding> OncePerPhase(
        this Rule rule, CheckedPlan plan, Func<CheckedSession, Breach?> find, Func<CheckedSession, Breach, string> say, Cause? forcedBy = null, Strength? strength = null)
    {
        foreach (var (_, sheets) in plan.SheetsByPhase)
        {
            List<CheckedSession>? broken = null;
            var (worst, where) = (default(Breach), sheets[0]);
            foreach (var sheet in sheets)
            {
                if (find(sheet) is not { } breach)
                {
                    continue;
                }

                if (broken is null || breach.Size > worst.Size)
                {
                    (worst, where) = (breach, sheet);
                }

                (broken ??= []).Add(sheet);
            }

            if (broken is not null)
            {
                yield return rule.Finding(
                    plan.WeekOf(where.Session.Date),
                    $"'{where.Session.Title}' ({Day(where.Session)}): {say(where, worst)}{Weeks(broken)}",
                    new FindingFacts(worst.Measured, worst.Limit, worst.Unit, [.. broken.Select(s => s.Session.Uid)], forcedBy ?? plan.Decided(broken.Select(s => s.Session))),
                    strength);
            }
        }
    }

    public static string Day(PlannedSession session) => session.StartsAt.ToString("ddd d MMM, HH:mm", CultureInfo.InvariantCulture);

    private static string Weeks(List<CheckedSession> broken)
    {
        var weeks = broken.Select(s => s.Week).Distinct().Count();
        return weeks == 1 ? "" : string.Create(CultureInfo.InvariantCulture, $" So in {weeks} weeks of this phase.");
    }
}
