using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Weeks;
using NodaTime;

namespace ClubCycle.Planning;

/// <summary>A squad's year. All lists are in date order; sessions by date, start, slot.</summary>
public sealed record SquadPlan(
    DateInterval Cycle,
    IReadOnlyList<Phase> Phases,
    IReadOnlyList<PlanWeek> Weeks,
    IReadOnlyList<PlannedSession> Sessions,
    IReadOnlyList<Finding> Findings,
    PlanChanges Changes);
