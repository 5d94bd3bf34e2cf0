namespace ClubCycle.Benchmarks;

internal static class Percentile
{
    /// <param name="part">From 0 to 1.</param>
    public static double Of(IReadOnlyCollection<double> values, double part) => values.Count == 0 ? double.NaN : values.Order().ElementAt((int)((values.Count - 1) * part));
}
