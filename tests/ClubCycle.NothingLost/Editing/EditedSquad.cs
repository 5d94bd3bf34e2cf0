namespace ClubCycle.NothingLost.Editing;

/// <summary>A squad of one of a history's clubs.</summary>
/// <param name="Mark">Begins every text that is written for this squad, and for no other.</param>
internal sealed record EditedSquad(EditedClub Club, Guid Id, string Mark, IReadOnlyList<Guid> Matches);

/// <param name="Season">The club's own, which all its squads plan for.</param>
internal sealed record EditedClub(Guid Id, Guid Season);
