using ClubCycle.Planning.Phases;
using NodaTime;

namespace ClubCycle.Planning.Weeks;

/// <summary>Seven days from the club's first weekday.</summary>
/// <param name="Name">ISO 8601 such as <c>2026-W10</c> when weeks start on Monday; else the same form for the ISO week that holds the week's fourth day.</param>
/// <param name="First">Inclusive; may lie before the cycle's first day for the first week.</param>
/// <param name="WeekInPhase">1-based.</param>
/// <param name="PlannedLoadAu">Planned effort (CR10) × minutes summed over sessions, practices and matches, arbitrary units.</param>
public sealed record PlanWeek(string Name, LocalDate First, PhaseKind Phase, int WeekInPhase, WeekLoading Loading, int PlannedLoadAu)
{
    public LocalDate Last => First.PlusDays(6);
}
