using NodaTime;

namespace ClubCycle.Planning.Squads;

/// <summary>When the squad can train on some weekdays: a session starts at <paramref name="From"/> or later and ends by <paramref name="To"/>.</summary>
public sealed record TimeWindow(IReadOnlyList<IsoDayOfWeek> Days, LocalTime From, LocalTime To);
