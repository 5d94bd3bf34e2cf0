namespace ClubCycle.Planning.Weeks.Placement;

/// <summary>
/// What a placement costs: one integer, smaller is better. Hard rules are not here, they cannot be bought. All weights are editorial.
/// </summary>
internal static class PlacementCost
{
    /// <summary>Each session that finds no day; the step makes the least valuable one go first.</summary>
    public const int Dropped = 1_000_000;
    public const int DroppedStep = 50_000;

    /// <summary>A published session on another day (or one of next week that this week would push away), and one that keeps its day but not its time.</summary>
    public const int PublishedDayLost = 2_000;
    public const int PublishedTimeLost = 500;

    /// <summary>Another day than in the phase's base week: players like a steady rhythm.</summary>
    public const int BaseDayLost = 300;

    /// <summary>A session or practice the day after another one.</summary>
    public const int DayAfterActive = 8;

    /// <summary>Each active day in a row beyond the third.</summary>
    public const int LongRun = 15;

    /// <summary>Anything but easy work the day after a hard session or match; anything but easy work the day before a match.</summary>
    public const int NotEasyAfterHard = 12;
    public const int NotEasyBeforeMatch = 25;

    /// <summary>A session inside practice takes pitch time; a sixth active day takes rest.</summary>
    public const int InsidePractice = 10;
    public const int SixthActiveDay = 12;

    /// <summary>Weekends belong to matches and families.</summary>
    public const int Weekend = 4;

    /// <summary>Strength work of minors on consecutive days.</summary>
    public const int YouthStrengthNextDay = 40;
}
