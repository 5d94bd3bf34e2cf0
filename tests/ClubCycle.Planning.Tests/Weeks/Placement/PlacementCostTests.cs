using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Weeks.Placement;
using NodaTime;

namespace ClubCycle.Planning.Tests.Weeks.Placement;

/// <summary>The table of costs in <c>docs/placement.md</c>, line by line.</summary>
public class PlacementCostTests
{
    [Theory]
    [InlineData("Wed", 0)]
    [InlineData("Fri", 0)]
    [InlineData("Sat", 4)]
    [InlineData("Sun", 4)]
    [InlineData("", 1_050_000)]
    public void A_session_alone_pays_for_the_weekend_or_for_having_no_day(string open, long cost) => Assert.Equal(cost, AWeek.Wanting("easy-run").OpenOn(open).Cost());

    [Fact]
    public void Of_two_dropped_sessions_the_more_valuable_costs_more() => Assert.Equal(1_100_000 + 1_050_000, AWeek.Wanting("easy-run", "easy-run").OpenOn("").Cost());

    [Theory]
    [InlineData("Wed", "Wed", "18:00", 0)]
    [InlineData("Wed", "Wed", "19:10", 0)]
    [InlineData("Wed", "Wed", "07:00", 500)]
    [InlineData("Wed", "Mon", "18:00", 2_000)]
    [InlineData("", "Mon", "18:00", 1_550_000)]
    public void A_published_session_pays_for_another_time_more_for_another_day_and_most_for_none(string open, string day, string start, long cost) =>
        Assert.Equal(cost, AWeek.Wanting("easy-run").OpenOn(open).Published(0, day, start).Cost());

    [Theory]
    [InlineData(0, 300)]
    [InlineData(2, 0)]
    public void Another_day_than_the_usual_one_costs_unless_it_was_published(int usual, long cost)
    {
        var week = AWeek.Wanting("easy-run").OpenOn("Wed") with { BaseDays = new Dictionary<string, int> { ["easy-run.1"] = usual } };

        Assert.Equal(cost, week.Cost());
        Assert.Equal(0, week.Published(0, "Wed", "18:00").Cost());
    }

    [Fact]
    public void A_session_without_a_usual_day_may_take_any() =>
        Assert.Equal(0, (AWeek.Wanting("easy-run").OpenOn("Wed") with { BaseDays = new Dictionary<string, int> { ["jumps.1"] = 1 } }).Cost());

    [Theory]
    [InlineData("Tue", 10)]
    [InlineData("Sun", 14)]
    public void Inside_practice_costs_pitch_time(string day, long cost) => Assert.Equal(cost, AWeek.Wanting("reactive-agility").OpenOn(day).With($"practice {day} 19:30").Cost());

    // Jumps on Tuesday, the earlier ones on Sunday: 48 hours belong between.
    [Theory]
    [InlineData("18:00", 0)]
    [InlineData("18:01", 3)]
    [InlineData("18:30", 3)]
    [InlineData("19:30", 9)]
    [InlineData("20:00", 12)]
    [InlineData("20:01", 1_050_000)]
    public void Each_half_hour_after_the_usual_start_costs(string sunday, long cost) => Assert.Equal(cost, AWeek.Wanting("jumps").OpenOn("Tue").Around($"jumps -1 {sunday}").Cost());

    [Theory]
    [InlineData("Tue", "18:30", 0)]
    [InlineData("Tue", "18:00", 503)]
    [InlineData("Wed", "18:00", 2_003)]
    public void Half_hours_are_free_at_the_published_time_alone(string day, string start, long cost) =>
        Assert.Equal(cost, AWeek.Wanting("jumps").OpenOn("Tue").Published(0, day, start).Around("jumps -1 18:30").Cost());

    [Fact]
    public void Half_an_hour_later_is_cheaper_than_the_weekend()
    {
        TimeWindow On(IsoDayOfWeek day, string from, string to) => new([day], A.Time(from), A.Time(to));
        var week = AWeek.Wanting("jumps", "jumps").Change(0, w => w with { Minutes = 90 }) with
        {
            Squad = A.Squad(practices: [], windows: [On(IsoDayOfWeek.Monday, "18:00", "19:00"), On(IsoDayOfWeek.Wednesday, "17:30", "20:00"), On(IsoDayOfWeek.Saturday, "10:00", "11:00")]),
        };

        Assert.Equal(3, week.Cost());
        Assert.Equal(["jumps.2 Mon 18:00", "jumps.1 Wed 18:00"], week.Placed());
    }

