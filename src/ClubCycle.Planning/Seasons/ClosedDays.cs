using NodaTime;

namespace ClubCycle.Planning.Seasons;

/// <summary>Days on which nothing is planned, both ends inclusive.</summary>
public sealed record ClosedDays(LocalDate First, LocalDate Last, string Why)
{
    public const int LongestWhy = 100;
    public const string WithoutReason = "closed";

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
        if ((PlanDates.Problem(First, "closed", "closed.first") ?? PlanDates.Problem(Last, "closed", "closed.last")) is { } outside)
        {
            problems.Add(outside);
        }

        if (Last < First)
        {
            problems.Add(new Problem("closed.reversed", "The closed days end before they start. Swap the two dates.", "closed.last"));
        }
        else if (problems.Count == 0 && Last >= First.PlusYears(1))
        {
            problems.Add(new Problem("closed.too-long", "The closed days are longer than a year. Check the year of both dates, or enter them in parts.", "closed.last"));
        }

        if (TypedText.LineProblem(Why, LongestWhy, "closed.why", "reason", "closed.why") is { } unreadable)
        {
            problems.Add(unreadable);
        }

        return problems;
    }
}
