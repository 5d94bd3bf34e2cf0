using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Weeks.Placement;
using NodaTime;

namespace ClubCycle.Planning.Tests.Weeks.Placement;

public class SessionsKeepToOpenDaysTests
{
    [Fact]
    public void A_closed_day_holds_nothing() => Assert.Equal(["easy-run.1"], AWeek.Wanting("easy-run").OpenOn("").Dropped());

    [Fact]
    public void The_one_open_day_is_taken() => Assert.Equal(["easy-run.1 Wed 18:00"], AWeek.Wanting("easy-run").OpenOn("Wed").Placed());
}

public class MatchDaysHoldNoSessionTests
{
    [Fact]
    public void An_easy_run_does_not_share_a_match_day() =>
        Assert.Equal(["easy-run.1"], (AWeek.Wanting("easy-run").OpenOn("Sat").With("match Sat 16:00") with { SessionsPerContactDay = 1 }).Dropped());

    [Fact]
    public void The_day_beside_the_match_will_do() =>
        Assert.Equal(["easy-run.1 Sat 10:00"], AWeek.Wanting("easy-run").OpenOn("Sat").With("match Sun 16:00").Placed());
}

public class SessionsFitTheSquadsTimesTests
{
    [Fact]
    public void A_minute_too_long_for_the_window_is_left_out() =>
        Assert.Equal(["easy-run.1"], In("18:30", "19:15", 46).Dropped());

    [Fact]
    public void A_session_may_end_when_the_window_does() =>
        Assert.Equal(["easy-run.1 Wed 18:30"], In("18:30", "19:15", 45).Placed());

    [Fact]
    public void A_later_window_of_the_day_is_used_when_the_first_is_too_short() =>
        Assert.Equal(
            ["easy-run.1 Wed 18:00"],
            (AWeek.Wanting("easy-run") with { Squad = A.Squad(practices: [], windows: [new([IsoDayOfWeek.Wednesday], A.Time("18:00"), A.Time("20:00")), new([IsoDayOfWeek.Wednesday], A.Time("07:00"), A.Time("07:30"))]) }).Placed());

    [Fact]
    public void Days_without_a_window_stay_empty() => Assert.Equal(["easy-run.1"], In("18:00", "20:00", 45).OpenOn("Tue").Dropped());

    private static WeekToPlace In(string from, string to, int minutes) =>
        AWeek.Wanting("easy-run").Change(0, w => w with { Minutes = minutes }) with { Squad = A.Squad(practices: [], windows: [new TimeWindow([IsoDayOfWeek.Wednesday], A.Time(from), A.Time(to))]) };
}

public class SessionsDoNotRunIntoPracticeTests
{
    // Practice from 19:30 to 21:00 on the only open day.
    [Theory]
    [InlineData(90, "18:00")]
    [InlineData(91, "21:00")]
    [InlineData(120, "21:00")]
    public void Before_it_when_there_is_time_and_after_it_when_not(int minutes, string start) =>
        Assert.Equal([$"easy-run.1 Tue {start}"], Tuesday(minutes, 1).Placed());

    [Fact]
    public void Neither_before_nor_after_leaves_it_out() => Assert.Equal(["easy-run.1"], Tuesday(121, 1).Dropped());

    [Fact]
    public void A_practice_day_is_not_shared_where_the_template_does_not_pair() => Assert.Equal(["easy-run.1"], Tuesday(45, 0).Dropped());

    [Fact]
    public void A_practice_that_ends_at_midnight_still_blocks_its_hours() =>
        Assert.Equal(
            ["easy-run.1"],
            (AWeek.Wanting("easy-run").OpenOn("Tue").With("practice Tue 22:30") with
            {
                SessionsPerContactDay = 1,
                Squad = A.Squad(practices: [], windows: [new([IsoDayOfWeek.Tuesday], A.Time("22:00"), A.Time("23:59"))]),
            }).Dropped());

    private static WeekToPlace Tuesday(int minutes, int perContactDay) =>
        AWeek.Wanting("easy-run").Change(0, w => w with { Minutes = minutes }).OpenOn("Tue").With("practice Tue 19:30") with
        {
            SessionsPerContactDay = perContactDay,
            Squad = A.Squad(practices: [], windows: [new([IsoDayOfWeek.Tuesday], A.Time("18:00"), A.Time("23:00"))]),
        };
}

public class OneSessionADayTests
{
    [Fact]
    public void Of_two_sessions_for_one_day_the_less_valuable_goes()
    {
        var week = AWeek.Wanting("strength-circuit", "easy-run").OpenOn("Mon");

        Assert.Equal(["strength-circuit.1 Mon 18:00"], week.Placed());
        Assert.Equal(["easy-run.2"], week.Dropped());
    }

    [Fact]
    public void Two_days_hold_two_sessions() => Assert.Empty(AWeek.Wanting("strength-circuit", "easy-run").OpenOn("Mon Tue").Dropped());

    [Fact]
    public void A_practice_holds_one_of_two_childrens_games() =>
        Assert.Equal(["movement-games.2"], AWeek.Wanting("movement-games", "movement-games").With("practice Tue 17:00").Dropped());
}

