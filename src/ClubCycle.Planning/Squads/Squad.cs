using NodaTime;

namespace ClubCycle.Planning.Squads;

/// <summary>A group that trains and plays together, as far as planning needs to know it. Check with <c>SquadCheck</c>.</summary>
/// <param name="Key">Identity that session ids are derived from; the same key keeps calendars in step over the years.</param>
/// <param name="MatchStart">Usual local start of a match; 14:00 where the club has not said.</param>
/// <param name="Windows">When added sessions may take place; empty means any day, 17:00–21:00 (10:00–18:00 at weekends).</param>
public sealed record Squad(
    Guid Key,
    string Name,
    AgeGroup AgeGroup,
    TrainingAge TrainingAge,
    IReadOnlyList<Practice> Practices,
    IsoDayOfWeek MatchDay,
    LocalTime? MatchStart,
    IReadOnlyList<TimeWindow> Windows)
{
    public static LocalTime UsualMatchStart { get; } = new(14, 0);
}
