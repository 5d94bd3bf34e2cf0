using NodaTime;

namespace ClubCycle.Planning;

/// <summary>The days that can be planned with: a year far from them is a slip of the keyboard.</summary>
public static class PlanDates
{
    public static readonly LocalDate Earliest = new(1900, 1, 1);
    public static readonly LocalDate Latest = new(2200, 12, 31);

    /// <summary>What is wrong with a day; null for nothing.</summary>
    /// <param name="thing">The first part of the problem's code: <c>closed</c>.</param>
    public static Problem? Problem(LocalDate date, string thing, string at) =>
        date >= Earliest && date <= Latest ? null : new Problem($"{thing}.date-out-of-range", $"{NodaTime.Text.LocalDatePattern.Iso.Format(date)} is outside the years {Earliest.Year} to {Latest.Year}. Check the year.", at);
}
