namespace ClubCycle.Planning.Workouts;

internal static class Clock
{
    /// <summary>Whole minutes that hold these seconds, at least one.</summary>
    public static int Minutes(int seconds) => Math.Max(1, (seconds + 59) / 60);

    public static int Minutes(this IReadOnlyList<Step> steps)
    {
        var sum = 0;
        foreach (var step in steps)
        {
            sum += step.Minutes ?? 0;
        }

        return sum;
    }
}
