using ClubCycle.Planning.Measures;
using CsCheck;

namespace ClubCycle.Planning.Tests.Measures;

/// <summary>Williams et al. 2017, Br J Sports Med 51:209–210, starting at the first day's load; values computed.</summary>
public sealed class LoadRatioTests
{
    private static readonly double[] Week = [0, 540, 240, 630, 60, 560, 0];

    [Fact]
    public void One_hard_day_after_27_equal_ones() => Is(125.000, 106.897, 1.1694, [.. Days(27, 100), 200]);

    [Fact]
    public void A_harder_week_after_three_equal_ones() => Is(143.326, 119.680, 1.1976, [.. Days(21, 100), .. Days(7, 150)]);

    [Fact]
    public void A_week_of_load_after_three_weeks_off() => Is(86.652, 39.360, 2.2015, [.. Days(21, 0), .. Days(7, 100)]);

    [Fact]
    public void A_real_week_three_times_and_then_a_third_more() =>
        Is(335.660, 282.419, 1.1885, [.. Week, .. Week, .. Week, .. Week.Select(load => load * 1.3)]);

    /// <summary>R10.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(27)]
    public void The_ratio_stays_hidden_before_28_days(int days) => Ratio(Days(days, 100)).Refused("measure.load-days", "28 to 3660.");

    [Fact]
    public void It_shows_on_day_28() => Assert.Equal(1, Ratio(Days(28, 100)).OrThrow().Ratio, 1e-9);

    /// <summary>
    /// Gabbett 2016, from memory: 0.8, 1.3 and 1.5. After 100 a day a last day of x gives (75 + 0.25 x) / (93.103 + 0.068966 x), by hand:
    /// 0.806 at 0, 1.3 at 287, 1.5 at 441; two days of 0 give 0.649.
    /// </summary>
    [Theory]
    [InlineData(2, 0, LoadRatioBand.Unusual)]
    [InlineData(1, 0, LoadRatioBand.Usual)]
    [InlineData(1, 286, LoadRatioBand.Usual)]
    [InlineData(1, 288, LoadRatioBand.Unusual)]
    [InlineData(1, 440, LoadRatioBand.Unusual)]
    [InlineData(1, 443, LoadRatioBand.Sudden)]
    public void A_change_is_usual_unusual_or_sudden(int lastDays, double load, LoadRatioBand band) =>
        Assert.Equal(band, Ratio([.. Days(28, 100), .. Days(lastDays, load)]).OrThrow().Band);

    [Fact]
    public void A_ratio_does_not_depend_on_the_unit() => Gen.Select(Gen.Double[1, 1000].Array[28, 60], Gen.Double[0.1, 9]).Sample((loads, unit) =>
        Math.Abs(Ratio(loads).OrThrow().Ratio - Ratio([.. loads.Select(load => load * unit)]).OrThrow().Ratio) < 1e-9);

    [Fact]
    public void More_load_on_the_last_day_never_lowers_the_ratio() => Gen.Select(Gen.Double[1, 1000].Array[28, 60], Gen.Double[0, 1000]).Sample((loads, more) =>
        Ratio([.. loads[..^1], loads[^1] + more]).OrThrow().Ratio >= Ratio(loads).OrThrow().Ratio - 1e-12);

    [Fact]
    public void A_missing_day_is_not_taken_as_rest() =>
        LoadRatio.Create([.. Days(28, 100), null, 100]).Refused("measure.load-day", "0 to 10000 AU");

    [Theory]
    [InlineData(-1)]
    [InlineData(10_001)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_load_that_cannot_be_is_refused(double load) => Ratio([.. Days(28, 100), load]).Refused("measure.load-day", "0 to 10000 AU");

    /// <summary>R10: chronic load above 0.</summary>
    [Fact]
    public void Without_any_load_there_is_no_ratio() => Ratio(Days(28, 0)).Refused("measure.load-none", "above 0 AU");

    private static void Is(double acute, double chronic, double ratio, double[] loads)
    {
        var answer = Ratio(loads).OrThrow();

        Assert.Equal(acute, answer.Acute, 0.0005);
        Assert.Equal(chronic, answer.Chronic, 0.0005);
        Assert.Equal(ratio, answer.Ratio, 0.00005);
    }

    private static double[] Days(int count, double load) => [.. Enumerable.Repeat(load, count)];

    private static Result<LoadRatio> Ratio(double[] loads) => LoadRatio.Create([.. loads.Select(load => (double?)load)]);
}
