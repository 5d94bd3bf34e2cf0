using ClubCycle.Planning.Weeks.Placement;

namespace ClubCycle.Planning.Tests.Weeks.Placement;

public class PreparedWeekTests
{
    [Theory]
    [InlineData(0, 0)]
    [InlineData(1439, 0)]
    [InlineData(1440, 1)]
    [InlineData(-1, -1)]
    [InlineData(-1440, -1)]
    [InlineData(-1441, -2)]
    public void A_day_begins_at_midnight_before_the_week_too(int minute, int day) => Assert.Equal(day, PreparedWeek.DayOf(minute));

    [Fact]
    public void A_published_start_stays_though_it_is_none_of_the_usual_ones() =>
        Assert.Equal(["easy-run.1 Wed 18:10"], AWeek.Wanting("easy-run").Published(0, "Wed", "18:10").Placed());

    [Theory]
    [InlineData("-3 18:00", 0)]
    [InlineData("-3 18:01", 1)]
    public void High_jumps_are_seventy_two_hours_apart(string before, int dropped) =>
        Assert.Equal(dropped, (AWeek.Wanting("high-jumps") with { Squad = A.Squad(practices: [], windows: [new([NodaTime.IsoDayOfWeek.Monday], A.Time("18:00"), A.Time("18:45"))]) }).Around($"high-jumps {before}").Dropped().Length);

    // 18:00 to 21:00 is open, the practice takes 19:30 to 21:00.
    [Theory]
    [InlineData("20:15", false, 0)]
    [InlineData("20:16", false, 500)]
    [InlineData("18:45", true, 0)]
    [InlineData("18:46", true, 500)]
    public void A_published_start_stays_while_it_fits_the_window_and_the_practice(string start, bool practice, long cost) =>
        Assert.Equal(cost, ((practice ? AWeek.Wanting("easy-run").With("practice Wed 19:30") : AWeek.Wanting("easy-run")) with { SessionsPerContactDay = 1 }).OpenOn("Wed").Published(0, "Wed", start).Cost());

    [Fact]
    public void A_published_start_may_follow_a_practice() =>
        Assert.Equal(0, (AWeek.Wanting("easy-run").With("practice Wed 19:30") with { SessionsPerContactDay = 1 }).OpenOn("Wed").From("18:00", "23:00").Published(0, "Wed", "21:00").Cost());

    // Jumps of 45 minutes before a practice at 19:30, two days after those of Sunday.
    [Theory]
    [InlineData("18:30", 0)]
    [InlineData("18:31", 1)]
    public void Later_starts_do_not_run_into_practice(string sunday, int dropped) =>
        Assert.Equal(dropped, (AWeek.Wanting("jumps").OpenOn("Tue").From("18:00", "23:00").With("practice Tue 19:30").Around($"jumps -1 {sunday}") with { SessionsPerContactDay = 1 }).Dropped().Length);

    [Fact]
    public void Later_starts_stay_in_the_window_of_the_usual_one() =>
        Assert.Equal(
            ["jumps.1"],
            (AWeek.Wanting("jumps").OpenOn("Tue").Around("jumps -1 18:31") with
            {
                Squad = A.Squad(practices: [], windows: [new([NodaTime.IsoDayOfWeek.Tuesday], A.Time("18:00"), A.Time("19:15")), new([NodaTime.IsoDayOfWeek.Tuesday], A.Time("19:15"), A.Time("22:00"))]),
            }).Dropped());

    [Theory]
    [InlineData("Wed", "07:00")]
    [InlineData("Tue", "18:00")]
    public void A_pin_without_a_time_that_fits_nowhere_starts_when_the_day_opens_or_in_the_evening(string day, string start) =>
        Assert.Equal(
            [$"easy-run.1 {day} {start}"],
            (AWeek.Wanting("easy-run").Pinning(0, day) with { Squad = A.Squad(practices: [], windows: [new([NodaTime.IsoDayOfWeek.Wednesday], A.Time("07:00"), A.Time("07:30"))]) }).Placed());

    [Fact]
    public void Weekends_are_weekends_whatever_day_a_week_begins_with()
    {
        var sunday = AWeek.Wanting("easy-run") with { First = AWeek.Monday.PlusDays(-1), Free = [true, false, false, false, false, false, false] };

        Assert.Equal(4, sunday.Cost());
        Assert.Equal(A.Time("10:00"), Assert.Single(CyclePlacement.Place([sunday]).Weeks[0].Placed).Start);
    }

    /// <summary>Equal weeks are prepared once: these two differ in nothing but what happens on Tuesday at 19:30.</summary>
    [Fact]
    public void A_match_instead_of_a_practice_makes_another_week()
    {
        var practice = AWeek.Wanting("easy-run").OpenOn("Tue") with { SessionsPerContactDay = 1 };
        var match = practice.With("match Tue 19:30");
        var second = match with { First = match.First.PlusWeeks(1), Contacts = [match.Contacts[0] with { Date = match.Contacts[0].Date.PlusWeeks(1) }] };

        Assert.Equal([1, 0], CyclePlacement.Place([practice.With("practice Tue 19:30"), second]).Weeks.Select(w => w.Placed.Count));
    }
}
