namespace ClubCycle.Planning.Measures;

/// <summary>The load that can be lifted once, in kg, from a set that was lifted several times.</summary>
/// <remarks>
/// Takes a set to the last clean repetition, not an attempt at a maximum. Linear equations hold for up to 10 repetitions:
/// Reynolds, Gordon and Robergs 2006, J Strength Cond Res 20:584–592. Shown as ± 5 %.
/// </remarks>
public static class OneRepetitionMaximum
{
    private const string Within = "about ± 5 %";

    private static readonly Limits Loads = new("measure.load", "Load", 0.5, 600, "kg", "Weigh bar and plates again.");

    private static readonly Limits Repetitions =
        new("measure.repetitions", "Repetitions of the set", 1, 10, "", "Take a heavier load that allows at most 10 clean repetitions, best 5.");

    /// <summary>Load × (1 + repetitions / 30).</summary>
    /// <param name="load">0.5 to 600 kg.</param>
    /// <param name="repetitions">1 to 10; one repetition gives the load itself.</param>
    /// <remarks>Epley 1985, Poundage chart.</remarks>
    public static Result<Estimate> Epley(double load, int repetitions) =>
        FromSet(load, repetitions, reps => 1 + (reps / 30.0), "Epley 1985, Poundage chart");

    /// <summary>Load × 36 / (37 − repetitions); has no value from 37 repetitions on.</summary>
    /// <inheritdoc cref="Epley" path="/param"/>
    /// <remarks>Brzycki 1993, J Phys Educ Rec Dance 64(1):88–90.</remarks>
    public static Result<Estimate> Brzycki(double load, int repetitions) =>
        FromSet(load, repetitions, reps => 36.0 / (37 - reps), "Brzycki 1993, J Phys Educ Rec Dance 64(1):88–90");

    /// <summary>Load × repetitions to the power of 0.1.</summary>
    /// <inheritdoc cref="Epley" path="/param"/>
    /// <remarks>Lombardi 1989, Beginning Weight Training.</remarks>
    public static Result<Estimate> Lombardi(double load, int repetitions) =>
        FromSet(load, repetitions, reps => Math.Pow(reps, 0.1), "Lombardi 1989, Beginning Weight Training");

    /// <param name="fiveRepetitionMaximum">The load that is lifted five times and no more, 0.5 to 600 kg.</param>
    /// <remarks>Reynolds, Gordon and Robergs 2006, J Strength Cond Res 20:584–592; adults.</remarks>
    public static Result<Estimate> ReynoldsLegPress(double fiveRepetitionMaximum) => Reynolds(fiveRepetitionMaximum, 1.0970, 14.2546, "standard error 16.2 kg");

    /// <inheritdoc cref="ReynoldsLegPress"/>
    public static Result<Estimate> ReynoldsChestPress(double fiveRepetitionMaximum) => Reynolds(fiveRepetitionMaximum, 1.1307, 0.6999, "standard error 3.0 kg");

    private static Result<Estimate> FromSet(double load, int repetitions, Func<int, double> factor, string source) => Limits.Answer(
        [Loads.Check(load), Repetitions.Check(repetitions)],
        () => repetitions == 1 ? Maximum(load, "lifted", source) : Maximum(load * factor(repetitions), Within, source));

    private static Result<Estimate> Reynolds(double load, double slope, double constant, string error) => Limits.Answer(
        [Loads.Check(load)],
        () => Maximum((slope * load) + constant, error, "Reynolds, Gordon and Robergs 2006, J Strength Cond Res 20:584–592"));

    private static Estimate Maximum(double kilograms, string howSure, string source) => new(kilograms, "kg", "One-repetition maximum", howSure, source);
}