    [Theory]
    [InlineData("Mon Wed", 0)]
    [InlineData("Mon Tue", 8)]
    [InlineData("Mon Tue Wed", 16)]
    [InlineData("Mon Tue Wed Thu", 39)]
    [InlineData("Mon Tue Wed Fri", 16)]
    [InlineData("Mon Tue Wed Thu Fri", 62)]
    [InlineData("Mon Tue Wed Thu Fri Sat", 101)]
    [InlineData("Mon Tue Wed Thu Fri Sat Sun", 128)]
    public void Neighbouring_days_long_rows_and_a_sixth_day_cost(string days, long cost)
    {
        var runs = Enumerable.Repeat("easy-run", days.Split(' ').Length).ToArray();

        Assert.Equal(cost, (AWeek.Wanting(runs).OpenOn(days) with { ActiveDaysAtMost = 7 }).Cost());
    }

    [Theory]
    [InlineData("Wed", 8)]
    [InlineData("Thu", 0)]
    public void Practices_make_active_days_too(string day, long cost) => Assert.Equal(cost, AWeek.Wanting("easy-run").OpenOn(day).With("practice Tue 19:30").Cost());

    [Theory]
    [InlineData("strength-circuit", "Tue", 12)]
    [InlineData("strength-circuit", "Wed", 0)]
    [InlineData("strength-circuit", "Mon", 0)]
    [InlineData("easy-run", "Tue", 0)]
    public void Work_that_is_not_easy_pays_the_day_after_a_hard_session(string workout, string day, long cost) =>
        Assert.Equal(cost, AWeek.Wanting(workout).OpenOn(day).Around("sprint-intervals 0 08:00").Cost());

    [Fact]
    public void Once_however_many_there_were() => Assert.Equal(12, AWeek.Wanting("strength-circuit").OpenOn("Mon").Around("match -1 10:00", "sprint-intervals -1 18:00").Cost());

    [Fact]
    public void The_hard_session_may_be_one_of_the_weeks_own()
    {
        Assert.Equal(20, AWeek.Wanting("sprint-intervals", "strength-circuit").OpenOn("Tue").Pinning(0, "Mon").Cost());
        Assert.Equal(20, AWeek.Wanting("sprint-intervals", "hill-sprints", "strength-circuit").OpenOn("Tue").Pinning(0, "Mon").Pinning(1, "Mon", "08:00").Cost());
        Assert.Equal(8, AWeek.Wanting("sprint-intervals", "strength-circuit").OpenOn("Mon Tue").Cost());
    }

    [Fact]
    public void A_fixed_session_pays_for_the_hard_one_before_it() => Assert.Equal(20, AWeek.Wanting("sprint-intervals", "strength-circuit").OpenOn("Mon").Pinning(1, "Tue").Cost());

    [Theory]
    [InlineData("strength-circuit", "Fri", 33)]
    [InlineData("easy-run", "Fri", 14)]
    [InlineData("strength-circuit", "Thu", 0)]
    public void The_day_before_a_match_costs_and_more_when_it_is_not_easy(string workout, string day, long cost) =>
        Assert.Equal(cost, AWeek.Wanting(workout).OpenOn(day).With("match Sat 14:00").Cost());

    [Fact]
    public void Next_weeks_match_is_seen() => Assert.Equal(29, AWeek.Wanting("strength-circuit").OpenOn("Sun").Around("match 7 14:00").Cost());

    [Fact]
    public void Inside_practice_neither_the_match_ahead_nor_the_hard_day_before_costs() =>
        Assert.Equal(18, AWeek.Wanting("reactive-agility").OpenOn("Fri").With("practice Fri 19:30", "match Sat 14:00").Around("sprint-intervals 3 18:00").Cost());

    [Theory]
    [InlineData("U18", "strength-circuit", "Mon Tue", 48)]
    [InlineData("Senior", "strength-circuit", "Mon Tue", 8)]
    [InlineData("U18", "strength-circuit", "Mon Wed", 0)]
    [InlineData("U18", "heavy-lift", "Mon Tue", 48)]
    [InlineData("U18", "easy-run", "Mon Tue", 8)]
    public void Strength_of_minors_keeps_off_neighbouring_days(string ages, string other, string days, long cost) =>
        Assert.Equal(cost, (AWeek.Wanting("strength-circuit", other).OpenOn(days) with { Squad = A.Squad(AgeGroup.Find(ages), practices: []) }).Cost());

