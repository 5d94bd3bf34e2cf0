using ClubCycle.Planning.Measures;
using CsCheck;

namespace ClubCycle.Planning.Tests.Measures;

public sealed class HeartRateTests
{
    /// <summary>Tanaka et al. 2001: 208 − 0.7 × age, computed.</summary>
    [Theory]
    [InlineData(10, 201.0)]
    [InlineData(12, 199.6)]
    [InlineData(14, 198.2)]
    [InlineData(16, 196.8)]
    [InlineData(18, 195.4)]
    [InlineData(20, 194.0)]
    [InlineData(25, 190.5)]
    [InlineData(30, 187.0)]
    [InlineData(35, 183.5)]
    [InlineData(40, 180.0)]
    [InlineData(50, 173.0)]
    public void The_default_maximum_falls_by_seven_beats_in_ten_years(int age, double beats) =>
        Assert.Equal(beats, HeartRate.Maximum(age, measured: null).Value(), 1e-9);

    /// <summary>Fox et al. 1971: 220 − age, computed; it crosses Tanaka's at 40.</summary>
    [Theory]
    [InlineData(18, 202)]
    [InlineData(20, 200)]
    [InlineData(25, 195)]
    [InlineData(30, 190)]
    [InlineData(35, 185)]
    [InlineData(40, 180)]
    [InlineData(50, 170)]
    public void Fox_is_220_less_the_age_of_an_adult(int age, double beats) => Assert.Equal(beats, HeartRate.Fox(age).Value(), 1e-9);

    /// <summary>Gellish et al. 2007, from memory: 207 − 0.7 × age, computed.</summary>
    [Theory]
    [InlineData(18, 194.4)]
    [InlineData(20, 193.0)]
    [InlineData(25, 189.5)]
    [InlineData(30, 186.0)]
    [InlineData(35, 182.5)]
    [InlineData(40, 179.0)]
    [InlineData(50, 172.0)]
    public void Gellish_lies_a_beat_below_the_default(int age, double beats) => Assert.Equal(beats, HeartRate.Gellish(age).Value(), 1e-9);

    /// <summary>Gellish et al. 2007, from memory: 192 − 0.007 × age², computed by hand.</summary>
    [Theory]
    [InlineData(20, 189.2)]
    [InlineData(30, 185.7)]
    [InlineData(50, 174.5)]
    public void The_curve_of_Gellish_falls_faster_with_age(int age, double beats) => Assert.Equal(beats, HeartRate.GellishCurve(age).Value(), 1e-9);

    /// <summary>R42; Cicone et al. 2019.</summary>
    [Theory]
    [InlineData(10)]
    [InlineData(12)]
    [InlineData(14)]
    [InlineData(16)]
    [InlineData(17.9)]
    public void Minors_get_no_adult_formula(double age)
    {
        HeartRate.Fox(age).Refused("measure.heart-adults-only", "18 to 90 years");
        HeartRate.Gellish(age).Refused("measure.heart-adults-only", "18 to 90 years");
        HeartRate.GellishCurve(age).Refused("measure.heart-adults-only", "18 to 90 years");
    }

    [Fact]
    public void A_measured_maximum_goes_before_every_formula() =>
        Assert.Equal((204, "measured"), HeartRate.Maximum(20, 204).OrThrow() is var e ? (e.Value, e.HowSure) : default);

    [Fact]
    public void The_source_is_part_of_the_answer()
    {
        Assert.Contains("Tanaka", HeartRate.Maximum(16, null).OrThrow().Source, StringComparison.Ordinal);
        Assert.Contains("Own", HeartRate.Maximum(16, 201).OrThrow().Source, StringComparison.Ordinal);
        Assert.Contains("from memory", HeartRate.Gellish(20).OrThrow().Source, StringComparison.Ordinal);
    }

