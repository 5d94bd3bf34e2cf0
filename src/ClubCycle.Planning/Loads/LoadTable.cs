using ClubCycle.Planning.Squads;

namespace ClubCycle.Planning.Loads;

/// <summary>Planned efforts (CR10, 0–10) and minutes of what the planner does not design itself. Editorial values.</summary>
public static class LoadTable
{
    public const int PracticeEffort = 5;
    public const int MatchEffort = 8;
    public const int ActiveRecoveryEffort = 1;
    public const int ActiveRecoveryMinutes = 20;

    /// <summary>Four quarters of fifteen minutes; younger children play shorter forms.</summary>
    public static int MatchMinutes(AgeGroup ages) => ages.Under switch
    {
        <= 10 => 30,
        <= 12 => 40,
        <= 14 => 50,
        _ => 60,
    };
}
