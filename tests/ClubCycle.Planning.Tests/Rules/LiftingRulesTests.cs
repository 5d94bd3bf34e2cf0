using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Rules;

namespace ClubCycle.Planning.Tests.Rules;

public class HeavyLegsComeBackAfterTwoToFourDaysTests
{
    [Theory]
    [InlineData("2026-08-06 18:30", 80, 1)]
    [InlineData("2026-08-06 19:00", 80, 0)]
    [InlineData("2026-08-06 18:30", 79, 0)]
    public void Two_days_belong_between_eighty_percent_and_more(string second, int percent, int findings) =>
        Assert.Equal(findings, Year.Of("Senior").Sheet("heavy-lift 2026-08-04 19:00 45", Do.Squat(3, 5, 80)).Sheet($"heavy-lift {second} 45", Do.Squat(3, 5, percent)).Check(LiftingRules.R25).Count);

    [Fact]
    public void Arms_may_lift_the_day_after_legs() =>
        Assert.Empty(Year.Of("Senior").Sheet("heavy-lift 2026-08-04 19:00 45", Do.Squat(3, 5, 85)).Sheet("heavy-lift 2026-08-05 19:00 45", Do.Lift("Bench press", 3, 5, 85)).Check(LiftingRules.R25));

    [Theory]
    [InlineData("2026-08-08 19:00", 0)]
    [InlineData("2026-08-08 19:30", 1)]
    public void Four_days_are_the_most_where_two_a_week_are_asked_for(string second, int findings) =>
        Assert.Equal(findings, Twice(second).Asking("heavy-lift", "lift-and-jump").Check(LiftingRules.R25).Count);

    [Fact]
    public void One_a_week_may_be_seven_days_apart() => Assert.Empty(Twice("2026-08-11 19:00").Asking("heavy-lift", "easy-run").Check(LiftingRules.R25));

    private static Year Twice(string second) => Year.Of("Senior").Phase(PhaseKind.Mixed, 4)
        .Sheet("heavy-lift 2026-08-04 19:00 45", Do.Squat(3, 5, 85)).Sheet($"heavy-lift {second} 45", Do.Squat(3, 5, 85));

