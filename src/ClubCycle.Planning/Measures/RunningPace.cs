namespace ClubCycle.Planning.Measures;

/// <summary>Speeds, paces and the distances of intervals. Maximal aerobic speed (MAS) in m/s, other speeds as named.</summary>
/// <remarks>
/// Distances are for running straight on. Each turn costs time: take 3 to 6 % off a turn (from memory), or plan shuttles by the end speed of the 30-15 test.
/// </remarks>
public static class RunningPace
{
    /// <summary>Easy running stays below this share of maximal aerobic speed.</summary>
    /// <remarks>First ventilatory threshold at 67 ± 9 %: Condello et al. 2014, J Sports Sci Med 13:309–314.</remarks>
    public const double EasyShare = 0.67;

    private static readonly Limits SpeedsKm = new("measure.speed-km", "Speed", 1, 45, "km/h", "Check its unit.");

    private static readonly Limits Speeds = new("measure.speed-metres", "Speed", 0.25, 12.5, "m/s", "Check its unit.");

    private static readonly Limits Paces = new("measure.pace", "Pace", 1.33, 60, "min/km", "Enter minutes with decimals: 4.5 for 4:30.");

    private static readonly Limits AerobicSpeeds = new("measure.aerobic-speed", "Maximal aerobic speed", 2, 7, "m/s", "Divide km/h by 3.6.");

    private static readonly Limits EndSpeeds = new("measure.end-speed", "End speed of the 30-15 test", 8, 25, "km/h", "Enter the speed of the last completed stage.");

    private static readonly Limits Percents = new("measure.interval-percent", "Share of the speed", 40, 150, "percent", "Faster than that is sprinting: plan it by distance.");

    private static readonly Limits Times = new("measure.interval-seconds", "Time of a repetition", 5, 1200, "s", "Plan longer runs by pace.");

    /// <summary>60 / speed.</summary>
    /// <param name="speed">1 to 45 km/h.</param>
    public static Result<Estimate> MinutesPerKm(double speed) => Converted(SpeedsKm, speed, 60 / speed, "min/km");

    /// <summary>360 / speed.</summary>
    /// <param name="speed">1 to 45 km/h.</param>
    public static Result<Estimate> SecondsPer100Metres(double speed) => Converted(SpeedsKm, speed, 360 / speed, "s per 100 m");

    /// <param name="speed">1 to 45 km/h.</param>
    public static Result<Estimate> MetresPerMinute(double speed) => Converted(SpeedsKm, speed, speed / 0.06, "m/min");

    /// <param name="speed">1 to 45 km/h.</param>
    public static Result<Estimate> MetresPerSecond(double speed) => Converted(SpeedsKm, speed, speed / 3.6, "m/s");

    /// <param name="speed">0.25 to 12.5 m/s.</param>
    public static Result<Estimate> KmPerHour(double speed) => Converted(Speeds, speed, speed * 3.6, "km/h");

    /// <summary>60 / pace, in km/h.</summary>
    /// <param name="pace">1.33 to 60 min/km, with decimals.</param>
    public static Result<Estimate> SpeedOfPace(double pace) => Converted(Paces, pace, 60 / pace, "km/h");

    /// <summary>The highest speed of easy base running in m/s: 0.67 × MAS.</summary>
    /// <param name="aerobicSpeed">2 to 7 m/s.</param>
    public static Result<Estimate> EasyCeiling(double aerobicSpeed) => Limits.Answer(
        [AerobicSpeeds.Check(aerobicSpeed)],
        () => new Estimate(EasyShare * aerobicSpeed, "m/s", "Ceiling of easy running", "being able to talk comes first", "Condello et al. 2014, J Sports Sci Med 13:309–314"));

    /// <summary>A share of the MAS, in m/s.</summary>
    /// <param name="aerobicSpeed">2 to 7 m/s.</param>
    /// <param name="percent">40 to 150.</param>
    public static Result<Estimate> SpeedAt(double aerobicSpeed, double percent) => Limits.Answer(
        [AerobicSpeeds.Check(aerobicSpeed), Percents.Check(percent)],
        () => new Estimate(percent / 100 * aerobicSpeed, "m/s", "Running speed", AsSure, "Share of maximal aerobic speed"));

    /// <summary>The metres of one repetition: MAS × percent × seconds.</summary>
    /// <param name="aerobicSpeed">2 to 7 m/s.</param>
    /// <param name="percent">40 to 150.</param>
    /// <param name="seconds">5 to 1,200 s.</param>
    public static Result<Estimate> Metres(double aerobicSpeed, double percent, double seconds) => Limits.Answer(
        [AerobicSpeeds.Check(aerobicSpeed), Percents.Check(percent), Times.Check(seconds)],
        () => Interval(aerobicSpeed * percent / 100 * seconds, "Share of maximal aerobic speed, straight on"));

    /// <summary>The metres of one repetition by the end speed of the 30-15 test, which is about 115 to 120 % of the speed at VO2max (from memory).</summary>
    /// <param name="endSpeed">8 to 25 km/h.</param>
    /// <param name="percent">40 to 150 of the end speed.</param>
    /// <param name="seconds">5 to 1,200 s.</param>
    public static Result<Estimate> MetresByEndSpeed(double endSpeed, double percent, double seconds) => Limits.Answer(
        [EndSpeeds.Check(endSpeed), Percents.Check(percent), Times.Check(seconds)],
        () => Interval(endSpeed / 3.6 * percent / 100 * seconds, "Buchheit 2008, J Strength Cond Res 22:365–374: share of the end speed"));

    private const string AsSure = "as sure as the test";

    private static Estimate Interval(double metres, string source) => new(metres, "m", "Distance of a repetition", AsSure, source);

    private static Result<Estimate> Converted(Limits limits, double from, double value, string unit) => Limits.Answer(
        [limits.Check(from)],
        () => new Estimate(value, unit, "Speed or pace", "exact", "Conversion of units"));
}
