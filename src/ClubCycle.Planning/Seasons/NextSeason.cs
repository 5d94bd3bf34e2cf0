using NodaTime;

namespace ClubCycle.Planning.Seasons;

/// <summary>The season a year later, to be looked at and changed by people.</summary>
public static class NextSeason
{
    private const int UsualWeeks = 52;

    /// <summary>Further away the first match day no longer follows the usual one: people chose other dates.</summary>
    private const int MostDrift = 7;

    /// <summary>
    /// The same weekdays 52 weeks later. Each year that is a day or two earlier in the calendar; 53 weeks where that brings the first match nearer to its usual date again.
    /// </summary>
    /// <param name="usual">The first match day in the first of the seasons that were taken over from each other; null for this season's own.</param>
    public static Result<Season> Propose(Season season, LocalDate? usual = null)
    {
        var first = season.Stints[0].First;
        var anchor = usual is { } given && DaysFrom(first, given) <= MostDrift ? given : first;
        var weeks = DaysFrom(first.PlusWeeks(UsualWeeks + 1), anchor) < DaysFrom(first.PlusWeeks(UsualWeeks), anchor) ? UsualWeeks + 1 : UsualWeeks;
        return Season.Create(season.Stints[^1].Last, [.. season.Stints.Select(s => new Stint(s.First.PlusWeeks(weeks), s.Last.PlusWeeks(weeks)))]);
    }

    /// <summary>Days between a date and the nearest anniversary of another.</summary>
    private static int DaysFrom(LocalDate date, LocalDate other) =>
        Enumerable.Range(-1, 3).Min(years => Math.Abs(Period.DaysBetween(date, other.PlusYears(date.Year - other.Year + years))));
}
