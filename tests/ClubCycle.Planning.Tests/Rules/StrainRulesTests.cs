using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Rules;

namespace ClubCycle.Planning.Tests.Rules;

public class DaysOfAWeekDifferTests
{
    // Vectors: six days of 300 AU and one off have 2.268, the worked week has 1.031. Foster 1998, sample standard deviation.
    [Theory]
    [InlineData(2.268, 300, 300, 300, 300, 300, 300, 0)]
    [InlineData(1.031, 0, 540, 240, 630, 60, 560, 0)]
    [InlineData(0.945, 540, 0, 540, 0, 540, 180, 0)]
    public void Monotony_is_the_mean_over_the_sample_deviation(double monotony, params int[] days) =>
        Assert.Equal(monotony, StrainRules.Monotony([.. days.Select(d => (double)d)])!.Value, 0.0005);

    [Fact]
    public void Equal_days_have_no_monotony() => Assert.Null(StrainRules.Monotony([300, 300, 300, 300, 300, 300, 300]));

    [Fact]
    public void Six_equal_days_are_found_and_the_worked_week_passes()
    {
        Assert.Contains("monotony 2.27", Assert.Single(Year.Of("Senior").Every(1, 6, "easy-run 2026-08-03 18:00 60").Check(StrainRules.R11)).Message, StringComparison.Ordinal);
        Assert.Empty(Year.Of("Senior")
            .With("easy-run 2026-08-04 18:00 108", "easy-run 2026-08-05 18:00 48", "easy-run 2026-08-06 18:00 126", "easy-run 2026-08-07 18:00 12", "match 2026-08-08 14:00 112").Check(StrainRules.R11));
    }

    [Fact]
    public void Seven_equal_days_are_said_to_have_no_variation() =>
        Assert.StartsWith("No variation", Assert.Single(Year.Of("Senior").Every(1, 7, "easy-run 2026-08-03 18:00 60").Check(StrainRules.R11)).Message, StringComparison.Ordinal);

    [Fact]
    public void Practices_that_are_monotonous_by_themselves_force_it() =>
        Assert.Equal(Cause.Contacts, Assert.Single(Year.Of("Senior").Every(1, 6, "practice 2026-08-03 18:00 60").Check(StrainRules.R11)).ForcedBy);

    [Fact]
    public void A_week_off_passes() => Assert.Empty(Year.Of("Senior").Check(StrainRules.R11));

    [Fact]
    public void It_is_told_against_two_and_by_whom_it_is_forced()
    {
        var runs = Assert.Single(Year.Of("Senior").Asking("easy-run", "easy-run", "easy-run", "easy-run", "easy-run").Every(1, 6, "easy-run 2026-08-03 18:00 60").Check(StrainRules.R11));
        Assert.Equal((2.27, 2, "monotony"), runs.FiguresOf());
        Assert.Null(runs.ForcedBy);

        var six = Year.Of("Senior").Asking("easy-run", "easy-run", "easy-run", "easy-run", "easy-run", "easy-run").Every(1, 6, "easy-run 2026-08-03 18:00 60");
        Assert.Equal(Cause.Template, Assert.Single(six.Check(StrainRules.R11)).ForcedBy);
        Assert.Equal(Cause.Coach, Assert.Single(six.Pinned().Check(StrainRules.R11)).ForcedBy);
    }

    [Fact]
    public void Practice_days_fill_the_week_with_the_template() =>
        Assert.Equal(
            Cause.Template,
            Assert.Single(Year.Of("Senior").Asking("easy-run", "easy-run", "easy-run", "easy-run", "easy-run").Every(1, 5, "easy-run 2026-08-03 18:00 60").With("practice 2026-08-08 10:00 60").Check(StrainRules.R11)).ForcedBy);

    [Fact]
    public void Seven_equal_days_should_differ_by_half_their_load() =>
        Assert.Equal((0, 150, "AU from day to day"), Assert.Single(Year.Of("Senior").Every(1, 7, "easy-run 2026-08-03 18:00 60").Check(StrainRules.R11)).FiguresOf());

    [Fact]
    public void Three_equal_days_make_no_monotonous_week() => Assert.Empty(Year.Of("Senior").Every(1, 3, "easy-run 2026-08-03 18:00 60").Check(StrainRules.R11));
}

public class NoWeekStrainsFarMoreThanBeforeTests
{
    // Vectors: the same 1,800 AU strain 4,082 when spread evenly and 1,701 when not. Foster 1998.
    [Theory]
    [InlineData(4082, 300, 300, 300, 300, 300, 300, 0)]
    [InlineData(1701, 540, 0, 540, 0, 540, 180, 0)]
    public void Strain_is_load_times_monotony(double strain, params int[] days) => Assert.Equal(strain, StrainRules.Strain([.. days.Select(d => (double)d)])!.Value, 0.6);

    private static Year Eight(int weeks) =>
        Year.Of("Senior").Phase(PhaseKind.InSeason, 12).Every(7, weeks, "easy-run 2026-08-04 18:00 40").Every(14, weeks / 2, "easy-run 2026-08-06 18:00 10");

    [Fact]
    public void A_week_of_twice_the_runs_after_eight_quiet_ones_is_a_note()
    {
        var finding = Assert.Single(Eight(8).With("easy-run 2026-09-29 18:00 40", "easy-run 2026-10-01 18:00 40").Check(StrainRules.R12));

        Assert.Equal((Strength.Note, A.Date("2026-09-28")), (finding.Strength, finding.Week));
    }

    [Theory]
    [InlineData("2026-09-28", Cause.Template)]
    [InlineData("2026-10-05", null)]
    public void A_building_week_strains_by_the_template_unless_the_week_before_was_empty(string week, Cause? cause)
    {
        var year = Year.Of("Senior").Phase(PhaseKind.Mixed, 12).Every(7, 8, "easy-run 2026-08-04 18:00 40").Every(14, 4, "easy-run 2026-08-06 18:00 10");
        var tuesday = A.Date(week).PlusDays(1);

        Assert.Equal(cause, Assert.Single(year.With($"easy-run {tuesday:uuuu-MM-dd} 18:00 40", $"easy-run {tuesday.PlusDays(2):uuuu-MM-dd} 18:00 40").Check(StrainRules.R12)).ForcedBy);
    }

    [Fact]
    public void The_ninth_week_like_the_others_passes() => Assert.Empty(Eight(8).With("easy-run 2026-09-29 18:00 40").Check(StrainRules.R12));

    [Fact]
    public void Seven_weeks_are_too_few_to_judge_the_eighth() =>
        Assert.Empty(Eight(7).With("easy-run 2026-09-22 18:00 40", "easy-run 2026-09-24 18:00 40").Check(StrainRules.R12));
}
