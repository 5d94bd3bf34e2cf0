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
    PlanChanges Changes)
{
    /// <summary>Slots without a session because their week would hold too much; planning again leaves them out while their week stays as easy.</summary>
    public IReadOnlyList<LeftOutSlot> LeftOut { get; init; } = [];
}

/// <param name="Week">The week's first day.</param>
public readonly record struct LeftOutSlot(LocalDate Week, string Slot);
