using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Planning.Tests.Rules;

public class FootContactsFitExperienceTests
{
    [Theory]
    [InlineData(100, 0)]
    [InlineData(101, 1)]
    public void New_players_have_a_hundred(int contacts, int findings) => Assert.Equal(findings, Check(Year.Of("Senior").New(), contacts));

    [Theory]
    [InlineData(120, 0)]
    [InlineData(121, 1)]
    public void Some_training_allows_a_hundred_and_twenty(int contacts, int findings) => Assert.Equal(findings, Check(Year.Of("U17").Some(), contacts));

    [Theory]
    [InlineData(140, 0)]
    [InlineData(141, 1)]
    public void Trained_players_have_a_hundred_and_forty(int contacts, int findings) => Assert.Equal(findings, Check(Year.Of("Senior"), contacts));

    [Fact]
    public void Contacts_that_the_sheet_does_not_count_are_counted_from_its_repetitions() =>
        Assert.Equal(150, Assert.Single(Year.Of("Senior").Sheet("jumps 2026-08-04 18:00 45", Do.Lift("Alternate bounds", 15, 10, null)).Check(JumpRules.R31)).Facts!.Measured);

    [Fact]
    public void A_slip_of_the_pen_is_too_many_and_not_an_overflow() =>
        Assert.Single(Year.Of("Senior").Sheet("jumps 2026-08-04 18:00 45", Do.Lift("Alternate bounds", 100_000, 100_000, null)).Check(JumpRules.R31));

    private static int Check(Year year, int contacts) => year.Sheet("jumps 2026-08-04 18:00 45", Do.MediumJumps(contacts - 40), Do.LowJumps(40)).Check(JumpRules.R31).Count;
}

public class ChildrenJumpLowAndLittleTests
{
    // Vector: age 12, 80 contacts in week 1 fail. Johnson et al. 2011.
    [Fact]
    public void Eighty_contacts_in_the_first_week_are_a_must_finding()
    {
        var finding = Assert.Single(Year.Of("U14").Sheet("low-jumps 2026-08-04 18:00 30", Do.LowJumps(80)).Check(ChildJumpRules.R32));

        Assert.Equal((Strength.Must, 80, 60), (finding.Strength, finding.Facts!.Measured, finding.Facts.Limit));
    }

    [Theory]
    [InlineData(66, 0)]
    [InlineData(67, 1)]
    public void A_tenth_more_than_before_passes(int contacts, int findings) =>
        Assert.Equal(findings, Jumps(("2026-08-04", 60), ("2026-08-11", contacts)).Check(ChildJumpRules.R32).Count);

    [Fact]
    public void After_an_easier_week_the_fuller_one_before_counts() =>
        Assert.Empty(Jumps(("2026-08-04", 60), ("2026-08-11", 30), ("2026-08-18", 66)).Check(ChildJumpRules.R32));

    [Fact]
    public void Seven_weeks_without_jumps_mean_a_new_start() =>
        Assert.Single(Jumps(("2026-08-04", 60), ("2026-08-11", 66), ("2026-09-29", 66)).Phase(PhaseKind.Mixed, 10).Check(ChildJumpRules.R32));

    [Theory]
    [InlineData(56, 61.6)]
    [InlineData(40, 60)]
    [InlineData(98, 100)]
    public void The_most_is_between_sixty_and_a_hundred(int fullest, double most) => Assert.Equal(most, ChildJumpRules.MostForChildren(fullest), 6);

    [Fact]
    public void A_third_session_a_week_is_found() =>
        Assert.Equal(3, Assert.Single(Jumps(("2026-08-03", 50), ("2026-08-05", 50), ("2026-08-07", 50)).Check(ChildJumpRules.R32)).Facts!.Measured);

    [Fact]
    public void Two_days_in_a_row_are_found() => Assert.Single(Jumps(("2026-08-04", 50), ("2026-08-05", 50)).Check(ChildJumpRules.R32));

    [Theory]
    [InlineData("U13", 1)]
    [InlineData("U14", 0)]
    public void Before_twelve_jumps_are_low(string ages, int findings) =>
        Assert.Equal(findings, Year.Of(ages).Sheet("low-jumps 2026-08-04 18:00 30", Do.MediumJumps(40)).Check(ChildJumpRules.R32).Count);

