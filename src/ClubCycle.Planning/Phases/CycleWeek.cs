using NodaTime;

namespace ClubCycle.Planning.Phases;

/// <summary>A planning week of the cycle with its phase, before anything is placed in it.</summary>
/// <param name="First">First weekday; the week may reach beyond the cycle's first or last day.</param>
/// <param name="PhaseIndex">Which phase of the cycle, 0-based.</param>
/// <param name="WeekInPhase">1-based.</param>
/// <param name="WeeksInPhase">Length of the phase.</param>
internal sealed record CycleWeek(LocalDate First, PhaseKind Phase, int PhaseIndex, int WeekInPhase, int WeeksInPhase)
{
    public LocalDate Last => First.PlusDays(6);
}
