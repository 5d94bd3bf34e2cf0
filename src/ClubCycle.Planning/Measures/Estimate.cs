namespace ClubCycle.Planning.Measures;

/// <summary>A planning value worked out from a player's own numbers. Not rounded: round when it is shown.</summary>
/// <param name="Value">In <paramref name="Unit"/>.</param>
/// <param name="Unit">As printed: <c>b/min</c>, <c>mL/kg/min</c>, <c>km/h</c>, <c>kg</c>.</param>
/// <param name="Name">What it is, in a coach's words.</param>
/// <param name="HowSure">In plain words, with the usual error where one is known.</param>
/// <param name="Source">Where the formula comes from; says "from memory" where it was not checked in print.</param>
public sealed record Estimate(double Value, string Unit, string Name, string HowSure, string Source);
