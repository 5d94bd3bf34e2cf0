using NodaTime;

namespace ClubCycle.Planning.Rules;

/// <summary>How often sessions of one kind come.</summary>
internal static class Frequency
{
    /// <param name="sessions">By start.</param>
    /// <param name="kind">As in <c>3 sessions with jumps</c>.</param>
    public static IEnumerable<Finding> TooManyAWeek(Rule rule, IReadOnlyList<CheckedSession> sessions, string kind, Func<CheckedWeek, int> mostIn) =>
        from week in sessions.Where(s => s.Week is not null).GroupBy(s => s.Week!)
        let count = week.Count()
        let most = mostIn(week.Key)
        where count > most
        select rule.Finding(
            week.Key.Week.First,
            $"{count} sessions with {kind} this week; {most} at most.",
            new FindingFacts(count, most, "sessions", [.. week.Select(s => s.Session.Uid)], null));

    /// <param name="sessions">By start.</param>
    /// <param name="kind">As in <c>jumps on two days in a row</c>.</param>
    public static IEnumerable<Finding> DaysInARow(Rule rule, CheckedPlan plan, IReadOnlyList<CheckedSession> sessions, string kind)
    {
        for (var i = 1; i < sessions.Count; i++)
        {
            var (earlier, later) = (sessions[i - 1].Session, sessions[i].Session);
            var days = Period.DaysBetween(earlier.Date, later.Date);
            if (days < 2)
            {
                yield return rule.Finding(
                    plan.WeekOf(later.Date),
                    $"'{earlier.Title}' ({Breaches.Day(earlier)}) and '{later.Title}' ({Breaches.Day(later)}) hold {kind} {(days == 0 ? "on one day" : "on two days in a row")}; a day belongs between.",
                    new FindingFacts(days, 2, "days", [earlier.Uid, later.Uid], plan.Decided(earlier, later)));
            }
        }
    }
}
