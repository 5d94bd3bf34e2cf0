using ClubCycle.Planning.Measures;
using CsCheck;

namespace ClubCycle.Planning.Tests.Measures;

public sealed class RunningPaceTests
{
    /// <summary>60 / speed, computed to the second.</summary>
    [Theory]
    [InlineData(8, 7, 30)]
    [InlineData(9, 6, 40)]
    [InlineData(10, 6, 0)]
    [InlineData(11, 5, 27)]
    [InlineData(12, 5, 0)]
    [InlineData(13, 4, 37)]
    [InlineData(14, 4, 17)]
    [InlineData(15, 4, 0)]
    [InlineData(16, 3, 45)]
    public void A_speed_has_a_pace(double speed, int minutes, int seconds) =>
        Assert.Equal((minutes * 60) + seconds, RunningPace.MinutesPerKm(speed).Value() * 60, 0.5);

    /// <summary>By hand.</summary>
    [Fact]
    public void Speeds_convert()
    {
        Assert.Equal(30, RunningPace.SecondsPer100Metres(12).Value(), 1e-9);
        Assert.Equal(200, RunningPace.MetresPerMinute(12).Value(), 1e-9);
        Assert.Equal(5, RunningPace.MetresPerSecond(18).Value(), 1e-9);
        Assert.Equal(13.95, RunningPace.KmPerHour(232.5 / 60).Value(), 1e-9);
    }

    /// <summary>Printed: 3 km in 12:00 is 4.17 m/s; 4 minutes a km.</summary>
    [Fact]
    public void Four_minutes_a_km_are_4_17_metres_a_second() =>
        Assert.Equal(4.17, RunningPace.MetresPerSecond(RunningPace.SpeedOfPace(4).Value()).Value(), 0.005);

    [Fact]
    public void Conversions_undo_each_other() => Gen.Double[1.001, 44.999].Sample(speed =>
        Math.Abs(RunningPace.SpeedOfPace(RunningPace.MinutesPerKm(speed).Value()).Value() - speed) < 1e-9
        && Math.Abs(RunningPace.KmPerHour(RunningPace.MetresPerSecond(speed).Value()).Value() - speed) < 1e-9);

    /// <summary>Metres in 15 s at 100, 110, 120 and 130 %, and minutes a km at 70 %, computed.</summary>
    [Theory]
    [InlineData(3.6, 54.0, 59.4, 64.8, 70.2, 6.61)]
    [InlineData(4.0, 60.0, 66.0, 72.0, 78.0, 5.95)]
    [InlineData(4.2, 63.0, 69.3, 75.6, 81.9, 5.67)]
    [InlineData(4.4, 66.0, 72.6, 79.2, 85.8, 5.41)]
    [InlineData(4.6, 69.0, 75.9, 82.8, 89.7, 5.18)]
    [InlineData(4.8, 72.0, 79.2, 86.4, 93.6, 4.96)]
    [InlineData(5.0, 75.0, 82.5, 90.0, 97.5, 4.76)]
    public void Intervals_and_easy_runs_follow_the_maximal_aerobic_speed(double speed, double at100, double at110, double at120, double at130, double easyPace)
    {
        Assert.Equal(
            [at100, at110, at120, at130],
            new[] { 100, 110, 120, 130 }.Select(percent => RunningPace.Metres(speed, percent, 15).Value()),
            (expected, actual) => Math.Abs(expected - actual) < 1e-9);
        Assert.Equal(easyPace, PaceOf(RunningPace.SpeedAt(speed, 70)), 0.005);
    }

    /// <summary>Printed: 4.17 m/s × 1.2 × 15 s = 75 m.</summary>
    [Fact]
    public void Fifteen_seconds_at_120_percent_of_4_17_are_75_metres() => Assert.Equal(75, RunningPace.Metres(4.17, 120, 15).Value(), 0.1);