    [Fact]
    public void Each_pair_of_neighbouring_strength_days_costs() =>
        Assert.Equal(96, (AWeek.Wanting("strength-circuit", "strength-circuit", "strength-circuit").OpenOn("Mon Tue Wed") with { Squad = A.Squad(AgeGroup.Youth(18), practices: []) }).Cost());

    [Theory]
    [InlineData(0b0000000, 0, 0)]
    [InlineData(0b0000000, 4, 0)]
    [InlineData(0b0000000, 5, 16)]
    [InlineData(0b0001111, 1, 39)]
    [InlineData(0b0000001, 6, 120)]
    [InlineData(0b1111111, 1, 120)]
    [InlineData(0b0101010, 1, 8)]
    public void Days_still_to_come_cost_what_the_best_of_them_would(int days, int more, int least) => Assert.Equal(least, PlacementCost.OfActiveDays(days, more, repeats: false));
}

/// <summary>A week that stands before and after itself.</summary>
public class RepeatingWeekTests
{
    [Theory]
    [InlineData("Mon Sun", 4, 12)]
    [InlineData("Tue Sun", 4, 4)]
    [InlineData("Mon Fri Sat Sun", 24, 47)]
    public void Rows_of_days_run_on_into_the_next_week(string days, long once, long repeating)
    {
        var week = AWeek.Wanting([.. Enumerable.Repeat("easy-run", days.Split(' ').Length)]).OpenOn(days);

        Assert.Equal(once, week.Cost());
        Assert.Equal(repeating, CyclePlacement.PlaceRepeating(week).Cost);
    }

    [Fact]
    public void All_seven_days_are_one_row_without_end() =>
        Assert.Equal(7 * (8 + 15) + 12 + 8, CyclePlacement.PlaceRepeating(AWeek.Wanting([.. Enumerable.Repeat("easy-run", 7)]) with { ActiveDaysAtMost = 7 }).Cost);

    [Fact]
    public void Strength_of_minors_on_Sunday_and_Monday_costs() =>
        Assert.Equal(52, CyclePlacement.PlaceRepeating(AWeek.Wanting("strength-circuit", "strength-circuit").OpenOn("Mon Sun") with { Squad = A.Squad(AgeGroup.Youth(18), practices: []) }).Cost);

    // Sprints of 200 minutes fit on a weekend only.
    [Fact]
    public void Mondays_circuit_pays_for_Sundays_sprints() =>
        Assert.Equal(24, CyclePlacement.PlaceRepeating(AWeek.Wanting("sprint-intervals", "strength-circuit").Change(0, w => w with { Minutes = 200 }).OpenOn("Mon Sun")).Cost);

    [Theory]
    [InlineData("Tue Sun", 0)]
    [InlineData("Mon Sun", 1)]
    public void Spacing_holds_across_its_own_end(string days, int dropped) =>
        Assert.Equal(dropped, CyclePlacement.PlaceRepeating(AWeek.Wanting("sprint-intervals", "hill-sprints").OpenOn(days)).Weeks[0].Dropped.Count);

    [Fact]
    public void Its_match_stands_before_it_too()
    {
        var week = AWeek.Wanting("sprint-intervals").OpenOn("Mon").With("match Sun 14:00");

        Assert.Single(week.Placed());
        Assert.Single(CyclePlacement.PlaceRepeating(week).Weeks[0].Dropped);
    }
}

/// <summary>Two weeks in a row.</summary>
public class NeighbouringWeeksTests
{
    [Fact]
    public void No_weeks_cost_nothing()
    {
        Assert.Equal(0, CyclePlacement.Place([]).Cost);
        Assert.Empty(CyclePlacement.Place([]).Weeks);
    }

    [Theory]
    [InlineData("sprint-intervals", "strength-circuit", "Mon", 16)]
    [InlineData("sprint-intervals", "strength-circuit", "Tue", 4)]
    [InlineData("sprint-intervals", "easy-run", "Mon", 4)]
    [InlineData("easy-run", "strength-circuit", "Mon", 4)]
    public void Mondays_work_pays_for_Sundays_hard_session(string sunday, string next, string day, long cost) =>
        Assert.Equal(cost, Cost(AWeek.Wanting(sunday).OpenOn("Sun"), AWeek.Wanting(next).OpenOn(day)));

