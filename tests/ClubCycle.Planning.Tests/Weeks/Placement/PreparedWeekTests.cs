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
