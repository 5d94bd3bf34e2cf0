using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Seasons;

namespace ClubCycle.Planning.Tests.Rules;

public class CheckedPlanTests
{
    [Theory]
    [InlineData(3, "core-and-easy-run.1 core-and-circuit.1")]
    [InlineData(4, "core-in-turn.1")]
    public void The_number_of_practices_and_matches_decides_what_a_week_wants(int contacts, string slots) =>
        Assert.Equal(slots.Split(' '), Checked().WantedSlots(PhaseKind.InSeason, contacts).Select(s => s.Name));

    [Theory]
    [InlineData("2026-07-06", "2026-07-06", 1)]
    [InlineData("2026-07-12", "2026-07-13", 1)]
    [InlineData("2026-07-01", "2026-07-31", 7)]
    [InlineData("2026-07-13", "2026-07-31", 0)]
    public void Closed_days_are_those_inside_the_week(string first, string last, int days) => Assert.Equal(days, ClosedIn("2026-07-06", new ClosedDays(A.Date(first), A.Date(last), "away")));

    [Fact]
    public void A_club_that_never_closes_has_no_closed_day() => Assert.Equal(0, ClosedIn("2026-07-06"));

    private static int ClosedIn(string week, params ClosedDays[] closed)
    {
        var plan = Checked(closed);
        return plan.ClosedDaysIn(plan.Weeks.Single(w => w.Week.First == A.Date(week)));
    }

    private static CheckedPlan Checked(params ClosedDays[] closed)
    {
        var request = A.Request(closed: closed);
        return new(request, A.Plan(request));
    }
}
