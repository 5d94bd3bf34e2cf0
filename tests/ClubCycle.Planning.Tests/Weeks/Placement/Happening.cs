using ClubCycle.Planning.Workouts;

namespace ClubCycle.Planning.Tests.Weeks.Placement;

/// <summary>Something in a squad's calendar, in minutes from an arbitrary midnight.</summary>
/// <param name="Workout">Null for matches and practices.</param>
/// <param name="Fixed">Not the planner's choice: a pin, or the past.</param>
internal sealed record Happening(int Minute, int Length, bool Match, Workout? Workout, bool Inside = false, bool Fixed = false)
{
    public int Day { get; } = (int)Math.Floor(Minute / 1440.0);

    public int End => Minute + Length;

    public bool Practice => !Match && Workout is null;

    public bool Hard => Match || Workout?.Hardness == Hardness.Hard;
}
