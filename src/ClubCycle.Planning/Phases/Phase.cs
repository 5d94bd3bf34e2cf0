using NodaTime;

namespace ClubCycle.Planning.Phases;

/// <summary>Part of the cycle with one purpose. Phases tile the cycle: no gap, no overlap.</summary>
/// <param name="First">Inclusive.</param>
/// <param name="Last">Inclusive.</param>
/// <param name="Weeks">Planning weeks that belong to it (the first and last week of a cycle may be cut).</param>
/// <param name="Chain">Name of the chain it came from; empty for in-season phases.</param>
public sealed record Phase(PhaseKind Kind, LocalDate First, LocalDate Last, int Weeks, string Chain);
