namespace ClubCycle.Planning.Workouts;

/// <summary>Where an exercise can be done.</summary>
public enum Setting
{
    Pitch,
    Gym,
    Hall,
    Hill,
    Home,
}
