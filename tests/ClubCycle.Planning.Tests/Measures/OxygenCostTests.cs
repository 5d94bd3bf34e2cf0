using ClubCycle.Planning.Measures;
using CsCheck;

namespace ClubCycle.Planning.Tests.Measures;

/// <summary>American College of Sports Medicine, metabolic equations.</summary>
public sealed class OxygenCostTests
{
    /// <summary>Computed from 3.5 + 0.2 S.</summary>
    [Theory]
    [InlineData(8, 133.3, 30.2, 8.6)]
    [InlineData(9, 150.0, 33.5, 9.6)]
    [InlineData(10, 166.7, 36.8, 10.5)]
    [InlineData(11, 183.3, 40.2, 11.5)]
    [InlineData(12, 200.0, 43.5, 12.4)]
    [InlineData(13, 216.7, 46.8, 13.4)]
    [InlineData(14, 233.3, 50.2, 14.3)]
    [InlineData(15, 250.0, 53.5, 15.3)]
    [InlineData(16, 266.7, 56.8, 16.2)]
    public void Running_on_the_flat_costs_oxygen_by_speed(double kmPerHour, double metresPerMinute, double uptake, double mets)
    {
        var speed = RunningPace.MetresPerMinute(kmPerHour).Value();
        var cost = OxygenCost.Running(speed, trulyRunning: true).Value();

        Assert.Equal(metresPerMinute, speed, 0.05);
        Assert.Equal(uptake, cost, 0.05);
        Assert.Equal(mets, OxygenCost.Mets(cost).Value(), 0.051);
    }

    /// <summary>3.5 + 0.2 × 200 + 0.9 × 200 × 0.05, by hand.</summary>
    [Fact]
    public void Running_up_a_treadmill_costs_more() => Assert.Equal(52.5, OxygenCost.Running(200, 0.05).Value(), 1e-9);

    /// <summary>3.5 + 0.1 × 80 + 1.8 × 80 × grade, by hand.</summary>
    [Theory]
    [InlineData(0, 11.5)]
    [InlineData(0.05, 18.7)]
    public void Walking_costs_half_as_much_a_metre(double grade, double uptake) => Assert.Equal(uptake, OxygenCost.Walking(80, grade).Value(), 1e-9);

    /// <summary>Printed example: 8 METs are 28.0 mL/kg/min and 122.5 m/min, 8.1 to 8.2 min/km.</summary>
    [Fact]
    public void Eight_mets_are_a_slow_run()
    {
        var uptake = OxygenCost.FromMets(8).Value();
        var speed = OxygenCost.RunningSpeed(uptake, trulyRunning: true).Value();

        Assert.Equal(28.0, uptake, 1e-9);
        Assert.Equal(122.5, speed, 1e-9);
        Assert.InRange(RunningPace.MinutesPerKm(speed * 0.06).Value(), 8.1, 8.2);
    }

    /// <summary>Computed: VO2max 50 is 232.5 m/min or 13.95 km/h.</summary>
    [Fact]
    public void An_oxygen_uptake_gives_a_rough_maximal_aerobic_speed() => Assert.Equal(232.5, OxygenCost.RunningSpeed(50).Value(), 1e-9);

    [Fact]
    public void Speed_and_oxygen_undo_each_other() => Gen.Select(Gen.Double[134.001, 419.999], Gen.Double[50.001, 99.999]).Sample((run, walk) =>
        Math.Abs(OxygenCost.RunningSpeed(OxygenCost.Running(run).Value()).Value() - run) < 1e-6
        && Math.Abs(OxygenCost.WalkingSpeed(OxygenCost.Walking(walk).Value()).Value() - walk) < 1e-6);

    [Fact]
    public void Faster_or_steeper_never_costs_less() => Gen.Select(Gen.Double[134, 400], Gen.Double[0, 20], Gen.Double[0, 0.2], Gen.Double[0, 0.05]).Sample((speed, more, grade, steeper) =>
        OxygenCost.Running(speed + more, grade + steeper).Value() >= OxygenCost.Running(speed, grade).Value());

    /// <summary>R47.</summary>
    [Theory]
    [InlineData(133.9, false, "134 to 420 m/min")]
    [InlineData(0, false, "134 to 420 m/min")]
    [InlineData(421, false, "134 to 420 m/min")]
    [InlineData(79.9, true, "80 to 420 m/min")]
    public void A_speed_outside_the_running_equation_is_refused(double speed, bool trulyRunning, string range) =>
        OxygenCost.Running(speed, 0, trulyRunning).Refused("measure.running-speed", range);

    [Theory]
    [InlineData(49.9)]
    [InlineData(100.1)]
    [InlineData(0)]
    public void A_speed_outside_the_walking_equation_is_refused(double speed) => OxygenCost.Walking(speed).Refused("measure.walking-speed", "50 to 100 m/min");

    [Theory]
    [InlineData(-0.01)]
    [InlineData(5)]
    public void Downhill_and_grades_in_percent_are_refused(double grade)
    {
        OxygenCost.Running(200, grade).Refused("measure.grade", "0 to 0.25");
        OxygenCost.Walking(80, grade).Refused("measure.grade", "0 to 0.25");
    }

    [Theory]
    [InlineData(30.2, false, "30.3 to 87.5 mL/kg/min")]
    [InlineData(88, false, "30.3 to 87.5 mL/kg/min")]
    [InlineData(19.4, true, "19.5 to 87.5 mL/kg/min")]
    public void An_uptake_that_no_running_speed_takes_is_refused(double uptake, bool trulyRunning, string range) =>
        OxygenCost.RunningSpeed(uptake, trulyRunning).Refused("measure.oxygen-uptake", range);

    [Theory]
    [InlineData(8.4)]
    [InlineData(13.6)]
    public void An_uptake_that_no_walking_speed_takes_is_refused(double uptake) =>
        OxygenCost.WalkingSpeed(uptake).Refused("measure.oxygen-uptake", "8.5 to 13.5 mL/kg/min");

    [Theory]
    [InlineData(3.4)]
    [InlineData(0)]
    [InlineData(96)]
    public void An_uptake_of_nobody_is_refused(double uptake) => OxygenCost.Mets(uptake).Refused("measure.oxygen-uptake", "3.5 to 95 mL/kg/min");

    [Theory]
    [InlineData(0)]
    [InlineData(28)]
    public void Mets_of_nobody_are_refused(double mets) => OxygenCost.FromMets(mets).Refused("measure.mets", "1 to 27 METs");
}
