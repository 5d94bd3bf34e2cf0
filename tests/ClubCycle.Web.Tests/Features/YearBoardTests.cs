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

        Assert.Equal(squads.Select(s => $"/squads/{s.Id}/year"), board.FindAll("[role=rowheader] a").Select(a => a.GetAttribute("href")));
        Assert.Equal("3", board.Find("[role=grid]").GetAttribute("aria-rowcount"));
    }

    [Fact]
    public async Task A_week_is_a_column_headed_by_its_iso_week()
    {
        await using var context = new BunitContext();

        var board = Render(context, [Squad("Blue", A.Year())], weeks: 4);

        Assert.Equal(["Squad", "Findings", "41", "42", "43", "44"], board.FindAll("[role=columnheader]").Select(c => c.TextContent.Trim()));
        Assert.Equal("6", board.Find("[role=grid]").GetAttribute("aria-colcount"));
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

        Assert.Equal(plan.Phases.Select(p => $"phase-{PhaseText.Key(p.Kind)}"), board.FindAll(".phase").Select(p => p.ClassList[1]));
    }

    [Fact]
    public async Task A_phase_on_the_board_tells_its_dates_and_length()
    {
        await using var context = new BunitContext();
        var plan = A.Plan([A.Week(Monday, PhaseKind.Mixed, 1), A.Week(Monday.PlusWeeks(1), PhaseKind.Mixed, 2), A.Week(Monday.PlusWeeks(2), PhaseKind.Restore, 1)]);

        var board = Render(context, [Squad("Blue", plan)], weeks: 3);

        Assert.Equal(
            [$"Mixed, {Day(Monday)} to {Day(Monday.PlusDays(13))}, 2 weeks", $"Restore, {Day(Monday.PlusDays(14))} to {Day(Monday.PlusDays(20))}, 1 week"],
            board.FindAll(".phase").Select(p => p.GetAttribute("aria-label")));
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

        var board = Render(context, [Squad("Blue", plan)], weeks: 3);

        Assert.Equal("M0.5 11h0M1.5 11h0", board.Find("path.board-match:not(.board-match-rim)").GetAttribute("d"));
        Assert.Equal("2", board.Find(".board-count").TextContent);
    }

    [Fact]
    public async Task A_week_is_ticked_by_its_gravest_finding_and_notes_leave_no_tick()
    {
        await using var context = new BunitContext();
        var plan = A.Plan(
            [A.Week(Monday), A.Week(Monday.PlusWeeks(1), weekInPhase: 2), A.Week(Monday.PlusWeeks(2), weekInPhase: 3)],
            findings: [A.Finding(Strength.Should, Monday), A.Finding(Strength.Must, Monday), A.Finding(Strength.Should, Monday.PlusWeeks(1)), A.Finding(Strength.Note, Monday.PlusWeeks(2))]);

        var board = Render(context, [Squad("Blue", plan)], weeks: 3);

        Assert.Equal(["M1.5 20v6", "M0.5 20v6"], board.FindAll(".board-tick").Select(t => t.GetAttribute("d")));
    }

    [Fact]
    public async Task The_fullest_board_has_few_elements()
    {
        await using var context = new BunitContext();
        var plan = A.Year();

        var board = Render(context, [.. Enumerable.Range(1, 24).Select(i => Squad($"Squad {i}", plan))], plan.Weeks[0].First, BoardView.MostWeeks);

        Assert.InRange(board.FindAll("*").Count, 24, 1_000);
    }

    [Fact]
    public async Task Findings_are_counted_in_the_head_of_the_row()
    {
        await using var context = new BunitContext();
        var squad = Squad("Blue", A.Plan([A.Week(Monday)], findings: [A.Finding(Strength.Must), A.Finding(Strength.Should), A.Finding(Strength.Should), A.Finding(Strength.Note)]));

        var flags = Render(context, [squad]).FindAll(".board-marks .flag");

        Assert.Equal(["1 must", "2 should"], flags.Select(f => f.TextContent));
        Assert.All(flags, flag => Assert.Equal($"/check?squad={squad.Id}", flag.GetAttribute("href")));
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
    [InlineData("", "Blue", 1)]
    [InlineData("ArrowRight", "Blue", 2)]
    [InlineData("ArrowLeft", "Blue", 0)]
    [InlineData("ArrowUp", "Blue", 1)]
    [InlineData("ArrowRight ArrowRight ArrowRight", "Blue", 3)]
    [InlineData("ArrowLeft ArrowLeft", "Blue", BoardPlace.Findings)]
    [InlineData("ArrowLeft ArrowLeft ArrowLeft ArrowLeft", "Blue", BoardPlace.Name)]
    [InlineData("Home", "Blue", BoardPlace.Name)]
    [InlineData("End", "Blue", 3)]
    [InlineData("ArrowDown", "Red", 1)]
    [InlineData("ArrowDown ArrowDown ArrowUp", "Red", 1)]
    [InlineData("PageDown", "Green", 1)]
    [InlineData("PageDown PageUp", "Blue", 1)]
    [InlineData("Control+End", "Green", 3)]
    [InlineData("Control+End Control+Home", "Blue", BoardPlace.Name)]
    [InlineData("a", "Blue", 1)]
    public async Task Keys_walk_from_todays_week_and_stop_at_the_edges(string keys, string squad, int column)
    {
        await using var context = new BunitContext();
        var squads = new[] { Squad("Blue", A.Year()), Squad("Red", A.Year()), Squad("Green", A.Year()) };
        var board = Render(context, squads, weeks: 4, today: Monday.PlusWeeks(1));

        await PressAsync(board, keys);

        var active = board.Find("#" + board.Find("[role=grid]").GetAttribute("aria-activedescendant"));
        Assert.Equal(squad, active.Closest("[role=row]")!.QuerySelector("[role=rowheader]")!.TextContent.Trim());
        Assert.Equal((column + 3).ToString(CultureInfo.InvariantCulture), active.GetAttribute("aria-colindex"));
    }

    [Fact]
    public async Task The_grid_is_one_tab_stop()
    {
        await using var context = new BunitContext();
        var board = Render(context, [Squad("Blue", A.Plan([A.Week(Monday)], findings: [A.Finding(Strength.Must), A.Finding(Strength.Should)]))]);

        await PressAsync(board, "");

        Assert.Equal("0", board.Find("[role=grid]").GetAttribute("tabindex"));
        Assert.All(board.FindAll("a"), link => Assert.Equal("-1", link.GetAttribute("tabindex")));
    }

    [Fact]
    public async Task Nothing_is_pointed_at_before_keys_or_the_pointer_come()
    {
        await using var context = new BunitContext();

        var board = Render(context, [Squad("Blue", A.Year())]);

        Assert.Null(board.Find("[role=grid]").GetAttribute("aria-activedescendant"));
        Assert.Empty(board.FindAll(".board-card"));
    }

    [Fact]
    public async Task A_week_is_told_with_phase_matches_load_and_its_findings()
    {
        await using var context = new BunitContext();
        var plan = A.Plan(
            [A.Week(Monday, PhaseKind.PreSeason, 3, load: 1250)],
            [A.Session(Monday.PlusDays(5), SessionKind.Match)],
            [A.Finding(Strength.Note, Monday), A.Finding(Strength.Should, Monday), A.Finding(Strength.Must, Monday.PlusWeeks(1))]);
        var board = Render(context, [Squad("Blue", plan)]);

        await PressAsync(board, "");

        Assert.Equal(
            [$"Blue: week 41, from {Day(Monday)}", "Pre-season, week 3", "one match, planned load 1250 AU", "should: Too much."],
            board.FindAll(".board-card > :not(a)").Select(line => line.TextContent));
    }

    [Fact]
    public async Task A_week_outside_the_squads_year_says_so_and_opens_nothing()
    {
        await using var context = new BunitContext();
        List<string> opened = [];
        var board = Render(context, [Squad("Blue", A.Plan([A.Week(Monday)]))], weeks: 2, opened: opened);

        await PressAsync(board, "End Enter");

        Assert.Equal("Outside this squad's year", board.FindAll(".board-card span")[^1].TextContent);
        Assert.Empty(opened);
    }

    [Theory]
    [InlineData("ArrowDown End Enter", "week/2026-10-26")]
    [InlineData("ArrowDown Home Enter", "year")]
    public async Task Enter_opens_the_place_the_keys_have_reached(string keys, string page)
    {
        await using var context = new BunitContext();
        List<string> opened = [];
        var red = Squad("Red", A.Year());
        var board = Render(context, [Squad("Blue", A.Year()), red], weeks: 4, opened: opened);

        await PressAsync(board, keys);

        Assert.Equal([$"/squads/{red.Id}/{page}"], opened);
    }

    [Fact]
    public async Task Enter_on_the_findings_opens_the_plan_check()
    {
        await using var context = new BunitContext();
        List<string> opened = [];
        var blue = Squad("Blue", A.Year());

        await PressAsync(Render(context, [blue], opened: opened), "Home ArrowRight Enter");

        Assert.Equal([$"/check?squad={blue.Id}"], opened);
    }

    [Theory]
    [InlineData(false, 0)]
    [InlineData(true, 1)]
    public async Task The_pointer_shows_a_week_and_a_press_of_the_mouse_opens_it(bool press, int opens)
    {
        await using var context = new BunitContext();
        List<string> opened = [];
        var board = Render(context, [Squad("Blue", A.Year()), Squad("Red", A.Year())], weeks: 4, opened: opened);

        await board.Find("[role=grid]").TriggerEventAsync("onboardpoint", new BoardPointEventArgs { Row = 1, Column = 2, Open = press });

        Assert.StartsWith($"Red: week 43, from {Day(Monday.PlusWeeks(2))}", board.Find(".board-card strong").TextContent, StringComparison.Ordinal);
        Assert.Equal(opens, opened.Count);
    }

    [Fact]
    public async Task Enter_opens_nothing_once_the_row_is_filtered_away()
    {
        await using var context = new BunitContext();
        List<string> opened = [];
        var board = Render(context, [Squad("Blue", A.Year()), Squad("Red", A.Year())], opened: opened);
        await PressAsync(board, "ArrowDown");

        board.Render(p => p.Add(c => c.View, BoardView.From([Squad("Blue", A.Year())], Monday, 4, Monday)));
        await board.Find("[role=grid]").KeyDownAsync(new KeyboardEventArgs { Key = "Enter" });

        Assert.Empty(opened);
        Assert.Null(board.Find("[role=grid]").GetAttribute("aria-activedescendant"));
    }

    [Fact]
    public async Task On_an_empty_board_keys_lead_nowhere()
    {
        await using var context = new BunitContext();
        var board = Render(context, []);

        await PressAsync(board, "ArrowDown End Enter");

        Assert.Null(board.Find("[role=grid]").GetAttribute("aria-activedescendant"));
    }

    private static IRenderedComponent<YearBoard> Render(
        BunitContext context, IReadOnlyList<BoardSquad> squads, LocalDate? first = null, int weeks = 4, LocalDate? today = null, List<string>? opened = null) =>
        context.Render<YearBoard>(p => p
            .Add(c => c.View, BoardView.From(squads, first ?? Monday, weeks, today ?? Monday))
            .Add(c => c.OnOpen, href => opened?.Add(href)));

    /// <param name="keys">After the focus has come; <c>Control+End</c> with the key held.</param>
    private static async Task PressAsync(IRenderedComponent<YearBoard> board, string keys)
    {
        await board.Find("[role=grid]").FocusAsync(new FocusEventArgs());
        foreach (var key in keys.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            await board.Find("[role=grid]").KeyDownAsync(new KeyboardEventArgs { Key = key.Split('+')[^1], CtrlKey = key.Contains('+', StringComparison.Ordinal) });
        }
    }

    private static BoardSquad Squad(string name, SquadPlan? plan) => new(NamedId.From("squad", name), name, "Senior", plan, null, 1, false);

    private static string Day(LocalDate date) => date.ToString("d MMM yyyy", CultureInfo.CurrentCulture);
}
