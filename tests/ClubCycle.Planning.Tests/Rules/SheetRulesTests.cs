using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Rules;

namespace ClubCycle.Planning.Tests.Rules;

public class SprintsAreFewWithFullRestTests
{
    // Vector: 30 m in 4.5 s with 100 s of rest warns (needs 120 s). Haff and Triplett 2016.
    [Theory]
    [InlineData(100, 1)]
    [InlineData(120, 0)]
    public void Two_minutes_of_rest_are_the_least(int rest, int findings)
    {
        var found = Check("Senior", Do.Sprints(4, 30, rest, seconds: 5));

        Assert.Equal(findings, found.Count);
        Assert.All(found, f => Assert.Equal((rest, 120, "s"), (f.Facts!.Measured, f.Facts.Limit, f.Facts.Unit)));
    }

    [Theory]
    [InlineData(4.5, 120)]
    [InlineData(10.0, 120)]
    [InlineData(10.1, null)]
    public void Rest_follows_the_work_up_to_ten_seconds(double work, int? least) => Assert.Equal(least, RunningRules.LeastRest(work));

    [Theory]
    [InlineData("Senior", 300, 0)]
    [InlineData("Senior", 330, 1)]
    [InlineData("U17", 150, 0)]
    [InlineData("U17", 180, 1)]
    public void Acceleration_is_three_hundred_metres_at_most_and_half_under_sixteen(string ages, int metres, int findings) =>
        Assert.Equal(findings, Check(ages, Do.Sprints(metres / 30, 30)).Count);

    [Theory]
    [InlineData("Senior", 300)]
    [InlineData("U17", 150)]
    public void Too_much_acceleration_is_told_with_its_limit(string ages, int limit) => Assert.Equal(limit, Assert.Single(Check(ages, Do.Sprints(11, 30))).Facts!.Limit);

    [Theory]
    [InlineData(5, 0)]
    [InlineData(6, 1)]
    public void Top_speed_is_a_hundred_and_fifty_metres_at_most(int reps, int findings) => Assert.Equal(findings, Check("Senior", Do.FlyingSprints(reps, 30)).Count);

    private static IReadOnlyList<Finding> Check(string ages, params Planning.Workouts.Step[] steps) =>
        Year.Of(ages).Sheet("sprint-intervals 2026-08-04 18:00 45", steps).Check(RunningRules.R35);
}

public class FastComesBeforeHeavyAndHeavyBeforeLongTests
{
    [Fact]
    public void Jumps_lifts_trunk_and_running_in_this_order_pass() =>
        Assert.Empty(Check(Do.MediumJumps(40), Do.Squat(3, 5, 85), Do.Circuit, Do.Core, Do.EasyRun()));

    [Fact]
    public void Jumps_after_lifting_are_found_with_their_place() =>
        Assert.Contains("Alternate bounds comes as step 2", Assert.Single(Check(Do.Squat(3, 5, 85), Do.MediumJumps(40))).Message, StringComparison.Ordinal);

    [Fact]
    public void Lifting_after_a_run_is_found() => Assert.Single(Check(Do.EasyRun(), Do.Squat(3, 5, 85)));

    [Fact]
    public void What_serves_lifting_and_circuits_fits_either_place() =>
        Assert.Empty(Check(Do.Lift("Goblet squat", 2, 8, 50), Do.Squat(2, 8, 50), Do.Circuit, Do.Lift("Goblet squat", 2, 12, 50)));

    [Fact]
    public void Control_in_the_warm_up_is_no_trunk_work() => Assert.Empty(Check([.. Do.WarmUp(12), Do.Sprints(3, 30)]));

    [Theory]
    [InlineData("20:59", Strength.Should)]
    [InlineData("21:00", Strength.Note)]
    [InlineData("23:59", Strength.Note)]
    public void Lifting_and_running_on_one_day_stand_apart(string run, Strength strength) =>
        Assert.Equal(strength, Assert.Single(Pair("Senior", "heavy-lift 2026-08-04 18:00 45", $"easy-run 2026-08-04 {run} 30").Check(OrderRules.R40)).Strength);

    [Fact]
    public void Six_hours_apart_pass() => Assert.Empty(Pair("Senior", "heavy-lift 2026-08-04 12:00 45", "easy-run 2026-08-04 18:00 30").Check(OrderRules.R40));

    [Fact]
    public void The_run_does_not_come_first() =>
        Assert.Equal(Strength.Should, Assert.Single(Year.Of("Senior").Sheet("easy-run 2026-08-04 10:00 30", Do.EasyRun()).Sheet("heavy-lift 2026-08-04 18:00 45", Do.Squat(3, 5, 85)).Check(OrderRules.R40)).Strength);

