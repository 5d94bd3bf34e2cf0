namespace ClubCycle.Planning.Measures;

/// <summary>How a load ratio is shown.</summary>
public enum LoadRatioBand
{
    /// <summary>0.8 to 1.3, both ends in.</summary>
    Usual,

    /// <summary>Below 0.8, or above 1.3 up to 1.5: a grey note.</summary>
    Unusual,

    /// <summary>Above 1.5: an amber note that says what the ratio cannot tell.</summary>
    Sudden,
}

/// <summary>
/// How sudden a change of load is: exponentially weighted averages over 7 and 28 days, in arbitrary units, and their ratio.
/// It does not predict injury for a person and never changes a plan.
/// </summary>
/// <remarks>
/// Williams et al. 2017, Br J Sports Med 51:209–210. Bands: Gabbett 2016, Br J Sports Med 50:273–280, from memory.
/// Critique: Impellizzeri et al. 2021, Sports Med 51:581–592.
/// </remarks>
public sealed record LoadRatio
{
    /// <summary>The ratio stays hidden before.</summary>
    public const int FewestDays = 28;

    private const double AcuteWeight = 2.0 / (7 + 1);
    private const double ChronicWeight = 2.0 / (28 + 1);

    private static readonly Limits Days = new("measure.load-days", "Days of load", FewestDays, 3660, "", "Keep on entering loads; rest days are 0.");

    private static readonly Limits Loads = new("measure.load-day", "Load of a day", 0, 10_000, "AU", "Enter every day, rest days as 0.");

    private LoadRatio(double acute, double chronic) => (Acute, Chronic) = (acute, chronic);

    /// <summary>Weighted over about 7 days, AU.</summary>
    public double Acute { get; }

    /// <summary>Weighted over about 28 days, AU; above 0.</summary>
    public double Chronic { get; }

    public double Ratio => Acute / Chronic;

    public LoadRatioBand Band => Ratio switch
    {
        > 1.5 => LoadRatioBand.Sudden,
        < 0.8 or > 1.3 => LoadRatioBand.Unusual,
        _ => LoadRatioBand.Usual,
    };

    /// <summary>The ratio on the last of the days.</summary>
    /// <param name="dayLoads">
    /// Session ratings × minutes of each day, oldest first, 28 days or more, 0 to 10,000 AU. A missing day (null) is refused, never taken as rest.
    /// </param>
    public static Result<LoadRatio> Create(IReadOnlyList<double?> dayLoads) => Limits.Answer(
        [Days.Check(dayLoads.Count), dayLoads.Select(load => Loads.Check(load ?? double.NaN)).FirstOrDefault(problem => problem is not null)],
        () => Average(dayLoads, ChronicWeight) is > 0 and var chronic
            ? new LoadRatio(Average(dayLoads, AcuteWeight), chronic)
            : (Result<LoadRatio>)new Problem("measure.load-none", "The chronic load must be above 0 AU. Enter the loads of past sessions."));

    /// <summary>Starts at the first day's load.</summary>
    private static double Average(IReadOnlyList<double?> loads, double weight) =>
        loads.Skip(1).Aggregate(loads[0] ?? 0, (average, load) => (weight * load ?? 0) + ((1 - weight) * average));
}
