using ClubCycle.Planning.Phases;

namespace ClubCycle.Planning.Rules;

/// <summary>The weeks of a phase that hold too little of something. Weeks that the cycle cuts, and weeks without any session, are left out.</summary>
/// <param name="Weeks">Those weeks, each with the sheets it holds.</param>
/// <param name="Of">Weeks of the phase that were looked at.</param>
/// <param name="Fewest">Minutes in the worst of them.</param>
internal sealed record ShortWeeks(Phase Phase, List<(CheckedWeek Week, ArraySegment<CheckedSession> Sheets)> Weeks, int Of, int Fewest)
{
    public CheckedWeek First => Weeks[0].Week;

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
                found = (found ?? new(phase, [], weeks, minutes)) with { Fewest = Math.Min(found?.Fewest ?? minutes, minutes) };
                found.Weeks.Add((week, sheets));
            }
        }

        if (found is not null)
        {
            yield return found with { Of = weeks };
        }
    }
}