    /// <summary>
    /// Karvonen 1957: worked examples of a college worksheet (200, 75) and a health-education text (190, 70), printed;
    /// a youth player (Tanaka at 16) and a senior with a measured maximum, computed.
    /// </summary>
    [Theory]
    [InlineData(200, 75, 60, 150)]
    [InlineData(200, 75, 80, 175)]
    [InlineData(190, 70, 40, 118)]
    [InlineData(190, 70, 85, 172)]
    [InlineData(196.8, 58, 30, 99.6)]
    [InlineData(196.8, 58, 40, 113.5)]
    [InlineData(196.8, 58, 60, 141.3)]
    [InlineData(196.8, 58, 90, 182.9)]
    [InlineData(204, 62, 40, 118.8)]
    [InlineData(204, 62, 60, 147.2)]
    [InlineData(204, 62, 70, 161.4)]
    [InlineData(204, 62, 85, 182.7)]
    [InlineData(204, 62, 90, 189.8)]
    public void A_target_is_rest_and_a_share_of_the_reserve(double maximum, double rest, double percent, double beats) =>
        Assert.Equal(beats, HeartRate.AtReserve(maximum, rest, percent).Value(), 0.05);

    /// <summary>Printed with the worked examples.</summary>
    [Theory]
    [InlineData(200, 75, 125)]
    [InlineData(190, 70, 120)]
    public void The_reserve_is_what_lies_between_rest_and_maximum(double maximum, double rest, double reserve) =>
        Assert.Equal(reserve, HeartRate.Reserve(maximum, rest).Value(), 1e-9);

    /// <summary>College page, printed as 67 %.</summary>
    [Fact]
    public void A_heart_rate_tells_its_share_of_the_reserve() => Assert.Equal(67, HeartRate.PercentOfReserve(200, 50, 150).Value(), 0.5);

    /// <summary>140 b/min as a share of Tanaka's maximum, computed.</summary>
    [Theory]
    [InlineData(12, 70.1, IntensityBand.Moderate)]
    [InlineData(16, 71.1, IntensityBand.Moderate)]
    [InlineData(20, 72.2, IntensityBand.Moderate)]
    [InlineData(30, 74.9, IntensityBand.Moderate)]
    [InlineData(40, 77.8, IntensityBand.Vigorous)]
    public void A_hundred_and_forty_beats_are_moderate_up_to_37_years(double age, double percent, IntensityBand band)
    {
        var share = 140 / HeartRate.Tanaka(age).Value() * 100;

        Assert.Equal(percent, share, 0.05);
        Assert.Equal(band, Intensity.OfMaximum(share).OrThrow());
    }

    /// <summary>Computed: 140 is 77.0 % of the maximum at 37.4 years.</summary>
    [Fact]
    public void A_hundred_and_forty_beats_reach_the_edge_of_moderate_at_37_years() =>
        Assert.Equal(77.0, 140 / HeartRate.Tanaka(37.4).Value() * 100, 0.05);

    /// <summary>R41: 0.76 × 196.8 = 149.57; 58 + 0.59 × 138.8 = 139.89, computed. Others by hand.</summary>
    [Theory]
    [InlineData(16, null, 58.0, 139.892)]
    [InlineData(16, 196.8, 58.0, 139.892)]
    [InlineData(16, 196.8, null, 149.568)]
    [InlineData(20, 204.0, 62.0, 145.78)]
    [InlineData(50, 170.0, 80.0, 129.2)]
    [InlineData(null, 200.0, 50.0, 138.5)]
    [InlineData(null, 200.0, null, 152.0)]
    public void Easy_running_stays_below_the_lower_of_two_ceilings_of_the_players_own(int? age, double? maximum, double? rest, double beats) =>
        Assert.Equal(beats, HeartRate.AerobicBaseCeiling(age, maximum, rest).OrThrow()!.Value, 1e-9);

    /// <summary>R41.</summary>
    [Theory]
    [InlineData(12)]
    [InlineData(20)]
    [InlineData(37)]
    public void Without_own_numbers_140_holds_from_12_to_37_years(int age) =>
        Assert.Equal(140, HeartRate.AerobicBaseCeiling(age, null, null).OrThrow()!.Value);

