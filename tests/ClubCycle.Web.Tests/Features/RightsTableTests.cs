using System.Reflection;
using ClubCycle.Data;
using ClubCycle.Data.Accounts;
using ClubCycle.Data.Edits;
using ClubCycle.Data.Fixtures;
using ClubCycle.Data.Plans;
using ClubCycle.Data.Players;
using ClubCycle.Planning;
using ClubCycle.Planning.Feeds;
using ClubCycle.Planning.Languages;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using ClubCycle.Web.Features.Notices;
using ClubCycle.Web.Features.Both;
using ClubCycle.Web.Features.FirstSteps;
using ClubCycle.Web.Features.Guardian;
using ClubCycle.Web.Features.Plans;
using ClubCycle.Web.Features.Players;
using ClubCycle.Web.Features.Seasons;
using ClubCycle.Web.Features.Settings;
using ClubCycle.Web.Features.Squads;
using ClubCycle.Web.Features.Templates;
using ClubCycle.Web.Features.Welfare;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace ClubCycle.Web.Tests.Features;

/// <summary>Who asks. The target is one squad of one club.</summary>
public enum Asker
{
    HeadCoach,
    SquadCoach,
    CoachOfAnotherSquad,
    Assistant,
    WelfareOfficer,
    HeadCoachOfAnotherClub,
    RemovedHeadCoach,
    Nobody,
}

/// <summary>The whole table of who may do what: every screen operation against every kind of person.</summary>
[Trait("Beside", "screens")]
public sealed class RightsTableTests(RightsWorld world) : IClassFixture<RightsWorld>
{
    private const string Done = "done";

    /// <summary>A read that shows nothing of the target.</summary>
    private const string Nothing = "nothing";

    /// <summary>Done in the asker's own club; the target is as it was.</summary>
    private const string Elsewhere = "elsewhere";

    private const string NotThere = "squad.not-found";

    /// <summary>May send, and this application has no mail server.</summary>
    private const string NoMail = "notice.cannot-be-sent";
    private const string HeadOnly = "account.head-coach-only";
    private const string LooksOnly = "account.looks-only";
    private const string WelfareOnly = "account.welfare-officer-only";
    private const string NotTold = "account.not-told";
    private const string SignedOut = "account.signed-out";

    private static readonly Instant Now = Instant.FromUtc(2026, 3, 3, 12, 0);
    private static readonly ClosedDays Away = new(new(2026, 6, 1), new(2026, 6, 2), "Away");

    private static readonly Rights OfSquad = new(Done, Done, NotThere, NotThere, SignedOut);
    private static readonly Rights ListOfSquad = new(Done, Done, Nothing, Nothing, Nothing);
    private static readonly Rights OwnSquads = new(Done, Done, Nothing, Nothing, SignedOut);
    private static readonly Rights OwnSquadsList = new(Done, Done, Nothing, Nothing, Nothing);
    private static readonly Rights Welfare = new(WelfareOnly, WelfareOnly, WelfareOnly, WelfareOnly, SignedOut) { Looking = WelfareOnly, WelfareOfficer = Done };
    private static readonly Rights Library = new(Done, Done, Done, "template.not-found", SignedOut);

