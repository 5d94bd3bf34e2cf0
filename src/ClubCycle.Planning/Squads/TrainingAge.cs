namespace ClubCycle.Planning.Squads;

/// <summary>Years of structured physical training behind the players: under one, one to three, more than three.</summary>
public enum TrainingAge
{
    New,
    Some,
    Trained,
}
