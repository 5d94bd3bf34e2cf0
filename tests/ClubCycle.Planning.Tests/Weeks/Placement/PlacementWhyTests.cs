using ClubCycle.Planning.Weeks.Placement;

namespace ClubCycle.Planning.Tests.Weeks.Placement;

/// <summary>What coaches read about a session's day.</summary>
public class PlacementWhyTests
{
    [Fact]
    public void Games_without_a_practice_have_nowhere_to_be_played() => Assert.Equal("there is no practice this week to play it in", WhyDropped(AWeek.Wanting("movement-games")));

    [Theory]
    [InlineData("")]
    [InlineData("Sat")]
    public void Closed_days_and_matches_leave_no_room(string open) =>
        Assert.Equal("no free day this week has room for it (closed days, matches and the squad's times)", WhyDropped(AWeek.Wanting("easy-run").OpenOn(open).With("match Sat 14:00")));

    [Theory]
    [InlineData("Fri", "match Sat 14:00")]
    [InlineData("Sun", "match Sat 14:00")]
    [InlineData("Mon", "match Tue 19:00")]
    public void The_day_beside_a_match_is_free_but_too_near_for_hard_work(string open, string match) =>
        Assert.Equal("no free day is far enough from matches and hard sessions", WhyDropped(AWeek.Wanting("sprint-intervals").OpenOn(open).With(match)));

    [Theory]
    [InlineData(5, "Saturday is a match day")]
    [InlineData(6, "Sunday is closed or not free")]
    public void A_session_away_from_its_usual_day_says_what_is_there(int usual, string why) =>
        Assert.Contains(why, WhyPlaced((AWeek.Wanting("easy-run").OpenOn("Wed Sat") with { BaseDays = new Dictionary<string, int> { ["easy-run.1"] = usual } }).With("match Sat 14:00")), StringComparison.Ordinal);

    [Theory]
    [InlineData(1, "the week already holds 1 hard sessions, matches included")]
    [InlineData(2, "no day is far enough from the other hard sessions and matches")]
    public void A_hard_session_too_many_says_whether_the_number_or_the_hours_forbid_it(int most, string why) =>
        Assert.Equal(why, WhyDropped(AWeek.Wanting("sprint-intervals", "hill-sprints").OpenOn("Mon Tue") with { HardAtMost = most }));

    [Fact]
    public void Matches_are_among_the_hard_sessions() =>
        Assert.Equal("the week already holds 1 hard sessions, matches included", WhyDropped(AWeek.Wanting("sprint-intervals").OpenOn("Mon").With("match Sat 14:00") with { HardAtMost = 1 }));

    [Fact]
    public void Jumps_too_close_to_others_say_so() =>
        Assert.Equal("no day is far enough from the other jumps, or the week already has its active days", WhyDropped(AWeek.Wanting("low-jumps", "low-jumps").OpenOn("Mon Tue")));

    [Theory]
    [InlineData(3, "the week already has its 3 active days")]
    [InlineData(4, "other sessions have the days that it could take")]
    public void Any_other_session_says_whether_the_week_is_full_or_its_days_are_taken(int most, string why) =>
        Assert.Equal(why, WhyDropped(AWeek.Wanting("strength-circuit", "easy-run").OpenOn("Mon").With("practice Tue 19:30", "practice Thu 19:30") with { ActiveDaysAtMost = most }));

    [Fact]
    public void The_usual_day_that_another_session_took_names_it() =>
        Assert.Equal("Its usual Monday went to 'Strength circuit'. The day that leaves the week best spread.", WhyPlaced(AWeek.Wanting("easy-run", "strength-circuit").OpenOn("Wed").Usually(0).Pinning(1, "Mon") with { Free = [true, true, true, true, true, true, true] }));

    [Fact]
    public void Also_when_that_one_is_the_most_valuable_of_the_week() =>
        Assert.StartsWith(
            "Its usual Monday went to 'Strength circuit'. ",
            CyclePlacement.Place([AWeek.Wanting("strength-circuit", "easy-run").OpenOn("Mon Wed").Pinning(0, "Mon") with { BaseDays = new Dictionary<string, int> { ["easy-run.2"] = 0 } }]).WhyOf(0).ThisPlaceFor(1),
            StringComparison.Ordinal);

    [Fact]
    public void The_usual_day_without_a_window_has_no_time() =>
        Assert.StartsWith("Its usual Monday has no time for it. ", WhyPlaced(AWeek.Wanting("easy-run").Usually(0) with { Squad = A.Squad(practices: [], windows: [new([NodaTime.IsoDayOfWeek.Wednesday], A.Time("18:00"), A.Time("20:00"))]) }), StringComparison.Ordinal);

    [Fact]
    public void The_usual_day_that_holds_a_practice_says_so_where_the_template_does_not_pair() =>
        Assert.StartsWith("Its usual Tuesday holds a practice already. ", WhyPlaced(AWeek.Wanting("easy-run").Usually(1).With("practice Tue 19:30")), StringComparison.Ordinal);

    [Theory]
    [InlineData(0, "match -1 18:00", "Wed", "Its usual Monday is only 24 h after the match on Sunday. 72 h after the match on Sunday; 48 h belong between.")]
    [InlineData(6, "match 7 14:30", "Wed", "Its usual Sunday is only 28.5 h before the match on Monday. No match and nothing that it must keep away from within four days.")]
    public void The_usual_day_too_near_to_a_match_counts_the_hours(int usual, string match, string open, string why) =>
        Assert.Equal(why, WhyPlaced(AWeek.Wanting("sprint-intervals").Usually(usual).Around(match) with { Free = [.. AWeek.Wanting().OpenOn(open).Free.Select((free, day) => free || day == usual)] }));

