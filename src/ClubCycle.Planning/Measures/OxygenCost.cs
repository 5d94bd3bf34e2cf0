namespace ClubCycle.Planning.Measures;

/// <summary>Oxygen uptake (VO2, mL/kg/min) of running and walking, and the way back to speed (m/min).</summary>
/// <remarks>
/// American College of Sports Medicine, metabolic equations: steady effort; grades on a treadmill only, not up and down hills outdoors.
/// Upper ends of speed and grade are editorial.
/// </remarks>
public static class OxygenCost
{
    /// <summary>Oxygen uptake at rest that counts as one MET, mL/kg/min.</summary>
    public const double AtRest = 3.5;

    private const double RunningPerMetre = 0.2;
    private const double WalkingPerMetre = 0.1;
    private const string Unit = "mL/kg/min";
    private const string Source = "ACSM metabolic equations";

    private static readonly Limits RunningSpeeds =
        new("measure.running-speed", "Running speed", 134, 420, "m/min", "Slower than that, say that the player truly runs, or use the walking equation.");

    private static readonly Limits TrueRunningSpeeds = RunningSpeeds with { Least = 80, NextStep = "Use the walking equation." };

    private static readonly Limits WalkingSpeeds = new("measure.walking-speed", "Walking speed", 50, 100, "m/min", "Use the running equation for running.");

    private static readonly Limits Grades = new("measure.grade", "Treadmill grade", 0, 0.25, "as a share", "Enter 0.05 for 5 percent; hills outdoors have no equation.");

    private static readonly Limits Uptakes = new("measure.oxygen-uptake", "Oxygen uptake", AtRest, 95, Unit, "Check its unit.");

    private static readonly Limits Multiples = new("measure.mets", "Metabolic equivalents", 1, 27, "METs", "Check the unit.");

    /// <summary>3.5 + 0.2 S + 0.9 S G.</summary>
    /// <param name="speed">S, 134 to 420 m/min; from 80 m/min when <paramref name="trulyRunning"/>.</param>
    /// <param name="grade">G, 0 to 0.25.</param>
    /// <param name="trulyRunning">The player jogs with a flight phase, however slowly.</param>
    public static Result<Estimate> Running(double speed, double grade = 0, bool trulyRunning = false) => Limits.Answer(
        [Speeds(trulyRunning).Check(speed), Grades.Check(grade)],
        () => Uptake(AtRest + (RunningPerMetre * speed) + (0.9 * speed * grade)));

    /// <summary>3.5 + 0.1 S + 1.8 S G.</summary>
    /// <param name="speed">S, 50 to 100 m/min.</param>
    /// <param name="grade">G, 0 to 0.25.</param>
    public static Result<Estimate> Walking(double speed, double grade = 0) => Limits.Answer(
        [WalkingSpeeds.Check(speed), Grades.Check(grade)],
        () => Uptake(AtRest + (WalkingPerMetre * speed) + (1.8 * speed * grade)));

    /// <summary>The speed in m/min on the flat that takes this oxygen uptake; at VO2max a rough maximal aerobic speed.</summary>
    /// <param name="uptake">30.3 to 87.5 mL/kg/min; from 19.5 when <paramref name="trulyRunning"/>.</param>
    public static Result<Estimate> RunningSpeed(double uptake, bool trulyRunning = false) => Speed(Speeds(trulyRunning), RunningPerMetre, uptake);

    /// <summary>The walking speed in m/min on the flat that takes this oxygen uptake.</summary>
    /// <param name="uptake">8.5 to 13.5 mL/kg/min.</param>
    public static Result<Estimate> WalkingSpeed(double uptake) => Speed(WalkingSpeeds, WalkingPerMetre, uptake);

    /// <summary>Multiples of the uptake at rest (METs).</summary>
    /// <param name="uptake">3.5 to 95 mL/kg/min.</param>
    public static Result<Estimate> Mets(double uptake) =>
        Limits.Answer([Uptakes.Check(uptake)], () => new Estimate(uptake / AtRest, "METs", "Metabolic equivalents", "by definition", Source));

    /// <param name="mets">1 to 27 METs.</param>
    public static Result<Estimate> FromMets(double mets) => Limits.Answer([Multiples.Check(mets)], () => Uptake(mets * AtRest));

    internal static Estimate Maximum(double uptake, string howSure, string source) => new(uptake, Unit, "VO2max", howSure, source);

    private static Limits Speeds(bool trulyRunning) => trulyRunning ? TrueRunningSpeeds : RunningSpeeds;

    private static Estimate Uptake(double uptake) => new(uptake, Unit, "Oxygen uptake", "average of many people at a steady effort", Source);

    private static Result<Estimate> Speed(Limits speeds, double perMetre, double uptake)
    {
        var limits = Uptakes with { Least = AtRest + (perMetre * speeds.Least), Most = AtRest + (perMetre * speeds.Most), NextStep = $"Outside it: {speeds.NextStep}" };
        return Limits.Answer([limits.Check(uptake)], () => new Estimate((uptake - AtRest) / perMetre, "m/min", "Speed on the flat", "average of many people at a steady effort", Source));
    }
}
