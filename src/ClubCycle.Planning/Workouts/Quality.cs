namespace ClubCycle.Planning.Workouts;

/// <summary>A physical quality: <c>aerobic-endurance</c>, <c>speed</c>, <c>agility</c>, <c>core-strength</c>, <c>muscular-endurance</c>.</summary>
public enum Quality
{
    AerobicEndurance,
    Speed,
    Agility,
    CoreStrength,
    MuscularEndurance,
}
