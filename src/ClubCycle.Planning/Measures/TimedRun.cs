namespace ClubCycle.Planning.Measures;

/// <summary>What an all-out run on the flat tells: maximal aerobic speed (MAS, m/s) or VO2max (mL/kg/min).</summary>
/// <remarks>Ranges of distance are editorial: 2 to 7 m/s. All-out tests: only for players who are well and cleared to train.</remarks>
public static class TimedRun
{
    private static readonly Limits Times =
        new("measure.trial-seconds", "Time of a set distance", 270, 390, "s", "Choose a distance that takes this player 4.5 to 6.5 minutes.");

    /// <param name="metres">600 to 2,100 m in five minutes.</param>
    public static Result<Estimate> FiveMinutes(double metres) => Speed(metres, 300);

    /// <param name="metres">720 to 2,520 m in six minutes.</param>
    public static Result<Estimate> SixMinutes(double metres) => Speed(metres, 360);

    /// <summary>A distance that takes 4.5 to 6.5 minutes.</summary>
    /// <param name="metres">2 to 7 m for each second.</param>
    /// <param name="seconds">270 to 390 s.</param>
    public static Result<Estimate> SetDistance(double metres, double seconds) =>
        Times.Check(seconds) is { } problem ? problem : Speed(metres, seconds);

    /// <summary>VO2max from the metres run in twelve minutes: (metres − 504.9) / 44.73.</summary>
    /// <param name="metres">1,000 to 5,040 m.</param>
    /// <remarks>Cooper 1968, JAMA 203:201–204.</remarks>
    public static Result<Estimate> TwelveMinutes(double metres) => Limits.Answer(
        [Distances(1000, 5040).Check(metres)],
        () => OxygenCost.Maximum((metres - 504.9) / 44.73, "fair for an even all-out pace", "Cooper 1968, JAMA 203:201–204"));

    private static Result<Estimate> Speed(double metres, double seconds) => Limits.Answer(
        [Distances(2 * seconds, 7 * seconds).Check(metres)],
        () => new Estimate(metres / seconds, "m/s", "Maximal aerobic speed", "up to about 5 % above the laboratory's", "All-out time trial: metres / seconds"));

    private static Limits Distances(double least, double most) => new("measure.trial-metres", "Distance", least, most, "m", "Measure the course again.");
}
