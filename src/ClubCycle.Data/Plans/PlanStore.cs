using ClubCycle.Data.Audit;
using ClubCycle.Data.Outbox;
using ClubCycle.Data.Squads;
using ClubCycle.Data.Telemetry;
using ClubCycle.Planning;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Squads;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Plans;

/// <summary>Drafts, computed from what is stored, and publishing.</summary>
public sealed class PlanStore(IClubDbFactory contexts, PublishedPlans published, IClock clock)
{
    public const int LongestNote = 500;

    /// <summary>How long a cancelled session stays in feeds, so that calendars that poll rarely still learn of it.</summary>
    public static readonly Duration CancelledIsToldFor = Duration.FromDays(14);

    public Task<Result<SquadDraft>> DraftAsync(Guid squadId, CancellationToken cancel = default) =>
        PreviewAsync(squadId, request => request, cancel);

    /// <summary>The draft as it would be with other inputs. Nothing is stored.</summary>
    public async Task<Result<SquadDraft>> PreviewAsync(Guid squadId, Func<PlanRequest, Result<PlanRequest>> change, CancellationToken cancel = default) =>
        DraftOf(await InputAsync(squadId, cancel), change);

    /// <summary>The draft as it is with what a transaction has changed so far.</summary>
    internal async Task<Result<SquadDraft>> DraftAsync(ClubCycleDb db, Guid squadId, CancellationToken cancel) =>
        DraftOf(await PlanInputs.LoadOneAsync(db, squadId, clock.GetCurrentInstant(), published, cancel));

    /// <summary>Every squad's draft, youngest squad first. A squad whose inputs have problems says so in its own row.</summary>
    public async Task<IReadOnlyList<BoardDraft>> DraftsAsync(IProgress<SquadsDone>? progress = null, CancellationToken cancel = default) =>
        await ManySquads.PlanAsync(await InputsAsync(null, cancel), i => new BoardDraft(i.Squad.Id, i.Squad.Name, i.Squad.ToSquad().AgeGroup, DraftOf(i.Input)), progress, cancel);

    /// <summary>What other inputs would do to squads, youngest squad first. Nothing is stored.</summary>
    /// <param name="only">Null for every squad of the club.</param>
    public async Task<IReadOnlyList<SquadEffect>> PreviewAllAsync(
        IReadOnlyCollection<Guid>? only, Func<PlanRequest, Result<PlanRequest>> change, IProgress<SquadsDone>? progress = null, CancellationToken cancel = default) =>
        await ManySquads.PlanAsync(await InputsAsync(only, cancel), i => SquadEffect.Of(i.Squad, DraftOf(i.Input), DraftOf(i.Input, change)), progress, cancel);

    /// <summary>What other dates or more closed days would do to squads, youngest squad first. Usual matches follow them. Nothing is stored.</summary>
    /// <param name="only">Null for every squad of the club.</param>
    public async Task<IReadOnlyList<SquadEffect>> PreviewAllAsync(IReadOnlyCollection<Guid>? only, InputChange change, IProgress<SquadsDone>? progress = null, CancellationToken cancel = default)
    {
        var now = await InputsAsync(only, cancel);
        var then = await InputsAsync(only, cancel, change);
        return await ManySquads.PlanAsync([.. now.Zip(then)], i => SquadEffect.Of(i.First.Squad, DraftOf(i.First.Input), DraftOf(i.Second.Input)), progress, cancel);
    }

    /// <summary>Publishes the squad's draft: the revision, what phones are told about each session, and the work that follows, all or nothing.</summary>
    /// <param name="expectedRevision">The latest revision the publisher saw; 0 for none.</param>
    /// <param name="commandId">Made when the button was shown: asking twice publishes once.</param>
    /// <param name="by">Null for the club's own set-up.</param>
    public async Task<Result<Revision>> PublishAsync(Guid squadId, int expectedRevision, Guid commandId, Guid? by, string note, CancellationToken cancel = default) =>
        (await PublishManyAsync([new SquadToPublish(squadId, expectedRevision, commandId)], by, note, null, cancel))[0].Result;

