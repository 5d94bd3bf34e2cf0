using ClubCycle.Planning.Seasons;

namespace ClubCycle.Planning.Tests.Seasons;

public sealed class ClosedDaysTests
{
    [Theory]
    [InlineData("1899-12-31", "1900-01-02", "closed.date-out-of-range")]
    [InlineData("2200-12-30", "2201-01-01", "closed.date-out-of-range")]
    [InlineData("2026-05-02", "2026-05-01", "closed.reversed")]
    [InlineData("2026-05-01", "2027-05-01", "closed.too-long")]
    public void Dates_that_cannot_be_are_problems(string first, string last, string code) => Assert.Equal(code, Assert.Single(Days(first, last).Problems()).Code);

    [Theory]
    [InlineData("1900-01-01", "1900-01-01")]
    [InlineData("2200-12-31", "2200-12-31")]
    [InlineData("2026-05-01", "2027-04-30")]
    public void Dates_at_the_edge_are_taken(string first, string last) => Assert.Empty(Days(first, last).Problems());

    [Theory]
    [InlineData("a\0b", "closed.why-control-character")]
    [InlineData("a\nb", "closed.why-control-character")]
    public void Control_characters_in_the_reason_are_problems(string why, string code) => Assert.Equal(code, Assert.Single((Days("2026-05-01", "2026-05-01") with { Why = why }).Problems()).Code);

    [Theory]
    [InlineData(100, 0)]
    [InlineData(101, 1)]
    public void The_reason_has_a_hundred_characters_without_the_blanks_around_it(int length, int problems) =>
        Assert.Equal(problems, (Days("2026-05-01", "2026-05-01") with { Why = $"  {new string('x', length)} " }).Problems().Count);

    [Fact]
    public void What_a_club_can_take_the_planner_takes() =>
        Assert.True(AnnualPlanner.Plan(A.Request(closed: [Days("2026-05-01", "2026-05-01") with { Why = new string('x', ClosedDays.LongestWhy) }])).TryGet(out _, out _));

    [Theory]
    [InlineData("2026-05-02", "2026-05-08", true)]
    [InlineData("2026-05-01", "2026-05-10", true)]
    [InlineData("2026-05-01", "2026-05-11", false)]
    [InlineData("2026-04-30", "2026-05-10", false)]
    [InlineData("2026-05-12", "2026-05-12", false)]
    public void Days_are_within_others_when_each_of_them_is_closed_already(string first, string last, bool within) =>
        Assert.Equal(within, Days(first, last).AreWithin([Days("2026-05-05", "2026-05-10"), Days("2026-05-01", "2026-05-06"), Days("2026-05-03", "2026-05-03")]));

    private static ClosedDays Days(string first, string last) => new(A.Date(first), A.Date(last), "Holidays");
}
