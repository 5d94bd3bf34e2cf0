using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Planning.Weeks.Placement;

/// <summary>What placement needs to know of a session.</summary>
[Flags]
internal enum Traits
{
    None = 0,
    Hard = 1,
    HeavyLift = 2,
    Jumps = 4,
    HighJumps = 8,
    NotEasy = 16,

    /// <summary>Strength work of minors, which keeps off consecutive days.</summary>
    YouthStrength = 32,

    /// <summary>A person fixed its place: a fact for the others.</summary>
    Pinned = 64,

    Spaced = Hard | HeavyLift | Jumps,
}

/// <summary>The hours between starts that two things need (R25, R33, R36).</summary>
internal static class Spacing
{
    public const int HoursBetweenHeavyLifts = 48;
    public const int HoursBetweenJumps = 48;
    public const int HoursBetweenHighJumps = 72;

    public static Traits TraitsOf(WantedSession wanted, bool youth)
    {
        var workout = wanted.Workout;
        return TraitsOf(workout.Hardness == Hardness.Hard, workout.HeavyLift, workout.Jumps)
            | (workout.Hardness == Hardness.Easy ? Traits.None : Traits.NotEasy)
            | (youth && CheckedPlan.IsStrength(workout) ? Traits.YouthStrength : Traits.None)
            | (wanted.Pinned ? Traits.Pinned : Traits.None);
    }

    public static Traits TraitsOf(Anchor anchor) => TraitsOf(anchor.Hard, anchor.HeavyLift, anchor.Jumps);

    /// <summary>Minutes that belong between the starts of two sessions; 0 for none.</summary>
    public static int MinutesBetween(Traits one, Traits other, int hoursBetweenHard)
    {
        if ((one & other & Traits.Pinned) != 0)
        {
            return 0;
        }

        var both = one & other;
        var hours = (both & Traits.Hard) != 0 ? hoursBetweenHard : 0;
        hours = (both & Traits.HeavyLift) != 0 ? Math.Max(hours, HoursBetweenHeavyLifts) : hours;
        return 60 * ((both & Traits.Jumps) == 0 ? hours : Math.Max(hours, ((one | other) & Traits.HighJumps) != 0 ? HoursBetweenHighJumps : HoursBetweenJumps));
    }

    private static Traits TraitsOf(bool hard, bool heavyLift, JumpClass jumps) =>
        (hard ? Traits.Hard : Traits.None)
        | (heavyLift ? Traits.HeavyLift : Traits.None)
        | (jumps == JumpClass.None ? Traits.None : jumps == JumpClass.High ? Traits.Jumps | Traits.HighJumps : Traits.Jumps);
}
