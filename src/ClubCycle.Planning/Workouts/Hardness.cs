namespace ClubCycle.Planning.Workouts;

/// <summary><c>Hard</c> is a high-intensity session: match, maximal sprints, medium or high jumps, heavy lower-body lifting, intervals near maximum.</summary>
public enum Hardness
{
    Easy,
    Moderate,
    Hard,
}
