using Bunit;
using ClubCycle.Data.Plans;
using ClubCycle.Planning;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Weeks;
using ClubCycle.Web.Features.Print;
using ClubCycle.Web.Features.Weeks;
using ClubCycle.Web.Tests.Features.Print;
using NodaTime;

namespace ClubCycle.Web.Tests.Features;

public sealed class SheetOfWeekTests
{
    private static readonly PlanWeek Week = A.Week(new LocalDate(2026, 10, 5));

    [Fact]
    public async Task The_sheet_beside_the_week_says_what_the_paper_says()
    {
        await using var context = new BunitContext();
        var (draft, week) = (PrintedClub.Draft(), PrintedClub.FullestWeek);
        using var pdf = new PrintedPdf(WeekSheet.Draw(PrintedClub.Head, draft, week, Xunit.TestContext.Current.CancellationToken));

        var paper = PrintedPdf.Packed(await pdf.TextAsync());
        var said = Render(context, draft, week).FindAll("h4, section section p, li").Select(e => e.TextContent).ToList();

        Assert.True(said.Count > 20, $"{said.Count} lines");
        Assert.All(said, line => Assert.Contains(PrintedPdf.Packed(line), paper, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_day_with_nothing_to_do_is_rest_and_a_closed_one_says_why()
    {
        await using var context = new BunitContext();

        var sheet = Render(context, Draft([A.Session(Week.First)], [new ClosedDays(Week.First.PlusDays(1), Week.First.PlusDays(1), "Flooded")]), Week);

        Assert.Equal(
            ["Monday 5 Oct", "Tuesday 6 Oct", "Wednesday 7 Oct · Rest", "Thursday 8 Oct · Rest", "Friday 9 Oct · Rest", "Saturday 10 Oct · Rest", "Sunday 11 Oct · Rest"],
            sheet.FindAll("section section h3").Select(d => d.TextContent));
        Assert.Contains("Closed: Flooded", sheet.FindAll("section section")[1].TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Steps_stand_by_parts_in_one_line_each_and_a_caution_once()
    {
        await using var context = new BunitContext();
        var session = A.Session(Week.First) with { Steps = [new("warm-up", "Jog", ""), new("main", "Squat", "", Sets: 3, Reps: 12), new("main", "Lunge", "")], Cautions = ["Land softly."], Note = "Bring a mat." };

        var sheet = Render(context, Draft([session, session with { Date = Week.First.PlusDays(2) }]), Week);

        Assert.Equal(["Muscular endurance: moderate. You can talk, but only in short sentences.", "Bring a mat.", "Warm-up: Jog", "Main: Squat 3 × 12 · Lunge"], sheet.FindAll("section section")[0].QuerySelectorAll("p").Select(p => p.TextContent));
        Assert.Equal("Land softly.", Assert.Single(sheet.FindAll("li")).TextContent);
    }

    [Theory]
    [InlineData(SessionKind.Practice, "18:00  Hockey practice, 45 min")]
    [InlineData(SessionKind.Match, "18:00  Match, 45 min")]
    [InlineData(SessionKind.ActiveRecovery, "Swim, 45 min")]
    public async Task What_the_coach_leads_has_its_time_alone(SessionKind kind, string line)
    {
        await using var context = new BunitContext();
        var title = kind switch { SessionKind.Practice => "Hockey practice", SessionKind.Match => "Match", _ => "Swim" };

        var day = Render(context, Draft([A.Session(Week.First, kind, title) with { Steps = [new("main", "Squat", "")] }]), Week).Find("section section");

        Assert.Equal(line, day.QuerySelector("h4")!.TextContent);
        Assert.Empty(day.QuerySelectorAll("p"));
    }

    [Theory]
    [InlineData(0, false, "Draft: nothing has been published yet.")]
    [InlineData(3, true, "Draft: it has changes since revision 3 that players do not see yet.")]
    [InlineData(3, false, "As published to players, revision 3.")]
    public async Task It_says_whether_players_see_it(int revision, bool changed, string sentence)
    {
        await using var context = new BunitContext();
        var draft = PrintedClub.Draft();
        draft = draft with { Revision = revision, Request = draft.Request with { Published = changed ? null : draft.Plan } };

        Assert.Equal(sentence, Render(context, draft, Week).Find("header + p").TextContent);
    }

    private static SquadDraft Draft(IReadOnlyList<PlannedSession> sessions, IReadOnlyList<ClosedDays>? closed = null)
    {
        var draft = PrintedClub.Draft();
        return draft with { Request = draft.Request with { Closed = closed ?? [] }, Plan = A.Plan([Week], sessions) };
    }

    private static IRenderedComponent<SheetOfWeek> Render(BunitContext context, SquadDraft draft, PlanWeek week) =>
        context.Render<SheetOfWeek>(p => p.Add(c => c.Squad, Guid.Empty).Add(c => c.Draft, draft).Add(c => c.Week, week));
}
