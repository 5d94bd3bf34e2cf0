using ClubCycle.Planning.Phases;
using NodaTime;

namespace ClubCycle.Planning.Squads;

/// <summary>A weekly hockey training on the pitch. It exists already; the planner plans around it.</summary>
/// <param name="Start">Local to the club's zone.</param>
/// <param name="Minutes">15 to 240.</param>
/// <param name="Phases">The phases in which it takes place.</param>
/// <param name="Place">Where it takes place; null when nobody said.</param>
public sealed record Practice(IsoDayOfWeek Day, LocalTime Start, int Minutes, IReadOnlyList<PhaseKind> Phases, string? Place = null)
{
    public const int LongestPlace = Seasons.Fixture.LongestPlace;

    public static IReadOnlyList<PhaseKind> UsualPhases { get; } = [PhaseKind.PreSeason, PhaseKind.InSeason];
}
