using NodaTime;

namespace ClubCycle.Planning.Measures;

/// <summary>Early or late against others of the same sex.</summary>
public enum MaturityTiming
{
    Early,
    Average,
    Late,
}

/// <summary>Whether jumps and sprints are held back because a player may be in the growth spurt.</summary>
public enum GrowthBrake
{
    /// <summary>Too young or too old for the spurt.</summary>
    OutsideAges,

    /// <summary>The right age and no number to tell by: measure, and ask about knee and heel pain.</summary>
    Measure,
    Off,

    /// <summary>Planned jumps and top sprints at <see cref="Growth.BrakedShare"/>, no new hard drills, ask about knee and heel pain.</summary>
    On,
}

/// <summary>Growth and maturity. Heights in cm, mass in kg, ages in years with decimals, offsets in years from the fastest growth in height.</summary>
/// <remarks>Estimates for planning, not for judging a child or its future; pain and worries about growth go to a doctor. Measures are kept private.</remarks>
public static class Growth
{
    /// <summary>What is left of planned jumps and top sprints while the brake is on (editorial).</summary>
    public const double BrakedShare = 0.7;

    /// <summary>Growth that puts the brake on, cm a month.</summary>
    /// <remarks>Kemper et al. 2015, Int J Sports Med 36:1036–1041, from memory.</remarks>
    public const double FastGrowth = 0.6;

    private const double DaysInMonth = 365.25 / 12;

    private const string OffsetName = "Maturity offset";

    private const string Moore = "Moore et al. 2015, Med Sci Sports Exerc 47:1755–1764";

    private static readonly Limits Ages = new("measure.growth-age", "Age for the maturity equations", 8, 16, "years", "Outside these ages go by the growth rate.");

    private static readonly Limits Heights = new("measure.growth-height", "Standing height", 100, 215, "cm", "Measure again without shoes.");

    private static readonly Limits SittingShares =
        new("measure.growth-sitting-height", "Sitting height", 45, 60, "percent of standing height", "Measure again from the seat, without the stool.");

    private static readonly Limits Masses = new("measure.growth-mass", "Body mass", 15, 130, "kg", "Weigh again in light clothes.");

    private static readonly Limits Offsets = new("measure.growth-offset", "Maturity offset", -8, 8, "years", "Work it out again from age and heights.");

    private static readonly Limits AgesAtPeak = new("measure.growth-peak-age", "Age at the fastest growth", 8, 19, "years", "Work it out again from age and heights.");

    private static readonly Limits Rates = new("measure.growth-rate", "Growth", 0, 3, "cm a month", "Measure both heights again, at the same time of day.");

    private static readonly Limits Gaps =
        new("measure.growth-days", "Time between two heights", 28, 366, "days", "Measure again when at least 28 days have passed.");

    private static readonly Limits BrakeAges = new("measure.growth-brake-age", "Age", 5, 99, "years", "Check the date of birth.");

    /// <summary>Years from the fastest growth in height, negative before it.</summary>
    /// <param name="age">8 to 16 years; best for girls of 9 to 13 and boys of 12 to 16.</param>
    /// <param name="height">100 to 215 cm, standing.</param>
    /// <param name="sittingHeight">45 to 60 % of <paramref name="height"/>, cm.</param>
    /// <param name="mass">15 to 130 kg.</param>
    /// <remarks>Mirwald et al. 2002, Med Sci Sports Exerc 34:689–694, with mass / height × 100. Pulls early and late maturers towards the middle.</remarks>
    public static Result<Estimate> MaturityOffset(Sex sex, double age, double height, double sittingHeight, double mass) => Limits.Answer(
        [Ages.Check(age), Heights.Check(height) ?? SittingShares.Check(sittingHeight / height * 100), Masses.Check(mass)],
        () =>
        {
            var leg = height - sittingHeight;
            var ratio = mass / height * 100;
            var boys = -9.236 + (0.0002708 * leg * sittingHeight) - (0.001663 * age * leg) + (0.007216 * age * sittingHeight) + (0.02292 * ratio);
            var girls = -9.376 + (0.0001882 * leg * sittingHeight) + (0.0022 * age * leg) + (0.005841 * age * sittingHeight) - (0.002658 * age * mass) + (0.07693 * ratio);
            return Offset(sex == Sex.Male ? boys : girls, "standard error 0.6 years, more for early and late maturers", "Mirwald et al. 2002, Med Sci Sports Exerc 34:689–694");
        });

