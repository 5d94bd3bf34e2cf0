using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using NodaTime;

namespace ClubCycle.NothingLost;

/// <summary>Squads and seasons that have a draft which can be published.</summary>
internal static class APlan
{
    public static readonly LocalDate Before = new(2026, 2, 28);

    /// <summary>A short season, so that planning it takes little.</summary>
    /// <param name="later">Days, below 28.</param>
    public static IReadOnlyList<Stint> Stints(int later) => [new(new LocalDate(2026, 5, 4).PlusDays(later), new LocalDate(2026, 6, 7).PlusDays(later))];

    public static Squad Squad(string name) => new(
        Guid.Empty, name, AgeGroup.Senior, TrainingAge.Trained,
        [new Practice(IsoDayOfWeek.Tuesday, new LocalTime(19, 30), 90, Practice.UsualPhases), new Practice(IsoDayOfWeek.Thursday, new LocalTime(19, 30), 90, Practice.UsualPhases)],
        IsoDayOfWeek.Saturday, new LocalTime(14, 0), []);
}
