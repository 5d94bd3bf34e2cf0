using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Workouts;
using NodaTime;

namespace ClubCycle.Planning.Tests.Replanning;

public class PlanDiffTests
{
    [Fact]
    public void Without_a_published_plan_nothing_changes() => Assert.Equal(PlanChanges.None, PlanDiff.Between(null, [Session("a")]));

    [Fact]
    public void The_same_session_is_kept()
    {
        var changes = PlanDiff.Between([Session("a")], [Session("a")]);

        Assert.Equal((1, false), (changes.Kept, changes.Any));
    }

    [Theory]
    [InlineData("2026-03-04", "18:00", 40, "Its day no longer fits the matches, closed days or spacing of the week.")]
    [InlineData("2026-03-03", "19:00", 40, "Its time changed with the squad's times.")]
    [InlineData("2026-03-03", "18:00", 30, "It lasts 30 minutes instead of 40.")]
    public void A_session_with_another_day_time_or_length_has_moved_and_says_why(string date, string start, int minutes, string why)
    {
        var moved = Assert.Single(PlanDiff.Between([Session("a")], [Session("a") with { Date = A.Date(date), Start = A.Time(start), Minutes = minutes }]).Moved);

        Assert.Equal((why, new LocalDateTime(2026, 3, 3, 18, 0), A.Date(date).At(A.Time(start))), (moved.Why, moved.From, moved.To));
    }

    [Theory]
    [InlineData(null, "Pitch 2", "It is at Pitch 2 now.")]
    [InlineData("Pitch 1", "Pitch 2", "It is at Pitch 2 now.")]
    [InlineData("Pitch 1", null, "Its place is open.")]
    public void A_session_at_another_place_has_changed_and_says_where_it_is(string? before, string? after, string why)
    {
        var moved = Assert.Single(PlanDiff.Between([Session("a") with { Place = before }], [Session("a") with { Place = after }]).Moved);

        Assert.Equal((why, moved.From), (moved.Why, moved.To));
    }

    [Fact]
    public void The_planner_s_own_reason_comes_first() =>
        Assert.Equal("Because.", Assert.Single(PlanDiff.Between([Session("a")], [], _ => "Because.").Dropped).Why);

    [Fact]
    public void What_is_new_is_added_and_what_is_gone_is_dropped()
    {
        var changes = PlanDiff.Between([Session("a")], [Session("b")]);

        Assert.Equal((Session("b").Uid, Session("a").Uid, 0), (Assert.Single(changes.Added).Uid, Assert.Single(changes.Dropped).Uid, changes.Kept));
    }

    [Fact]
    public void Each_kind_of_change_counts_by_itself()
    {
        Assert.True(PlanDiff.Between([Session("a")], [Session("a") with { Minutes = 30 }]).Any);
        Assert.True(PlanDiff.Between([], [Session("a")]).Any);
        Assert.True(PlanDiff.Between([Session("a")], []).Any);
    }

    [Fact]
    public void One_change_of_each_kind_is_still_a_change() =>
        Assert.True(PlanDiff.Between([Session("a"), Session("b")], [Session("a") with { Minutes = 30 }, Session("c")]).Any);

    [Fact]
    public void Dropped_sessions_come_by_time_and_then_by_slot() =>
        Assert.Equal(
            ["early b", "b", "c"],
            PlanDiff.Between([Session("c"), Session("b"), Session("early b") with { Start = A.Time("09:00") }], []).Dropped.Select(d => d.Title));

    [Fact]
    public void Optional_active_recovery_is_not_news() =>
        Assert.False(PlanDiff.Between([Session("a") with { Kind = SessionKind.ActiveRecovery }], []).Any);

    private static PlannedSession Session(string name) => new(
        NamedId.From("test", name), name, new LocalDate(2026, 3, 3), new LocalTime(18, 0), 40, SessionKind.Session, "easy-run", [], Hardness.Easy, 3, name, [], [], []);
}
