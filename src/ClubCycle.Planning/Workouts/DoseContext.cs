using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Weeks;

namespace ClubCycle.Planning.Workouts;

/// <summary>What the steps of a session depend on.</summary>
/// <param name="Minutes">Whole session, warm-up and cool-down included.</param>
/// <param name="WeekInPhase">1-based.</param>
/// <param name="Turn">Counts the sessions of this workout in the cycle from 0, so that sheets vary.</param>
/// <param name="ContactsAtMost">What earlier jumps allow today (R32); null where only experience decides.</param>
public sealed record DoseContext(
    AgeGroup AgeGroup,
    TrainingAge TrainingAge,
    PhaseKind Phase,
    int WeekInPhase,
    WeekLoading Loading,
    int Minutes,
    int Turn,
    int? ContactsAtMost = null);
