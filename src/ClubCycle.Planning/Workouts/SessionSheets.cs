using ClubCycle.Planning.Squads;

namespace ClubCycle.Planning.Workouts;

public static class SessionSheets
{
    public static SessionSheet For(Workout workout, DoseContext dose) => new([], []);

    public static SessionSheet ForPractice(AgeGroup ages) => new([], []);

    public static SessionSheet ForMatch(AgeGroup ages) => new([], []);

    public static SessionSheet ForActiveRecovery(AgeGroup ages) => new([], []);
}
