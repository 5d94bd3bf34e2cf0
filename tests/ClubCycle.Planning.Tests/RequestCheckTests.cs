using ClubCycle.Planning.Seasons;
using NodaTime;

namespace ClubCycle.Planning.Tests;

/// <summary>What the planner itself refuses, for requests that never were a file.</summary>
public class RequestCheckTests
{
    private static readonly LocalDate Day = A.Date("2026-10-03");
    private static readonly Guid Key = NamedId.From("fixture", "1");

    [Fact]
    public void A_match_lies_in_the_planning_year()
    {
        Assert.Empty(ProblemsOf(A.Request(fixtures: [new(A.Date("2026-03-01")), new(A.Date("2027-02-28"))])));
        Refused(A.Request(fixtures: [new(Day), new(A.Date("2026-02-28"))]), "fixture.outside-cycle", "fixtures[1].date");
        Refused(A.Request(fixtures: [new(A.Date("2027-03-01"))]), "fixture.outside-cycle", "fixtures[0].date");
    }

    [Fact]
    public void Matches_have_ids_of_their_own()
    {
        Assert.Empty(ProblemsOf(A.Request(fixtures: [new(Day), new(Day), new(Day, Key: Key)])));
        Refused(A.Request(fixtures: [new(Day, Key: Key), new(Day.PlusDays(7), Key: Key)]), "fixture.duplicate-id", "fixtures[1].id");
    }

    [Fact]
    public void Names_and_reasons_fit_one_line_of_a_calendar()
    {
        Assert.Empty(ProblemsOf(A.Request(fixtures: [new(Day, Opponent: new string('x', 100))], closed: [new(Day, Day, new string('x', 100))])));
        Refused(A.Request(fixtures: [new(Day, Opponent: new string('x', 101))]), "fixture.opponent", "fixtures[0].opponent");
        Refused(A.Request(fixtures: [new(Day, Opponent: "Reds\r\nBlues")]), "fixture.opponent", "fixtures[0].opponent");
        Refused(A.Request(closed: [new(Day, Day, "a\u0000b")]), "closed.why", "closed[0].why");
    }

    [Fact]
    public void Closed_days_end_after_they_start() => Refused(A.Request(closed: [new ClosedDays(Day, Day.PlusDays(-1), "closed")]), "closed.reversed", "closed[0].last");

    private static IReadOnlyList<Problem> ProblemsOf(PlanRequest request) => AnnualPlanner.Plan(request) is Result<SquadPlan>.Failed failed ? failed.Problems : [];

    private static void Refused(PlanRequest request, string code, string at)
    {
        var problem = Assert.Single(ProblemsOf(request));

        Assert.Equal((code, at), (problem.Code, problem.At));
    }
}