    [Fact]
    public void Pairs_of_under_fifteens_are_not_judged() => Assert.Empty(Pair("U16", "body-weight 2026-08-04 18:00 30", "easy-run 2026-08-04 19:00 30").Check(OrderRules.R40));

    private static IReadOnlyList<Finding> Check(params Planning.Workouts.Step[] steps) => Year.Of("Senior").Sheet("lift-and-jump 2026-08-04 18:00 60", steps).Check(OrderRules.R40);

    private static Year Pair(string ages, string lift, string run) => Year.Of(ages).Sheet(lift, Do.Squat(3, 5, 70)).Sheet(run, Do.EasyRun());

    [Theory]
    [InlineData("20:59", 2.98, 3)]
    [InlineData("21:00", 3, 6)]
    public void The_hours_between_are_held_against_three_and_then_six(string run, double hours, double limit) =>
        Assert.Equal((hours, limit, "h"), Assert.Single(Pair("Senior", "heavy-lift 2026-08-04 18:00 45", $"easy-run 2026-08-04 {run} 30").Check(OrderRules.R40)).FiguresOf());
}

public class SteadyRunsAreEasyEnoughToTalkTests
{
    private const string Beats = "Easy enough to talk; about 140 or less.";

    [Theory]
    [InlineData(4, 0)]
    [InlineData(5, 1)]
    public void Effort_four_is_easy_enough(int effort, int findings) =>
        Assert.Equal(findings, Run("Senior", "easy-run", Do.EasyRun()).WithEffort(effort).Check(RunningRules.R41).Count);

    [Fact]
    public void A_moderate_session_of_steady_running_is_found() => Assert.Single(Run("Senior", "strength-circuit", Do.EasyRun()).WithEffort(4).Check(RunningRules.R41));

    [Fact]
    public void A_note_without_talking_is_found() => Assert.Single(Run("Senior", "easy-run", Do.EasyRun("Run.")).WithEffort(3).Check(RunningRules.R41));

    [Theory]
    [InlineData("Senior", 0)]
    [InlineData("U14", 0)]
    [InlineData("U13", 1)]
    [InlineData("Masters", 1)]
    public void A_hundred_and_forty_beats_are_named_from_twelve_to_thirty_seven(string ages, int findings) =>
        Assert.Equal(findings, Run(ages, "easy-run", Do.EasyRun(Beats)).WithEffort(3).Check(RunningRules.R41).Count);

    [Fact]
    public void A_jog_after_strides_is_judged_by_its_note_alone() =>
        Assert.Empty(Run("Senior", "strides", Do.Named("Grass strides"), Do.EasyRun()).Check(RunningRules.R41));

    [Fact]
    public void The_season_is_not_judged() => Assert.Empty(Year.Of("Senior").Sheet("easy-run 2026-08-04 18:00 40", Do.EasyRun("Run.")).Check(RunningRules.R41));

    private static Year Run(string ages, string workout, params Planning.Workouts.Step[] steps) =>
        Year.Of(ages).Phase(PhaseKind.AerobicBuild, 4).Sheet($"{workout} 2026-08-04 18:00 40", steps);
}

public class AgilityAnswersTheUnforeseenTests
{
    [Theory]
    [InlineData(8, 8, 0)]
    [InlineData(9, 8, 1)]
    [InlineData(16, 0, 1)]
    public void Half_of_the_minutes_answer_a_cue(int planned, int cued, int findings)
    {
        Planning.Workouts.Step[] steps = cued == 0 ? [Do.Planned(planned)] : [Do.Planned(planned), Do.Cued(cued)];
        var found = Year.Of("Senior").Phase(PhaseKind.Mixed, 4).Sheet("reactive-agility 2026-08-04 18:00 30", steps).Check(AgilityRules.R43);

        Assert.Equal(findings, found.Count);
        Assert.All(found, f => Assert.Equal(Strength.Should, f.Strength));
    }

    [Fact]
    public void Children_s_games_of_balance_are_no_agility() =>
        Assert.Empty(Year.Of("U8").Phase(PhaseKind.Mixed, 4).Sheet("movement-games 2026-08-04 18:00 15", Do.Named("River crossing")).Check(AgilityRules.R43));

    [Theory]
    [InlineData(15, 0)]
    [InlineData(14, 1)]
    public void A_week_of_pre_season_with_less_than_fifteen_minutes_is_noted(int minutes, int findings)
    {
        var found = Year.Of("Senior").Phase(PhaseKind.PreSeason, 4).Sheet("reactive-agility 2026-08-04 18:00 30", Do.Cued(minutes)).Check(AgilityRules.R43);

        Assert.Equal(findings, found.Count);
        Assert.All(found, f => Assert.Equal(Strength.Note, f.Strength));
    }

