using Bunit;
using ClubCycle.Planning;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Workouts;
using ClubCycle.Web.Features.Weeks;
using NodaTime;

namespace ClubCycle.Web.Tests.Features;

public sealed class WeekGridTests
{
    private static readonly LocalDate Monday = new(2026, 10, 5);

    [Fact]
    public async Task A_week_is_a_named_list_of_seven_days()
    {
        await using var context = new BunitContext();

        var grid = Render(context, []);

        Assert.Equal("The week, day by day", grid.Find("ol").GetAttribute("aria-label"));
        Assert.Equal(Enumerable.Range(5, 7).Select(day => $"2026-10-{day:00}"), grid.FindAll("li").Select(d => d.GetAttribute("data-date")));
    }

    [Theory]
    [InlineData(-1, null)]
    [InlineData(0, "2026-10-05")]
    [InlineData(6, "2026-10-11")]
    [InlineData(7, null)]
    public async Task Today_is_said_when_it_is_in_the_week(int daysFromFirst, string? date)
    {
        await using var context = new BunitContext();

        var grid = Render(context, [], today: Monday.PlusDays(daysFromFirst));

        Assert.Equal(date, grid.FindAll("li").SingleOrDefault(d => d.QuerySelector(".week-today")?.TextContent == "today")?.GetAttribute("data-date"));
    }

    [Fact]
    public async Task A_session_shows_the_coachs_note()
    {
        await using var context = new BunitContext();

        var grid = Render(context, [A.Session(Monday) with { Note = "Bring a mat." }, A.Session(Monday.PlusDays(1), title: "Easy run")]);

        Assert.Equal("Bring a mat.", Assert.Single(grid.FindAll(".session-note")).TextContent);
    }

    [Fact]
    public async Task A_closed_day_says_why()
    {
        await using var context = new BunitContext();

        var grid = Render(context, [], closed: [new ClosedDays(Monday.PlusDays(1), Monday.PlusDays(2), "Flooded")]);

        Assert.Equal(["2026-10-06", "2026-10-07"], grid.FindAll("li").Where(d => d.TextContent.Contains("Closed: Flooded", StringComparison.Ordinal)).Select(d => d.GetAttribute("data-date")));
    }

    [Theory]
    [InlineData(SessionKind.Session, false)]
    [InlineData(SessionKind.Practice, false)]
    [InlineData(SessionKind.Match, false)]
    [InlineData(SessionKind.ActiveRecovery, true)]
    public async Task A_day_is_rest_unless_something_is_asked_of_the_players(SessionKind kind, bool rest)
    {
        await using var context = new BunitContext();

        var day = Render(context, [A.Session(Monday, kind)]).Find("li");

        Assert.NotNull(day.QuerySelector("article"));
        Assert.Equal(rest, day.QuerySelectorAll(".week-note").Any(n => n.TextContent == "Rest"));
    }

    [Fact]
    public async Task A_session_stands_on_its_day_with_time_and_length()
    {
        await using var context = new BunitContext();

        var grid = Render(context, [A.Session(Monday.PlusDays(2), minutes: 45), A.Session(Monday.PlusDays(9), title: "Next week")]);

        Assert.Equal("18:00 · 45 min", Assert.Single(grid.FindAll("li")[2].QuerySelectorAll(".week-when")).TextContent);
        Assert.Single(grid.FindAll("article"));
    }

    [Fact]
    public async Task A_session_inside_practice_says_so()
    {
        await using var context = new BunitContext();

        Assert.Equal("18:00 · 45 min · inside practice", Render(context, [A.Session(Monday, insidePractice: true)]).Find(".week-when").TextContent);
    }

    [Theory]
    [InlineData(SessionKind.Session, "/sheet/Strength circuit")]
    [InlineData(SessionKind.Practice, null)]
    [InlineData(SessionKind.Match, null)]
    [InlineData(SessionKind.ActiveRecovery, null)]
    public async Task Only_a_session_leads_to_a_sheet(SessionKind kind, string? href)
    {
        await using var context = new BunitContext();

        Assert.Equal(href, Render(context, [A.Session(Monday, kind)]).FindAll("h4 a").SingleOrDefault()?.GetAttribute("href"));
    }

    [Fact]
    public async Task The_qualities_are_named()
    {
        await using var context = new BunitContext();

        Assert.Equal("agility", Render(context, [A.Session(Monday, quality: Quality.Agility)]).Find(".quality").TextContent.Trim());
    }