public class ActiveDaysAreLimitedTests
{
    private static readonly string[] ThreePractices = ["practice Mon 19:30", "practice Wed 19:30", "practice Fri 19:30"];

    [Fact]
    public void Three_practices_and_a_limit_of_three_leave_no_day() =>
        Assert.Equal(["easy-run.1"], (AWeek.Wanting("easy-run").With(ThreePractices) with { ActiveDaysAtMost = 3 }).Dropped());

    [Fact]
    public void One_day_more_holds_one_session_and_not_two() =>
        Assert.Equal(["easy-run.2"], (AWeek.Wanting("easy-run", "easy-run").With(ThreePractices) with { ActiveDaysAtMost = 4 }).Dropped());

    [Fact]
    public void A_session_on_a_practice_day_or_inside_practice_makes_no_new_active_day()
    {
        Assert.Single((AWeek.Wanting("easy-run").With(ThreePractices) with { ActiveDaysAtMost = 3, SessionsPerContactDay = 1 }).Placed());
        Assert.Equal("reactive-agility.1 Mon 19:45 inside", Assert.Single((AWeek.Wanting("reactive-agility").With(ThreePractices) with { ActiveDaysAtMost = 3 }).Placed()));
    }

    [Fact]
    public void Agility_prefers_a_day_of_its_own_while_there_is_one() =>
        Assert.DoesNotContain("inside", Assert.Single((AWeek.Wanting("reactive-agility").With(ThreePractices) with { ActiveDaysAtMost = 4 }).Placed()), StringComparison.Ordinal);
}

public class HardWorkIsSpacedTests
{
    // R36: start to start, across the week end.
    [Fact]
    public void Two_days_after_last_weeks_sprints_to_the_minute() =>
        Assert.Equal(["sprint-intervals.1 Tue 18:00"], AWeek.Wanting("sprint-intervals").OpenOn("Mon Tue").Around("sprint-intervals -1 18:00").Placed());

    [Fact]
    public void A_minute_short_of_two_days_is_too_soon() =>
        Assert.Equal(["sprint-intervals.1"], AWeek.Wanting("sprint-intervals").OpenOn("Mon Tue").Around("sprint-intervals -1 20:01").Dropped());

    [Fact]
    public void Inside_the_week_Monday_and_Wednesday_hold_two_and_Monday_and_Tuesday_one()
    {
        Assert.Empty(AWeek.Wanting("sprint-intervals", "hill-sprints").OpenOn("Mon Wed").Dropped());
        Assert.Equal(["hill-sprints.2"], AWeek.Wanting("sprint-intervals", "hill-sprints").OpenOn("Mon Tue").Dropped());
    }

    [Fact]
    public void Masters_wait_three_days()
    {
        Assert.Equal(["hill-sprints.2"], (AWeek.Wanting("sprint-intervals", "hill-sprints").OpenOn("Mon Wed") with { HoursBetweenHard = 72 }).Dropped());
        Assert.Empty((AWeek.Wanting("sprint-intervals", "hill-sprints").OpenOn("Mon Thu") with { HoursBetweenHard = 72 }).Dropped());
    }

    [Fact]
    public void Hard_work_that_a_coach_fixed_next_week_is_seen()
    {
        Assert.Equal(["hill-sprints.1"], AWeek.Wanting("hill-sprints").OpenOn("Sun").Around("jumps 7 18:00").Dropped());
        Assert.Empty(AWeek.Wanting("hill-sprints").OpenOn("Sat").Around("jumps 7 18:00").Dropped());
    }
}

public class TheDayBeforeAMatchHoldsNothingHardTests
{
    [Fact]
    public void Friday_before_Saturdays_match_holds_an_easy_run_and_no_sprints()
    {
        Assert.Equal(["sprint-intervals.1"], AWeek.Wanting("sprint-intervals").OpenOn("Fri").With("match Sat 14:00").Dropped());
        Assert.Empty(AWeek.Wanting("easy-run").OpenOn("Fri").With("match Sat 14:00").Dropped());
    }

    // Saturday 10:00 to Monday 14:00 is 52 hours.
    [Fact]
    public void A_match_on_next_weeks_first_day_is_seen()
    {
        Assert.Equal(["sprint-intervals.1"], AWeek.Wanting("sprint-intervals").OpenOn("Sun").Around("match 7 14:00").Dropped());
        Assert.Empty(AWeek.Wanting("sprint-intervals").OpenOn("Sat").Around("match 7 14:00").Dropped());
    }
}

public class HardWorkWaitsAfterTheMatchTests
{
    [Theory]
    [InlineData("match -1 18:00", true)]
    [InlineData("match -1 20:01", false)]
    public void Two_days_after_one_match(string match, bool placed) =>
        Assert.Equal(placed ? ["jumps.1 Tue 18:00"] : [], AWeek.Wanting("jumps").OpenOn("Tue").Around(match).Placed());

