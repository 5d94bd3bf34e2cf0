using NodaTime;

namespace ClubCycle.Planning.Seasons;

/// <summary>An unbroken run of competition weeks. First and last match day, both inclusive.</summary>
public readonly record struct Stint(LocalDate First, LocalDate Last);