    [Fact]
    public void The_usual_day_may_be_one_active_day_too_many() =>
        Assert.StartsWith(
            "Its usual Tuesday would be one active day more than 3. ",
            WhyPlaced(AWeek.Wanting("easy-run").Usually(1).With("practice Mon 19:30", "practice Wed 19:30", "practice Fri 19:30") with { ActiveDaysAtMost = 3, SessionsPerContactDay = 1 }), StringComparison.Ordinal);

    [Fact]
    public void Just_far_enough_from_a_match_the_usual_day_is_not_too_near() =>
        Assert.StartsWith(
            "Its usual Tuesday would be one active day more than 3. ",
            WhyPlaced(AWeek.Wanting("sprint-intervals").Usually(1).Around("match -1 18:00").With("practice Mon 19:30", "practice Wed 19:30", "practice Fri 19:30") with { ActiveDaysAtMost = 3, SessionsPerContactDay = 1 }),
            StringComparison.Ordinal);

    [Fact]
    public void A_published_session_that_moved_says_from_where() =>
        Assert.Equal("It was published for Monday, which is closed or not free. The day that leaves the week best spread.", WhyPlaced(AWeek.Wanting("easy-run").OpenOn("Wed").Published(0, "Mon", "18:00")));

    [Fact]
    public void A_session_on_its_usual_day_says_so() => Assert.Equal("Its usual day in this phase, where it leaves the week best spread.", WhyPlaced(AWeek.Wanting("easy-run").Usually(2)));

    [Theory]
    [InlineData("easy-run", "match -1 14:00", "Light enough for the day after a match.")]
    [InlineData("easy-run", "match -2 14:00", "The day that leaves the week best spread.")]
    [InlineData("strength-circuit", "match -1 14:00", "The day that leaves the week best spread.")]
    public void Easy_work_the_day_after_a_match_is_light_enough(string workout, string match, string why) => Assert.Equal(why, WhyPlaced(AWeek.Wanting(workout).OpenOn("Mon").Around(match)));

    [Theory]
    [InlineData("Tue", "Lighter work the day after 'Sprint intervals'.")]
    [InlineData("Wed", "The day that leaves the week best spread.")]
    public void Easy_work_the_day_after_hard_work_names_it(string open, string why) => Assert.Equal(why, WhyPlaced(AWeek.Wanting("easy-run", "sprint-intervals").OpenOn(open).Pinning(1, "Mon")));

    [Fact]
    public void What_a_coach_fixed_and_what_is_part_of_practice_say_so()
    {
        Assert.Equal("A coach fixed this day.", WhyPlaced(AWeek.Wanting("easy-run").Pinning(0, "Mon")));
        Assert.Equal("Inside practice, so it costs no extra day.", WhyPlaced(AWeek.Wanting("reactive-agility").OpenOn("Tue").With("practice Tue 19:30")));
    }

    // To Tuesday 18:00.
    [Theory]
    [InlineData("match -3 18:00", "96 h after the match on Friday; 48 h belong between.")]
    [InlineData("match -3 17:59", "No match and nothing that it must keep away from within four days.")]
    [InlineData("match 3 18:00", "48 h before the match on Thursday; 48 h belong between.")]
    [InlineData("easy-run 0 18:00", "No match and nothing that it must keep away from within four days.")]
    public void Hard_work_tells_its_distance_to_what_is_within_four_days(string other, string why) => Assert.Equal(why, WhyPlaced(AWeek.Wanting("sprint-intervals").OpenOn("Tue").Around(other)));

    [Fact]
    public void The_nearest_on_either_side_are_told_with_the_longer_need() =>
        Assert.Equal(
            "72 h after the match on Saturday and 52 h before the match on Thursday; 72 h belong between.",
            WhyPlaced(AWeek.Wanting("sprint-intervals").OpenOn("Tue").Around("match -3 18:00", "match -2 18:00", "match 3 22:00", "match 4 22:00")));

    [Theory]
    [InlineData(6, "'Hill sprints' on Sunday")]
    [InlineData(8, "'Hill sprints' on Tuesday")]
    public void The_weeks_beside_are_seen(int beside, string named)
    {
        var day = AWeek.Monday.PlusDays(beside).DayOfWeek.ToString()[..3];
        var (hill, sprints) = (AWeek.Wanting("hill-sprints").Pinning(0, day, "10:00"), AWeek.Wanting("sprint-intervals").OpenOn(beside == 6 ? "Wed" : "Sat"));

        var placed = beside == 6 ? CyclePlacement.Place([hill, sprints.Next()]).WhyOf(1) : CyclePlacement.Place([sprints, hill.Next()]).WhyOf(0);

        Assert.Contains(named, placed.ThisPlaceFor(0), StringComparison.Ordinal);
    }

    private static string WhyDropped(WeekToPlace week) => Assert.Single(CyclePlacement.Place([week]).Weeks[0].Dropped).Why;

    private static string WhyPlaced(WeekToPlace week) => CyclePlacement.Place([week]).WhyOf(0).ThisPlaceFor(0);
}
