using ClubCycle.Planning.Measures;
using CsCheck;

namespace ClubCycle.Planning.Tests.Measures;

public sealed class JumpTests
{
    /// <summary>g t² / 8: 0.500 s give 0.307 m, computed.</summary>
    [Fact]
    public void Half_a_second_in_the_air_is_a_jump_of_31_centimetres() => Assert.Equal(30.7, Jump.Height(0.5).Value(), 0.05);

    /// <summary>Sayers et al. 1999: first row printed, others computed.</summary>
    [Theory]
    [InlineData(55, 80, 4907.5)]
    [InlineData(40, 75, 3770.5)]
    [InlineData(35, 70, 3240.5)]
    [InlineData(30, 60, 2484.0)]
    public void Height_and_mass_give_peak_power(double height, double mass, double watts) => Assert.Equal(watts, Jump.PeakPower(height, mass).Value(), 1e-6);

    [Fact]
    public void Every_accepted_jump_has_power_and_more_height_gives_more() => Gen.Select(Gen.Double[10, 99], Gen.Double[40, 150], Gen.Double[0, 1]).Sample((height, mass, more) =>
        Jump.PeakPower(height, mass).Value() > 0 && Jump.PeakPower(height + more, mass).Value() >= Jump.PeakPower(height, mass).Value());

    [Theory]
    [InlineData(0)]
    [InlineData(1.1)]
    [InlineData(500)]
    public void A_flight_time_out_of_range_is_refused(double flight) => Jump.Height(flight).Refused("measure.flight-time", "0.1 to 1 s");

    [Theory]
    [InlineData(0, 60, "measure.jump-height", "10 to 100 cm")]
    [InlineData(0.4, 60, "measure.jump-height", "10 to 100 cm")]
    [InlineData(101, 60, "measure.jump-height", "10 to 100 cm")]
    [InlineData(40, 39, "measure.jump-mass", "40 to 150 kg")]
    [InlineData(40, 151, "measure.jump-mass", "40 to 150 kg")]
    public void A_jump_outside_the_equation_is_refused(double height, double mass, string code, string range) => Jump.PeakPower(height, mass).Refused(code, range);
}
