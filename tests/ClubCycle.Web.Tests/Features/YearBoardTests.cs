using System.Globalization;
using Bunit;
using ClubCycle.Planning;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Rules;
using ClubCycle.Web.Features.Board;
using Microsoft.AspNetCore.Components.Web;
using NodaTime;

namespace ClubCycle.Web.Tests.Features;

public sealed class YearBoardTests
{
    private static readonly LocalDate Monday = new(2026, 10, 5);

    [Fact]
    public async Task A_squad_is_a_row_whose_head_leads_to_its_year()
    {
        await using var context = new BunitContext();
        var squads = new[] { Squad("Blue", A.Year()), Squad("Red", A.Year()) };

        var board = Render(context, squads);

        Assert.Equal(squads.Select(s => $"/squads/{s.Id}/year"), board.FindAll("[role=rowheader] a:not(.flag)").Select(a => a.GetAttribute("href")));
        Assert.Equal("3", board.Find("[role=grid]").GetAttribute("aria-rowcount"));
    }

    [Fact]
    public async Task A_week_is_a_column_headed_by_its_iso_week()
    {
        await using var context = new BunitContext();

        var board = Render(context, [Squad("Blue", A.Year())], weeks: 4);

        Assert.Equal(["Squad", "41", "42", "43", "44"], board.FindAll("[role=columnheader]").Select(c => c.TextContent.Trim()));
        Assert.Equal("5", board.Find("[role=grid]").GetAttribute("aria-colcount"));
    }

    [Theory]
    [InlineData(-1, null)]
    [InlineData(0, "41")]
    [InlineData(13, "42")]
    [InlineData(28, null)]
    public async Task Todays_week_is_marked_when_it_is_on_the_board(int daysFromFirst, string? week)
    {
        await using var context = new BunitContext();

        var board = Render(context, [Squad("Blue", A.Year())], weeks: 4, today: Monday.PlusDays(daysFromFirst));

        Assert.Equal(week, board.FindAll(".board-week.is-today").SingleOrDefault()?.TextContent.Trim());
        Assert.Equal(week is null ? 0 : 1, board.FindAll(".board-today").Count);
    }

    [Fact]
    public async Task The_phases_of_a_whole_year_follow_each_other()
    {
        await using var context = new BunitContext();
        var plan = A.Year();

        var board = Render(context, [Squad("Blue", plan)], plan.Weeks[0].First, plan.Weeks.Count);

        Assert.Equal(plan.Phases.Select(p => PhaseText.Name(p.Kind)), board.FindAll(".phase-name").Select(p => p.TextContent));
    }

    [Fact]
    public async Task A_phase_on_the_board_tells_its_dates_and_length()
    {
        await using var context = new BunitContext();
        var plan = A.Plan([A.Week(Monday, PhaseKind.Mixed, 1), A.Week(Monday.PlusWeeks(1), PhaseKind.Mixed, 2), A.Week(Monday.PlusWeeks(2), PhaseKind.Restore, 1)]);

        var board = Render(context, [Squad("Blue", plan)], weeks: 3);

        Assert.Equal(
            [$"Mixed, {Day(Monday)} to {Day(Monday.PlusDays(13))}, 2 weeks", $"Restore, {Day(Monday.PlusDays(14))} to {Day(Monday.PlusDays(20))}, 1 week"],
            board.FindAll(".phase").Select(p => p.GetAttribute("title")));
    }

    [Fact]
    public async Task The_same_phase_begun_again_is_a_band_of_its_own()
    {
        await using var context = new BunitContext();
        var plan = A.Plan([A.Week(Monday, PhaseKind.Mixed, 1), A.Week(Monday.PlusWeeks(1), PhaseKind.Mixed, 1)]);

        Assert.Equal(2, Render(context, [Squad("Blue", plan)], weeks: 2).FindAll(".phase").Count);
    }

