using ClubCycle.Planning.Players;
using ClubCycle.Planning.Squads;
using NodaTime;

namespace ClubCycle.Planning.Tests.Players;

public class PersonalValuesTests
{
    private static readonly LocalDate Today = A.Date("2026-11-25");

    [Fact]
    public void Without_tests_everything_goes_by_feel() => Assert.Empty(Of().All);

    /// <summary>The lower of 76 % of the maximum and 59 % of the reserve (Garber et al. 2011): a girl of 16 with rest 58 has min(149.57, 139.89), as the trade reference works it out.</summary>
    [Fact]
    public void The_heart_ceiling_takes_the_estimate_by_age_when_only_the_rest_is_known() =>
        Assert.Equal("Ceiling of easy running: 139 b/min", Of(2010, Result(TestKind.RestingHeartRate, 58)).HeartCeiling()!.Text);

    [Fact]
    public void A_measured_maximum_comes_before_an_estimate() =>
        Assert.Equal("Ceiling of easy running: 152 b/min", Of(2010, Result(TestKind.MaximumHeartRate, 201)).HeartCeiling()!.Text);

    [Fact]
    public void Without_the_age_a_resting_rate_alone_says_nothing() => Assert.Null(Of(null, Result(TestKind.RestingHeartRate, 58)).HeartCeiling());

    /// <summary>Stage 10 is 13.0 km/h, whose aerobic speed is 1.34 × 13.0 − 2.86 = 14.56 km/h (Berthoin et al. 1992); 0.67 of it is 9.755 km/h, 6:09.04 a kilometre.</summary>
    [Fact]
    public void The_pace_of_easy_runs_comes_from_the_latest_running_test()
    {
        var values = Of(2000, Result(TestKind.TimeTrial, 1000, 300, "2026-08-01"), Result(TestKind.ShuttleRun, 10, on: "2026-11-01"));

        Assert.Equal("Easy runs no faster than 6:10 min/km", values.EasyPace()!.Text);
        Assert.Contains(values.All, v => v.Text == "Maximal aerobic speed: 14.6 km/h");
    }

    /// <summary>4.2 m/s × 1.2 × 15 s = 75.6 m; 30-15 end speed 19 km/h × 0.95 × 15 s = 75.2 m (both computed in the trade reference).</summary>
    [Fact]
    public void Interval_distances_come_from_aerobic_speed_and_from_the_end_speed_of_the_30_15()
    {
        var texts = Of(2000, Result(TestKind.TimeTrial, 1260, 300), Result(TestKind.ThirtyFifteen, 19)).All.Select(v => v.Text).ToList();

        Assert.Contains("15 s at 120 %, 15 s of rest: 76 m a run", texts);
        Assert.Contains("15 s at 95 % of the 30-15 end speed: 75 m a run", texts);
    }

    /// <summary>80 kg × 8 is about 101.3 kg (Epley 1985); 80 % of it is 81.1 kg, 80 kg on plates.</summary>
    [Fact]
    public void A_tested_lift_has_its_load_rounded_down_to_the_plates()
    {
        var values = Of(1998, Result(TestKind.Lift, 80, 8, exercise: "Back squat"));

        Assert.Equal("80 kg (80 % of about 101 kg)", values.Load("Back squat", 80)!.Text);
        Assert.Null(values.Load("Goblet squat", 80));
    }

    [Fact]
    public void A_minor_gets_no_load_over_the_ceiling_of_the_age() => Assert.Null(Of(2013, Result(TestKind.Lift, 40, 8, exercise: "Goblet squat")).Load("Goblet squat", 80));

    [Theory]
    [InlineData("2026-05-25", false)]
    [InlineData("2026-05-24", true)]
    public void A_test_older_than_half_a_year_says_so(string on, bool old) =>
        Assert.Equal(old, Of(2000, Result(TestKind.MaximumHeartRate, 190, on: on)).HeartCeiling()!.HowSure.Contains("test again", StringComparison.Ordinal));

    [Fact]
    public void Children_get_no_numbers_whatever_is_entered()
    {
        PersonalValues values = new(new PlayerNumbers(2016, false, [Result(TestKind.MaximumHeartRate, 205), Result(TestKind.ShuttleRun, 5)]), AgeGroup.Youth(12), Today);

        Assert.Empty(values.All);
        Assert.Null(values.HeartCeiling());
        Assert.Null(values.EasyPace());
    }

    [Fact]
    public void Every_value_says_how_sure_it_is_and_where_it_comes_from()
    {
        var all = Of(
            2000, Result(TestKind.MaximumHeartRate, 195), Result(TestKind.RestingHeartRate, 55), Result(TestKind.ShuttleRun, 9), Result(TestKind.IntermittentRunOne, 1640), Result(TestKind.IntermittentRunTwo, 440),
            Result(TestKind.ThirtyFifteen, 18), Result(TestKind.TwelveMinuteRun, 2800), Result(TestKind.TimeTrial, 1260, 300), Result(TestKind.Lift, 60, 5, exercise: "Goblet squat")).All;

        Assert.Equal(11, all.Count);
        Assert.All(all, v => Assert.True(v.HowSure.Length > 0 && v.Source.Length > 0, v.Text));
    }

    private static PersonalValues Of(int? birthYear = 2000, params FieldTestResult[] results) => new(new PlayerNumbers(birthYear, false, results), AgeGroup.Senior, Today);

    private static FieldTestResult Result(TestKind kind, double value, int? second = null, string on = "2026-11-01", string? exercise = null) => new(kind, A.Date(on), value, second, exercise);
}
