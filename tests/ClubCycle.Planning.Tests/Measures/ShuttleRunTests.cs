using ClubCycle.Planning.Measures;
using CsCheck;

namespace ClubCycle.Planning.Tests.Measures;

/// <summary>Léger et al. 1988, J Sports Sci 6:93–101.</summary>
public sealed class ShuttleRunTests
{
    /// <summary>Shuttles a stage as in the common recording, printed; the other columns computed.</summary>
    [Theory]
    [InlineData(1, 8.5, 7, 8.47, 7, 140)]
    [InlineData(2, 9.0, 8, 8.00, 15, 300)]
    [InlineData(3, 9.5, 8, 7.58, 23, 460)]
    [InlineData(4, 10.0, 9, 7.20, 32, 640)]
    [InlineData(5, 10.5, 9, 6.86, 41, 820)]
    [InlineData(6, 11.0, 10, 6.55, 51, 1020)]
    [InlineData(7, 11.5, 10, 6.26, 61, 1220)]
    [InlineData(8, 12.0, 11, 6.00, 72, 1440)]
    [InlineData(9, 12.5, 11, 5.76, 83, 1660)]
    [InlineData(10, 13.0, 11, 5.54, 94, 1880)]
    [InlineData(11, 13.5, 12, 5.33, 106, 2120)]
    [InlineData(12, 14.0, 12, 5.14, 118, 2360)]
    [InlineData(13, 14.5, 13, 4.97, 131, 2620)]
    [InlineData(14, 15.0, 13, 4.80, 144, 2880)]
    [InlineData(15, 15.5, 13, 4.65, 157, 3140)]
    public void Every_stage_has_its_speed_and_shuttles(int stage, double speed, int shuttles, double seconds, int inAll, int metres)
    {
        var row = ShuttleRun.Stages[stage - 1];

        Assert.Equal((stage, speed, shuttles, inAll, metres), (row.Stage, row.Speed, row.Shuttles, row.ShuttlesInAll, row.Metres));
        Assert.Equal(seconds, row.SecondsPerShuttle, 0.005);
    }

    /// <summary>Common recording, printed.</summary>
    [Fact]
    public void The_last_six_stages_have_14_to_16_shuttles() =>
        Assert.Equal([14, 14, 15, 15, 16, 16], ShuttleRun.Stages.Skip(15).Select(stage => stage.Shuttles));

    [Fact]
    public void A_stage_takes_a_minute_give_or_take_one_shuttle() =>
        Assert.All(ShuttleRun.Stages, stage => Assert.Equal(60, stage.Shuttles * stage.SecondsPerShuttle, stage.SecondsPerShuttle));

    /// <summary>Computed for 10, 12, 14, 16 and 18 years.</summary>
    [Theory]
    [InlineData(1, 39.1, 35.2, 31.4, 27.5, 23.6)]
    [InlineData(2, 41.5, 37.8, 34.0, 30.3, 26.6)]
    [InlineData(3, 43.9, 40.3, 36.7, 33.2, 29.6)]
    [InlineData(4, 46.3, 42.9, 39.4, 36.0, 32.6)]
    [InlineData(5, 48.7, 45.4, 42.1, 38.9, 35.6)]
    [InlineData(6, 51.1, 47.9, 44.8, 41.7, 38.6)]
    [InlineData(7, 53.4, 50.5, 47.5, 44.6, 41.6)]
    [InlineData(8, 55.8, 53.0, 50.2, 47.4, 44.6)]
    [InlineData(9, 58.2, 55.6, 52.9, 50.3, 47.6)]
    [InlineData(10, 60.6, 58.1, 55.6, 53.1, 50.6)]
    [InlineData(11, 63.0, 60.6, 58.3, 55.9, 53.6)]
    [InlineData(12, 65.4, 63.2, 61.0, 58.8, 56.6)]
    [InlineData(13, 67.8, 65.7, 63.7, 61.6, 59.6)]
    [InlineData(14, 70.2, 68.3, 66.4, 64.5, 62.6)]
    [InlineData(15, 72.5, 70.8, 69.1, 67.3, 65.6)]
    public void Oxygen_uptake_rises_with_the_stage_and_falls_with_age(int stage, double at10, double at12, double at14, double at16, double at18) =>
        Assert.Equal(
            [at10, at12, at14, at16, at18],
            new[] { 10, 12, 14, 16, 18 }.Select(age => ShuttleRun.OxygenUptake(stage, age).Value()),
            (expected, actual) => Math.Abs(expected - actual) <= 0.051);

    /// <summary>Exact adult form −27.439 + 6.0028 X, computed.</summary>
    [Fact]
    public void Adults_of_every_age_count_as_18() => Gen.Select(Gen.Int[1, 21], Gen.Double[18, 50]).Sample((stage, age) =>
        Math.Abs(ShuttleRun.OxygenUptake(stage, age).Value() - (-27.439 + (6.0028 * (8 + (0.5 * stage))))) < 1e-9);

    /// <summary>R47: age 12, stage 8.</summary>
    [Fact]
    public void A_twelve_year_old_at_stage_8_has_53() => Assert.Equal(53.0, ShuttleRun.OxygenUptake(8, 12).Value(), 0.05);

    /// <summary>Berthoin et al. 1992: stage 10 (13.0 km/h), computed.</summary>
    [Fact]
    public void Maximal_aerobic_speed_is_above_the_speed_of_the_shuttles() => Assert.Equal(14.56, ShuttleRun.MaximalAerobicSpeed(10).Value(), 1e-9);

    [Theory]
    [InlineData(140, 1)]
    [InlineData(280, 1)]
    [InlineData(300, 2)]
    [InlineData(1860, 9)]
    [InlineData(1880, 10)]
    [InlineData(4940, 21)]
    public void A_distance_tells_the_last_completed_stage(int metres, int stage) => Assert.Equal(stage, ShuttleRun.StageAfter(metres).OrThrow().Stage);

    [Fact]
    public void More_metres_never_lower_the_oxygen_uptake() => Gen.Select(Gen.Int[7, 246], Gen.Double[8, 50]).Sample((shuttles, age) =>
        ShuttleRun.OxygenUptake(Stage((shuttles + 1) * 20), age).Value() >= ShuttleRun.OxygenUptake(Stage(shuttles * 20), age).Value());

    /// <summary>R47.</summary>
    [Theory]
    [InlineData(7.9)]
    [InlineData(50.1)]
    [InlineData(0)]
    public void An_age_outside_the_equation_is_refused(double age) => ShuttleRun.OxygenUptake(8, age).Refused("measure.shuttle-age", "8 to 50 years");

    [Theory]
    [InlineData(0)]
    [InlineData(22)]
    public void A_stage_that_does_not_exist_is_refused(int stage)
    {
        ShuttleRun.OxygenUptake(stage, 20).Refused("measure.shuttle-stage", "1 to 21.");
        ShuttleRun.MaximalAerobicSpeed(stage).Refused("measure.shuttle-stage", "1 to 21.");
    }

    [Theory]
    [InlineData(120)]
    [InlineData(4960)]
    public void A_distance_out_of_range_is_refused(int metres) => ShuttleRun.StageAfter(metres).Refused("measure.shuttle-metres", "140 to 4940 m");

    [Fact]
    public void A_distance_between_two_lines_is_refused() => ShuttleRun.StageAfter(150).Refused("measure.shuttle-metres", "140 to 4940 m in steps of 20");

    private static int Stage(int metres) => ShuttleRun.StageAfter(metres).OrThrow().Stage;
}