    /// <summary>
    /// Publishes the drafts of many squads, one answer a squad, in the order asked. A squad that cannot be published (binding findings, somebody
    /// else was first, inputs with problems) is left out with the reason, and the others go through.
    /// </summary>
    /// <remarks>
    /// All in one transaction: a coach who cancels, or whose connection breaks, has published nothing and need not find out how far it got; and
    /// players of all squads see the club's new dates from the same moment. Other publishers of these squads wait for well under a second.
    /// </remarks>
    /// <param name="squads">Each squad once.</param>
    /// <param name="by">Null for the club's own set-up.</param>
    public async Task<IReadOnlyList<SquadOutcome<Revision>>> PublishManyAsync(
        IReadOnlyList<SquadToPublish> squads, Guid? by, string note, IProgress<SquadsDone>? progress = null, CancellationToken cancel = default)
    {
        using var timed = ClubMeter.Publish();
        if (TypedText.NoteProblem(note, LongestNote, "plan.note", "note", "note") is { } unreadable)
        {
            return [.. squads.Select(s => new SquadOutcome<Revision>(s.SquadId, unreadable))];
        }

        var asked = squads.ToDictionary(s => s.SquadId);
        await using var db = await contexts.OpenAsync(cancel);
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        var there = await db.LockSquadsAsync(asked.Keys, cancel);
        var answers = squads.Where(s => !there.Contains(s.SquadId)).ToDictionary(s => s.SquadId, _ => (Result<Revision>)Refusal.NotFound("squad"));
        foreach (var done in await DoneAsync(db, squads, cancel))
        {
            answers.TryAdd(done.Key, done.Value);
        }

        var now = clock.GetCurrentInstant();
        var inputs = await PlanInputs.LoadAsync(db, [.. there.Where(id => !answers.ContainsKey(id))], now, published, cancel);
        var ready = await ManySquads.PlanAsync(inputs, i => (i.Squad.Id, Draft: ReadyText(i.Input, asked[i.Squad.Id].ExpectedRevision)), progress, cancel);
        var at = await AfterAllBeforeAsync(db, there, now, cancel);
        List<(Guid Squad, SquadDraft Draft)> written = [];
        foreach (var (squad, result) in ready)
        {
            if (!result.TryGet(out var draft, out var problems))
            {
                answers.Add(squad, new Result<Revision>.Failed(problems));
                continue;
            }

            var revision = RevisionRowOf(db.ClubId, asked[squad], draft, SquadInputs.Write(db.Model, draft.Draft.Own), at, by, TypedText.Tidy(note));
            db.Revisions.Add(revision);
            db.Outbox.Add(new OutboxRow { ClubId = db.ClubId, Id = NewId.Create(), Kind = OutboxKinds.RenderFeeds, SquadId = squad, CreatedAt = now, NotBefore = now });
            db.Note(now, by, "plan.published", squad, $"revision {revision.Number}");
            written.Add((squad, draft.Draft));
            answers.Add(squad, RevisionOf(revision));
        }

        await db.SaveChangesAsync(cancel);
        await SessionRows.TellAsync(db, written, now, at, cancel);

        // Past this point it is published; a late cancel must not leave a coach in doubt.
        cancel.ThrowIfCancellationRequested();
        await transaction.CommitAsync(CancellationToken.None);
        foreach (var (squad, draft) in written)
        {
            published.Keep(db.ClubId, squad, draft.Revision + 1, draft.Plan);
        }

        return [.. squads.Select(s => new SquadOutcome<Revision>(s.SquadId, answers[s.SquadId]))];
    }

    /// <summary>Now, and after whatever these squads published before, even when the clock was put back: feeds and phones take what is later for newer.</summary>
    private static async Task<Instant> AfterAllBeforeAsync(ClubCycleDb db, IReadOnlySet<Guid> squads, Instant now, CancellationToken cancel) =>
        await db.Revisions.Where(r => squads.Contains(r.SquadId)).MaxAsync(r => (Instant?)r.PublishedAt, cancel) is { } last && last > now ? last + Duration.FromSeconds(1) : now;

    /// <summary>What players see now.</summary>
    public async Task<Result<PublishedPlan>> PublishedAsync(Guid squadId, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        if (!(await published.LatestAsync(db, [squadId], cancel)).TryGetValue(squadId, out var latest))
        {
            return new Problem("plan.not-published", "Nothing has been published for this squad yet.");
        }

        var club = await db.Clubs.AsNoTracking().SingleAsync(cancel);
        var squad = await db.Squads.Where(s => s.Id == squadId).Select(s => new { s.Name, s.AgeGroup }).SingleAsync(cancel);
        var at = await db.Revisions.Where(r => r.SquadId == squadId && r.Number == latest.Number).Select(r => r.PublishedAt).SingleAsync(cancel);
        // By the day of publishing, not by today: the same revision always gives the same feed.
        var since = at - CancelledIsToldFor;
        var rows = await db.Sessions.AsNoTracking().Where(s => s.SquadId == squadId && (s.CancelledAt == null || s.CancelledAt > since))
            .OrderBy(s => s.Date).ThenBy(s => s.Start).ThenBy(s => s.Uid).ToListAsync(cancel);
        var stamps = rows.Where(r => r.CancelledAt is null).ToDictionary(r => r.Uid, StampOf);
        var zone = DateTimeZoneProviders.Tzdb[club.TimeZone];
        return new PublishedPlan(
            squadId, squad.Name, club.Name, zone, club.FirstWeekday, latest.Number, at, latest.Plan,
            stamps,
            [.. rows.Where(r => r.CancelledAt is not null).Select(r => new CancelledSession(r.Uid, r.Date, r.Start, r.Minutes, r.Title, r.Kind, StampOf(r), r.Place))])
        {
            Ages = AgeGroup.Find(squad.AgeGroup) ?? throw new InvalidOperationException($"Squad {squadId} has the unknown age group {squad.AgeGroup}."),
            Earlier = await EarlierAsync(db, squadId, latest, at.InZone(zone).Date - PublishedPlan.KeptFor, stamps, cancel),
        };
    }

