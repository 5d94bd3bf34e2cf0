using ClubCycle.Planning.Measures;
using CsCheck;
using NodaTime;

namespace ClubCycle.Planning.Tests.Measures;

public sealed class GrowthTests
{
    private static readonly LocalDate FirstOfMarch = new(2026, 3, 1);

    /// <summary>Mirwald et al. 2002 with mass / height × 100, computed.</summary>
    [Theory]
    [InlineData(Sex.Male, 12.0, 150, 78, 40, -1.787, 13.79)]
    [InlineData(Sex.Male, 13.5, 162, 84, 50, -0.323, 13.82)]
    [InlineData(Sex.Male, 15.0, 172, 90, 62, 1.285, 13.72)]
    [InlineData(Sex.Female, 11.0, 146, 76, 37, -0.930, 11.93)]
    [InlineData(Sex.Female, 12.0, 150, 79, 40, -0.133, 12.13)]
    [InlineData(Sex.Female, 13.0, 160, 84, 50, 1.054, 11.95)]
    public void Age_heights_and_mass_tell_the_years_from_the_fastest_growth(Sex sex, double age, double height, double sitting, double mass, double offset, double peak)
    {
        var years = Growth.MaturityOffset(sex, age, height, sitting, mass).Value();

        Assert.Equal(offset, years, 0.0006);
        Assert.Equal(peak, Growth.AgeAtPeak(age, years).Value(), 0.0051);
    }

    /// <summary>Moore et al. 2015: boy A and girl B above, computed; the girls' formula and the constant for sitting height from memory.</summary>
    [Fact]
    public void Fewer_measures_give_a_rougher_offset()
    {
        Assert.Equal(-1.544, Growth.BoysOffsetBySittingHeight(12, 150, 78).Value(), 0.0006);
        Assert.Equal(-1.498, Growth.MaturityOffsetByHeight(Sex.Male, 12, 150).Value(), 0.0006);
        Assert.Equal(-0.107, Growth.MaturityOffsetByHeight(Sex.Female, 12, 150).Value(), 0.0006);
    }

    [Fact]
    public void What_is_from_memory_says_so()
    {
        Assert.Contains("from memory", Growth.MaturityOffsetByHeight(Sex.Female, 12, 150).OrThrow().Source, StringComparison.Ordinal);
        Assert.Contains("from memory", Growth.BoysOffsetBySittingHeight(12, 150, 78).OrThrow().Source, StringComparison.Ordinal);
        Assert.DoesNotContain("from memory", Growth.MaturityOffsetByHeight(Sex.Male, 12, 150).OrThrow().Source, StringComparison.Ordinal);
    }

    [Fact]
    public void A_taller_player_of_the_same_age_is_never_further_from_grown() => Gen.Select(Gen.Double[8, 16], Gen.Double[100, 210], Gen.Double[0, 5]).Sample((age, height, more) =>
        Growth.MaturityOffsetByHeight(Sex.Male, age, height + more).Value() >= Growth.MaturityOffsetByHeight(Sex.Male, age, height).Value()
        && Growth.MaturityOffsetByHeight(Sex.Female, age, height + more).Value() >= Growth.MaturityOffsetByHeight(Sex.Female, age, height).Value());

    /// <summary>Sherar et al. 2005.</summary>
    [Theory]
    [InlineData(Sex.Male, 12.99, MaturityTiming.Early)]
    [InlineData(Sex.Male, 13.0, MaturityTiming.Average)]
    [InlineData(Sex.Male, 14.65, MaturityTiming.Average)]
    [InlineData(Sex.Male, 14.66, MaturityTiming.Late)]
    [InlineData(Sex.Female, 10.79, MaturityTiming.Early)]
    [InlineData(Sex.Female, 10.8, MaturityTiming.Average)]
    [InlineData(Sex.Female, 12.35, MaturityTiming.Average)]
    [InlineData(Sex.Female, 12.36, MaturityTiming.Late)]
    public void The_age_at_the_fastest_growth_is_early_average_or_late(Sex sex, double age, MaturityTiming timing) =>
        Assert.Equal(timing, Growth.Timing(sex, age).OrThrow());

    /// <summary>By hand: a month is 30.4375 days.</summary>
    [Theory]
    [InlineData(28, 150, 150.6, 0.652)]
    [InlineData(61, 150, 151, 0.499)]
    [InlineData(365, 150, 150, 0)]
    public void Two_heights_give_centimetres_a_month(int days, double earlier, double later, double rate) =>
        Assert.Equal(rate, Growth.Rate(FirstOfMarch, earlier, FirstOfMarch.PlusDays(days), later).Value(), 0.0005);

