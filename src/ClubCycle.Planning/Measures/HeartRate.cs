namespace ClubCycle.Planning.Measures;

/// <summary>Maximum, reserve and target heart rates, all in beats a minute (b/min); percentages are 0 to 100.</summary>
/// <remarks>
/// Ranges of input are editorial. Heart rates are a help beside the talk test and never a medical judgement:
/// a player with symptoms, a heart condition or heart medicine follows a doctor.
/// </remarks>
public static class HeartRate
{
    private const string Beats = "b/min";

    /// <summary>The habit of "below about 140", a population shorthand.</summary>
    private const double SharedCeiling = 140;

    private const double ModerateShareOfMaximum = 0.76;
    private const double ModerateShareOfReserve = 0.59;

    private static readonly Limits Ages = new("measure.heart-age", "Age", 6, 90, "years", "Check the date of birth.");

    private static readonly Limits AdultAges =
        new("measure.heart-adults-only", "Age for this formula", 18, 90, "years", "Under 18 take a measured maximum or 208 − 0.7 × age.");

    private static readonly Limits Maxima =
        new("measure.heart-maximum", "Maximum heart rate", 120, 230, Beats, "Read it again at the end of an all-out field test.");

    private static readonly Limits Resting = new("measure.heart-rest", "Resting heart rate", 25, 110, Beats, "Count it again, lying down after waking.");

    private static readonly Limits TargetPercents =
        new("measure.heart-percent", "A target", 1, 99, "percent", "A target stays below the maximum heart rate: choose a lower percentage.");

    /// <summary>The measured maximum where there is one, otherwise <see cref="Tanaka"/>. Never 220 − age.</summary>
    /// <param name="age">Years, 6 to 90.</param>
    /// <param name="measured">120 to 230 b/min, or null.</param>
    public static Result<Estimate> Maximum(double age, double? measured) =>
        Ages.Check(age) is { } problem ? problem : measured is { } beats ? Measured(beats) : Tanaka(age);

    /// <summary>A maximum read at the end of a maximal field test, 120 to 230 b/min.</summary>
    public static Result<Estimate> Measured(double beats) => Limits.Answer(
        [Maxima.Check(beats)],
        () => new Estimate(beats, Beats, "Maximum heart rate", "measured", "Own maximal test"));

    /// <summary>208 − 0.7 × age; age 6 to 90 years.</summary>
    /// <remarks>Tanaka et al. 2001, J Am Coll Cardiol 37:153–156; for minors the best of those compared by Cicone et al. 2019, Res Q Exerc Sport 90:417–428.</remarks>
    public static Result<Estimate> Tanaka(double age) =>
        ByAge(Ages, age, 208 - (0.7 * age), "Tanaka et al. 2001, J Am Coll Cardiol 37:153–156: 208 − 0.7 × age");

    /// <summary>220 − age; adults of 18 to 90 years only, and never chosen by itself.</summary>
    /// <remarks>Fox et al. 1971, Ann Clin Res 3:404–432: a line drawn by eye, 12 b/min too high for minors on average.</remarks>
    public static Result<Estimate> Fox(double age) => ByAge(AdultAges, age, 220 - age, "Fox et al. 1971, Ann Clin Res 3:404–432: 220 − age");

    /// <summary>207 − 0.7 × age; adults of 18 to 90 years.</summary>
    /// <remarks>Gellish et al. 2007, Med Sci Sports Exerc 39:822–829; formula from memory.</remarks>
    public static Result<Estimate> Gellish(double age) =>
        ByAge(AdultAges, age, 207 - (0.7 * age), "Gellish et al. 2007, Med Sci Sports Exerc 39:822–829: 207 − 0.7 × age (from memory)");

    /// <summary>192 − 0.007 × age²; adults of 18 to 90 years.</summary>
    /// <remarks>Gellish et al. 2007, Med Sci Sports Exerc 39:822–829; formula from memory.</remarks>
    public static Result<Estimate> GellishCurve(double age) =>
        ByAge(AdultAges, age, 192 - (0.007 * age * age), "Gellish et al. 2007, Med Sci Sports Exerc 39:822–829: 192 − 0.007 × age² (from memory)");

    /// <summary>Maximum (120 to 230 b/min) minus rest (25 to 110 b/min).</summary>
    public static Result<Estimate> Reserve(double maximum, double rest) => Limits.Answer(
        [Maxima.Check(maximum), Resting.Check(rest)],
        () => new Estimate(maximum - rest, Beats, "Heart-rate reserve", "as sure as the maximum", Karvonen));

