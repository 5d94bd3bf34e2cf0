namespace ClubCycle.Planning.Measures;

public enum IntensityBand
{
    VeryLight,
    Light,
    Moderate,
    Vigorous,
    NearMaximal,
}

/// <summary>The lowest value of a band on each scale; a band ends where the next begins. Percentages 0 to 100.</summary>
/// <param name="Rating">Perceived exertion on the scale of 6 to 20.</param>
public sealed record IntensityRow(IntensityBand Band, double ReservePercent, double MaximumPercent, double OxygenPercent, double Rating);

/// <summary>How hard an effort is for this player, on four scales that are never mixed.</summary>
/// <remarks>Garber et al. 2011, Med Sci Sports Exerc 43:1334–1359; older editions cut differently.</remarks>
public static class Intensity
{
    private static readonly Limits Percents = new("measure.intensity-percent", "Share of the maximum", 0, 100, "percent", "Check the player's maximum.");

    private static readonly Limits Ratings = new("measure.intensity-rating", "Perceived exertion", 6, 20, "on the scale of 6 to 20", "Convert ratings of other scales first.");

    /// <summary>Lightest first.</summary>
    public static IReadOnlyList<IntensityRow> Bands { get; } =
    [
        new(IntensityBand.VeryLight, 0, 0, 0, 6),
        new(IntensityBand.Light, 30, 57, 37, 9),
        new(IntensityBand.Moderate, 40, 64, 46, 12),
        new(IntensityBand.Vigorous, 60, 77, 64, 14),
        new(IntensityBand.NearMaximal, 90, 96, 91, 18),
    ];

    /// <param name="percent">Of the heart-rate reserve, 0 to 100.</param>
    public static Result<IntensityBand> OfReserve(double percent) => Of(Percents, percent, row => row.ReservePercent);

    /// <param name="percent">Of the maximum heart rate, 0 to 100.</param>
    public static Result<IntensityBand> OfMaximum(double percent) => Of(Percents, percent, row => row.MaximumPercent);

    /// <param name="percent">Of the maximum oxygen uptake, 0 to 100.</param>
    public static Result<IntensityBand> OfOxygenUptake(double percent) => Of(Percents, percent, row => row.OxygenPercent);

    /// <param name="rating">6 to 20.</param>
    public static Result<IntensityBand> OfPerceivedExertion(double rating) => Of(Ratings, rating, row => row.Rating);

    private static Result<IntensityBand> Of(Limits limits, double value, Func<IntensityRow, double> from) =>
        Limits.Answer([limits.Check(value)], () => Bands.Last(row => from(row) <= value).Band);
}
