using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using ClubCycle.Data;
using ClubCycle.Data.Accounts;
using ClubCycle.Data.Plans;
using ClubCycle.Data.Players;
using ClubCycle.Planning;
using ClubCycle.Planning.Players;
using ClubCycle.Planning.Squads;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace ClubCycle.Web.Tests.Features;

/// <summary>Every screen, drawn by the server for an assistant of a squad that has one of everything.</summary>
public sealed class LookingOnlyTests(TestApp app) : IClassFixture<TestApp>
{
    /// <summary>Controls that choose what is shown and change nothing, by id, name, class or words.</summary>
    private static readonly string[] Looking =
    [
        "age", "phase", "with", "first", "second", "squad", "Earlier", "Later",
        "season-whose", "season-which", "next-whose",
        "try-squad", "compare", "earlier", "later", "Links of", "Notice of revision", "data-copy",
        "words", "quality", "setting", "ages", "all squads", "must only", "Without equipment", "Show the other",
    ];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task An_assistant_sees_no_control_that_changes_anything()
    {
        var club = await FilledAsync();
        var assistant = await club.SignedInAsync(await club.NewCoachAsync(ClubRole.Assistant, club.OwnSquad));

        var found = new List<string>();
        foreach (var screen in await ScreensAsync(club))
        {
            found.AddRange((await ControlsAsync(assistant, screen)).Select(control => $"{screen}: {control}"));
        }

        Assert.Empty(found);
    }

    [Fact]
    public async Task The_squads_coach_sees_such_controls_on_the_screens_that_have_them()
    {
        var club = await FilledAsync();
        var coach = await club.SignedInAsync(club.Coach);

        var without = new List<string>();
        foreach (var screen in await ScreensAsync(club))
        {
            if ((await ControlsAsync(coach, screen)).Count == 0)
            {
                without.Add(screen);
            }
        }

        // Boards, lists and the check are for looking; what a head coach has more on them, squad coaches have not.
        Assert.Equal(["/", "/check", "/exercises", "/squads"], without.Order(StringComparer.Ordinal));
    }

    /// <summary>Enabled and not for looking.</summary>
    private static async Task<List<string>> ControlsAsync(HttpClient browser, string screen)
    {
        using var page = new HtmlParser().ParseDocument(await browser.GetStringAsync(screen, Cancel));
        return [.. page.QuerySelectorAll("main button, main input:not([type=hidden]), main select, main textarea, main [draggable=true]")
            .Where(e => !e.HasAttribute("disabled") && e.Closest("fieldset[disabled]") is null).Select(Words).Where(words => !Looking.Any(l => words.Split('|').Any(w => w.StartsWith(l, StringComparison.Ordinal))))];
    }

    private static string Words(IElement e) => string.Join('|', new[] { e.Id, e.GetAttribute("name"), e.GetAttribute("aria-label"), e.HasAttribute("data-copy") ? "data-copy" : null, e.TextContent.Trim(), e.ParentElement?.TextContent.Trim(), e.LocalName }.Where(w => !string.IsNullOrEmpty(w)));

    /// <summary>Published once and changed since, with players, a test, own matches, pins and lengths.</summary>
    private async Task<TestClub> FilledAsync()
    {
        var club = await app.NewClubAsync(AgeGroup.Youth(16));
        await club.AgreeAsync();
        await club.NewLinkAsync();
        await club.PublishAsync();
        return await app.InClubAsync(club.Id, async s =>
        {
            var draft = (await s.GetRequiredService<PlanStore>().DraftAsync(club.OwnSquad, Cancel)).OrThrow();
            var boundary = Planning.Phases.PhaseBoundary.Of(draft.Request, draft.Plan)[0];
            (await s.GetRequiredService<PhaseLengthStore>().SetAsync(club.OwnSquad, boundary.Gap, Planning.Phases.PhaseBoundary.Move(draft.Request, draft.Plan, boundary.Index, boundary.Before.Weeks + 1).OrThrow(), club.Head, Cancel)).OrThrow();
            (await s.GetRequiredService<PinStore>().AddAsync(club.OwnSquad, new LocalDate(2026, 3, 4), null, "easy-run", 40, null, club.Head, Cancel)).OrThrow();
            (await s.GetRequiredService<Data.Fixtures.FixtureStore>().ImportAsync(club.OwnSquad, [new Planning.Seasons.Fixture(new LocalDate(2026, 10, 10), null, "Northgate")], club.Head, Cancel)).OrThrow();
            (await s.GetRequiredService<Data.Seasons.ClosedDayStore>().AddAsync(club.OwnSquad, new Planning.Seasons.ClosedDays(new LocalDate(2026, 10, 20), new LocalDate(2026, 10, 20), "Flooded"), club.Head, Cancel)).OrThrow();
            (await s.GetRequiredService<TestResultStore>().AddAsync(club.OwnSquad, club.Player, new FieldTestResult(TestKind.ShuttleRun, new LocalDate(2026, 2, 20), 9), club.Head, Cancel)).OrThrow();
            (await s.GetRequiredService<PlayerStore>().AddAsync(club.OwnSquad, ["Bo Lind"], club.Head, Cancel)).OrThrow();
            return club;
        });
    }

    private Task<string[]> ScreensAsync(TestClub club) => app.InClubAsync(club.Id, async s =>
    {
        await using var db = await s.GetRequiredService<IClubDbFactory>().OpenAsync(Cancel);
        var squad = $"/squads/{club.OwnSquad}";
        var waiting = await db.Players.Where(p => p.SquadId == club.OwnSquad && p.Id != club.Player).Select(p => p.Id).SingleAsync(Cancel);
        var use = await db.Squads.SingleAsync(q => q.Id == club.OwnSquad, Cancel);
        var draft = (await s.GetRequiredService<PlanStore>().DraftAsync(club.OwnSquad, Cancel)).OrThrow();
        var session = draft.Plan.Sessions.First(p => p.Kind == SessionKind.Session && p.Date > new LocalDate(2026, 3, 3));
        return new[]
        {
            "/", "/seasons", "/squads", "/templates", $"/templates/{use.TemplateId}", "/exercises", "/check",
            squad, $"{squad}/year", $"{squad}/week", $"{squad}/matches", $"{squad}/revisions", $"{squad}/session/{session.Uid}",
            $"{squad}/players", $"{squad}/players/sheet", $"{squad}/players/{club.Player}", $"{squad}/players/{waiting}",
        };
    });
}
