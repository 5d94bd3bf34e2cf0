using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Squads;
using NodaTime;

namespace ClubCycle.Planning.Weeks.Placement;

/// <summary>One week's placement problem.</summary>
/// <param name="First">First day of the week.</param>
/// <param name="Wanted">Most valuable first: when not all fit, the last is dropped.</param>
/// <param name="Contacts">Practices and matches of this week.</param>
/// <param name="Around">What this week's spacing must see outside it or in its past days: matches and sessions of the five days before, matches and pinned sessions of the three days after.</param>
/// <param name="PublishedAhead">Published sessions of the three days after: they can move, at the cost of a published day.</param>
/// <param name="Free">For each of the seven days: may anything be placed there.</param>
/// <param name="ActiveDaysAtMost">Days with a session, practice or match.</param>
/// <param name="HardAtMost">Hard sessions in the week, matches included.</param>
internal sealed record WeekToPlace(
    Squad Squad,
    LocalDate First,
    PhaseKind Phase,
    IReadOnlyList<WantedSession> Wanted,
    IReadOnlyList<Contact> Contacts,
    IReadOnlyList<Anchor> Around,
    IReadOnlyList<Anchor> PublishedAhead,
    IReadOnlyList<bool> Free,
    int ActiveDaysAtMost,
    int HoursBetweenHard,
    int HardAtMost,
    int SessionsPerContactDay,
    IReadOnlyDictionary<string, int>? BaseDays);

/// <summary>Something at a fixed time that spacing rules look at.</summary>
/// <param name="Minute">Minutes from midnight of the week's first day; negative before it.</param>
internal readonly record struct Anchor(int Minute, bool Hard, bool Match, bool HeavyLift, Workouts.JumpClass Jumps);

internal sealed record Placed(WantedSession Wanted, LocalDate Date, LocalTime Start, bool InsidePractice, string Why);

internal sealed record PlacedWeek(IReadOnlyList<Placed> Placed, IReadOnlyList<(WantedSession Wanted, string Why)> Dropped);
