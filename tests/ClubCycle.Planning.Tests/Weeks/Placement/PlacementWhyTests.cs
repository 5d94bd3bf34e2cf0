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

    private static string WhyDropped(WeekToPlace week) => Assert.Single(CyclePlacement.Place([week]).Weeks[0].Dropped).Why;

    private static string WhyPlaced(WeekToPlace week) => CyclePlacement.Place([week]).WhyOf(0).ThisPlaceFor(0);
}
