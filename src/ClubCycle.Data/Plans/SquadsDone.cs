namespace ClubCycle.Data.Plans;

/// <summary>How far work over many squads has come. Reports of many cores may arrive out of order.</summary>
public readonly record struct SquadsDone(int Done, int Of);
