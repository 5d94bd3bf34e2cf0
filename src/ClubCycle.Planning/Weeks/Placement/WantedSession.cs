using ClubCycle.Planning.Workouts;
using NodaTime;

namespace ClubCycle.Planning.Weeks.Placement;

/// <summary>A session that a week asks for, before it has a day.</summary>
/// <param name="Pinned">A person decided the day; the planner keeps it even where a rule objects (the rule book then says so).</param>
/// <param name="KeepDate">The published day, or the pinned one.</param>
internal sealed record WantedSession(string Slot, Workout Workout, int Minutes, bool Pinned = false, LocalDate? KeepDate = null, LocalTime? KeepStart = null);
