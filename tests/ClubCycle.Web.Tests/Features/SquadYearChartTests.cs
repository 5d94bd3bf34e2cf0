using System.Globalization;
using AngleSharp.Dom;
using Bunit;
using ClubCycle.Planning;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Workouts;
using ClubCycle.Web.Features.Board;
using ClubCycle.Web.Features.Squads;
using NodaTime;

namespace ClubCycle.Web.Tests.Features;

public sealed class SquadYearChartTests
{
    private static readonly LocalDate Monday = new(2026, 10, 5);

    [Fact]
    public async Task Its_name_tells_how_many_weeks_there_are_and_the_heaviest()
    {
        await using var context = new BunitContext();

        var chart = Render(context, A.Plan([A.Week(Monday, load: 1201), A.Week(Monday.PlusWeeks(1), weekInPhase: 2, load: 300)]));

        var svg = chart.Find("svg[role=img]");
        Assert.Equal("Planned load by week, 2 weeks; the heaviest is 1201 AU", chart.Find("#" + svg.GetAttribute("aria-labelledby")).TextContent);
    }

    [Theory]
    [InlineData(0, "0 100 200 300 400")]
    [InlineData(400, "0 100 200 300 400")]
    [InlineData(401, "0 200 400 600 800")]
    [InlineData(2000, "0 500 1000 1500 2000")]
    public async Task The_scale_has_round_steps_and_holds_the_heaviest_week(int load, string scale)
    {
        await using var context = new BunitContext();

        var chart = Render(context, A.Plan([A.Week(Monday, load: load)]));

        Assert.Equal(scale, string.Join(' ', chart.FindAll(".year-chart-scale").Select(s => s.TextContent)));
    }

    [Fact]
    public async Task A_bar_tells_its_week_phase_load_and_matches()
    {
        await using var context = new BunitContext();
        var plan = A.Plan([A.Week(Monday, PhaseKind.PreSeason, 3, load: 720)], [A.Session(Monday.PlusDays(5), SessionKind.Match)]);

        var chart = Render(context, plan);

        Assert.Equal($"2026-W41, from {Monday.ToString("d MMM", CultureInfo.CurrentCulture)}: Pre-season, week 3, 720 AU, one match", Assert.Single(Bars(chart)).QuerySelector("title")!.TextContent);
    }

    [Fact]
    public async Task The_parts_of_every_bar_of_a_year_add_up_to_the_weeks_load()
    {
        await using var context = new BunitContext();
        var plan = A.Year();

        var chart = Render(context, plan);

        var scale = chart.FindAll(".year-chart-scale").Max(s => int.Parse(s.TextContent, CultureInfo.InvariantCulture));
        var rules = chart.FindAll(".year-chart-rule").Select(r => Number(r, "y1")).ToList();
        var loads = Bars(chart).Select(bar => bar.QuerySelectorAll("rect").Sum(part => Number(part, "height")) / (rules.Max() - rules.Min()) * scale).ToList();
        Assert.Equal(plan.Weeks.Count, loads.Count);

        // Heights are written to a hundredth; six parts of a bar may be off by some AU.
        Assert.All(plan.Weeks.Zip(loads), pair => Assert.InRange(pair.Second, pair.First.PlannedLoadAu - 3, pair.First.PlannedLoadAu + 3));
    }

    [Fact]
    public async Task Load_is_stacked_by_what_it_is_made_of()
    {
        await using var context = new BunitContext();
        var plan = A.Plan(
            [A.Week(Monday, load: 900)],
            [A.Session(Monday, SessionKind.Practice), A.Session(Monday.PlusDays(1), quality: Quality.Speed), A.Session(Monday.PlusDays(2), quality: Quality.AerobicEndurance)]);

        Assert.Equal(["load-hockey", "load-aerobic-endurance", "load-speed"], Render(context, plan).FindAll(".load-part").Select(p => p.ClassList[1]));
    }

    [Theory]
    [InlineData(SessionKind.ActiveRecovery, false)]
    [InlineData(SessionKind.Session, true)]
    public async Task What_adds_no_load_is_not_drawn(SessionKind kind, bool insidePractice)
    {
        await using var context = new BunitContext();

        Assert.Empty(Render(context, A.Plan([A.Week(Monday)], [A.Session(Monday, kind, insidePractice: insidePractice)])).FindAll(".load-part"));
    }

    [Fact]
    public async Task Every_week_with_a_match_has_one_disc_and_no_other_week()
    {
        await using var context = new BunitContext();
        var plan = A.Year();

        var bars = Bars(Render(context, plan));

        Assert.Equal(
            plan.Weeks.Select(w => plan.Sessions.Any(s => s.Kind == SessionKind.Match && s.Date >= w.First && s.Date <= w.Last) ? 1 : 0),
            bars.Select(bar => bar.QuerySelectorAll(".match-disc").Length));
    }

    [Theory]
    [InlineData(-1, null)]
    [InlineData(0, 0)]
    [InlineData(13, 1)]
    [InlineData(14, null)]
    public async Task Today_is_a_line_through_its_week(int daysFromFirst, int? week)
    {
        await using var context = new BunitContext();
        var plan = A.Plan([A.Week(Monday), A.Week(Monday.PlusWeeks(1), weekInPhase: 2)], [A.Session(Monday), A.Session(Monday.PlusWeeks(1))]);

        var chart = Render(context, plan, Monday.PlusDays(daysFromFirst));

        int? crossed = chart.FindAll(".today-line").SingleOrDefault() is { } line
            ? Bars(chart).FindIndex(bar => bar.QuerySelector("rect") is { } part && Number(line, "x1") >= Number(part, "x") && Number(line, "x1") <= Number(part, "x") + Number(part, "width"))
            : null;
        Assert.Equal(week, crossed);
    }