    [Fact]
    public void From_fifteen_on_other_rules_hold() =>
        Assert.Empty(Year.Of("U17").Sheet("jumps 2026-08-04 18:00 30", Do.LowJumps(80)).Check(ChildJumpRules.R32));

    private static Year Jumps(params (string Day, int Contacts)[] jumps) =>
        jumps.Aggregate(Year.Of("U14"), (year, jump) => year.Sheet($"low-jumps {jump.Day} 18:00 30", Do.LowJumps(jump.Contacts)));

    [Theory]
    [InlineData("2026-09-15", 0)]
    [InlineData("2026-09-22", 1)]
    public void Six_weeks_back_are_remembered(string day, int findings) =>
        Assert.Equal(findings, Jumps(("2026-08-04", 60), (day, 66)).Phase(PhaseKind.Mixed, 10).Check(ChildJumpRules.R32).Count);

    [Fact]
    public void Too_many_are_told_with_what_was_before() =>
        Assert.Contains("67 foot contacts; 66 at most after 60 in the six weeks before", Assert.Single(Jumps(("2026-08-04", 60), ("2026-08-11", 67)).Check(ChildJumpRules.R32)).Message, StringComparison.Ordinal);

    [Fact]
    public void A_day_between_two_sessions_is_enough() => Assert.Empty(Jumps(("2026-08-04", 50), ("2026-08-06", 50)).Check(ChildJumpRules.R32));
}

public class JumpSessionsAreTwoDaysApartTests
{
    [Theory]
    [InlineData("18:30", 1)]
    [InlineData("19:00", 0)]
    public void Two_days_belong_between(string start, int findings) =>
        Assert.Equal(findings, Year.Of("U16").Sheet("low-jumps 2026-08-04 19:00 30", Do.LowJumps(40)).Sheet($"low-jumps 2026-08-06 {start} 30", Do.LowJumps(40)).Check(JumpRules.R33).Count);

    [Theory]
    [InlineData(PhaseKind.InSeason, 1)]
    [InlineData(PhaseKind.PreSeason, 0)]
    public void Three_a_week_are_one_too_many_in_season(PhaseKind phase, int findings) =>
        Assert.Equal(findings, Days(phase, "2026-08-03", "2026-08-05", "2026-08-07").Check(JumpRules.R33).Count);

    [Fact]
    public void Four_a_week_are_too_many_at_any_time() =>
        Assert.Single(Days(PhaseKind.PreSeason, "2026-08-03", "2026-08-05", "2026-08-07", "2026-08-09").Check(JumpRules.R33));

    private static Year Days(PhaseKind phase, params string[] days) =>
        days.Aggregate(Year.Of("Senior").Phase(phase, 4), (year, day) => year.Sheet($"jumps {day} 18:00 30", Do.MediumJumps(80)));

    [Fact]
    public void Hours_and_numbers_are_told_with_their_limit()
    {
        Assert.Equal((47.5, 48, "h"), Assert.Single(Year.Of("U16").Sheet("low-jumps 2026-08-04 19:00 30", Do.LowJumps(40)).Sheet("low-jumps 2026-08-06 18:30 30", Do.LowJumps(40)).Check(JumpRules.R33)).FiguresOf());
        Assert.Equal((3, 2, "sessions"), Assert.Single(Days(PhaseKind.InSeason, "2026-08-03", "2026-08-05", "2026-08-07").Check(JumpRules.R33)).FiguresOf());
    }
}

public class ShockJumpsWaitUntilSixteenTests
{
    [Theory]
    [InlineData("U17", "Depth jump", 1)]
    [InlineData("U17", "Drop jumps from a box", 1)]
    [InlineData("U17", "Alternate bounds", 0)]
    [InlineData("U18", "Depth jump", 0)]
    public void A_depth_jump_is_refused_at_fifteen(string ages, string exercise, int findings)
    {
        var found = Year.Of(ages).Sheet("jumps 2026-08-04 18:00 30", Do.Named(exercise)).Check(JumpRules.R34);

        Assert.Equal(findings, found.Count);
        Assert.All(found, f => Assert.Equal(Strength.Must, f.Strength));
    }

    [Theory]
    [InlineData(JumpClass.High, 15, true)]
    [InlineData(JumpClass.High, 16, false)]
    [InlineData(JumpClass.Medium, 10, false)]
    public void The_high_class_is_refused_too(JumpClass jumps, int age, bool refused) => Assert.Equal(refused, JumpRules.IsRefused(jumps, age));
}
