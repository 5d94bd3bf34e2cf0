using ClubCycle.Planning.Measures;
using CsCheck;

namespace ClubCycle.Planning.Tests.Measures;

/// <summary>Hopkins 2000 and 2004; the reading in words is editorial.</summary>
public sealed class TestChangeTests
{
    /// <summary>Four results 0.0935414 below and four above 1.80: a standard deviation (n − 1) of 0.10 s. Computed: 0.2 × 0.10.</summary>
    [Fact]
    public void A_fifth_of_the_spread_of_a_squad_is_worthwhile() =>
        Assert.Equal(0.020, TestChange.SmallestWorthwhile(TwoHalves(1.80, 0.10)).Value(), 1e-9);

    /// <summary>Computed: standard deviation of differences 0.06 s → typical error 0.0424 s → 95 % limit 0.118 s (2.77 × typical error from memory).</summary>
    [Fact]
    public void The_typical_error_comes_from_test_and_retest()
    {
        var error = TestChange.TypicalError(TwoHalves(0, 0.06)).Value();

        Assert.Equal(0.0424, error, 0.00005);
        Assert.Equal(0.118, TestChange.Limit95(error).Value(), 0.0005);
        Assert.Equal(2.77, TestChange.Limit95(1).Value(), 0.005);
    }

    /// <summary>R47, with a smallest worthwhile change below and above the typical error.</summary>
    [Theory]
    [InlineData(0.019, 0.020, 0.0424, ChangeReading.NoClearChange)]
    [InlineData(0.020, 0.020, 0.0424, ChangeReading.CannotTellRetest)]
    [InlineData(0.030, 0.020, 0.0424, ChangeReading.CannotTellRetest)]
    [InlineData(0.0424, 0.020, 0.0424, ChangeReading.CannotTellRetest)]
    [InlineData(0.043, 0.020, 0.0424, ChangeReading.ProbablyReal)]
    [InlineData(-0.043, 0.020, 0.0424, ChangeReading.ProbablyReal)]
    [InlineData(0, 0.020, 0.0424, ChangeReading.NoClearChange)]
    [InlineData(3, 4, 2, ChangeReading.NoClearChange)]
    [InlineData(4, 4, 2, ChangeReading.CannotTellRetest)]
    [InlineData(-4.1, 4, 2, ChangeReading.ProbablyReal)]
    public void A_change_is_real_only_beyond_both_limits(double change, double worthwhile, double error, ChangeReading reading) =>
        Assert.Equal(reading, TestChange.Read(change, worthwhile, error).OrThrow());

    [Fact]
    public void A_larger_change_never_reads_as_less() => Gen.Select(Gen.Double[0, 10], Gen.Double[0, 10], Gen.Double[0.001, 5], Gen.Double[0.001, 5]).Sample((change, more, worthwhile, error) =>
        TestChange.Read(change + more, worthwhile, error).OrThrow() >= TestChange.Read(change, worthwhile, error).OrThrow());

    [Fact]
    public void A_gain_and_a_loss_of_the_same_size_read_the_same() => Gen.Select(Gen.Double[0, 10], Gen.Double[0.001, 5], Gen.Double[0.001, 5]).Sample((change, worthwhile, error) =>
        TestChange.Read(change, worthwhile, error).OrThrow() == TestChange.Read(-change, worthwhile, error).OrThrow());

    /// <summary>R47: n ≥ 8.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(7)]
    public void Fewer_than_eight_players_are_refused(int players)
    {
        double[] results = [.. Enumerable.Range(1, players).Select(i => (double)i)];

        TestChange.SmallestWorthwhile(results).Refused("measure.change-players", "8 to 1000.");
        TestChange.TypicalError(results).Refused("measure.change-players", "8 to 1000.");
    }

    [Fact]
    public void Eight_players_are_enough() => Assert.True(TestChange.SmallestWorthwhile(TwoHalves(10, 1)).TryGet(out _, out _));

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(-1)]
    public void A_result_that_cannot_be_is_refused(double bad) =>
        TestChange.SmallestWorthwhile([.. TwoHalves(10, 1), bad]).Refused("measure.change-result", "0 to 1000000");

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.NegativeInfinity)]
    public void A_difference_that_cannot_be_is_refused(double bad) =>
        TestChange.TypicalError([.. TwoHalves(0, 1), bad]).Refused("measure.change", "-1000000 to 1000000");

    [Fact]
    public void Equal_results_have_no_spread()
    {
        TestChange.SmallestWorthwhile(new double[8]).Refused("measure.change-spread", "0.0001 to 1000000");
        TestChange.TypicalError(new double[8]).Refused("measure.change-spread", "0.0001 to 1000000");
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    public void A_limit_of_zero_or_less_is_refused(double bad)
    {
        TestChange.Limit95(bad).Refused("measure.change-spread", "0.0001 to 1000000");
        TestChange.Read(1, bad, 1).Refused("measure.change-spread", "0.0001 to 1000000");
        TestChange.Read(1, 1, bad).Refused("measure.change-spread", "0.0001 to 1000000");
    }

    /// <summary>Eight values with this mean and standard deviation (n − 1).</summary>
    private static double[] TwoHalves(double mean, double deviation)
    {
        var distance = deviation * Math.Sqrt(7.0 / 8);
        return [.. Enumerable.Range(0, 8).Select(i => i < 4 ? mean - distance : mean + distance)];
    }
}
