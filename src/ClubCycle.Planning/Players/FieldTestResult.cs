using NodaTime;

namespace ClubCycle.Planning.Players;

/// <summary>A player's result of a field test.</summary>
/// <param name="Value">In the unit of its <see cref="TestKind"/>.</param>
/// <param name="Second">Seconds of a time trial, repetitions of a lift; null for the others.</param>
/// <param name="Exercise">A library name for a lift; null for the others.</param>
public sealed record FieldTestResult(TestKind Kind, LocalDate On, double Value, int? Second = null, string? Exercise = null);