    [Theory]
    [InlineData(true, false, "moderate · planned effort 4")]
    [InlineData(false, false, "moderate")]
    [InlineData(false, true, "moderate · pinned")]
    public async Task Hardness_is_a_word_and_the_number_is_for_those_who_may_see_it(bool showEffort, bool pinned, string told)
    {
        await using var context = new BunitContext();

        Assert.Equal(told, Render(context, [A.Session(Monday, effort: 4, pinned: pinned)], showEffort: showEffort).Find(".week-hardness").TextContent);
    }

    [Fact]
    public async Task Every_session_gets_its_own_actions()
    {
        await using var context = new BunitContext();

        var grid = Render(context, [A.Session(Monday, title: "Run"), A.Session(Monday, title: "Lift")], actions: true);

        Assert.Equal(["skip Run", "skip Lift"], grid.FindAll("article .week-actions").Select(a => a.TextContent));
    }

    [Theory]
    [InlineData(SessionKind.Session, 0, true, "true")]
    [InlineData(SessionKind.Match, 0, true, "true")]
    [InlineData(SessionKind.Practice, 0, true, "false")]
    [InlineData(SessionKind.ActiveRecovery, 0, true, "false")]
    [InlineData(SessionKind.Session, -1, true, "false")]
    [InlineData(SessionKind.Session, 0, false, "false")]
    public async Task What_a_coach_may_move_can_be_dragged(SessionKind kind, int daysFromToday, bool mayDrop, string draggable)
    {
        await using var context = new BunitContext();
        var today = Monday.PlusDays(1);

        var grid = Render(context, [A.Session(today.PlusDays(daysFromToday), kind)], today, dropped: mayDrop ? [] : null);

        Assert.Equal(draggable, grid.Find("article").GetAttribute("draggable"));
    }

    [Fact]
    public async Task A_drop_tells_the_session_and_the_day()
    {
        await using var context = new BunitContext();
        List<(PlannedSession, LocalDate)> dropped = [];
        var session = A.Session(Monday.PlusDays(1));
        var grid = Render(context, [session], dropped: dropped);

        await grid.Find("article").DragStartAsync(new());
        await grid.FindAll("li")[4].DropAsync(new());

        Assert.Equal((session, Monday.PlusDays(4)), Assert.Single(dropped));
    }

    [Fact]
    public async Task One_drag_is_one_drop()
    {
        await using var context = new BunitContext();
        List<(PlannedSession, LocalDate)> dropped = [];
        var grid = Render(context, [A.Session(Monday)], dropped: dropped);

        await grid.Find("article").DragStartAsync(new());
        await grid.FindAll("li")[4].DropAsync(new());
        await grid.FindAll("li")[5].DropAsync(new());

        Assert.Single(dropped);
    }

    [Fact]
    public async Task A_drag_that_ends_elsewhere_moves_nothing()
    {
        await using var context = new BunitContext();
        List<(PlannedSession, LocalDate)> dropped = [];
        var grid = Render(context, [A.Session(Monday)], dropped: dropped);

        await grid.Find("article").DragStartAsync(new());
        await grid.Find("article").DragEndAsync(new());
        await grid.FindAll("li")[4].DropAsync(new());

        Assert.Empty(dropped);
    }

    [Fact]
    public async Task A_past_session_dragged_by_its_link_moves_nothing()
    {
        await using var context = new BunitContext();
        List<(PlannedSession, LocalDate)> dropped = [];
        var grid = Render(context, [A.Session(Monday)], today: Monday.PlusDays(1), dropped: dropped);

        await grid.Find("article").DragStartAsync(new());
        await grid.FindAll("li")[4].DropAsync(new());

        Assert.Empty(dropped);
    }

    private static IRenderedComponent<WeekGrid> Render(
        BunitContext context, IReadOnlyList<PlannedSession> sessions, LocalDate? today = null, IReadOnlyList<ClosedDays>? closed = null,
        bool showEffort = true, bool actions = false, List<(PlannedSession, LocalDate)>? dropped = null) => context.Render<WeekGrid>(p =>
        {
            p.Add(c => c.First, Monday).Add(c => c.Today, today ?? Monday).Add(c => c.Sessions, sessions).Add(c => c.SessionHref, s => $"/sheet/{s.Title}")
                .Add(c => c.ClosedDays, closed ?? []).Add(c => c.ShowEffort, showEffort);
            if (actions)
            {
                p.Add(c => c.Actions, session => $"skip {session.Title}");
            }

            if (dropped is not null)
            {
                p.Add(c => c.OnDrop, dropped.Add);
            }
        });
}
