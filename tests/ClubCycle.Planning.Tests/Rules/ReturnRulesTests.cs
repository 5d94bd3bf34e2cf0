using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Rules;

namespace ClubCycle.Planning.Tests.Rules;

public class TrainingComesBackInFourStepsTests
{
    /// <summary>Aerobic build of seniors: five sessions of 45 min are 225 min in a full week.</summary>
    private static Year Back(params int[] minutes)
    {
        var year = Year.Of("Senior").Phase(PhaseKind.AerobicBuild, 8);
        foreach (var (week, length) in minutes.Index())
        {
            year.With($"easy-run {A.Date("2026-08-18").PlusWeeks(week):uuuu-MM-dd} 18:00 {length}");
        }

        return year;
    }

    // Caterisano et al. 2019, from memory: 50, 70, 80, 90 %.
    [Fact]
    public void Half_seven_eight_and_nine_tenths_pass() => Assert.Empty(Back(112, 157, 180, 202, 225).Check(ReturnRules.R19));

    [Theory]
    [InlineData(113, 157, 180, 202)]
    [InlineData(112, 158, 180, 202)]
    [InlineData(112, 157, 181, 202)]
    [InlineData(112, 157, 180, 203)]
    public void A_minute_more_in_any_of_the_four_is_found(params int[] minutes) => Assert.Single(Back(minutes).Check(ReturnRules.R19));

    [Fact]
    public void Thirteen_days_off_are_no_time_off() =>
        Assert.Empty(Year.Of("Senior").Phase(PhaseKind.AerobicBuild, 8).With("easy-run 2026-08-03 18:00 20", "easy-run 2026-08-17 18:00 200").Check(ReturnRules.R19));

    [Fact]
    public void Fourteen_days_off_are() =>
        Assert.Single(Year.Of("Senior").Phase(PhaseKind.AerobicBuild, 8).With("easy-run 2026-08-03 18:00 20", "easy-run 2026-08-18 18:00 200").Check(ReturnRules.R19));

    [Fact]
    public void A_squad_that_joins_comes_back_on_its_first_day() =>
        Assert.Single(Year.Of("Senior").Phase(PhaseKind.AerobicBuild, 8).Joined("2026-08-03").With("easy-run 2026-08-03 18:00 200").Check(ReturnRules.R19));

    /// <summary>Back on a Tuesday: a run on Sunday is still in the first week, one on Monday in the second.</summary>
    [Theory]
    [InlineData("2026-08-23", 1)]
    [InlineData("2026-08-24", 0)]
    public void The_steps_are_the_clubs_weeks_from_the_first_active_day(string second, int findings) =>
        Assert.Equal(findings, Back(100).With($"easy-run {second} 18:00 20").Check(ReturnRules.R19).Count);

    [Fact]
    public void Practices_are_not_counted() => Assert.Empty(Back(100).With("practice 2026-08-20 18:00 90").Check(ReturnRules.R19));

    [Fact]
    public void The_planner_keeps_the_four_steps_after_closed_weeks()
    {
        var request = A.Request(squad: A.Squad(practices: []), closed: [new(A.Date("2026-05-04"), A.Date("2026-05-24"), "away")]);

        Assert.DoesNotContain(A.Plan(request).Findings, f => f.Rule == "R19");
    }

    [Theory]
    [InlineData(113, 112.5, "113 min of added sessions in week 1 after time off, 50 % of a full week's 225; 50 % at most.")]
    [InlineData(225, 112.5, "225 min of added sessions in week 1 after time off, 100 % of a full week's 225; 50 % at most.")]
    public void Minutes_are_held_against_their_share_of_a_full_week(int minutes, double limit, string told)
    {
        var finding = Assert.Single(Back(minutes).Check(ReturnRules.R19));

        Assert.Equal((minutes, limit, "min"), finding.FiguresOf());
        Assert.Equal((A.Date("2026-08-17"), told), (finding.Week!.Value, finding.Message));
    }

    [Fact]
    public void A_session_that_a_coach_fixed_forces_it() => Assert.Equal(Cause.Coach, Assert.Single(Back(200).Pinned().Check(ReturnRules.R19)).ForcedBy);

    [Fact]
    public void Minutes_inside_practice_are_not_counted() => Assert.Empty(Back(100).With("reactive-agility 2026-08-20 18:15 30").InsidePractice().Check(ReturnRules.R19));

    /// <summary>The second time off comes in the third of the four weeks, which then are its own.</summary>
    [Fact]
    public void A_second_return_starts_the_steps_again() =>
        Assert.Equal(
            [A.Date("2026-09-07")],
            Year.Of("Senior").Phase(PhaseKind.AerobicBuild, 8).With("easy-run 2026-08-18 18:00 100", "easy-run 2026-09-08 18:00 150").Check(ReturnRules.R19).Select(f => f.Week!.Value));
}
