using Bunit;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Web.Features.Squads;

namespace ClubCycle.Web.Tests.Features;

public sealed class PhaseTableTests
{
    [Fact]
    public async Task Each_phase_whose_end_can_move_has_a_button_for_a_week_less_and_one_for_a_week_more()
    {
        await using var context = new BunitContext();

        var table = Render(context, Boundaries);

        Assert.Equal(2 * Boundaries.Count, table.FindAll(".phase-steps button").Count);
        Assert.Equal("− 1 week: Aerobic build shorter, Mixed longer", table.FindAll(".phase-steps button")[2].GetAttribute("aria-label"));
    }

    [Theory]
    [InlineData(2, -1)]
    [InlineData(3, 1)]
    public async Task A_button_moves_the_end_by_a_week(int button, int by)
    {
        await using var context = new BunitContext();
        List<(PhaseBoundary Boundary, int Weeks)> moved = [];

        await Render(context, Boundaries, moved: moved).FindAll(".phase-steps button")[button].ClickAsync();

        Assert.Equal([(Boundaries[1], Boundaries[1].Before.Weeks + by)], moved);
    }

    [Fact]
    public async Task At_its_bounds_a_boundary_moves_no_further()
    {
        await using var context = new BunitContext();
        var weeks = Boundaries[0].Before.Weeks;

        var buttons = Render(context, [Boundaries[0] with { Least = weeks, Most = weeks }]).FindAll(".phase-steps button");

        Assert.All(buttons, b => Assert.True(b.HasAttribute("disabled")));
    }

    [Fact]
    public async Task Where_nothing_can_be_moved_no_column_is_kept_for_it()
    {
        await using var context = new BunitContext();

        Assert.Equal(5, Render(context, []).FindAll("thead th").Count);
    }

    [Fact]
    public async Task Lengths_of_a_coach_are_named_with_their_dates_and_can_be_given_back()
    {
        await using var context = new BunitContext();
        List<int> cleared = [];

        var table = Render(context, Boundaries, [new PhaseLength(0, "long", 1, 9), new PhaseLength(0, "long", 2, 9), new PhaseLength(7, "long", 0, 3)], cleared: cleared);

        var set = table.FindAll(".phase-set");
        Assert.Equal(2, set.Count);
        Assert.Contains("Mar 2026 to", set[0].TextContent, StringComparison.Ordinal);
        Assert.Contains("no longer has", set[1].TextContent, StringComparison.Ordinal);
        await table.FindAll(".phase-set button")[1].ClickAsync();
        Assert.Equal([7], cleared);
    }

    private static IReadOnlyList<PhaseBoundary> Boundaries { get; } = PhaseBoundary.Of(PlanFile.ReadRequest(A.PlanRequest()).OrThrow(), A.Year());

    private static IRenderedComponent<PhaseTable> Render(
        BunitContext context, IReadOnlyList<PhaseBoundary> boundaries, IReadOnlyList<PhaseLength>? lengths = null, List<(PhaseBoundary Boundary, int Weeks)>? moved = null, List<int>? cleared = null) =>
        context.Render<PhaseTable>(p => p.Add(c => c.Plan, A.Year()).Add(c => c.WeekHref, _ => "/week").Add(c => c.Boundaries, boundaries).Add(c => c.Lengths, lengths ?? [])
            .Add(c => c.OnMove, (moved ?? []).Add).Add(c => c.OnClear, (cleared ?? []).Add));
}