    /// <summary>Offset from standing height alone: boys −7.999994 + 0.0036124 × age × height, girls −7.709133 + 0.0042232 × age × height.</summary>
    /// <param name="age">8 to 16 years.</param>
    /// <param name="height">100 to 215 cm.</param>
    /// <remarks>Moore et al. 2015, Med Sci Sports Exerc 47:1755–1764; the girls' formula from memory.</remarks>
    public static Result<Estimate> MaturityOffsetByHeight(Sex sex, double age, double height) => Limits.Answer(
        [Ages.Check(age), Heights.Check(height)],
        () => sex == Sex.Male
            ? Offset(-7.999994 + (0.0036124 * age * height), Rough, Moore)
            : Offset(-7.709133 + (0.0042232 * age * height), Rough, $"{Moore} (from memory)"));

    /// <summary>Boys' offset from sitting height: −8.128741 + 0.0070346 × age × sitting height.</summary>
    /// <param name="age">8 to 16 years.</param>
    /// <param name="height">100 to 215 cm, to check the sitting height.</param>
    /// <param name="sittingHeight">45 to 60 % of <paramref name="height"/>, cm.</param>
    /// <remarks>Moore et al. 2015, Med Sci Sports Exerc 47:1755–1764; the constant from memory.</remarks>
    public static Result<Estimate> BoysOffsetBySittingHeight(double age, double height, double sittingHeight) => Limits.Answer(
        [Ages.Check(age), Heights.Check(height) ?? SittingShares.Check(sittingHeight / height * 100)],
        () => Offset(-8.128741 + (0.0070346 * age * sittingHeight), Rough, $"{Moore} (constant from memory)"));

    /// <summary>Age minus offset, in years.</summary>
    /// <param name="age">8 to 16 years.</param>
    /// <param name="offset">−8 to 8 years.</param>
    public static Result<Estimate> AgeAtPeak(double age, double offset) => Limits.Answer(
        [Ages.Check(age), Offsets.Check(offset)],
        () => new Estimate(age - offset, "years", "Age at the fastest growth in height", "as sure as the offset", "Age minus maturity offset"));

    /// <summary>Average is 13.0 to 14.65 years for boys and 10.8 to 12.35 for girls, both ends in.</summary>
    /// <param name="ageAtPeak">8 to 19 years.</param>
    /// <remarks>Sherar et al. 2005, J Pediatr 147:508–514.</remarks>
    public static Result<MaturityTiming> Timing(Sex sex, double ageAtPeak) => Limits.Answer(
        [AgesAtPeak.Check(ageAtPeak)],
        () =>
        {
            var (first, last) = sex == Sex.Male ? (13.0, 14.65) : (10.8, 12.35);
            return ageAtPeak < first ? MaturityTiming.Early : ageAtPeak > last ? MaturityTiming.Late : MaturityTiming.Average;
        });

    /// <summary>Growth in cm a month (30.44 days) between two standing heights.</summary>
    /// <param name="earlier">100 to 215 cm.</param>
    /// <param name="later">100 to 215 cm, measured 28 to 366 days after <paramref name="earlier"/> and not smaller; growth up to 3 cm a month.</param>
    public static Result<Estimate> Rate(LocalDate earlierDay, double earlier, LocalDate laterDay, double later)
    {
        var days = Period.DaysBetween(earlierDay, laterDay);
        var rate = (later - earlier) / days * DaysInMonth;
        return Limits.Answer(
            [Heights.Check(earlier) ?? Heights.Check(later) ?? Gaps.Check(days) ?? Rates.Check(rate)],
            () => new Estimate(rate, "cm/month", "Growth in height", "half a centimetre of measuring error counts for much over a month", "Two heights of the player"));
    }

    /// <summary>
    /// The brake is on within a year of the fastest growth or from 0.6 cm a month, for girls of 9 to 15, boys of 11 to 17,
    /// and 9 to 17 where the sex is not known.
    /// </summary>
    /// <param name="age">Completed years, 5 to 99.</param>
    /// <param name="offset">−8 to 8 years, or null.</param>
    /// <param name="rate">0 to 3 cm a month, or null.</param>
    /// <remarks>Mirwald et al. 2002; Parry et al. 2024, Br J Sports Med 58:1001–1010; Kemper et al. 2015 from memory.</remarks>
    public static Result<GrowthBrake> Brake(int age, Sex? sex, double? offset, double? rate) => Limits.Answer(
        [BrakeAges.Check(age), offset is { } years ? Offsets.Check(years) : null, rate is { } growth ? Rates.Check(growth) : null],
        () =>
        {
            var first = sex == Sex.Male ? 11 : 9;
            var last = sex == Sex.Female ? 15 : 17;
            return age < first || age > last ? GrowthBrake.OutsideAges
                : offset is >= -1 and <= 1 || rate >= FastGrowth ? GrowthBrake.On
                : offset is null && rate is null ? GrowthBrake.Measure
                : GrowthBrake.Off;
        });

    private const string Rough = "rough: fewer measures, an error above half a year";

    private static Estimate Offset(double years, string howSure, string source) => new(years, "years", OffsetName, howSure, source);
}