    private static readonly IReadOnlyList<Operation> Operations =
    [
        Row<PlanActions>(nameof(PlanActions.BoardAsync), OwnSquads, async (a, t) => Shown(await a.BoardAsync(null, Cancel), d => d.SquadId == t.Squad)),
        Row<PlanActions>(nameof(PlanActions.DraftAsync), OfSquad, async (a, t) => Told(await a.DraftAsync(t.Squad, Cancel))),
        Row<PlanActions>(nameof(PlanActions.FixturesAsync), OfSquad, async (a, t) => Told(await a.FixturesAsync(t.Squad, Cancel))),
        Write<PlanActions>(nameof(PlanActions.PublishAsync), OfSquad, async (a, t) => Told(await a.PublishAsync(t.Squad, 0, NewId.Create(), "", Cancel))),
        Write<PlanActions>(nameof(PlanActions.PublishAllAsync), Head(NotThere), async (a, t) => Told(await a.PublishAllAsync([new SquadToPublish(t.Squad, 0, NewId.Create())], "", null, Cancel))),
        Write<PlanActions>(nameof(PlanActions.MoveAsync), OfSquad, async (a, t) => Told(await a.MoveAsync(t.Squad, t.Pin.WeekFirst, t.Pin.Slot, t.Pin.WeekFirst.PlusDays(1), null, t.Pin, Cancel))),
        Write<PlanActions>(nameof(PlanActions.SkipAsync), OfSquad, async (a, t) => Told(await a.SkipAsync(t.Squad, t.Pin.WeekFirst.PlusWeeks(1), t.Pin.Slot, null, Cancel))),
        Write<PlanActions>(nameof(PlanActions.SwapAsync), OfSquad, async (a, t) => Told(await a.SwapAsync(t.Squad, t.Pin.WeekFirst.PlusWeeks(1), t.Pin.Slot, "strength-circuit", null, Cancel))),
        Write<PlanActions>(nameof(PlanActions.ReleaseAsync), OfSquad, async (a, t) => Told(await a.ReleaseAsync(t.Squad, t.Pin.WeekFirst, t.Pin.Slot, t.Pin, Cancel))),
        Write<PlanActions>(nameof(PlanActions.AddSessionAsync), OfSquad, async (a, t) => Told(await a.AddSessionAsync(t.Squad, t.Pin.WeekFirst.PlusDays(2), null, "easy-run", 40, null, Cancel))),
        Write<PlanActions>(nameof(PlanActions.EditSessionAsync), OfSquad, async (a, t) => Told(await a.EditSessionAsync(t.Squad, t.Pin with { Skipped = false, Minutes = 30 }, t.Pin, Cancel))),
        Write<PlanActions>(nameof(PlanActions.RemoveSessionAsync), OfSquad, async (a, t) => Told(await a.RemoveSessionAsync(t.Squad, t.Added.WeekFirst, t.Added.Slot, t.Added, Cancel))),
        Write<PlanActions>(nameof(PlanActions.MoveBoundaryAsync), OfSquad, async (a, t) => Told(await a.MoveBoundaryAsync(t.Squad, t.Boundary, t.Boundary.Before.Weeks + 1, Cancel))),
        Write<PlanActions>(nameof(PlanActions.ClearLengthsAsync), OfSquad, async (a, t) => Told(await a.ClearLengthsAsync(t.Squad, 0, [new PhaseLength(0, "long", 0, 4)], Cancel))),
        Write<PlanActions>(nameof(PlanActions.AddMatchAsync), OfSquad, async (a, t) => Told(await a.AddMatchAsync(t.Squad, new LocalDate(2026, 10, 17), null, null, null, Cancel))),
        Row<PlanActions>(nameof(PlanActions.EnteredMatchesAsync), OfSquad, async (a, t) => Told(await a.EnteredMatchesAsync(t.Squad, Cancel))),
        Row<PlanActions>(nameof(PlanActions.TryMatchesAsync), OfSquad, async (a, t) => Told(await a.TryMatchesAsync(t.Squad, [], Cancel))),
        Write<PlanActions>(nameof(PlanActions.TakeFileAsync), OfSquad, async (a, t) => Told(await a.TakeFileAsync(t.Squad, [new FixtureFromFile(null, new LocalDate(2026, 10, 17), null, "Riverside", null, null)], [], Cancel))),
        Write<PlanActions>(nameof(PlanActions.SaveMatchAsync), OfSquad, async (a, t) => Told(await a.SaveMatchAsync(t.Match, new LocalDate(2026, 10, 17), null, null, null, Cancel))),
        Write<PlanActions>(nameof(PlanActions.RemoveMatchAsync), OfSquad, async (a, t) => Told(await a.RemoveMatchAsync(t.Match, Cancel))),
        Write<PlanActions>(nameof(PlanActions.AcceptAsync), Head(NotThere), async (a, t) => Told(await a.AcceptAsync(t.Squad, new Finding("R36", Strength.Must, null, "", "", ""), "agreed", Cancel))),

        Row<RevisionActions>(nameof(RevisionActions.ListAsync), ListOfSquad, async (a, t) => Shown(await a.ListAsync(t.Squad, Cancel))),
        Row<RevisionActions>(nameof(RevisionActions.CompareAsync), OfSquad, async (a, t) => Told(await a.CompareAsync(t.Squad, 1, 1, Cancel))),
        Row<RevisionActions>(nameof(RevisionActions.PreviewAsync), OfSquad, async (a, t) => Told(await a.PreviewAsync(t.Squad, 1, Cancel))),
        new($"{nameof(RevisionActions)}.{nameof(RevisionActions.RestoreAsync)}", OfSquad, async (services, t) =>
        {
            await services.GetRequiredService<PlanActions>().PublishAsync(t.Squad, 0, NewId.Create(), "", Cancel);
            return Told(await services.GetRequiredService<RevisionActions>().RestoreAsync(t.Squad, 1, Cancel));
        }, true),

        Row<EditActions>(nameof(EditActions.StateAsync), OnlyOwnEdits(Nothing, Nothing, Nothing), async (a, t) => (await a.StateAsync(t.Squad, Cancel)).Undo is null ? Nothing : Done),
        Write<EditActions>(nameof(EditActions.UndoAsync), OnlyOwnEdits("edit.not-next", NotThere, SignedOut), async (a, t) => Told(await a.UndoAsync(t.Squad, (await a.StateAsync(t.Squad, Cancel)).Undo?.Id ?? NewId.Create(), Cancel))),
        Write<EditActions>(nameof(EditActions.RedoAsync), OnlyOwnEdits("edit.not-next", NotThere, SignedOut), async (a, t) =>
        {
            var undone = await a.UndoAsync(t.Squad, (await a.StateAsync(t.Squad, Cancel)).Undo?.Id ?? NewId.Create(), Cancel);
            return Told(await a.RedoAsync(t.Squad, undone.TryGet(out var edit, out _) ? edit.Id : NewId.Create(), Cancel));
        }),

        Row<LastSaveActions>(nameof(LastSaveActions.OfTemplateAsync), new Rights(Done, Done, Done, Nothing, Nothing), async (a, t) => Known(await a.OfTemplateAsync(t.Template.Id, Cancel))),
        Row<LastSaveActions>(nameof(LastSaveActions.OfSquadAsync), ListOfSquad, async (a, t) => Known(await a.OfSquadAsync(t.Squad, Cancel))),
        Row<LastSaveActions>(nameof(LastSaveActions.OfMatchAsync), ListOfSquad, async (a, t) => Known(await a.OfMatchAsync(t.Squad, t.Match.Id, Cancel))),
        Row<LastSaveActions>(nameof(LastSaveActions.OfSeasonAsync), new Rights(Done, Nothing, Nothing, Nothing, Nothing), async (a, t) => Known(await a.OfSeasonAsync(t.Season.Id, Cancel))),
        // The other club's head coach reads who saved that club.
        Row<LastSaveActions>(nameof(LastSaveActions.OfClubAsync), new Rights(Done, Nothing, Nothing, Done, Nothing), async (a, _) => Known(await a.OfClubAsync(Cancel))),

        Row<SquadActions>(nameof(SquadActions.ListAsync), OwnSquads, async (a, t) => Shown(await a.ListAsync(Cancel), s => s.Squad.Key == t.Squad)),
        Row<SquadActions>(nameof(SquadActions.FindAsync), OfSquad, async (a, t) => Told(await a.FindAsync(t.Squad, Cancel))),
        Row<SquadActions>(nameof(SquadActions.IsHeadCoachAsync), new Rights(Done, Nothing, Nothing, Done, Nothing), async (a, _) => await a.IsHeadCoachAsync(Cancel) ? Done : Nothing),
        Row<SquadActions>(nameof(SquadActions.TemplatesForAsync), new Rights(Done, Done, Done, Nothing, Nothing), async (a, t) => Shown(await a.TemplatesForAsync(AgeGroup.Senior, null, Cancel), x => x.Id == t.Template.Id)),
        Row<SquadActions>(nameof(SquadActions.TryTemplateAsync), OfSquad, async (a, t) => Told(await a.TryTemplateAsync(t.Squad, t.Template.Id, Cancel))),
        Write<SquadActions>(nameof(SquadActions.AddAsync), Head(Elsewhere), async (a, t) => Told(await a.AddAsync(t.Stored.Squad, Cancel))),
        Write<SquadActions>(nameof(SquadActions.SaveAsync), OfSquad, async (a, t) => Told(await a.SaveAsync(t.Stored.Squad with { Name = "Blue 2" }, t.Stored.Version, Cancel))),
        Write<SquadActions>(nameof(SquadActions.RemoveAsync), Head(NotThere), async (a, t) => Told(await a.RemoveAsync(t.Squad, Cancel))),
        Write<SquadActions>(nameof(SquadActions.UseTemplateAsync), OfSquad, async (a, t) => Told(await a.UseTemplateAsync(t.Stored, t.Template.ParentId!.Value, Cancel))),
        Write<SquadActions>(nameof(SquadActions.SetNoticeAddressAsync), OfSquad, async (a, t) => Told(await a.SetNoticeAddressAsync(t.Stored, "list@example.org", Cancel))),

        Row<NoticeActions>(nameof(NoticeActions.FindAsync), OfSquad, async (a, t) => Told(await a.FindAsync(t.Squad, 1, Cancel))),
        Row<NoticeActions>(nameof(NoticeActions.SendAsync), new Rights(NoMail, NoMail, NotThere, NotThere, SignedOut) { Looking = LooksOnly }, async (a, t) => Told(await a.SendAsync(t.Squad, 1, Cancel))),

        Row<SeasonActions>(nameof(SeasonActions.ListAsync), OwnSquads, async (a, t) => Shown(await a.ListAsync(Cancel), s => s.SquadId == t.Squad)),
        Row<SeasonActions>(nameof(SeasonActions.PreviewAsync), Head(Nothing), async (a, t) => Shown(await a.PreviewAsync(t.Squad, t.Season.Season, cancel: Cancel), e => e.SquadId == t.Squad)),
        Row<SeasonActions>(nameof(SeasonActions.ClosedAsync), OwnSquadsList, async (a, t) => Shown(await a.ClosedAsync(Cancel), c => c.SquadId == t.Squad)),
        Write<SeasonActions>(nameof(SeasonActions.AddAsync), Head(NotThere), async (a, t) => Told(await a.AddAsync(t.Squad, null, [new Stint(new(2027, 10, 1), new(2027, 11, 30))], Cancel))),
        Write<SeasonActions>(nameof(SeasonActions.AddAsync), Head(Elsewhere), async (a, _) => Told(await a.AddAsync(null, null, [new Stint(new(2027, 10, 1), new(2027, 11, 30))], Cancel)), "for the whole club"),
        Write<SeasonActions>(nameof(SeasonActions.SaveAsync), Head("season.not-found"), async (a, t) => Told(await a.SaveAsync(t.Season, null, Target.Stints, Cancel))),
        Write<SeasonActions>(nameof(SeasonActions.RemoveAsync), Head("season.not-found"), async (a, t) => Told(await a.RemoveAsync(t.Season, Cancel))),
        Write<SeasonActions>(nameof(SeasonActions.CloseAsync), OfSquad, async (a, t) => Told(await a.CloseAsync(t.Squad, new ClosedDays(new(2026, 6, 1), new(2026, 6, 2), "Away"), Cancel))),
        Write<SeasonActions>(nameof(SeasonActions.CloseAsync), Head(Elsewhere), async (a, _) => Told(await a.CloseAsync(null, new ClosedDays(new(2026, 6, 1), new(2026, 6, 2), "Away"), Cancel)), "for the whole club"),
        Row<SeasonActions>(nameof(SeasonActions.PlannedDaysAsync), ListOfSquad, async (a, t) => await a.PlannedDaysAsync(t.Squad, Cancel) is null ? Nothing : Done),
        Row<SeasonActions>(nameof(SeasonActions.PreviewClosedAsync), OfSquad, async (a, t) => Shown(await a.PreviewClosedAsync(t.Squad, [Away], cancel: Cancel), e => e.SquadId == t.Squad)),
        Row<SeasonActions>(nameof(SeasonActions.PreviewClosedAsync), Head(Nothing), async (a, t) => Shown(await a.PreviewClosedAsync(null, [Away], cancel: Cancel), e => e.SquadId == t.Squad), "for the whole club"),
        Write<SeasonActions>(nameof(SeasonActions.TakeClosedAsync), OfSquad, async (a, t) => Told(await a.TakeClosedAsync(t.Squad, [Away], Cancel))),
        Write<SeasonActions>(nameof(SeasonActions.TakeClosedAsync), Head(Elsewhere), async (a, _) => Told(await a.TakeClosedAsync(null, [Away with { First = new(2026, 5, 30) }], Cancel)), "for the whole club"),
        Write<SeasonActions>(nameof(SeasonActions.OpenAsync), OfSquad, async (a, t) => Told(await a.OpenAsync(t.Closed, Cancel))),
        Write<SeasonActions>(nameof(SeasonActions.OpenAsync), Head("closed-days.not-found"), async (a, t) => Told(await a.OpenAsync(t.ClubClosed, Cancel)), "for the whole club"),

        Row<NextSeasonActions>(nameof(NextSeasonActions.ProposeAsync), OfSquad, async (a, t) => Told(await a.ProposeAsync(t.Squad, Cancel))),
        Row<NextSeasonActions>(nameof(NextSeasonActions.PreviewAsync), OfSquad, async (a, t) => Shown(await a.PreviewAsync(t.Squad, NextSeason.Propose(t.Season.Season).OrThrow(), [], Cancel), y => y.SquadId == t.Squad)),
        Row<NextSeasonActions>(nameof(NextSeasonActions.PreviewAsync), Head(Done), async (a, t) => Told(await a.PreviewAsync(null, NextSeason.Propose(t.Season.Season).OrThrow(), [], Cancel)), "for the whole club"),
        Write<NextSeasonActions>(nameof(NextSeasonActions.SaveAsync), Head(NotThere), async (a, t) => Told(await a.SaveAsync(t.Squad, NextSeason.Propose(t.Season.Season).OrThrow(), [], Cancel))),

        Row<TemplateActions>(nameof(TemplateActions.ListAsync), new Rights(Done, Done, Done, Nothing, SignedOut), async (a, t) => Shown(await a.ListAsync(Cancel), x => x.Id == t.Template.Id)),
        Row<TemplateActions>(nameof(TemplateActions.FindAsync), Library, async (a, t) => Told(await a.FindAsync(t.Template.Id, null, Cancel))),
        Row<TemplateActions>(nameof(TemplateActions.VersionsAsync), new Rights(Done, Done, Done, Nothing, Nothing), async (a, t) => Shown(await a.VersionsAsync(t.Template.Id, Cancel))),
        Row<TemplateActions>(nameof(TemplateActions.SquadsAsync), OwnSquadsList, async (a, t) => Shown(await a.SquadsAsync(Cancel), s => s.Squad.Key == t.Squad)),
        Row<TemplateActions>(nameof(TemplateActions.TryAsync), OfSquad, async (a, t) => Told(await a.TryAsync(t.Squad, t.Template.Template, Cancel))),
        Write<TemplateActions>(nameof(TemplateActions.CloneAsync), Library, async (a, t) => Told(await a.CloneAsync(t.Template.Id, null, "Copy", Cancel))),
        Write<TemplateActions>(nameof(TemplateActions.RetireAsync), Head("template.not-found"), async (a, t) => Told(await a.RetireAsync(t.Template.Id, Cancel))),
        Write<TemplateActions>(nameof(TemplateActions.BringBackAsync), Head("template.not-found"), async (a, t) =>
        {
            await a.RetireAsync(t.Template.Id, Cancel);
            return Told(await a.BringBackAsync(t.Template.Id, Cancel));
        }),
        Write<TemplateActions>(nameof(TemplateActions.ImportAsync), Library with { HeadCoachOfAnotherClub = Elsewhere }, async (a, t) => Told(await a.ImportAsync(TemplateFile.Write(t.Template.Template with { Name = "from-a-file" }), Cancel))),
        Write<TemplateActions>(nameof(TemplateActions.SaveAsync), Library with { CoachOfAnotherSquad = "template.used-by-others" }, async (a, t) => Told(await a.SaveAsync(t.Template, t.Template.Template, "", Cancel))),
        Write<TemplateActions>(nameof(TemplateActions.UseAsync), OfSquad, async (a, t) => Told(await a.UseAsync(t.Stored, t.Template.ParentId!.Value, 1, Cancel))),

        Row<TemplateActions>(nameof(TemplateActions.PreviewAsync), OwnSquads, async (a, t) => Shown(await a.PreviewAsync(t.Stored.TemplateId, t.Template.Template, null, Cancel), e => e.SquadId == t.Squad)),
        Write<TemplateActions>(nameof(TemplateActions.UseForAllAsync), OwnSquads, async (a, t) => Told(await a.UseForAllAsync([t.Stored], t.Template.ParentId!.Value, 1, Cancel))),

        Row<PlayerActions>(nameof(PlayerActions.ListAsync), OfSquad, async (a, t) => Told(await a.ListAsync(t.Squad, Cancel))),
        // Being read leaves a note for the welfare officer.
        Write<PlayerActions>(nameof(PlayerActions.TestsAsync), ListOfSquad with { Looking = Done }, async (a, t) => Shown(await a.TestsAsync(t.Player, Cancel))),
        Write<PlayerActions>(nameof(PlayerActions.ExportAsync), OfSquad, async (a, t) => Told(await a.ExportAsync(t.Squad, t.Player.Id, "The mother asked for it", Cancel))),
        Write<PlayerActions>(nameof(PlayerActions.LimitAsync), OfSquad, async (a, t) => Told(await a.LimitAsync(t.Player, new PlayerLimits(1999, true, null, null), Cancel))),
        Write<PlayerActions>(nameof(PlayerActions.AddTestAsync), OfSquad, async (a, t) => Told(await a.AddTestAsync(t.Player, Target.Shuttles, Cancel))),
        Write<PlayerActions>(nameof(PlayerActions.RemoveTestAsync), OfSquad, async (a, t) => Told(await a.RemoveTestAsync(t.Player, t.Test, Cancel))),
        Row<PlayerActions>(nameof(PlayerActions.LinksAsync), ListOfSquad, async (a, t) => Shown(await a.LinksAsync(t.Player, Cancel))),
        Write<PlayerActions>(nameof(PlayerActions.AddAsync), OfSquad, async (a, t) => Told(await a.AddAsync(t.Squad, ["Bo Lind"], Cancel))),
        Write<PlayerActions>(nameof(PlayerActions.RemoveAsync), OfSquad, async (a, t) => Told(await a.RemoveAsync(t.Player, Cancel))),
        Write<PlayerActions>(nameof(PlayerActions.NewLinkAsync), OfSquad, async (a, t) => Told(await a.NewLinkAsync(t.Player, "tablet", new FeedOptions(), Cancel))),
        Write<PlayerActions>(nameof(PlayerActions.ChangeLinkAsync), OfSquad, async (a, t) => Told(await a.ChangeLinkAsync(t.Player, t.Link, "tablet", new FeedOptions(DayOnly: true), Cancel))),
        Write<PlayerActions>(nameof(PlayerActions.RevokeAsync), OfSquad, async (a, t) => Told(await a.RevokeAsync(t.Player, t.Link, Cancel))),
        Write<PlayerActions>(nameof(PlayerActions.RevokeAllAsync), OfSquad, async (a, t) => Told(await a.RevokeAllAsync(t.Player, Cancel))),
        Row<PlayerActions>(nameof(PlayerActions.SheetsAsync), OfSquad, async (a, t) => Told(await a.SheetsAsync(t.Squad, Cancel))),
        Write<PlayerActions>(nameof(PlayerActions.NewSheetAsync), OfSquad, async (a, t) => Told(await a.NewSheetAsync(t.Squad, true, new FeedOptions(), Cancel))),
        Write<PlayerActions>(nameof(PlayerActions.RevokeUnusedAsync), OfSquad, async (a, t) => Told(await a.RevokeUnusedAsync(t.Squad, "own phone", Cancel))),

        Write<GuardianActions>(nameof(GuardianActions.AskAsync), OfSquad, async (a, t) => Told(await a.AskAsync(t.Child, Language.Dutch, Cancel))),
        Write<GuardianActions>(nameof(GuardianActions.EndLinkAsync), OfSquad, async (a, t) => Told(await a.EndLinkAsync(t.Child, Cancel))),
        Write<GuardianActions>(nameof(GuardianActions.AgreedOnPaperAsync), OfSquad, async (a, t) => Told(await a.AgreedOnPaperAsync(t.Squad, [t.Child.Id], new LocalDate(2026, 2, 1), Cancel))),

        // The target's club has a welfare officer, the other club has none. What each is shown: ExportNoticeTests.
        Row<ExportActions>(nameof(ExportActions.UnseenAsync), new Rights(Done, Done, Done, Done, SignedOut), async (a, _) => Told(await a.UnseenAsync(Cancel))),
        Write<ExportActions>(nameof(ExportActions.SeenAsync), new Rights(Done, NotTold, NotTold, Elsewhere, SignedOut) { Looking = NotTold, WelfareOfficer = Done }, async (a, _) => Told(await a.SeenAsync(Now, Cancel))),

        Row<WelfareActions>(nameof(WelfareActions.PlayersAsync), Welfare, async (a, t) => Shown(await a.PlayersAsync(Cancel), p => p.Id == t.Player.Id)),
        Row<WelfareActions>(nameof(WelfareActions.AccessAsync), Welfare, async (a, _) => Told(await a.AccessAsync(Cancel))),
        Write<WelfareActions>(nameof(WelfareActions.ProtectAsync), Welfare, async (a, t) => Told(await a.ProtectAsync(t.Player.Id, true, Cancel))),

        Row<ClubActions>(nameof(ClubActions.FindAsync), Head(Nothing), async (a, t) => (await a.FindAsync(Cancel)).TryGet(out var club, out var problems) ? club.ClubId == t.Club.Id ? Done : Nothing : problems[0].Code),
        Row<ClubActions>(nameof(ClubActions.PeopleAsync), new Rights(Done, Nothing, Nothing, Nothing, Nothing), async (a, t) => Shown(await a.PeopleAsync(Cancel), p => p.Id == t.Club.Coach)),
        Row<ClubActions>(nameof(ClubActions.LatestAsync), new Rights(Done, Nothing, Nothing, Nothing, Nothing), async (a, t) => Shown(await a.LatestAsync(Cancel), r => r.ClubId == t.Club.Id)),
        Write<ClubActions>(nameof(ClubActions.SaveAsync), Head(Elsewhere), async (a, _) => Told(await a.SaveAsync("Sandhaven East", "Europe/Lisbon", IsoDayOfWeek.Monday, await VersionAsync(a), Cancel))),
        Write<ClubActions>(nameof(ClubActions.SetGuardianAgeAsync), Head(Elsewhere), async (a, _) => Told(await a.SetGuardianAgeAsync(15, await VersionAsync(a), Cancel))),
        Write<ClubActions>(nameof(ClubActions.InviteAsync), Head(Elsewhere), async (a, t) => Told(await a.InviteAsync("Kim", $"{NewId.Create():N}@example.org", ClubRole.SquadCoach, [t.Squad], Cancel))),
        Write<ClubActions>(nameof(ClubActions.NewLinkAsync), Head("account.not-found"), async (a, t) => Told(await a.NewLinkAsync(t.Club.Coach, Cancel))),
        Write<ClubActions>(nameof(ClubActions.SetRoleAsync), Head("account.not-found"), async (a, t) => Told(await a.SetRoleAsync(t.Club.Coach, ClubRole.Assistant, Cancel))),
        Write<ClubActions>(nameof(ClubActions.RemoveAsync), Head("account.not-found"), async (a, t) => Told(await a.RemoveAsync(t.Club.Coach, Cancel))),
        Write<ClubActions>(nameof(ClubActions.SetCoachAsync), Head(NotThere), async (a, t) => Told(await a.SetCoachAsync(t.Squad, t.Club.Coach, false, Cancel))),
        Write<ClubActions>(nameof(ClubActions.EndSignInsAsync), Head("account.not-found"), async (a, t) => Told(await a.EndSignInsAsync(t.Club.Coach, Cancel))),
        Write<ClubActions>(nameof(ClubActions.EndAllSignInsAsync), Head(Elsewhere), async (a, _) => Told(await a.EndAllSignInsAsync(Cancel))),
        Write<ClubActions>(nameof(ClubActions.AskSecondFactorAsync), Head(Elsewhere), async (a, _) => Told(await a.AskSecondFactorAsync(false, Cancel))),
        Row<FirstStepsActions>(nameof(FirstStepsActions.LookAsync), Head(Done), async (a, _) => Told(await a.LookAsync(Cancel))),
        Write<FirstStepsActions>(nameof(FirstStepsActions.CloseAsync), Head(Elsewhere), async (a, _) => Told(await a.CloseAsync(true, Cancel))),
        Write<FirstStepsActions>(nameof(FirstStepsActions.AddSampleAsync), new Rights("sample.squads-there", HeadOnly, HeadOnly, "sample.squads-there", SignedOut), async (a, _) => Told(await a.AddSampleAsync(Cancel))),
        Write<FirstStepsActions>(nameof(FirstStepsActions.ClearSampleAsync), new Rights(Elsewhere, HeadOnly, HeadOnly, Elsewhere, SignedOut), async (a, _) => Told(await a.ClearSampleAsync(Cancel))),
    ];

