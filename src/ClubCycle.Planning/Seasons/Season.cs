using NodaTime;

namespace ClubCycle.Planning.Seasons;

/// <summary>One squad's competition dates in a cycle: one to six stints in order. Made by <c>Season.Create</c> in this folder.</summary>
public sealed partial record Season
{
    public const int MostStints = 6;
    public const int LongestStintsInWeeks = 45;
    public const int LongestCycleInWeeks = 60;

    private Season(LocalDate previousLastDay, IReadOnlyList<Stint> stints) => (PreviousLastDay, Stints) = (previousLastDay, stints);

    /// <summary>Last match day of the season before. The cycle starts on the next day.</summary>
    public LocalDate PreviousLastDay { get; }

    /// <summary>In order, not overlapping, at least one.</summary>
    public IReadOnlyList<Stint> Stints { get; }

    /// <summary>The planning year, both ends inclusive.</summary>
    public DateInterval Cycle => new(PreviousLastDay.PlusDays(1), Stints[^1].Last);
}
