using NodaTime;

namespace ClubCycle.Planning.Seasons;

/// <summary>A match of the squad.</summary>
/// <param name="Key">Identity that survives a move; null in a plan file, where the date identifies it.</param>
/// <param name="Start">Local start; the squad's usual one when null.</param>
/// <param name="Place">Where it is played; null when nobody said.</param>
public sealed record Fixture(LocalDate Date, LocalTime? Start = null, string? Opponent = null, Guid? Key = null, string? Place = null)
{
    public const int LongestPlace = 100;
}