    [Fact]
    public async Task A_week_with_matches_has_a_disc_that_counts_more_than_one()
    {
        await using var context = new BunitContext();
        var second = Monday.PlusWeeks(1);
        var plan = A.Plan(
            [A.Week(Monday), A.Week(second, weekInPhase: 2), A.Week(Monday.PlusWeeks(2), weekInPhase: 3)],
            [A.Session(Monday.PlusDays(5), SessionKind.Match), A.Session(second.PlusDays(5), SessionKind.Match), A.Session(second.PlusDays(6), SessionKind.Match)]);

        Assert.Equal(["", "2"], Render(context, [Squad("Blue", plan)], weeks: 3).FindAll(".board-match").Select(m => m.TextContent.Trim()));
    }

    [Fact]
    public async Task Findings_are_counted_in_the_head_of_the_row()
    {
        await using var context = new BunitContext();
        var squad = Squad("Blue", A.Plan([A.Week(Monday)], findings: [A.Finding(Strength.Must), A.Finding(Strength.Should), A.Finding(Strength.Should), A.Finding(Strength.Note)]));

        var flags = Render(context, [squad]).FindAll("[role=rowheader] .flag");

        Assert.Equal(["1 must", "2 should"], flags.Select(f => f.TextContent));
        Assert.Equal($"/check?squad={squad.Id}", flags[1].GetAttribute("href"));
    }

    [Fact]
    public async Task A_squad_without_a_plan_says_why_and_keeps_its_row()
    {
        await using var context = new BunitContext();

        var board = Render(context, [Squad("Blue", null) with { Problem = "There are no season dates yet." }]);

        Assert.Equal("There are no season dates yet.", board.FindAll(".flag-must").Single(f => f.TextContent == "no plan").GetAttribute("title"));
        Assert.Empty(board.FindAll(".phase"));
    }

    [Theory]
    [InlineData(true, 1)]
    [InlineData(false, 0)]
    public async Task A_squad_with_unpublished_changes_is_marked_as_a_draft(bool changed, int marks)
    {
        await using var context = new BunitContext();

        Assert.Equal(marks, Render(context, [Squad("Blue", A.Year()) with { HasUnpublishedChanges = changed }]).FindAll(".board-draft").Count);
    }

