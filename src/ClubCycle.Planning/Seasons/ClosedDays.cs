using NodaTime;
using NodaTime.Text;

namespace ClubCycle.Planning.Seasons;

/// <summary>Days on which nothing is planned, both ends inclusive.</summary>
public sealed record ClosedDays(LocalDate First, LocalDate Last, string Why)
{
    public const int LongestWhy = 100;
    public const string WithoutReason = "closed";

    private static readonly LocalDate Earliest = new(1900, 1, 1);
    private static readonly LocalDate Latest = new(2200, 12, 31);

    public bool Contains(LocalDate date) => date >= First && date <= Last;

    /// <summary>Every day of these is closed by the others already, whatever their reasons.</summary>
    public bool AreWithin(IEnumerable<ClosedDays> others)
    {
        var date = First;
        foreach (var other in others.OrderBy(o => o.First))
        {
            if (other.Contains(date))
            {
                date = other.Last.PlusDays(1);
            }
        }

        return date > Last;
    }

    /// <summary>Why a club cannot take them; empty when it can.</summary>
    public IReadOnlyList<Problem> Problems()
    {
        List<Problem> problems = [];
        foreach (var (date, at) in (ReadOnlySpan<(LocalDate, string)>)[(First, "closed.first"), (Last, "closed.last")])
        {
            if (date < Earliest || date > Latest)
            {
                problems.Add(new Problem("closed.date-out-of-range", $"{LocalDatePattern.Iso.Format(date)} is outside the years 1900 to 2200. Check the year.", at));
            }
        }

        if (Last < First)
        {
            problems.Add(new Problem("closed.reversed", "The closed days end before they start. Swap the two dates.", "closed.last"));
        }
        else if (problems.Count == 0 && Last >= First.PlusYears(1))
        {
            problems.Add(new Problem("closed.too-long", "The closed days are longer than a year. Check the year of both dates, or enter them in parts.", "closed.last"));
        }

        if (Why.Trim().Length > LongestWhy)
        {
            problems.Add(new Problem("closed.why-too-long", $"The reason has {Why.Trim().Length} characters; use {LongestWhy} at most.", "closed.why"));
        }

        if (Why.Trim().Any(char.IsControl))
        {
            problems.Add(new Problem("closed.why-control-character", "The reason holds a line break or an invisible control character. Type it again in one line.", "closed.why"));
        }

        return problems;
    }
}
