using ClubCycle.Planning;

namespace ClubCycle.Data.Plans;

/// <summary>What became of one squad in an act over many.</summary>
public sealed record SquadOutcome<T>(Guid SquadId, Result<T> Result);
