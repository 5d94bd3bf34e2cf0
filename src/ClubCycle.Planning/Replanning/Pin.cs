using NodaTime;

namespace ClubCycle.Planning.Replanning;

/// <summary>A person's decision about one slot of one week that re-planning must keep.</summary>
/// <param name="WeekFirst">First day of the slot's week.</param>
/// <param name="Slot">As in <see cref="PlannedSession.Slot"/>.</param>
/// <param name="Date">The day it takes place; null leaves the day to the planner.</param>
/// <param name="Start">Local start; null leaves the time to the planner.</param>
/// <param name="Skipped">The session does not take place this week.</param>
/// <param name="Workout">The workout that it is instead of the template's; null leaves the template's. Needed when the coach added the session.</param>
/// <param name="Minutes">How long it lasts; null leaves that to the planner. Needed when the coach added the session.</param>
/// <param name="Note">What the coach tells the players about it; null for nothing.</param>
public sealed record Pin(LocalDate WeekFirst, string Slot, LocalDate? Date, LocalTime? Start, bool Skipped = false, string? Workout = null, int? Minutes = null, string? Note = null)
{
    /// <summary>Start of the slot of a session that no template asks for: a coach added it. A number follows.</summary>
    public const string AddedSlot = "added.";

    public const int LongestNote = 200;

    public static string AddedSlotOf(int number) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{AddedSlot}{number}");

    public bool IsAdded => Slot.StartsWith(AddedSlot, StringComparison.Ordinal);
}
