using ClubCycle.Planning.Measures;
using CsCheck;

namespace ClubCycle.Planning.Tests.Measures;

public sealed class HeatTests
{
    /// <summary>0.7 × wet + 0.2 × globe + 0.1 × air, computed.</summary>
    [Theory]
    [InlineData(24, 40, 32, 28.0)]
    [InlineData(22, 35, 28, 25.2)]
    public void Three_thermometers_give_one_temperature(double wet, double globe, double air, double wbgt) =>
        Assert.Equal(wbgt, Heat.WetBulbGlobe(wet, globe, air).Value(), 1e-9);

    /// <summary>Armstrong et al. 2007, first and last printed value of each row; R48 for 31 °C at 15 years. Gaps between rows take the hotter one (editorial).</summary>
    [Theory]
    [InlineData(20, HeatAdvice.LongerRests, HeatAdvice.Normal)]
    [InlineData(27.7, HeatAdvice.LongerRests, HeatAdvice.Normal)]
    [InlineData(27.8, HeatAdvice.EqualRest, HeatAdvice.Careful)]
    [InlineData(27.9, HeatAdvice.EqualRest, HeatAdvice.Careful)]
    [InlineData(30.0, HeatAdvice.EqualRest, HeatAdvice.Careful)]
    [InlineData(30.05, HeatAdvice.Cancel, HeatAdvice.Limit)]
    [InlineData(30.1, HeatAdvice.Cancel, HeatAdvice.Limit)]
    [InlineData(31, HeatAdvice.Cancel, HeatAdvice.Limit)]
    [InlineData(32.2, HeatAdvice.Cancel, HeatAdvice.Limit)]
    [InlineData(32.21, HeatAdvice.Cancel, HeatAdvice.Cancel)]
    [InlineData(40, HeatAdvice.Cancel, HeatAdvice.Cancel)]
    public void From_14_years_the_adult_rows_hold(double wbgt, HeatAdvice notUsedToHeat, HeatAdvice usedToHeat) =>
        Assert.All([14, 15, 30], age => Assert.Equal(
            (notUsedToHeat, usedToHeat), (Heat.Advise(wbgt, false, age).OrThrow(), Heat.Advise(wbgt, true, age).OrThrow())));

    /// <summary>American Academy of Pediatrics 2000, first and last printed value of each row.</summary>
    [Theory]
    [InlineData(23.9, HeatAdvice.Normal, HeatAdvice.Normal)]
    [InlineData(24.0, HeatAdvice.LongerRests, HeatAdvice.LongerRests)]
    [InlineData(25.9, HeatAdvice.LongerRests, HeatAdvice.LongerRests)]
    [InlineData(26, HeatAdvice.Cancel, HeatAdvice.Limit)]
    [InlineData(29, HeatAdvice.Cancel, HeatAdvice.Limit)]
    [InlineData(29.1, HeatAdvice.Cancel, HeatAdvice.Cancel)]
    [InlineData(31, HeatAdvice.Cancel, HeatAdvice.Cancel)]
    public void Under_14_years_the_stricter_rows_hold(double wbgt, HeatAdvice notUsedToHeat, HeatAdvice usedToHeat) =>
        Assert.All([6, 13], age => Assert.Equal(
            (notUsedToHeat, usedToHeat), (Heat.Advise(wbgt, false, age).OrThrow(), Heat.Advise(wbgt, true, age).OrThrow())));

    [Fact]
    public void Hotter_never_allows_more() => Gen.Select(Gen.Double[-10, 55], Gen.Double[0, 5], Gen.Bool, Gen.Int[3, 99]).Sample((wbgt, more, acclimatised, age) =>
        Heat.Advise(wbgt + more, acclimatised, age).OrThrow() >= Heat.Advise(wbgt, acclimatised, age).OrThrow());

    [Fact]
    public void Children_are_never_allowed_more_than_adults_in_the_heat() => Gen.Select(Gen.Double[24, 60], Gen.Bool).Sample((wbgt, acclimatised) =>
        Heat.Advise(wbgt, acclimatised, 13).OrThrow() >= Heat.Advise(wbgt, acclimatised, 14).OrThrow());

    /// <summary>R48.</summary>
    [Fact]
    public void Children_are_cancelled_from_30_degrees_at_the_latest() => Gen.Select(Gen.Double[30.001, 60], Gen.Bool, Gen.Int[3, 13]).Sample((wbgt, acclimatised, age) =>
        Heat.Advise(wbgt, acclimatised, age).OrThrow() == HeatAdvice.Cancel);

    [Theory]
    [InlineData(-11)]
    [InlineData(82)]
    public void Degrees_Fahrenheit_are_refused(double wbgt) => Heat.Advise(wbgt, true, 20).Refused("measure.heat-wbgt", "-10 to 60 °C");

    [Theory]
    [InlineData(2)]
    [InlineData(0)]
    [InlineData(100)]
    public void An_age_out_of_range_is_refused(int age) => Heat.Advise(20, true, age).Refused("measure.heat-age", "3 to 99 years");

    [Theory]
    [InlineData(46, 40, 32, "measure.heat-wet-bulb", "-10 to 45 °C")]
    [InlineData(24, 91, 32, "measure.heat-globe", "-10 to 90 °C")]
    [InlineData(24, 40, 56, "measure.heat-air", "-10 to 55 °C")]
    public void A_thermometer_out_of_range_is_refused(double wet, double globe, double air, string code, string range) =>
        Heat.WetBulbGlobe(wet, globe, air).Refused(code, range);
}
