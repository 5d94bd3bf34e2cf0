namespace ClubCycle.Planning.Measures;

/// <summary>One speed level of an intermittent recovery test.</summary>
/// <param name="Speed">km/h.</param>
/// <param name="Runs">Of 2 × 20 m.</param>
/// <param name="FirstMetres">Distance after the level's first run.</param>
/// <param name="LastMetres">Distance after the level's last run.</param>
public sealed record RecoveryLevel(int Level, double Speed, int Runs, int FirstMetres, int LastMetres);

/// <summary>Intermittent recovery tests 1 and 2 (2 × 20 m, 10 s of walking) and the 30-15 test (30 s of running, 15 s of walking).</summary>
/// <remarks>All-out tests: only for players who are well and cleared to train.</remarks>
public static class IntermittentTests
{
    private const int Run = 40;

    private const string Bangsbo = "Bangsbo, Iaia and Krustrup 2008, Sports Med 38:37–51 (equation from memory)";

    private static readonly Limits Ages = new("measure.intermittent-age", "Age for the 30-15 equation", 8, 50, "years", "Outside these ages compare end speeds only.");

    private static readonly Limits Masses = new("measure.intermittent-mass", "Body mass", 20, 150, "kg", "Weigh again, or leave the estimate out.");

    private static readonly Limits EndSpeeds = new("measure.intermittent-speed", "End speed", 8, 25, "km/h", "Enter the speed of the last completed stage.");

    private static readonly int[] RunsFromThird = [2, 3, 4, 8, 8, 8, 8, 8, 8, 8, 8, 8, 8];

    /// <summary>40 to 3,640 m.</summary>
    public static IReadOnlyList<RecoveryLevel> Levels1 { get; } = [.. Levels([(5, 10.0), (9, 12.0)], 11, 13.0, 13)];

    /// <summary>40 to 2,680 m.</summary>
    public static IReadOnlyList<RecoveryLevel> Levels2 { get; } = [.. Levels([(11, 13.0), (15, 15.0)], 17, 16.0, 10)];

    /// <summary>VO2max in mL/kg/min from test 1: metres × 0.0084 + 36.4.</summary>
    /// <param name="metres">40 to 3,640 m in steps of 40.</param>
    /// <remarks>Bangsbo, Iaia and Krustrup 2008, Sports Med 38:37–51; equation from memory.</remarks>
    public static Result<Estimate> Recovery1(int metres) => FromMetres(Levels1, metres, (metres * 0.0084) + 36.4);

    /// <summary>VO2max in mL/kg/min from test 2: metres × 0.0136 + 45.3.</summary>
    /// <param name="metres">40 to 2,680 m in steps of 40.</param>
    /// <remarks>Bangsbo, Iaia and Krustrup 2008, Sports Med 38:37–51; equation from memory.</remarks>
    public static Result<Estimate> Recovery2(int metres) => FromMetres(Levels2, metres, (metres * 0.0136) + 45.3);

    /// <summary>The level of test 1 in which a distance ended.</summary>
    /// <param name="metres">40 to 3,640 m in steps of 40.</param>
    public static Result<RecoveryLevel> Level1(int metres) => LevelAt(Levels1, metres);

    /// <summary>The level of test 2 in which a distance ended.</summary>
    /// <param name="metres">40 to 2,680 m in steps of 40.</param>
    public static Result<RecoveryLevel> Level2(int metres) => LevelAt(Levels2, metres);

    /// <summary>VO2max in mL/kg/min: 28.3 − 2.15 G − 0.741 A − 0.0357 M + 0.0586 A V + 1.03 V, with G 1 for men and 2 for women.</summary>
    /// <param name="age">A, years, 8 to 50 (editorial).</param>
    /// <param name="mass">M, 20 to 150 kg.</param>
    /// <param name="endSpeed">V, of the last completed stage, 8 to 25 km/h in steps of 0.5.</param>
    /// <remarks>Buchheit 2008, J Strength Cond Res 22:365–374. The end speed itself is no maximal aerobic speed: see <see cref="RunningPace.MetresByEndSpeed"/>.</remarks>
    public static Result<Estimate> ThirtyFifteen(Sex sex, double age, double mass, double endSpeed) => Limits.Answer(
        [Ages.Check(age), Masses.Check(mass), EndSpeeds.CheckStep(endSpeed, 0.5)],
        () => OxygenCost.Maximum(
            28.3 - (2.15 * (sex == Sex.Male ? 1 : 2)) - (0.741 * age) - (0.0357 * mass) + (0.0586 * age * endSpeed) + (1.03 * endSpeed),
            "rough: use the end speed itself to plan intervals",
            "Buchheit 2008, J Strength Cond Res 22:365–374"));

    private static IEnumerable<RecoveryLevel> Levels((int Level, double Speed)[] single, int third, double thirdSpeed, int count)
    {
        var metres = 0;
        foreach (var (level, speed, runs) in single.Select(s => (s.Level, s.Speed, 1))
            .Concat(RunsFromThird.Take(count).Select((runs, i) => (third + i, thirdSpeed + (0.5 * i), runs))))
        {
            yield return new RecoveryLevel(level, speed, runs, metres + Run, metres + (runs * Run));
            metres += runs * Run;
        }
    }

    private static Result<Estimate> FromMetres(IReadOnlyList<RecoveryLevel> levels, int metres, double uptake) => Limits.Answer(
        [Distances(levels).CheckStep(metres, Run)],
        () => OxygenCost.Maximum(uptake, "rough: compare distances rather than estimates", Bangsbo));

    private static Result<RecoveryLevel> LevelAt(IReadOnlyList<RecoveryLevel> levels, int metres) =>
        Limits.Answer([Distances(levels).CheckStep(metres, Run)], () => levels.First(level => metres <= level.LastMetres));

    private static Limits Distances(IReadOnlyList<RecoveryLevel> levels) =>
        new("measure.recovery-metres", "Distance", Run, levels[^1].LastMetres, "m", "Count completed runs of 2 × 20 m.");
}