    /// <summary>Computed: end speed 19 km/h, 95 %, 15 s.</summary>
    [Fact]
    public void The_end_speed_of_the_30_15_test_gives_distances() => Assert.Equal(75.2, RunningPace.MetresByEndSpeed(19, 95, 15).Value(), 0.05);

    /// <summary>Condello et al. 2014: 64 to 67 % of 4.2 m/s are 6:12 to 5:55 min/km, computed.</summary>
    [Fact]
    public void Easy_running_stays_below_two_thirds_of_the_maximal_aerobic_speed()
    {
        Assert.Equal(2.814, RunningPace.EasyCeiling(4.2).Value(), 1e-9);
        Assert.Equal((5 * 60) + 55, PaceOf(RunningPace.EasyCeiling(4.2)) * 60, 0.5);
        Assert.Equal((6 * 60) + 12, PaceOf(RunningPace.SpeedAt(4.2, 64)) * 60, 0.5);
    }

    [Fact]
    public void Longer_or_harder_repetitions_never_cover_less() => Gen.Select(Gen.Double[2, 7], Gen.Double[40, 140], Gen.Double[5, 1100], Gen.Double[0, 10]).Sample((speed, percent, seconds, more) =>
        RunningPace.Metres(speed, percent + more, seconds + more).Value() >= RunningPace.Metres(speed, percent, seconds).Value());

    [Theory]
    [InlineData(0)]
    [InlineData(-10)]
    [InlineData(46)]
    public void A_speed_out_of_range_is_refused(double speed)
    {
        RunningPace.MinutesPerKm(speed).Refused("measure.speed-km", "1 to 45 km/h");
        RunningPace.SecondsPer100Metres(speed).Refused("measure.speed-km", "1 to 45 km/h");
        RunningPace.MetresPerMinute(speed).Refused("measure.speed-km", "1 to 45 km/h");
        RunningPace.MetresPerSecond(speed).Refused("measure.speed-km", "1 to 45 km/h");
        RunningPace.KmPerHour(speed).Refused("measure.speed-metres", "0.25 to 12.5 m/s");
    }

    [Theory]
    [InlineData(0)]
    [InlineData(61)]
    public void A_pace_out_of_range_is_refused(double pace) => RunningPace.SpeedOfPace(pace).Refused("measure.pace", "1.33 to 60 min/km");

    [Theory]
    [InlineData(0)]
    [InlineData(1.9)]
    [InlineData(15)]
    public void A_maximal_aerobic_speed_out_of_range_is_refused(double speed)
    {
        RunningPace.EasyCeiling(speed).Refused("measure.aerobic-speed", "2 to 7 m/s");
        RunningPace.SpeedAt(speed, 70).Refused("measure.aerobic-speed", "2 to 7 m/s");
        RunningPace.Metres(speed, 100, 15).Refused("measure.aerobic-speed", "2 to 7 m/s");
    }

    [Theory]
    [InlineData(0, 15, "measure.interval-percent", "40 to 150 percent")]
    [InlineData(1.2, 15, "measure.interval-percent", "40 to 150 percent")]
    [InlineData(151, 15, "measure.interval-percent", "40 to 150 percent")]
    [InlineData(100, 0, "measure.interval-seconds", "5 to 1200 s")]
    [InlineData(100, 1201, "measure.interval-seconds", "5 to 1200 s")]
    public void A_repetition_out_of_range_is_refused(double percent, double seconds, string code, string range)
    {
        RunningPace.Metres(4, percent, seconds).Refused(code, range);
        RunningPace.MetresByEndSpeed(19, percent, seconds).Refused(code, range);
    }

    [Theory]
    [InlineData(7)]
    [InlineData(26)]
    [InlineData(0)]
    public void An_end_speed_out_of_range_is_refused(double speed) => RunningPace.MetresByEndSpeed(speed, 95, 15).Refused("measure.end-speed", "8 to 25 km/h");

    private static double PaceOf(Result<Estimate> metresPerSecond) => RunningPace.MinutesPerKm(RunningPace.KmPerHour(metresPerSecond.Value()).Value()).Value();
}