    [Theory]
    [InlineData("ArrowRight", "Blue", 1)]
    [InlineData("Home", "Blue", 0)]
    [InlineData("End", "Blue", 3)]
    [InlineData("ArrowLeft", "Blue", 0)]
    [InlineData("ArrowUp", "Blue", 1)]
    [InlineData("ArrowRight ArrowRight", "Blue", 2)]
    [InlineData("ArrowRight ArrowRight ArrowRight ArrowRight ArrowRight", "Blue", 3)]
    [InlineData("Home ArrowLeft", "Blue", 0)]
    [InlineData("ArrowDown", "Blue", 1)]
    [InlineData("ArrowDown ArrowDown", "Red", 1)]
    [InlineData("ArrowDown ArrowDown ArrowDown", "Red", 1)]
    [InlineData("ArrowDown ArrowDown ArrowUp", "Blue", 1)]
    public async Task Keys_walk_from_todays_week_and_stop_at_the_edges(string keys, string squad, int column)
    {
        await using var context = new BunitContext();
        var board = Render(context, [Squad("Blue", A.Year()), Squad("Red", A.Year())], weeks: 4, today: Monday.PlusWeeks(1));

        await PressAsync(board, keys);

        Assert.StartsWith($"{squad}: week from {Day(Monday.PlusWeeks(column))}", board.Find("[role=status]").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Only_the_cell_the_grid_points_at_is_read_out()
    {
        await using var context = new BunitContext();
        var board = Render(context, [Squad("Blue", A.Year()), Squad("Red", A.Year())]);
        Assert.Null(board.Find("[role=grid]").GetAttribute("aria-activedescendant"));

        await PressAsync(board, "ArrowDown ArrowDown");

        var active = board.Find("#" + board.Find("[role=grid]").GetAttribute("aria-activedescendant"));
        Assert.Equal("Red: " + active.GetAttribute("aria-label"), board.Find("[role=status]").TextContent);
    }

    [Fact]
    public async Task A_week_is_told_with_phase_matches_load_and_its_gravest_finding()
    {
        await using var context = new BunitContext();
        var plan = A.Plan(
            [A.Week(Monday, PhaseKind.PreSeason, 3, load: 1250)],
            [A.Session(Monday.PlusDays(5), SessionKind.Match)],
            [A.Finding(Strength.Note, Monday), A.Finding(Strength.Should, Monday), A.Finding(Strength.Must, Monday.PlusWeeks(1))]);
        var board = Render(context, [Squad("Blue", plan)]);

        await PressAsync(board, "Home");

        Assert.Equal($"Blue: week from {Day(Monday)}, Pre-season week 3, one match, planned load 1250 AU, a finding (should)", board.Find("[role=status]").TextContent);
    }

    [Fact]
    public async Task A_week_outside_the_squads_year_says_so()
    {
        await using var context = new BunitContext();
        var board = Render(context, [Squad("Blue", A.Plan([A.Week(Monday)]))], weeks: 2);

        await PressAsync(board, "End");

        Assert.EndsWith("outside this squad's year", board.Find("[role=status]").TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Enter", null)]
    [InlineData("ArrowDown ArrowDown End Enter", 3)]
    public async Task Enter_opens_the_week_the_keys_have_reached(string keys, int? column)
    {
        await using var context = new BunitContext();
        List<(Guid, LocalDate)> opened = [];
        var red = Squad("Red", A.Year());
        var board = Render(context, [Squad("Blue", A.Year()), red], weeks: 4, opened: opened);

        await PressAsync(board, keys);

        Assert.Equal(column is { } at ? [(red.Id, Monday.PlusWeeks(at))] : [], opened);
    }

    [Fact]
    public async Task Enter_opens_nothing_once_the_row_is_filtered_away()
    {
        await using var context = new BunitContext();
        List<(Guid, LocalDate)> opened = [];
        var board = Render(context, [Squad("Blue", A.Year()), Squad("Red", A.Year())], opened: opened);
        await PressAsync(board, "ArrowDown ArrowDown");

        board.Render(p => p.Add(c => c.View, BoardView.From([Squad("Blue", A.Year())], Monday, 4, Monday)));
        await PressAsync(board, "Enter");

        Assert.Empty(opened);
        Assert.Null(board.Find("[role=grid]").GetAttribute("aria-activedescendant"));
    }

    [Fact]
    public async Task On_an_empty_board_keys_lead_nowhere()
    {
        await using var context = new BunitContext();
        var board = Render(context, []);

        await PressAsync(board, "ArrowDown End Enter");

        Assert.Equal("", board.Find("[role=status]").TextContent);
    }

    private static IRenderedComponent<YearBoard> Render(
        BunitContext context, IReadOnlyList<BoardSquad> squads, LocalDate? first = null, int weeks = 4, LocalDate? today = null, List<(Guid, LocalDate)>? opened = null) =>
        context.Render<YearBoard>(p => p
            .Add(c => c.View, BoardView.From(squads, first ?? Monday, weeks, today ?? Monday))
            .Add(c => c.OnOpen, week => opened?.Add(week)));

    private static async Task PressAsync(IRenderedComponent<YearBoard> board, string keys)
    {
        foreach (var key in keys.Split(' '))
        {
            await board.Find("[role=grid]").KeyDownAsync(new KeyboardEventArgs { Key = key });
        }
    }

    private static BoardSquad Squad(string name, SquadPlan? plan) => new(NamedId.From("squad", name), name, "Senior", plan, null, 1, false);

    private static string Day(LocalDate date) => date.ToString("d MMM yyyy", CultureInfo.CurrentCulture);
}
