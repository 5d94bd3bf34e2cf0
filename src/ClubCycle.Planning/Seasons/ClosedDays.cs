using NodaTime;

namespace ClubCycle.Planning.Seasons;

/// <summary>Days on which nothing is planned, both ends inclusive.</summary>
public sealed record ClosedDays(LocalDate First, LocalDate Last, string Why)
{
    public const int LongestWhy = 200;

    public bool Contains(LocalDate date) => date >= First && date <= Last;
}