    /// <summary>R45: girls 9 to 15, boys 11 to 17, the wider range where the sex is not known.</summary>
    [Theory]
    [InlineData(8, Sex.Female, GrowthBrake.OutsideAges)]
    [InlineData(9, Sex.Female, GrowthBrake.On)]
    [InlineData(15, Sex.Female, GrowthBrake.On)]
    [InlineData(16, Sex.Female, GrowthBrake.OutsideAges)]
    [InlineData(10, Sex.Male, GrowthBrake.OutsideAges)]
    [InlineData(11, Sex.Male, GrowthBrake.On)]
    [InlineData(17, Sex.Male, GrowthBrake.On)]
    [InlineData(18, Sex.Male, GrowthBrake.OutsideAges)]
    [InlineData(8, null, GrowthBrake.OutsideAges)]
    [InlineData(9, null, GrowthBrake.On)]
    [InlineData(17, null, GrowthBrake.On)]
    [InlineData(18, null, GrowthBrake.OutsideAges)]
    public void The_brake_holds_in_the_years_of_the_spurt(int age, Sex? sex, GrowthBrake brake) =>
        Assert.Equal(brake, Growth.Brake(age, sex, offset: 0, rate: 1).OrThrow());

    /// <summary>R45: −1.0 to +1.0 years or 0.6 cm a month.</summary>
    [Theory]
    [InlineData(-1.01, null, GrowthBrake.Off)]
    [InlineData(-1.0, null, GrowthBrake.On)]
    [InlineData(1.0, null, GrowthBrake.On)]
    [InlineData(1.01, null, GrowthBrake.Off)]
    [InlineData(null, 0.59, GrowthBrake.Off)]
    [InlineData(null, 0.6, GrowthBrake.On)]
    [InlineData(-2.0, 0.6, GrowthBrake.On)]
    [InlineData(0.0, 0.0, GrowthBrake.On)]
    [InlineData(-2.0, 0.3, GrowthBrake.Off)]
    [InlineData(null, null, GrowthBrake.Measure)]
    public void Either_number_puts_the_brake_on(double? offset, double? rate, GrowthBrake brake) =>
        Assert.Equal(brake, Growth.Brake(13, Sex.Male, offset, rate).OrThrow());

    [Fact]
    public void Faster_growth_never_takes_the_brake_off() => Gen.Select(Gen.Int[5, 40], Gen.Double[-8, 8], Gen.Double[0, 2], Gen.Double[0, 1]).Sample((age, offset, rate, more) =>
        Growth.Brake(age, null, offset, rate).OrThrow() != GrowthBrake.On || Growth.Brake(age, null, offset, rate + more).OrThrow() == GrowthBrake.On);

    /// <summary>R47.</summary>
    [Theory]
    [InlineData(7.9)]
    [InlineData(16.1)]
    [InlineData(0)]
    public void An_age_outside_the_equations_is_refused(double age)
    {
        Growth.MaturityOffset(Sex.Male, age, 150, 78, 40).Refused("measure.growth-age", "8 to 16 years");
        Growth.MaturityOffsetByHeight(Sex.Female, age, 150).Refused("measure.growth-age", "8 to 16 years");
        Growth.BoysOffsetBySittingHeight(age, 150, 78).Refused("measure.growth-age", "8 to 16 years");
        Growth.AgeAtPeak(age, 0).Refused("measure.growth-age", "8 to 16 years");
    }

    [Theory]
    [InlineData(1.5, 0.78, 40, "measure.growth-height", "100 to 215 cm")]
    [InlineData(216, 112, 40, "measure.growth-height", "100 to 215 cm")]
    [InlineData(150, 0, 40, "measure.growth-sitting-height", "45 to 60 percent")]
    [InlineData(150, 118, 40, "measure.growth-sitting-height", "45 to 60 percent")]
    [InlineData(150, 78, 0, "measure.growth-mass", "15 to 130 kg")]
    [InlineData(150, 78, 131, "measure.growth-mass", "15 to 130 kg")]
    public void Measures_that_cannot_be_are_refused(double height, double sitting, double mass, string code, string range) =>
        Growth.MaturityOffset(Sex.Female, 12, height, sitting, mass).Refused(code, range);

    [Theory]
    [InlineData(27)]
    [InlineData(0)]
    [InlineData(-40)]
    [InlineData(367)]
    public void Heights_less_than_28_days_or_more_than_a_year_apart_are_refused(int days) =>
        Growth.Rate(FirstOfMarch, 150, FirstOfMarch.PlusDays(days), 151).Refused("measure.growth-days", "28 to 366 days");

    [Theory]
    [InlineData(149.9)]
    [InlineData(160)]
    public void Shrinking_and_leaps_are_refused(double later) =>
        Growth.Rate(FirstOfMarch, 150, FirstOfMarch.PlusDays(60), later).Refused("measure.growth-rate", "0 to 3 cm a month");

    [Theory]
    [InlineData(4, 0.0, 0.0, "measure.growth-brake-age", "5 to 99 years")]
    [InlineData(13, 9.0, 0.0, "measure.growth-offset", "-8 to 8 years")]
    [InlineData(13, 0.0, -0.1, "measure.growth-rate", "0 to 3 cm a month")]
    public void The_brake_refuses_what_cannot_be(int age, double offset, double rate, string code, string range) =>
        Growth.Brake(age, null, offset, rate).Refused(code, range);

    [Theory]
    [InlineData(7)]
    [InlineData(20)]
    [InlineData(0)]
    public void An_age_at_the_fastest_growth_out_of_range_is_refused(double age) => Growth.Timing(Sex.Male, age).Refused("measure.growth-peak-age", "8 to 19 years");
}