    [Theory]
    [InlineData("2026-08-06 18:30", 47.5, 48, "at least 48 h")]
    [InlineData("2026-08-08 19:30", 96.5, 96, "at most 96 h")]
    public void The_hours_are_held_against_the_limit_that_they_miss(string second, double hours, double limit, string told)
    {
        var finding = Assert.Single(Twice(second).Asking("heavy-lift", "lift-and-jump").Check(LiftingRules.R25));

        Assert.Equal((hours, limit, "h"), finding.FiguresOf());
        Assert.Contains(told, finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_season_has_no_four_days_at_most() =>
        Assert.Empty(Year.Of("Senior").Asking("heavy-lift", "lift-and-jump").Sheet("heavy-lift 2026-08-04 19:00 45", Do.Squat(3, 5, 85)).Sheet("heavy-lift 2026-08-11 19:00 45", Do.Squat(3, 5, 85)).Check(LiftingRules.R25));
}

public class LoadsAllowTheirRepetitionsTests
{
    // Vector: 5 × 6 at 90 % fails. Haff and Triplett 2016.
    [Fact]
    public void Six_repetitions_at_ninety_percent_are_a_must_finding()
    {
        var finding = Assert.Single(Year.Of("Senior").Sheet("heavy-lift 2026-08-04 19:00 45", Do.Squat(5, 6, 90)).Check(LiftingRules.R26));

        Assert.Equal(Strength.Must, finding.Strength);
        Assert.Equal((6, 4, "reps"), (finding.Facts!.Measured, finding.Facts.Limit, finding.Facts.Unit));
    }

    [Fact]
    public void Four_repetitions_at_ninety_percent_pass() =>
        Assert.Empty(Year.Of("Senior").Sheet("heavy-lift 2026-08-04 19:00 45", Do.Squat(5, 4, 90)).Check(LiftingRules.R26));

    [Theory]
    [InlineData(0, 15)]
    [InlineData(66, 12)]
    [InlineData(100, 1)]
    [InlineData(101, 0)]
    public void Odd_loads_have_an_answer_too(int percent, int reps) => Assert.Equal(reps, LiftingRules.MostReps(percent));

    [Fact]
    public void What_repeats_in_a_phase_is_said_once_with_its_weeks()
    {
        var finding = Assert.Single(Year.Of("Senior").Phase(PhaseKind.Mixed, 4)
            .Sheet("heavy-lift 2026-08-04 19:00 45", Do.Squat(5, 6, 90))
            .Sheet("heavy-lift 2026-08-11 19:00 45", Do.Squat(5, 7, 90))
            .Check(LiftingRules.R26));

        Assert.Contains("5 × 7 at 90 %", finding.Message, StringComparison.Ordinal);
        Assert.EndsWith("So in 2 weeks of this phase.", finding.Message, StringComparison.Ordinal);
        Assert.Equal(2, finding.Facts!.Sessions.Count);
        Assert.Equal(A.Date("2026-08-10"), finding.Week);
    }
}

public class LiftsServeOneGoalTests
{
    [Theory]
    [InlineData(85, 6, 120)]
    [InlineData(83, 5, 120)]
    [InlineData(75, 3, 120)]
    [InlineData(67, 12, 30)]
    [InlineData(60, 15, 90)]
    [InlineData(85, 1, null)]
    public void Strength_power_and_muscular_endurance_pass(int percent, int reps, int? rest) => Assert.Null(LiftingRules.Misses(percent, reps, rest));

    [Theory]
    [InlineData(85, 7, 120, 7, 6)]
    [InlineData(85, 6, 119, 119, 120)]
    [InlineData(80, 6, 150, 6, 5)]
    [InlineData(80, 2, 150, 2, 3)]
    [InlineData(70, 6, 150, 70, 67)]
    [InlineData(72, 6, 150, 72, 75)]
    [InlineData(60, 11, 30, 11, 12)]
    [InlineData(60, 12, 91, 91, 90)]
    public void Between_the_windows_the_nearest_says_what_misses(int percent, int reps, int? rest, double measured, double limit)
    {
        var breach = LiftingRules.Misses(percent, reps, rest);

        Assert.Equal((measured, limit), (breach!.Value.Measured, breach.Value.Limit));
    }

    [Theory]
    [InlineData("Senior", 1)]
    [InlineData("U18", 1)]
    [InlineData("U17", 0)]
    public void Players_under_sixteen_are_not_judged(string ages, int findings) =>
        Assert.Equal(findings, Year.Of(ages).Sheet("heavy-lift 2026-08-04 19:00 45", Do.Squat(3, 6, 70)).Check(LiftingRules.R27).Count);

    [Fact]
    public void New_players_who_learn_at_lighter_loads_are_only_noted() =>
        Assert.Equal(Strength.Note, Assert.Single(Year.Of("Senior").New().Sheet("heavy-lift 2026-08-04 19:00 45", Do.Squat(3, 6, 70)).Check(LiftingRules.R27)).Strength);

    [Fact]
    public void Minors_are_outside_because_their_own_rules_are_stricter() =>
        Assert.Equal(Cause.AgeGroup, Assert.Single(Year.Of("U18").Sheet("heavy-lift 2026-08-04 19:00 45", Do.Squat(3, 6, 70)).Check(LiftingRules.R27)).Facts!.ForcedBy);

    [Theory]
    [InlineData(85, 7, "strength asks for")]
    [InlineData(84, 6, "power asks for")]
    [InlineData(75, 6, "power asks for")]
    [InlineData(74, 6, "muscular endurance ends at 67 %")]
    [InlineData(68, 6, "muscular endurance ends at 67 %")]
    [InlineData(67, 6, "muscular endurance asks for")]
    public void The_window_of_the_load_is_told(int percent, int reps, string told) =>
        Assert.Contains(told, Assert.Single(Year.Of("Senior").Sheet("heavy-lift 2026-08-04 19:00 45", Do.Squat(3, reps, percent)).Check(LiftingRules.R27)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData(70, 67)]
    [InlineData(71, 75)]
    public void A_load_between_the_windows_is_held_against_the_nearer(int percent, double limit) => Assert.Equal(limit, LiftingRules.Misses(percent, 6, 150)!.Value.Limit);

    [Fact]
    public void Short_rest_for_power_is_held_against_two_minutes() => Assert.Equal((119, 120), LiftingRules.Misses(80, 5, 119) is { } breach ? (breach.Measured, breach.Limit) : default);
}

public class YoungPlayersLiftWithinTheirAgeTests
{
    [Theory]
    [InlineData("U11", 60, 0)]
    [InlineData("U11", 61, 1)]
    [InlineData("U14", 70, 0)]
    [InlineData("U14", 71, 1)]
    [InlineData("U17", 80, 0)]
    [InlineData("U17", 81, 1)]
    [InlineData("Senior", 95, 0)]
    public void The_ceiling_follows_the_youngest(string ages, int percent, int findings)
    {
        var found = Year.Of(ages).Sheet("technique-lifting 2026-08-04 18:00 30", Do.Squat(2, 3, percent)).Check(YoungPlayersLift);

        Assert.Equal(findings, found.Count);
        Assert.All(found, f => Assert.Equal(Strength.Must, f.Strength));
    }

    [Fact]
    public void Under_nine_any_load_is_too_much_and_body_weight_passes()
    {
        Assert.Single(Year.Of("U10").Sheet("body-weight 2026-08-04 18:00 30", Do.Lift("Goblet squat", 2, 10, null)).Check(YoungPlayersLift));
        Assert.Empty(Year.Of("U10").Sheet("body-weight 2026-08-04 18:00 30", Do.Circuit).Check(YoungPlayersLift));
    }

    [Fact]
    public void What_is_too_much_is_told_with_the_limit_of_the_age()
    {
        var loads = Assert.Single(Year.Of("U10").Sheet("body-weight 2026-08-04 18:00 30", Do.Lift("Goblet squat", 2, 10, null)).Check(YoungPlayersLift));
        var percent = Assert.Single(Year.Of("U14").Sheet("technique-lifting 2026-08-04 18:00 30", Do.Squat(2, 3, 71)).Check(YoungPlayersLift));

        Assert.Equal((1.0, 0.0, "loads"), (loads.Facts!.Measured, loads.Facts.Limit, loads.Facts.Unit));
        Assert.Contains("body weight only at age", loads.Message, StringComparison.Ordinal);
        Assert.Contains("70 % at most at age", percent.Message, StringComparison.Ordinal);
    }

    private static Rule YoungPlayersLift => YouthLiftingRules.R29;
}

public class YoungPlayersLiftInSmallDosesTests
{
    [Fact]
    public void A_fourth_session_a_week_is_found_and_three_pass()
    {
        string[] days = ["2026-08-03", "2026-08-05", "2026-08-07"];
        var three = days.Aggregate(Year.Of("U16"), (year, day) => year.Sheet($"body-weight {day} 18:00 30", Do.Circuit));
        Assert.Empty(three.Check(YouthLiftingRules.R30));

        var four = three.Sheet("body-weight 2026-08-09 18:00 30", Do.Circuit);
        Assert.Equal((4, 3, "sessions"), Facts(Assert.Single(four.Check(YouthLiftingRules.R30))));
    }

    [Fact]
    public void Two_days_in_a_row_are_found_across_the_week_end() =>
        Assert.Equal((1, 2, "days"), Facts(Assert.Single(Year.Of("U14").Sheet("body-weight 2026-08-09 18:00 30", Do.Circuit).Sheet("body-weight 2026-08-10 18:00 30", Do.Circuit).Check(YouthLiftingRules.R30))));

    [Fact]
    public void Trunk_work_may_come_every_day() =>
        Assert.Empty(Year.Of("U14").Sheet("core-and-easy-run 2026-08-04 18:00 30", Do.Core).Sheet("core-and-easy-run 2026-08-05 18:00 30", Do.Core).Check(YouthLiftingRules.R30));

    // Lloyd et al. 2014: first 1–2 × 8–12 at 60 % or less, later 2–4 × 6–12.
    [Theory]
    [InlineData(2, 12, 60, true, true)]
    [InlineData(1, 8, 60, true, true)]
    [InlineData(3, 8, 60, true, false)]
    [InlineData(2, 7, 60, true, false)]
    [InlineData(2, 8, 61, true, false)]
    [InlineData(4, 6, 70, false, true)]
    [InlineData(1, 8, 60, false, false)]
    [InlineData(5, 6, 70, false, false)]
    [InlineData(3, 5, 70, false, false)]
    [InlineData(3, 13, 60, false, false)]
    public void Sets_and_repetitions_follow_experience(int sets, int reps, int percent, bool first, bool fits) =>
        Assert.Equal(fits, YouthLiftingRules.MissesYouthDose(sets, reps, percent, first, lighter: false) is null);

    [Fact]
    public void One_set_passes_in_a_lighter_week() => Assert.Null(YouthLiftingRules.MissesYouthDose(1, 8, 60, first: false, lighter: true));

    [Fact]
    public void New_players_keep_the_first_window_for_eight_weeks()
    {
        var year = Year.Of("U16").New().Phase(PhaseKind.AerobicBuild, 10).Sheet("technique-lifting 2026-08-04 18:00 30", Do.Lift("Goblet squat", 1, 10, 50));

        Assert.Empty(year.Sheet("technique-lifting 2026-09-28 18:00 30", Do.Lift("Goblet squat", 1, 10, 50)).Check(YouthLiftingRules.R30));
        Assert.Single(year.Sheet("technique-lifting 2026-09-30 18:00 30", Do.Lift("Goblet squat", 1, 10, 50)).Check(YouthLiftingRules.R30));
    }

    private static (double, double, string) Facts(Finding finding) => (finding.Facts!.Measured, finding.Facts.Limit, finding.Facts.Unit);
}