    public static TheoryData<string, Asker> Cells => [.. Operations.SelectMany(o => Enum.GetValues<Asker>().Select(asker => (o.Name, asker)))];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [MemberData(nameof(Cells))]
    public async Task Everybody_may_do_what_is_theirs_and_nothing_else(string operation, Asker asker)
    {
        var row = Operations.Single(o => o.Name == operation);
        var expected = row.Rights.Of(asker, row.Writes);
        var target = row.Writes && expected == Done ? await world.NewTargetAsync() : world.Shared;

        var person = await PersonAsync(target, asker);
        var (before, answer) = await world.App.AsAsync(person, async services =>
        {
            if (asker == Asker.RemovedHeadCoach)
            {
                await target.RemoveAccountAsync(person!.Value);
            }

            return (await target.StoredAsync(), await row.Call(services, target));
        });

        var after = await target.StoredAsync();
        Assert.Equal(expected, row.Writes && answer == Done && before.SequenceEqual(after) ? Elsewhere : answer);
        if (!row.Writes || expected != Done)
        {
            Assert.Equal(before, after);
        }
    }

    [Fact]
    public void Every_operation_of_every_screen_has_a_row() => Assert.Equal(
        typeof(PlanActions).Assembly.GetTypes().Where(t => t.IsPublic && t.Namespace?.StartsWith("ClubCycle.Web.Features.", StringComparison.Ordinal) == true && t.Name.EndsWith("Actions", StringComparison.Ordinal))
            .SelectMany(t => t.GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly))
            .Where(m => typeof(Task).IsAssignableFrom(m.ReturnType)).Select(m => $"{m.DeclaringType!.Name}.{m.Name}").Order(StringComparer.Ordinal),
        Operations.Select(o => o.Name.Split(' ')[0]).Distinct().Order(StringComparer.Ordinal));

    private async Task<Guid?> PersonAsync(Target target, Asker asker) => asker switch
    {
        Asker.HeadCoach => target.Club.Head,
        Asker.SquadCoach => target.Club.Coach,
        Asker.CoachOfAnotherSquad => await target.Club.NewCoachAsync(ClubRole.SquadCoach, target.Club.OtherSquad),
        Asker.Assistant => await target.Club.NewCoachAsync(ClubRole.Assistant, target.Squad),
        Asker.WelfareOfficer => await target.Club.NewCoachAsync(ClubRole.WelfareOfficer, target.Club.OtherSquad),
        Asker.HeadCoachOfAnotherClub => world.AnotherClub.Club.Head,
        Asker.RemovedHeadCoach => await target.Club.NewCoachAsync(ClubRole.HeadCoach, target.Squad),
        Asker.Nobody => null,
        _ => throw new ArgumentOutOfRangeException(nameof(asker), asker, "Unknown asker"),
    };

    private static Rights Head(string fromAnotherClub) => new(Done, HeadOnly, HeadOnly, fromAnotherClub, SignedOut);

    /// <summary>The head coach made the target's edits.</summary>
    private static Rights OnlyOwnEdits(string ofAnother, string ofAnotherSquad, string withoutAccount) => new(Done, ofAnother, ofAnotherSquad, ofAnotherSquad, withoutAccount);

    private static Operation Row<T>(string method, Rights rights, Func<T, Target, Task<string>> call, string of = "")
        where T : notnull => new($"{typeof(T).Name}.{method} {of}".Trim(), rights, (services, target) => call(services.GetRequiredService<T>(), target), false);

    private static Operation Write<T>(string method, Rights rights, Func<T, Target, Task<string>> call, string of = "")
        where T : notnull => Row(method, rights, call, of) with { Writes = true };

    private static string Told<T>(Result<T> result) => result is Result<T>.Failed failed ? failed.First.Code : Done;

    /// <summary>For an act over many: what the target's own squad was answered, or that it was left alone.</summary>
    private static string Told<T>(Result<IReadOnlyList<SquadOutcome<T>>> result) => !result.TryGet(out var outcomes, out var problems) ? problems[0].Code : outcomes is [var only] ? Told(only.Result) : Nothing;

    /// <summary>Of the asker's own club.</summary>
    private static async Task<int> VersionAsync(ClubActions actions) => (await actions.FindAsync(Cancel)).TryGet(out var club, out _) ? club.Version : 0;

    private static string Known(LastSave? save) => save is null ? Nothing : Done;

    private static string Shown<T>(IReadOnlyList<T> list, Func<T, bool>? ofTarget = null) => list.Any(ofTarget ?? (_ => true)) ? Done : Nothing;

    private static string Shown<T>(Result<IReadOnlyList<T>> result, Func<T, bool> ofTarget) => result.TryGet(out var list, out var problems) ? Shown(list, ofTarget) : problems[0].Code;

    /// <summary>What each asker is answered. Assistants in their squads, and welfare officers in all, read what a squad's coach reads and change nothing.</summary>
    private sealed record Rights(string HeadCoach, string SquadCoach, string CoachOfAnotherSquad, string HeadCoachOfAnotherClub, string WithoutAccount)
    {
        public string? Looking { get; init; }

        public string? WelfareOfficer { get; init; }

        public string Of(Asker asker, bool writes) => asker switch
        {
            Asker.Assistant => Look(writes),
            Asker.WelfareOfficer => WelfareOfficer ?? Look(writes),
            Asker.HeadCoach => HeadCoach,
            Asker.SquadCoach => SquadCoach,
            Asker.CoachOfAnotherSquad => CoachOfAnotherSquad,
            Asker.HeadCoachOfAnotherClub => HeadCoachOfAnotherClub,
            _ => WithoutAccount,
        };

        private string Look(bool writes) => Looking ?? (writes && SquadCoach != HeadOnly ? LooksOnly : SquadCoach);
    }

    /// <param name="Name">Class and method, then what tells rows of the same method apart.</param>
    /// <param name="Call">Answers with a problem's code, or whether it was done or showed something of the target.</param>
    /// <param name="Writes">Being done, it leaves a trace in the target's club.</param>
    private sealed record Operation(string Name, Rights Rights, Func<IServiceProvider, Target, Task<string>> Call, bool Writes);
}