    [Fact]
    public void A_third_session_a_week_is_noted() =>
        Assert.Single(new[] { 3, 5, 7 }.Aggregate(Year.Of("Senior"), (year, day) => year.Sheet($"reactive-agility 2026-08-0{day} 18:00 30", Do.Cued(10))).Check(AgilityRules.R43));

    [Fact]
    public void A_template_without_agility_forces_the_note()
    {
        var practice = Year.Of("Senior").With("practice 2026-08-04 18:00 90");

        Assert.Equal(Cause.Template, Assert.Single(practice.Asking("easy-run").Check(AgilityRules.R43)).Facts!.ForcedBy);
        Assert.Null(Assert.Single(practice.Asking("reactive-agility").Check(AgilityRules.R43)).Facts!.ForcedBy);
    }

    [Fact]
    public void The_share_and_the_weekly_minutes_are_told()
    {
        var share = Assert.Single(Year.Of("Senior").Phase(PhaseKind.Mixed, 4).Sheet("reactive-agility 2026-08-04 18:00 30", Do.Planned(12), Do.Cued(4)).Check(AgilityRules.R43));
        var minutes = Assert.Single(Year.Of("Senior").Phase(PhaseKind.PreSeason, 4).Sheet("reactive-agility 2026-08-04 18:00 30", Do.Cued(14)).Sheet("reactive-agility 2026-08-11 18:00 30", Do.Cued(12)).Check(AgilityRules.R43));

        Assert.Equal((25, 50, "%"), share.FiguresOf());
        Assert.Equal((12, 15, "min"), minutes.FiguresOf());
        Assert.Contains("in 2 of 2 weeks of this phase; the fewest are 12 minutes", minutes.Message, StringComparison.Ordinal);
    }
}

public class WarmUpsTrainControlTwiceAWeekTests
{
    [Theory]
    [InlineData(15, 15, 0)]
    [InlineData(30, 9, 1)]
    [InlineData(15, 14, 1)]
    public void Two_warm_ups_of_fifteen_minutes_make_thirty(int first, int second, int findings) => Assert.Equal(findings, Week("U16", first, second).Count);

    [Theory]
    [InlineData(9, 0)]
    [InlineData(10, 10)]
    [InlineData(15, 15)]
    [InlineData(20, 15)]
    public void Ten_to_fifteen_minutes_of_a_warm_up_count(int minutes, int counted) => Assert.Equal(counted, WarmUpRules.Counted(minutes));

    [Fact]
    public void A_warm_up_without_control_does_not_count() =>
        Assert.Equal(0, Assert.Single(Year.Of("U16").Sheet("practice 2026-08-04 18:00 90", new Planning.Workouts.Step("warm-up", "Rope skipping", "", Minutes: 15)).Check(WarmUpRules.R44)).Facts!.Measured);

    [Theory]
    [InlineData("U18", Strength.Should)]
    [InlineData("U11", Strength.Should)]
    [InlineData("U10", Strength.Note)]
    [InlineData("Senior", Strength.Note)]
    public void Adults_and_the_youngest_are_advised(string ages, Strength strength)
    {
        var enough = Year.Of(ages).Asking("easy-run", "body-weight", "core-and-easy-run").Sheet("practice 2026-08-04 18:00 90", Do.WarmUp(12)).Sheet("practice 2026-08-06 18:00 90", Do.WarmUp(12));

        Assert.Equal(strength, Assert.Single(enough.Check(WarmUpRules.R44)).Strength);
    }

    [Fact]
    public void A_template_that_asks_for_too_little_is_only_noted() => Assert.Equal(Strength.Note, Assert.Single(Week("U11", 12, 12)).Strength);

    [Fact]
    public void Short_weeks_of_a_phase_are_said_once()
    {
        var found = Year.Of("U16").Phase(PhaseKind.Recovery, 4)
            .Sheet("body-weight 2026-08-04 18:00 30", Do.WarmUp(10)).Sheet("body-weight 2026-08-11 18:00 30", Do.WarmUp(10)).Check(WarmUpRules.R44);

        Assert.Contains("in 2 of 2 weeks", Assert.Single(found).Message, StringComparison.Ordinal);
        Assert.Equal(Cause.Template, found[0].Facts!.ForcedBy);
    }

    private static IReadOnlyList<Finding> Week(string ages, int first, int second) =>
        Year.Of(ages).Sheet("practice 2026-08-04 18:00 90", Do.WarmUp(first)).Sheet("practice 2026-08-06 18:00 90", Do.WarmUp(second)).Check(WarmUpRules.R44);
}