    [Theory]
    [InlineData("U18", "Mon", 44)]
    [InlineData("U18", "Tue", 4)]
    [InlineData("Senior", "Mon", 4)]
    public void Strength_of_minors_keeps_off_neighbouring_days(string ages, string day, long cost)
    {
        var squad = A.Squad(AgeGroup.Find(ages), practices: []);

        Assert.Equal(cost, Cost(AWeek.Wanting("strength-circuit").OpenOn("Sun") with { Squad = squad }, AWeek.Wanting("strength-circuit").OpenOn(day) with { Squad = squad }));
    }

    // A minute short, one of the two loses its published time.
    [Theory]
    [InlineData("sprint-intervals", "hill-sprints", "Tue 20:00", 48, 4)]
    [InlineData("sprint-intervals", "hill-sprints", "Tue 19:59", 48, 504)]
    [InlineData("sprint-intervals", "hill-sprints", "Wed 20:00", 72, 4)]
    [InlineData("sprint-intervals", "hill-sprints", "Wed 19:59", 72, 504)]
    [InlineData("heavy-lift", "heavy-lift", "Tue 20:00", 0, 4)]
    [InlineData("heavy-lift", "heavy-lift", "Tue 19:59", 0, 504)]
    [InlineData("low-jumps", "jumps", "Tue 20:00", 0, 4)]
    [InlineData("low-jumps", "jumps", "Tue 19:59", 0, 504)]
    [InlineData("high-jumps", "low-jumps", "Wed 20:00", 0, 4)]
    [InlineData("high-jumps", "low-jumps", "Wed 19:59", 0, 504)]
    [InlineData("low-jumps", "high-jumps", "Wed 19:59", 0, 504)]
    public void Hard_work_heavy_lifts_and_jumps_keep_their_hours_across_the_week_end(string sunday, string next, string then, int hours, long cost)
    {
        var (day, start) = (then.Split(' ')[0], then.Split(' ')[1]);
        var first = AWeek.Wanting(sunday).OpenOn("Sun").From("06:00", "23:00").Published(0, "Sun", "20:00");
        var second = AWeek.Wanting(next).OpenOn(day).From("06:00", "23:00").Published(0, day, start);

        Assert.Equal(cost, Cost(first with { HoursBetweenHard = hours }, second with { HoursBetweenHard = hours }));
    }

    [Theory]
    [InlineData(72, 48)]
    [InlineData(48, 72)]
    public void The_larger_of_two_weeks_hours_between_hard_work_holds(int one, int other)
    {
        var first = AWeek.Wanting("sprint-intervals").OpenOn("Sun").From("18:00", "18:45");
        var second = AWeek.Wanting("hill-sprints").OpenOn("Tue").From("18:00", "18:45");

        Assert.Equal(1_050_000, Cost(first with { HoursBetweenHard = one }, second with { HoursBetweenHard = other }));
        Assert.Equal(4, Cost(first, second));
    }

    [Theory]
    [InlineData("Sun", "Mon", 1)]
    [InlineData("Sun", "Tue", 0)]
    public void What_a_coach_fixed_on_either_side_binds_the_other_week(string sunday, string day, int dropped)
    {
        var (free, pin) = (AWeek.Wanting("sprint-intervals").OpenOn(sunday), AWeek.Wanting("hill-sprints").Pinning(0, day, "18:00"));
        Assert.Equal(dropped, Dropped(free, pin));

        (pin, free) = (AWeek.Wanting("sprint-intervals").Pinning(0, sunday, "10:00"), AWeek.Wanting("hill-sprints").OpenOn(day));
        Assert.Equal(dropped, Dropped(pin, free));
    }

    [Fact]
    public void Two_fixed_sessions_are_not_held_against_each_other() =>
        Assert.Equal(0, Dropped(AWeek.Wanting("sprint-intervals").Pinning(0, "Sun", "10:00"), AWeek.Wanting("hill-sprints").Pinning(0, "Mon", "10:00")));

    private static long Cost(WeekToPlace first, WeekToPlace second) => CyclePlacement.Place([first, second.Next()]).Cost;

    private static int Dropped(WeekToPlace first, WeekToPlace second) => CyclePlacement.Place([first, second.Next()]).Weeks.Sum(w => w.Dropped.Count);
}
