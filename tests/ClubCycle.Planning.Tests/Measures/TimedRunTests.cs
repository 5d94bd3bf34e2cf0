using ClubCycle.Planning.Measures;
using CsCheck;

namespace ClubCycle.Planning.Tests.Measures;

public sealed class TimedRunTests
{
    /// <summary>1,260 m computed; 1,200 m printed.</summary>
    [Theory]
    [InlineData(1260, 4.20)]
    [InlineData(1200, 4.0)]
    public void Five_minutes_give_metres_by_300(double metres, double speed) => Assert.Equal(speed, TimedRun.FiveMinutes(metres).Value(), 1e-9);

    /// <summary>Metres / 360, by hand.</summary>
    [Fact]
    public void Six_minutes_give_metres_by_360() => Assert.Equal(4.0, TimedRun.SixMinutes(1440).Value(), 1e-9);

    /// <summary>Metres / seconds, by hand.</summary>
    [Theory]
    [InlineData(1200, 300, 4.0)]
    [InlineData(1500, 360, 4.1667)]
    public void A_set_distance_gives_metres_by_seconds(double metres, double seconds, double speed) =>
        Assert.Equal(speed, TimedRun.SetDistance(metres, seconds).Value(), 5e-5);

    /// <summary>Cooper 1968: 2,400 and 2,800 m printed, others computed.</summary>
    [Theory]
    [InlineData(2000, 33.42)]
    [InlineData(2400, 42.37)]
    [InlineData(2600, 46.84)]
    [InlineData(2800, 51.31)]
    [InlineData(3000, 55.78)]
    [InlineData(3200, 60.25)]
    public void Twelve_minutes_give_an_oxygen_uptake(double metres, double uptake) => Assert.Equal(uptake, TimedRun.TwelveMinutes(metres).Value(), 0.005);

    [Fact]
    public void More_metres_never_lower_the_oxygen_uptake() => Gen.Select(Gen.Double[1000, 5000], Gen.Double[0, 40]).Sample((metres, more) =>
        TimedRun.TwelveMinutes(metres + more).Value() >= TimedRun.TwelveMinutes(metres).Value());

    [Theory]
    [InlineData(0)]
    [InlineData(599)]
    [InlineData(2101)]
    public void A_distance_that_nobody_runs_in_five_minutes_is_refused(double metres) => TimedRun.FiveMinutes(metres).Refused("measure.trial-metres", "600 to 2100 m");

    [Theory]
    [InlineData(719)]
    [InlineData(2521)]
    public void A_distance_that_nobody_runs_in_six_minutes_is_refused(double metres) => TimedRun.SixMinutes(metres).Refused("measure.trial-metres", "720 to 2520 m");

    /// <summary>Valid for 4.5 to 6.5 minutes; 3 km in 12 minutes is too long.</summary>
    [Theory]
    [InlineData(1000, 269)]
    [InlineData(1500, 391)]
    [InlineData(3000, 720)]
    [InlineData(1500, 0)]
    public void A_set_distance_that_takes_too_short_or_too_long_is_refused(double metres, double seconds) =>
        TimedRun.SetDistance(metres, seconds).Refused("measure.trial-seconds", "270 to 390 s");

    [Theory]
    [InlineData(0)]
    [InlineData(2101)]
    public void A_set_distance_that_nobody_runs_in_the_time_is_refused(double metres) =>
        TimedRun.SetDistance(metres, 300).Refused("measure.trial-metres", "600 to 2100 m");

    [Theory]
    [InlineData(0)]
    [InlineData(999)]
    [InlineData(5041)]
    public void A_distance_that_nobody_runs_in_twelve_minutes_is_refused(double metres) =>
        TimedRun.TwelveMinutes(metres).Refused("measure.trial-metres", "1000 to 5040 m");
}
