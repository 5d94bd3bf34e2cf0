namespace ClubCycle.Planning.Measures;

/// <summary>One stage of about a minute of the 20-m multistage shuttle run.</summary>
/// <param name="Speed">km/h.</param>
/// <param name="SecondsPerShuttle">For 20 m.</param>
/// <param name="Metres">From the start to the end of this stage.</param>
public sealed record ShuttleStage(int Stage, double Speed, int Shuttles, double SecondsPerShuttle, int ShuttlesInAll, int Metres);

/// <summary>The 20-m multistage shuttle run that starts at 8.5 km/h and gains 0.5 km/h a stage. Not for recordings that start at 8.0 km/h or have stages of two minutes.</summary>
/// <remarks>Léger et al. 1988, J Sports Sci 6:93–101; number of shuttles as in the common recording. All-out test: only for players who are well and cleared to train.</remarks>
public static class ShuttleRun
{
    /// <summary>Metres there, without the way back.</summary>
    public const int Course = 20;

    private static readonly int[] ShuttleCounts = [7, 8, 8, 9, 9, 10, 10, 11, 11, 11, 12, 12, 13, 13, 13, 14, 14, 15, 15, 16, 16];

    private static readonly Limits Ages = new("measure.shuttle-age", "Age for the shuttle-run equation", 8, 50, "years", "Outside these ages compare stages only.");

    private static readonly Limits StageNumbers =
        new("measure.shuttle-stage", "Last completed stage", 1, ShuttleCounts.Length, "", "Enter the number called at the end of the last full stage.");

    private static readonly Limits Distances =
        new("measure.shuttle-metres", "Distance", ShuttleCounts[0] * Course, ShuttleCounts.Sum() * Course, "m", "Count full shuttles; the first stage must be complete.");

    /// <summary>Stages 1 to 21.</summary>
    public static IReadOnlyList<ShuttleStage> Stages { get; } = [.. ShuttleCounts.Select((count, i) => StageOf(i + 1, count, ShuttleCounts.Take(i + 1).Sum()))];

    /// <summary>The last stage completed after a distance.</summary>
    /// <param name="metres">140 to 4,940 m in steps of 20.</param>
    public static Result<ShuttleStage> StageAfter(int metres) =>
        Limits.Answer([Distances.CheckStep(metres, Course)], () => Stages.Last(stage => stage.Metres <= metres));

    /// <summary>VO2max in mL/kg/min: 31.025 + 3.238 X − 3.248 A + 0.1536 A X, with X the speed in km/h and A the age, 18 for adults.</summary>
    /// <param name="stage">Last completed, 1 to 21.</param>
    /// <param name="age">Years, 8 to 50.</param>
    public static Result<Estimate> OxygenUptake(int stage, double age) => Limits.Answer(
        [StageNumbers.Check(stage), Ages.Check(age)],
        () =>
        {
            var (speed, years) = (Speed(stage), Math.Min(age, 18));
            var uptake = 31.025 + (3.238 * speed) - (3.248 * years) + (0.1536 * years * speed);
            return OxygenCost.Maximum(uptake, age < 18 ? "rough: r 0.71 against the laboratory" : "fair: r 0.90 against the laboratory", "Léger et al. 1988, J Sports Sci 6:93–101");
        });

    /// <summary>Maximal aerobic speed in km/h: 1.34 × shuttle speed − 2.86.</summary>
    /// <param name="stage">Last completed, 1 to 21.</param>
    /// <remarks>Berthoin et al. 1992.</remarks>
    public static Result<Estimate> MaximalAerobicSpeed(int stage) => Limits.Answer(
        [StageNumbers.Check(stage)],
        () => new Estimate((1.34 * Speed(stage)) - 2.86, "km/h", "Maximal aerobic speed", "estimated from runs with turns", "Berthoin et al. 1992"));

    private static double Speed(int stage) => 8 + (0.5 * stage);

    private static ShuttleStage StageOf(int stage, int shuttles, int inAll) =>
        new(stage, Speed(stage), shuttles, Course * 3.6 / Speed(stage), inAll, inAll * Course);
}
