namespace ClubCycle.Planning.Workouts;

/// <summary>How hard a jump lands: low (two feet, small drop), medium, high (single-leg series). Shock jumps are never planned.</summary>
public enum JumpClass
{
    None,
    Low,
    Medium,
    High,
}
