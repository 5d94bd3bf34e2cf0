using ClubCycle.Planning.Measures;
using CsCheck;

namespace ClubCycle.Planning.Tests.Measures;

public sealed class OneRepetitionMaximumTests
{
    private static readonly Func<double, int, Result<Estimate>>[] Formulas =
        [OneRepetitionMaximum.Epley, OneRepetitionMaximum.Brzycki, OneRepetitionMaximum.Lombardi];

    /// <summary>Epley 1985, Brzycki 1993, Lombardi 1989, computed for 100 kg and, in the last row, for 80 kg.</summary>
    [Theory]
    [InlineData(100, 1, 100, 100, 100)]
    [InlineData(100, 2, 106.67, 102.86, 107.18)]
    [InlineData(100, 3, 110.00, 105.88, 111.61)]
    [InlineData(100, 4, 113.33, 109.09, 114.87)]
    [InlineData(100, 5, 116.67, 112.50, 117.46)]
    [InlineData(100, 6, 120.00, 116.13, 119.62)]
    [InlineData(100, 7, 123.33, 120.00, 121.48)]
    [InlineData(100, 8, 126.67, 124.14, 123.11)]
    [InlineData(100, 9, 130.00, 128.57, 124.57)]
    [InlineData(100, 10, 133.33, 133.33, 125.89)]
    [InlineData(80, 8, 101.33, 99.31, 98.49)]
    public void A_set_gives_the_load_that_can_be_lifted_once(double load, int repetitions, double epley, double brzycki, double lombardi)
    {
        Assert.Equal(epley, OneRepetitionMaximum.Epley(load, repetitions).Value(), 0.006);
        Assert.Equal(brzycki, OneRepetitionMaximum.Brzycki(load, repetitions).Value(), 0.006);
        Assert.Equal(lombardi, OneRepetitionMaximum.Lombardi(load, repetitions).Value(), 0.006);
    }

    /// <summary>Implied share of the maximum, computed.</summary>
    [Theory]
    [InlineData(2, 93.8, 97.2, 93.3)]
    [InlineData(3, 90.9, 94.4, 89.6)]
    [InlineData(4, 88.2, 91.7, 87.1)]
    [InlineData(5, 85.7, 88.9, 85.1)]
    [InlineData(6, 83.3, 86.1, 83.6)]
    [InlineData(7, 81.1, 83.3, 82.3)]
    [InlineData(8, 78.9, 80.6, 81.2)]
    [InlineData(9, 76.9, 77.8, 80.3)]
    [InlineData(10, 75.0, 75.0, 79.4)]
    public void More_repetitions_mean_a_smaller_share_of_the_maximum(int repetitions, double epley, double brzycki, double lombardi)
    {
        Assert.Equal(epley, 1e4 / OneRepetitionMaximum.Epley(100, repetitions).Value(), 0.06);
        Assert.Equal(brzycki, 1e4 / OneRepetitionMaximum.Brzycki(100, repetitions).Value(), 0.06);
        Assert.Equal(lombardi, 1e4 / OneRepetitionMaximum.Lombardi(100, repetitions).Value(), 0.06);
    }

    /// <summary>Reynolds, Gordon and Robergs 2006, computed.</summary>
    [Fact]
    public void Five_repetitions_on_a_press_predict_the_maximum()
    {
        Assert.Equal(91.16, OneRepetitionMaximum.ReynoldsChestPress(80).Value(), 0.005);
        Assert.Equal(233.65, OneRepetitionMaximum.ReynoldsLegPress(200).Value(), 0.005);
    }

    /// <summary>R28; 60 kg × 14 gives no estimate, 12 and 15 are rows that a formula could fill, Brzycki has no value from 37 on.</summary>
    [Theory]
    [InlineData(11)]
    [InlineData(12)]
    [InlineData(14)]
    [InlineData(15)]
    [InlineData(37)]
    [InlineData(38)]
    [InlineData(0)]
    [InlineData(-1)]
    public void More_than_ten_repetitions_or_none_give_no_estimate(int repetitions) =>
        Assert.All(Formulas, formula => formula(60, repetitions).Refused("measure.repetitions", "1 to 10."));

    /// <summary>R28.</summary>
    [Fact]
    public void An_estimate_is_shown_with_five_percent_and_a_lifted_load_is_not()
    {
        Assert.All(Formulas, formula => Assert.Contains("± 5 %", formula(60, 5).OrThrow().HowSure, StringComparison.Ordinal));
        Assert.All(Formulas, formula => Assert.Equal("lifted", formula(60, 1).OrThrow().HowSure));
    }

    [Fact]
    public void One_more_repetition_never_lowers_the_estimate() => Gen.Select(Gen.Double[0.5, 600], Gen.Int[1, 9]).Sample((load, repetitions) =>
        Formulas.All(formula => formula(load, repetitions + 1).Value() >= formula(load, repetitions).Value()));

    [Theory]
    [InlineData(0)]
    [InlineData(-20)]
    [InlineData(601)]
    public void A_load_out_of_range_is_refused(double load)
    {
        Assert.All(Formulas, formula => formula(load, 5).Refused("measure.load", "0.5 to 600 kg"));
        OneRepetitionMaximum.ReynoldsChestPress(load).Refused("measure.load", "0.5 to 600 kg");
        OneRepetitionMaximum.ReynoldsLegPress(load).Refused("measure.load", "0.5 to 600 kg");
    }
}
