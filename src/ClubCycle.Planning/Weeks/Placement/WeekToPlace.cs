using ClubCycle.Planning.Squads;
using NodaTime;

namespace ClubCycle.Planning.Weeks.Placement;

/// <summary>One week's placement problem; <c>docs/placement.md</c> says what it means.</summary>
/// <param name="First">First day of the week.</param>
/// <param name="Wanted">Most valuable first: when not all fit, the last is dropped.</param>
/// <param name="Contacts">Practices and matches of this week.</param>
/// <param name="Around">Facts that spacing must see: what happened in this week and in the five days before, matches of the five days before and of the three days after.</param>
/// <param name="Free">For each of the seven days: may anything be placed there.</param>
/// <param name="ActiveDaysAtMost">Days with a session, practice or match.</param>
/// <param name="HardAtMost">Hard sessions in the week, matches included.</param>
/// <param name="BaseDays">The usual day of each slot, 0 to 6; null in a base week itself.</param>
internal sealed record WeekToPlace(
    Squad Squad,
    LocalDate First,
    IReadOnlyList<WantedSession> Wanted,
    IReadOnlyList<Contact> Contacts,
    IReadOnlyList<Anchor> Around,
    IReadOnlyList<bool> Free,
    int ActiveDaysAtMost,
    int HoursBetweenHard,
    int HardAtMost,
    int SessionsPerContactDay,
    IReadOnlyDictionary<string, int>? BaseDays);

/// <summary>Something at a fixed time that spacing rules look at.</summary>
/// <param name="Minute">Minutes from midnight of the week's first day; negative before it.</param>
/// <param name="Title">As coaches read it.</param>
/// <param name="HoursBetweenHard">What its own week asks for; 0 leaves it to the other's.</param>
internal readonly record struct Anchor(int Minute, bool Hard, bool Match, bool HeavyLift, Workouts.JumpClass Jumps, string Title = "", int HoursBetweenHard = 0);

/// <param name="Session">Its number among the week's wanted sessions.</param>
internal sealed record Placed(WantedSession Wanted, int Session, LocalDate Date, LocalTime Start, bool InsidePractice);

/// <param name="Placed">By date and start.</param>
internal sealed record PlacedWeek(IReadOnlyList<Placed> Placed, IReadOnlyList<(WantedSession Wanted, string Why)> Dropped)
{
    /// <summary>The session of a slot; null when it has no place.</summary>
    public Placed? Of(string slot)
    {
        foreach (var placed in Placed)
        {
            if (placed.Wanted.Slot == slot)
            {
                return placed;
            }
        }

        return null;
    }
}