    /// <summary>The last days of the cycle before, as long as calendars keep what is over.</summary>
    private async Task<IReadOnlyList<PlannedSession>> EarlierAsync(
        ClubCycleDb db, Guid squadId, (int Number, SquadPlan Plan) latest, LocalDate shownFrom, Dictionary<Guid, SessionStamp> stamps, CancellationToken cancel)
    {
        var cycles = new Dictionary<Guid, DateInterval> { [squadId] = latest.Plan.Cycle };
        var before = await published.BeforeAsync(db, cycles, new Dictionary<Guid, (int, SquadPlan)> { [squadId] = latest }, cancel);
        return before.TryGetValue(squadId, out var plan)
            ? [.. plan.Sessions.Where(s => s.Date >= shownFrom && s.Date < latest.Plan.Cycle.Start && stamps.ContainsKey(s.Uid))]
            : [];
    }

    private async Task<Result<PlanInput>> InputAsync(Guid squadId, CancellationToken cancel)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return await PlanInputs.LoadOneAsync(db, squadId, clock.GetCurrentInstant(), published, cancel);
    }

    private async Task<IReadOnlyList<(SquadRow Squad, Result<PlanInput> Input)>> InputsAsync(IReadOnlyCollection<Guid>? only, CancellationToken cancel, InputChange? change = null)
    {
        await using var db = await contexts.OpenAsync(cancel);
        var ages = AgeGroup.All.ToList();
        return
        [
            .. (await PlanInputs.LoadAsync(db, only, clock.GetCurrentInstant(), published, cancel, change))
                .OrderBy(i => ages.IndexOf(i.Squad.ToSquad().AgeGroup)).ThenBy(i => i.Squad.Name, StringComparer.OrdinalIgnoreCase).ThenBy(i => i.Squad.Id),
        ];
    }

    /// <summary>What the same commands have published before.</summary>
    private static async Task<IReadOnlyDictionary<Guid, Result<Revision>>> DoneAsync(ClubCycleDb db, IReadOnlyList<SquadToPublish> squads, CancellationToken cancel)
    {
        var commands = squads.Select(s => s.CommandId).ToList();
        var done = await db.Revisions.Where(r => commands.Contains(r.CommandId))
            .Select(r => new { r.SquadId, r.CommandId, Revision = new Revision(r.Number, r.PublishedAt, r.PublishedBy, r.Note) }).ToListAsync(cancel);
        return done.Where(d => squads.Any(s => s.SquadId == d.SquadId && s.CommandId == d.CommandId)).ToDictionary(d => d.SquadId, d => (Result<Revision>)d.Revision);
    }

    /// <summary>The draft with its text, or what stands in the way of publishing it.</summary>
    private static Result<(SquadDraft Draft, string Text)> ReadyText(Result<PlanInput> input, int expectedRevision)
    {
        if (!DraftOf(input).TryGet(out var draft, out var problems))
        {
            return new Result<(SquadDraft, string)>.Failed(problems);
        }

        if (draft.Revision != expectedRevision)
        {
            return new Problem(
                "plan.changed-meanwhile",
                $"Revision {draft.Revision} was published after you opened revision {expectedRevision}. Reload, look at what it changed, and publish again if yours is still wanted.");
        }

        if (draft.InTheWay.ToList() is [var first, ..] inTheWay)
        {
            return new Problem(
                "plan.must-findings",
                $"{inTheWay.Count} binding {(inTheWay.Count == 1 ? "finding stands" : "findings stand")} in the way, first: {first.Message} Mend it, or accept it with a reason, then publish.");
        }

        return (draft, PlanFile.WritePlan(draft.Plan));
    }

    /// <summary>The only place where a revision is made.</summary>
    private static RevisionRow RevisionRowOf(Guid club, SquadToPublish asked, (SquadDraft Draft, string Text) ready, string inputs, Instant now, Guid? by, string note) => new()
    {
        ClubId = club, SquadId = asked.SquadId, Number = asked.ExpectedRevision + 1, CommandId = asked.CommandId,
        Plan = ready.Text, Inputs = inputs, PublishedAt = now, PublishedBy = by, Note = note,
    };

    private static Result<SquadDraft> DraftOf(Result<PlanInput> loaded, Func<PlanRequest, Result<PlanRequest>>? change = null)
    {
        if (!loaded.TryGet(out var input, out var problems)
            || !(change?.Invoke(input.Request) ?? input.Request).TryGet(out var request, out problems)
            || !AnnualPlanner.Plan(request).TryGet(out var plan, out problems))
        {
            return new Result<SquadDraft>.Failed(problems);
        }

        // While an older revision is being restored, the changes are still told against what players see.
        var changes = ReferenceEquals(request.Published, input.Request.Published) && !ReferenceEquals(input.Request.Published, input.Latest) ? PlanDiff.Between(input.Latest!.Sessions, plan.Sessions) : plan.Changes;
        return new SquadDraft(request, plan with { Changes = changes }, input.Revision, input.Accepted) { Own = input.Own };
    }

    private static SessionStamp StampOf(SessionRow row) => new(row.Sequence, row.ChangedAt);

    private static Revision RevisionOf(RevisionRow row) => new(row.Number, row.PublishedAt, row.PublishedBy, row.Note);
}
