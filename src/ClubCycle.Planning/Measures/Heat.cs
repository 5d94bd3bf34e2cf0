namespace ClubCycle.Planning.Measures;

/// <summary>What the heat allows outdoors, mildest first.</summary>
public enum HeatAdvice
{
    /// <summary>As planned; watch that everybody drinks.</summary>
    Normal,

    /// <summary>Longer rests in the shade and drinking every 15 minutes; shorter sessions for those not used to heat.</summary>
    LongerRests,

    /// <summary>As planned, with care when it is hard or long.</summary>
    Careful,

    /// <summary>As long a rest as work, nothing of high intensity, watch players at risk.</summary>
    EqualRest,

    /// <summary>Little hard work, a short stay in the heat, watch for early signs; players at risk stop.</summary>
    Limit,

    Cancel,
}

/// <summary>Wet-bulb globe temperature (WBGT, °C) and what it allows. Local rules and medical staff go first; dry and humid heat differ at the same value.</summary>
public static class Heat
{
    /// <summary>Younger players take the stricter, older children's table (editorial).</summary>
    public const int AdultRowsFromAge = 14;

    private static readonly Limits WetBulbs = new("measure.heat-wet-bulb", "Wet-bulb temperature", -10, 45, "°C", "Enter degrees Celsius.");

    private static readonly Limits Globes = new("measure.heat-globe", "Globe temperature", -10, 90, "°C", "Enter degrees Celsius.");

    private static readonly Limits Airs = new("measure.heat-air", "Air temperature", -10, 55, "°C", "Enter degrees Celsius.");

    private static readonly Limits Temperatures = new("measure.heat-wbgt", "WBGT", -10, 60, "°C", "Enter degrees Celsius, not Fahrenheit.");

    private static readonly Limits Ages = new("measure.heat-age", "Age", 3, 99, "years", "Enter the age of the youngest player.");

    /// <summary>0.7 × wet bulb + 0.2 × globe + 0.1 × air, outdoors, in °C.</summary>
    /// <param name="wetBulb">−10 to 45 °C.</param>
    /// <param name="globe">−10 to 90 °C.</param>
    /// <param name="air">−10 to 55 °C.</param>
    public static Result<Estimate> WetBulbGlobe(double wetBulb, double globe, double air) => Limits.Answer(
        [WetBulbs.Check(wetBulb), Globes.Check(globe), Airs.Check(air)],
        () => new Estimate((0.7 * wetBulb) + (0.2 * globe) + (0.1 * air), "°C", "WBGT", "of this place and minute", "Armstrong et al. 2007, Med Sci Sports Exerc 39:556–572"));

    /// <summary>What the heat allows; a value between two printed rows takes the hotter one.</summary>
    /// <param name="wbgt">−10 to 60 °C, not rounded.</param>
    /// <param name="acclimatised">After 10 to 14 days in such heat.</param>
    /// <param name="age">Completed years of the youngest player, 3 to 99.</param>
    /// <remarks>
    /// From 14 years: American College of Sports Medicine, Armstrong et al. 2007, Med Sci Sports Exerc 39:556–572.
    /// Under 14: American Academy of Pediatrics 2000, older and stricter.
    /// The first adult row is printed without a lower end, so it holds on cool days too.
    /// </remarks>
    public static Result<HeatAdvice> Advise(double wbgt, bool acclimatised, int age) => Limits.Answer(
        [Temperatures.Check(wbgt), Ages.Check(age)],
        () => age < AdultRowsFromAge ? Children(wbgt, acclimatised) : Adults(wbgt, acclimatised));

    private static HeatAdvice Adults(double wbgt, bool acclimatised) => wbgt switch
    {
        < 27.8 => acclimatised ? HeatAdvice.Normal : HeatAdvice.LongerRests,
        <= 30.0 => acclimatised ? HeatAdvice.Careful : HeatAdvice.EqualRest,
        <= 32.2 => acclimatised ? HeatAdvice.Limit : HeatAdvice.Cancel,
        _ => HeatAdvice.Cancel,
    };

    private static HeatAdvice Children(double wbgt, bool acclimatised) => wbgt switch
    {
        < 24.0 => HeatAdvice.Normal,
        <= 25.9 => HeatAdvice.LongerRests,
        <= 29.0 => acclimatised ? HeatAdvice.Limit : HeatAdvice.Cancel,
        _ => HeatAdvice.Cancel,
    };
}