    /// <summary>Heart rate at a percentage of the reserve: rest + percent × (maximum − rest). Always below the maximum.</summary>
    /// <param name="percent">1 to 99.</param>
    public static Result<Estimate> AtReserve(double maximum, double rest, double percent) => Limits.Answer(
        [Maxima.Check(maximum), Resting.Check(rest), TargetPercents.Check(percent)],
        () => new Estimate(rest + (percent / 100 * (maximum - rest)), Beats, "Target heart rate", "as sure as the maximum", Karvonen));

    /// <summary>Percentage of the reserve at a heart rate from rest to maximum, 0 to 100.</summary>
    public static Result<Estimate> PercentOfReserve(double maximum, double rest, double beats) => Limits.Answer(
        [
            Maxima.Check(maximum) ?? Resting.Check(rest)
                ?? new Limits("measure.heart-beats", "Heart rate", rest, maximum, Beats, "Check it against the player's own rest and maximum.").Check(beats),
        ],
        () => new Estimate((beats - rest) / (maximum - rest) * 100, "%", "Share of heart-rate reserve", "as sure as the maximum", Karvonen));

    /// <summary>Heart rate at a percentage of the maximum. Always below the maximum.</summary>
    /// <param name="percent">1 to 99.</param>
    public static Result<Estimate> AtMaximum(double maximum, double percent) => Limits.Answer(
        [Maxima.Check(maximum), TargetPercents.Check(percent)],
        () => new Estimate(percent / 100 * maximum, Beats, "Target heart rate", "as sure as the maximum", "Share of the maximum"));

    /// <summary>
    /// The highest heart rate of easy base running; null when the talk test alone decides.
    /// The lower of 76 % of the maximum and 59 % of the reserve; 140 b/min only without any heart rate of the player's own, at 12 to 37 years.
    /// </summary>
    /// <param name="age">Completed years, 6 to 90; null when not known.</param>
    /// <param name="maximum">Measured, 120 to 230 b/min; null to estimate it from the age.</param>
    /// <param name="rest">25 to 110 b/min; null when not known.</param>
    /// <remarks>
    /// Top of the moderate band of Garber et al. 2011, Med Sci Sports Exerc 43:1334–1359. The talk test comes first: Foster et al. 2009, J Strength Cond Res 23:2425–2429.
    /// </remarks>
    public static Result<Estimate?> AerobicBaseCeiling(int? age, double? maximum, double? rest)
    {
        Problem?[] checks = [age is { } years ? Ages.Check(years) : null, maximum is { } most ? Maxima.Check(most) : null, rest is { } least ? Resting.Check(least) : null];
        return Limits.Answer(checks, () => (maximum, rest, age) switch
        {
            ({ } measured, _, _) => Ceiling(Measured(measured).OrThrow(), rest),
            (null, { } resting, { } known) => Ceiling(Tanaka(known).OrThrow(), resting),
            (null, null, >= 12 and <= 37) => new Estimate(
                SharedCeiling, Beats, CeilingName, "a rule of thumb: being able to talk decides", "Coaching habit; moderate band of Garber et al. 2011 at 12 to 37 years"),
            _ => null,
        });
    }

    private const string CeilingName = "Ceiling of easy running";

    private const string Karvonen = "Karvonen, Kentala and Mustala 1957, Ann Med Exp Biol Fenn 35:307–315 (from memory)";

    private static Estimate Ceiling(Estimate maximum, double? rest)
    {
        var ofMaximum = ModerateShareOfMaximum * maximum.Value;
        var ceiling = rest is { } resting ? Math.Min(ofMaximum, resting + (ModerateShareOfReserve * (maximum.Value - resting))) : ofMaximum;
        return new Estimate(ceiling, Beats, CeilingName, $"maximum {maximum.HowSure}; being able to talk comes first", $"Garber et al. 2011; maximum: {maximum.Source}");
    }

    /// <remarks>Error of any formula of age: Robergs and Landwehr 2002, J Exerc Physiol online 5(2):1–10.</remarks>
    private static Result<Estimate> ByAge(Limits ages, double age, double beats, string source) => Limits.Answer(
        [ages.Check(age)],
        () => new Estimate(beats, Beats, "Maximum heart rate", "estimated from age: one person may be 15 to 20 b/min off", source));
}