    /// <summary>R41.</summary>
    [Theory]
    [InlineData(11, null)]
    [InlineData(38, null)]
    [InlineData(null, null)]
    [InlineData(null, 60.0)]
    public void Otherwise_only_talking_decides(int? age, double? rest) => Assert.Null(HeartRate.AerobicBaseCeiling(age, null, rest).OrThrow());

    [Fact]
    public void The_ceiling_names_where_the_maximum_came_from() =>
        Assert.Contains("Tanaka", HeartRate.AerobicBaseCeiling(16, null, 58).OrThrow()!.Source, StringComparison.Ordinal);

    /// <summary>R42.</summary>
    [Fact]
    public void Every_target_lies_below_the_maximum() => Gen.Select(Gen.Double[120, 230], Gen.Double[25, 110], Gen.Double[1, 99]).Sample((maximum, rest, percent) =>
        HeartRate.AtReserve(maximum, rest, percent).Value() < maximum && HeartRate.AtMaximum(maximum, percent).Value() < maximum);

    [Fact]
    public void Target_and_share_undo_each_other() => Gen.Select(Gen.Double[120, 230], Gen.Double[25, 110], Gen.Double[1, 99]).Sample((maximum, rest, percent) =>
        Math.Abs(HeartRate.PercentOfReserve(maximum, rest, HeartRate.AtReserve(maximum, rest, percent).Value()).Value() - percent) < 1e-6);

    [Theory]
    [InlineData(5)]
    [InlineData(91)]
    [InlineData(0)]
    [InlineData(-16)]
    public void An_age_out_of_range_is_refused(double age) => HeartRate.Tanaka(age).Refused("measure.heart-age", "6 to 90 years");

    [Theory]
    [InlineData(119)]
    [InlineData(231)]
    [InlineData(0)]
    public void A_maximum_out_of_range_is_refused(double beats)
    {
        HeartRate.Measured(beats).Refused("measure.heart-maximum", "120 to 230 b/min");
        HeartRate.Reserve(beats, 60).Refused("measure.heart-maximum", "120 to 230 b/min");
        HeartRate.AtMaximum(beats, 60).Refused("measure.heart-maximum", "120 to 230 b/min");
        HeartRate.AerobicBaseCeiling(16, beats, 60).Refused("measure.heart-maximum", "120 to 230 b/min");
    }

    [Theory]
    [InlineData(24)]
    [InlineData(111)]
    [InlineData(0)]
    public void A_resting_rate_out_of_range_is_refused(double beats)
    {
        HeartRate.Reserve(200, beats).Refused("measure.heart-rest", "25 to 110 b/min");
        HeartRate.AerobicBaseCeiling(16, 200, beats).Refused("measure.heart-rest", "25 to 110 b/min");
    }

    [Theory]
    [InlineData(0)]
    [InlineData(100)]
    [InlineData(-1)]
    public void A_target_at_the_maximum_or_at_rest_is_refused(double percent)
    {
        HeartRate.AtReserve(200, 50, percent).Refused("measure.heart-percent", "1 to 99 percent");
        HeartRate.AtMaximum(200, percent).Refused("measure.heart-percent", "1 to 99 percent");
    }

    [Theory]
    [InlineData(49)]
    [InlineData(201)]
    public void A_heart_rate_outside_rest_and_maximum_is_refused(double beats) =>
        HeartRate.PercentOfReserve(200, 50, beats).Refused("measure.heart-beats", "50 to 200 b/min");

    [Fact]
    public void Everything_wrong_is_said_at_once()
    {
        Assert.False(HeartRate.AtReserve(0, 0, 0).TryGet(out _, out var problems));

        Assert.Equal(["measure.heart-maximum", "measure.heart-rest", "measure.heart-percent"], problems.Select(problem => problem.Code));
    }
}
