using ClubCycle.Planning.Phases;

namespace ClubCycle.Planning.Rules;

/// <summary>The weeks of a phase that hold too little of something. Weeks that the cycle cuts, and weeks without any session, are left out.</summary>
/// <param name="First">The first of them.</param>
/// <param name="Count">How many.</param>
/// <param name="Of">Weeks of the phase that were looked at.</param>
/// <param name="Fewest">Minutes in the worst of them.</param>
/// <param name="MostSessions">Sessions, practices and matches in the fullest of them.</param>
internal sealed record ShortWeeks(Phase Phase, CheckedWeek First, int Count, int Of, int Fewest, int MostSessions)
{
    /// <summary>One for each phase that has such a week.</summary>
    /// <param name="minutesIn">Minutes of a week that is short; null when it is not.</param>
    public static IEnumerable<ShortWeeks> In(CheckedPlan plan, Func<ArraySegment<CheckedSession>, int?> minutesIn)
    {
        ShortWeeks? found = null;
        Phase? phase = null;
        var weeks = 0;
        foreach (var (week, sheets) in plan.SheetsByWeek)
        {
            if (!ReferenceEquals(sheets[0].Phase, phase))
            {
                if (found is not null)
                {
                    yield return found with { Of = weeks };
                }

                (found, phase, weeks) = (null, sheets[0].Phase, 0);
            }

            if (!week.Whole)
            {
                continue;
            }

            weeks++;
            if (phase is not null && minutesIn(sheets) is { } minutes)
            {
                found = found is null ? new(phase, week, 1, weeks, minutes, sheets.Count) : found with { Count = found.Count + 1, Fewest = Math.Min(found.Fewest, minutes), MostSessions = Math.Max(found.MostSessions, sheets.Count) };
            }
        }

        if (found is not null)
        {
            yield return found with { Of = weeks };
        }
    }
}