    [Fact]
    public async Task A_phase_is_one_band()
    {
        await using var context = new BunitContext();
        var plan = A.Year();

        Assert.Equal(plan.Phases.Select(p => "phase-shape-" + PhaseText.Key(p.Kind)), Render(context, plan).FindAll(".phase-shape").Select(p => p.ClassList[1]));
    }

    [Fact]
    public async Task The_key_explains_every_fill_in_words()
    {
        await using var context = new BunitContext();

        Assert.Equal(
            Enum.GetValues<Quality>().Select(QualityText.Name).Append("practice and matches").Append("match that week").Order(StringComparer.Ordinal),
            Render(context, A.Year()).FindAll("figcaption span").Select(s => s.TextContent).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task A_plan_without_weeks_is_an_empty_scale()
    {
        await using var context = new BunitContext();

        var chart = Render(context, A.Plan([]));

        Assert.Empty(chart.FindAll(".load-part, .phase-shape, .today-line"));
        Assert.Equal(5, chart.FindAll(".year-chart-scale").Count);
    }

    [Fact]
    public async Task Each_boundary_that_can_be_moved_is_a_slider_that_says_both_lengths()
    {
        await using var context = new BunitContext();
        var (request, plan) = Planned();

        var sliders = Sliders(context, request, plan).FindAll("input[type=range]");

        Assert.Equal(PhaseBoundary.Of(request, plan).Select(b => $"{b.Least} {b.Before.Weeks} {b.Most}"), sliders.Select(s => $"{s.GetAttribute("min")} {s.GetAttribute("value")} {s.GetAttribute("max")}"));
        Assert.Equal("Aerobic build 13 weeks, Mixed 4 weeks", sliders[1].GetAttribute("aria-valuetext"));
    }

    [Fact]
    public async Task While_a_slider_is_dragged_the_bands_follow_and_nothing_is_saved()
    {
        await using var context = new BunitContext();
        var (request, plan) = Planned();
        List<(PhaseBoundary, int)> moved = [];
        var chart = Sliders(context, request, plan, moved);
        var before = Widths(chart);

        await chart.FindAll("input[type=range]")[1].InputAsync("10");

        Assert.Equal("Aerobic build 10 weeks, Mixed 7 weeks", chart.Find("[role=status]").TextContent);
        Assert.Equal("Aerobic build 10 weeks, Mixed 7 weeks", chart.FindAll("input[type=range]")[1].GetAttribute("aria-valuetext"));
        var by = Widths(chart).Zip(before, (after, was) => Math.Sign(Math.Round(after - was))).ToList();
        Assert.Equal([0, -1, 1, 0], by[..4]);
        Assert.Equal(0, by[4..].Sum());
        Assert.Empty(moved);
    }

    [Fact]
    public async Task Dropping_a_slider_tells_the_boundary_and_its_weeks_once()
    {
        await using var context = new BunitContext();
        var (request, plan) = Planned();
        List<(PhaseBoundary Boundary, int Weeks)> moved = [];
        var chart = Sliders(context, request, plan, moved);

        await chart.FindAll("input[type=range]")[1].InputAsync("10");
        await chart.FindAll("input[type=range]")[1].ChangeAsync("10");

        Assert.Equal((1, 10), moved.Select(m => (m.Boundary.Index, m.Weeks)).Single());
    }

    [Fact]
    public async Task Dropped_where_it_was_a_slider_says_nothing()
    {
        await using var context = new BunitContext();
        var (request, plan) = Planned();
        List<(PhaseBoundary, int)> moved = [];

        await Sliders(context, request, plan, moved).FindAll("input[type=range]")[1].ChangeAsync("13");

        Assert.Empty(moved);
    }

    private static (PlanRequest Request, SquadPlan Plan) Planned() => (PlanFile.ReadRequest(A.PlanRequest()).OrThrow(), A.Year());

    private static IRenderedComponent<SquadYearChart> Sliders(BunitContext context, PlanRequest request, SquadPlan plan, List<(PhaseBoundary, int)>? moved = null) =>
        context.Render<SquadYearChart>(p => p.Add(c => c.Plan, plan).Add(c => c.Today, Monday).Add(c => c.Boundaries, PhaseBoundary.Of(request, plan)).Add(c => c.OnMove, (moved ?? []).Add));

    private static List<double> Widths(IRenderedComponent<SquadYearChart> chart) => [.. chart.FindAll(".phase-shape rect").Select(r => Number(r, "width"))];

    private static IRenderedComponent<SquadYearChart> Render(BunitContext context, SquadPlan plan, LocalDate? today = null) =>
        context.Render<SquadYearChart>(p => p.Add(c => c.Plan, plan).Add(c => c.Today, today ?? Monday));

    private static List<IElement> Bars(IRenderedComponent<SquadYearChart> chart) => [.. chart.FindAll("g").Where(g => g.FirstElementChild?.LocalName == "title")];

    private static double Number(IElement element, string name) => double.Parse(element.GetAttribute(name)!, CultureInfo.InvariantCulture);
}
