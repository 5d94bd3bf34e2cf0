namespace ClubCycle.Planning.Measures;

/// <summary>What a change between two tests of a player says.</summary>
public enum ChangeReading
{
    NoClearChange,
    CannotTellRetest,
    ProbablyReal,
}

/// <summary>Whether a change between two tests is more than noise. All values in the test's own unit.</summary>
/// <remarks>Hopkins 2004, Sportscience 8:1–7; Hopkins 2000, Sports Med 30:1–15. The reading in words is editorial.</remarks>
public static class TestChange
{
    /// <summary>Fewer players or pairs say too little about the spread.</summary>
    public const int FewestPlayers = 8;

    private const string Hopkins2000 = "Hopkins 2000, Sports Med 30:1–15";

    private static readonly Limits Players =
        new("measure.change-players", "Number of players", FewestPlayers, 1000, "", "Test more of the squad, or use a published typical error.");

    private static readonly Limits Results = new("measure.change-result", "A test result", 0, 1e6, "in the test's unit", "Leave out players without a result.");

    private static readonly Limits Changes = new("measure.change", "A change", -1e6, 1e6, "in the test's unit", "Enter later result minus earlier result.");

    private static readonly Limits Spreads = new("measure.change-spread", "A spread", 0.0001, 1e6, "in the test's unit", "Equal results have no spread: test again more exactly.");

    /// <summary>0.2 × the standard deviation (n − 1) between players.</summary>
    /// <param name="results">One for each of 8 players or more, 0 to a million, not all equal.</param>
    public static Result<Estimate> SmallestWorthwhile(IReadOnlyList<double> results) => OfSpread(
        results, Results, spread => new Estimate(0.2 * spread, "", "Smallest worthwhile change", "as typical as the squad", "Hopkins 2004, Sportscience 8:1–7"));

    /// <summary>Standard deviation (n − 1) of the differences between test and retest, divided by √2.</summary>
    /// <param name="differences">Retest minus test without training between, one for each of 8 players or more (editorial), not all equal.</param>
    public static Result<Estimate> TypicalError(IReadOnlyList<double> differences) => OfSpread(
        differences, Changes, spread => new Estimate(spread / Math.Sqrt(2), "", "Typical error", "better with more pairs", Hopkins2000));

    /// <summary>A single change must pass 1.96 × √2 × typical error to stand out at 95 %.</summary>
    /// <param name="typicalError">0.0001 to a million.</param>
    /// <remarks>Hopkins 2000, from memory.</remarks>
    public static Result<Estimate> Limit95(double typicalError) => Limits.Answer(
        [Positive("Typical error").Check(typicalError)],
        () => new Estimate(1.96 * Math.Sqrt(2) * typicalError, "", "95 % limit of a change", "as sure as the typical error", $"{Hopkins2000} (from memory)"));

    /// <summary>Probably real beyond both the smallest worthwhile change and the typical error; no clear change below the former; otherwise test again.</summary>
    /// <param name="change">Of either sign.</param>
    /// <param name="smallestWorthwhile">0.0001 to a million, from 8 players or more.</param>
    /// <param name="typicalError">0.0001 to a million.</param>
    public static Result<ChangeReading> Read(double change, double smallestWorthwhile, double typicalError) => Limits.Answer(
        [Changes.Check(change), Positive("Smallest worthwhile change").Check(smallestWorthwhile), Positive("Typical error").Check(typicalError)],
        () =>
        {
            var size = Math.Abs(change);
            return size < smallestWorthwhile ? ChangeReading.NoClearChange
                : size > smallestWorthwhile && size > typicalError ? ChangeReading.ProbablyReal
                : ChangeReading.CannotTellRetest;
        });

    private static Limits Positive(string what) => Spreads with { What = what, NextStep = "Work it out from the squad first." };

    private static Result<Estimate> OfSpread(IReadOnlyList<double> values, Limits each, Func<double, Estimate> answer) => Limits.Answer(
        [Players.Check(values.Count), values.Select(each.Check).FirstOrDefault(problem => problem is not null)],
        () => Spread(values) is var spread && Spreads.Check(spread) is { } problem ? problem : (Result<Estimate>)answer(spread));

    private static double Spread(IReadOnlyList<double> values)
    {
        var mean = values.Average();
        return Math.Sqrt(values.Sum(value => (value - mean) * (value - mean)) / (values.Count - 1));
    }
}