    // The second match 48 h after the first at the latest makes it two: three days from the second.
    [Theory]
    [InlineData("match -3 18:00", "match -1 18:00", "Tue", false)]
    [InlineData("match -3 17:59", "match -1 18:00", "Tue", true)]
    [InlineData("match -2 14:00", "match -1 18:00", "Wed", true)]
    [InlineData("match -2 14:00", "match -1 20:01", "Wed", false)]
    public void Three_days_after_two_matches_close_together(string first, string second, string day, bool placed) =>
        Assert.Equal(placed ? [$"jumps.1 {day} 18:00"] : [], AWeek.Wanting("jumps").OpenOn(day).Around(first, second).Placed());

    [Fact]
    public void Easy_work_need_not_wait() => Assert.Single(AWeek.Wanting("easy-run").OpenOn("Mon").Around("match -2 14:00", "match -1 14:00").Placed());
}

public class HeavyLiftsAreSpacedTests
{
    // R25 alone: the hours between hard sessions are set to none.
    [Theory]
    [InlineData("heavy-lift -1 18:00", true)]
    [InlineData("heavy-lift -1 20:01", false)]
    [InlineData("sprint-intervals -1 20:01", true)]
    public void The_same_muscles_get_two_days(string before, bool placed) =>
        Assert.Equal(placed ? 1 : 0, (AWeek.Wanting("heavy-lift").OpenOn("Tue").Around(before) with { HoursBetweenHard = 0 }).Placed().Length);
}

public class JumpsAreSpacedTests
{
    // R33: two days between low and medium jumps, three as soon as one of the two is high.
    [Theory]
    [InlineData("low-jumps", "low-jumps -1 18:00", "Tue", true)]
    [InlineData("low-jumps", "low-jumps -1 20:01", "Tue", false)]
    [InlineData("low-jumps", "jumps -1 20:01", "Tue", false)]
    [InlineData("high-jumps", "low-jumps -1 18:00", "Wed", true)]
    [InlineData("high-jumps", "low-jumps -1 20:01", "Wed", false)]
    [InlineData("low-jumps", "high-jumps -1 20:01", "Wed", false)]
    [InlineData("easy-run", "high-jumps -1 20:01", "Mon", true)]
    public void By_the_higher_of_the_two(string wanted, string before, string day, bool placed) =>
        Assert.Equal(placed ? 1 : 0, (AWeek.Wanting(wanted).OpenOn(day).Around(before) with { HoursBetweenHard = 0 }).Placed().Length);
}

public class AWeekHoldsFewHardSessionsTests
{
    [Fact]
    public void The_match_counts()
    {
        var week = AWeek.Wanting("sprint-intervals", "hill-sprints").OpenOn("Mon Wed").With("match Sun 14:00");

        Assert.Empty((week with { HardAtMost = 3 }).Dropped());
        Assert.Equal(["hill-sprints.2"], (week with { HardAtMost = 2 }).Dropped());
    }

    [Fact]
    public void Moderate_work_does_not_count() =>
        Assert.Empty((AWeek.Wanting("strength-circuit", "reactive-agility") with { HardAtMost = 0 }).Dropped());
}

public class PinsHoldTests
{
    [Fact]
    public void Even_on_a_closed_day_before_a_match() =>
        Assert.Equal(["sprint-intervals.1 Fri 20:30"], AWeek.Wanting("sprint-intervals").OpenOn("Mon").With("match Sat 14:00").Pinning(0, "Fri", "20:30").Placed());

    [Fact]
    public void The_others_keep_their_distance_even_when_they_are_worth_more() =>
        Assert.Equal(["jumps.1"], AWeek.Wanting("jumps", "sprint-intervals").OpenOn("Mon Tue").Pinning(1, "Wed", "17:59").Dropped());

    [Fact]
    public void A_pin_without_a_time_takes_the_first_free_one() =>
        Assert.Equal(["easy-run.1 Tue 18:00"], AWeek.Wanting("easy-run").With("practice Tue 19:30").Pinning(0, "Tue").Placed());

    [Fact]
    public void What_can_be_part_of_practice_is_part_of_it_when_fixed_to_that_day()
    {
        Assert.Equal(["movement-games.1 Tue 17:15 inside"], AWeek.Wanting("movement-games").With("practice Tue 17:00").Pinning(0, "Tue").Placed());
        Assert.Equal(["reactive-agility.1 Tue 09:00"], AWeek.Wanting("reactive-agility").With("practice Tue 17:00").Pinning(0, "Tue", "09:00").Placed());
    }
}

public class ChildrensGamesBelongToPracticeTests
{
    [Fact]
    public void Without_practice_there_are_none() => Assert.Equal(["movement-games.1"], AWeek.Wanting("movement-games").Dropped());

    [Fact]
    public void With_practice_they_follow_its_warm_up() => Assert.Equal(["movement-games.1 Wed 17:15 inside"], AWeek.Wanting("movement-games").With("practice Wed 17:00").Placed());

    // A practice of 90 minutes less 15 of warm-up.
    [Theory]
    [InlineData(75, 1)]
    [InlineData(76, 0)]
    public void They_end_with_the_practice(int minutes, int placed) =>
        Assert.Equal(placed, AWeek.Wanting("movement-games").Change(0, w => w with { Minutes = minutes }).With("practice Wed 17:00").Placed().Length);
}
