namespace ClubCycle.Planning.Weeks.Placement;

/// <summary>
/// What a placement costs: one integer, smaller is better. Hard rules are not here, they cannot be bought. All weights are editorial.
/// </summary>
internal static class PlacementCost
{
    /// <summary>Each session that finds no day; the step makes the least valuable one go first.</summary>
    public const int Dropped = 1_000_000;
    public const int DroppedStep = 50_000;

    /// <summary>A published session is dropped after those that nobody knows yet, but never two of them in its place.</summary>
    public const int PublishedDropped = 500_000;

    /// <summary>A published session on another day, and one that keeps its day but not its time.</summary>
    public const int PublishedDayLost = 2_000;
    public const int PublishedTimeLost = 500;

    /// <summary>Another day than in the phase's base week: players like a steady rhythm.</summary>
    public const int BaseDayLost = 300;

    /// <summary>A session or practice the day after another one.</summary>
    public const int DayAfterActive = 8;

    /// <summary>Each active day in a row beyond the third.</summary>
    public const int LongRun = 15;

    /// <summary>Anything but easy work the day after a hard session or match; anything but easy work the day before a match, which is best left free.</summary>
    public const int NotEasyAfterHard = 12;
    public const int NotEasyBeforeMatch = 25;
    public const int EasyBeforeMatch = 6;

    /// <summary>A session inside practice takes pitch time; a sixth active day takes rest.</summary>
    public const int InsidePractice = 10;
    public const int SixthActiveDay = 12;

    /// <summary>Weekends belong to matches and families.</summary>
    public const int Weekend = 4;

    /// <summary>Each half hour after the day's usual start.</summary>
    public const int HalfHourLater = 3;

    /// <summary>Strength work of minors on consecutive days.</summary>
    public const int YouthStrengthNextDay = 40;

    private const int Days = 7;
    private const int Weeks = 1 << Days;

    private static readonly int[][] Rows = Least(false);
    private static readonly int[][] RepeatingRows = Least(true);

    /// <summary>The least that a week's active days (neighbours, long rows, a sixth day) cost once so many more have come. More days never cost less.</summary>
    /// <param name="days">Bit 0 is the first day.</param>
    /// <param name="more">Active days still to come.</param>
    /// <param name="repeats">Rows run on from the last day to the first.</param>
    public static int OfActiveDays(int days, int more, bool repeats) => (repeats ? RepeatingRows : Rows)[more][days];

    private static int[][] Least(bool repeats)
    {
        var least = new int[Days + 1][];
        least[0] = [.. Enumerable.Range(0, Weeks).Select(days => OfDays(days, repeats))];
        for (var more = 1; more <= Days; more++)
        {
            var fewer = least[more - 1];
            least[more] = [.. Enumerable.Range(0, Weeks).Select(days => days == Weeks - 1 ? fewer[days] : Enumerable.Range(0, Days).Where(d => (days & (1 << d)) == 0).Min(d => fewer[days | (1 << d)]))];
        }

        return least;
    }

    private static int OfDays(int days, bool repeats)
    {
        var cost = int.PopCount(days) > 5 ? SixthActiveDay : 0;
        var row = 0;
        for (var day = repeats ? -7 : 0; day < 7; day++)
        {
            row = (days & (1 << ((day + 7) % 7))) != 0 ? row + 1 : 0;
            if (day >= 0)
            {
                cost += row > 1 ? DayAfterActive : 0;
                cost += row > 3 ? LongRun : 0;
            }
        }

        return cost;
    }
}
