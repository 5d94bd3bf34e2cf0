using ClubCycle.Planning.Phases;

namespace ClubCycle.Planning.Tests.Phases;

public class PhaseBoundaryTests
{
    [Theory]
    [InlineData(0, 2)]
    [InlineData(1, -3)]
    [InlineData(2, 1)]
    public void Moving_a_boundary_changes_the_two_phases_beside_it_and_no_other(int boundary, int by)
    {
        var request = A.Request();
        var plan = A.Plan(request);

        var moved = A.Plan(request with { Lengths = PhaseBoundary.Move(request, plan, boundary, plan.Phases[boundary].Weeks + by).OrThrow() });

        int[] expected = [.. plan.Phases.Select((p, i) => p.Weeks + (i == boundary ? by : i == boundary + 1 ? -by : 0))];
        Assert.Equal(expected, moved.Phases.Select(p => p.Weeks));
    }

    [Fact]
    public void A_second_move_keeps_the_first()
    {
        var request = A.Request();
        var first = request with { Lengths = PhaseBoundary.Move(request, A.Plan(request), 0, 3).OrThrow() };
        var second = first with { Lengths = PhaseBoundary.Move(first, A.Plan(first), 2, 6).OrThrow() };

        Assert.Equal((3, 6), (A.Plan(second).Phases[0].Weeks, A.Plan(second).Phases[2].Weeks));
    }

    [Theory]
    [InlineData(-50, 1)]
    [InlineData(50, -1)]
    public void Both_phases_keep_a_week(int weeks, int left)
    {
        var request = A.Request();
        var plan = A.Plan(request);
        var both = plan.Phases[1].Weeks + plan.Phases[2].Weeks;

        var moved = A.Plan(request with { Lengths = PhaseBoundary.Move(request, plan, 1, weeks).OrThrow() });

        Assert.Equal(left > 0 ? (1, both - 1) : (both - 1, 1), (moved.Phases[1].Weeks, moved.Phases[2].Weeks));
    }

    [Fact]
    public void Season_dates_are_no_boundaries_to_move()
    {
        var request = A.Request();
        var plan = A.Plan(request);
        var last = plan.Phases.ToList().FindIndex(p => p.Kind == PhaseKind.InSeason) - 1;

        Assert.Equal("phase.season-date", Assert.IsType<Result<IReadOnlyList<PhaseLength>>.Failed>(PhaseBoundary.Move(request, plan, last, 4)).First.Code);
        Assert.Equal(Enumerable.Range(0, last), PhaseBoundary.Of(request, plan).Select(b => b.Index));
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(99)]
    public void A_boundary_that_is_not_there_is_a_problem(int index)
    {
        var request = A.Request();

        Assert.Equal("phase.no-boundary", Assert.IsType<Result<IReadOnlyList<PhaseLength>>.Failed>(PhaseBoundary.Move(request, A.Plan(request), index, 4)).First.Code);
    }

    [Fact]
    public void What_is_over_does_not_move_and_what_has_begun_bounds_the_rest()
    {
        var plan = A.Plan(A.Request());
        var request = A.Request(planFrom: plan.Phases[1].First.PlusDays(17), published: plan);
        var running = A.Plan(request);

        var boundary = PhaseBoundary.Of(request, running)[0];

        Assert.Equal((1, 3), (boundary.Index, boundary.Least));
        Assert.Equal("phase.over", Assert.IsType<Result<IReadOnlyList<PhaseLength>>.Failed>(PhaseBoundary.Move(request, running, 0, 4)).First.Code);
        Assert.Equal(3, A.Plan(request with { Lengths = PhaseBoundary.Move(request, running, 1, 1).OrThrow() }).Phases[1].Weeks);
    }

    [Fact]
    public void Gaps_are_counted_from_the_start_of_the_cycle()
    {
        var request = A.Request(season: A.SeasonE);
        var plan = A.Plan(request);

        Assert.All(PhaseBoundary.Of(request, plan), b => Assert.Equal(plan.Phases.Take(b.Index).Count(p => p.Kind == PhaseKind.InSeason), b.Gap));
    }
}
