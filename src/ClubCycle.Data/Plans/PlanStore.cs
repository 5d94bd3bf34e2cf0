using ClubCycle.Data.Audit;
using ClubCycle.Data.Outbox;
using ClubCycle.Data.Squads;
using ClubCycle.Planning;
using ClubCycle.Planning.PlanFiles;
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
    public async Task<Result<SquadDraft>> PreviewAsync(Guid squadId, Func<PlanRequest, Result<PlanRequest>> change, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return DraftOf(await PlanInputs.LoadOneAsync(db, squadId, clock.GetCurrentInstant(), published, cancel), change);
    }

    /// <summary>Every squad's draft, youngest squad first. A squad whose inputs have problems says so in its own row.</summary>
    public Task<IReadOnlyList<BoardDraft>> DraftsAsync(CancellationToken cancel = default) => PreviewAllAsync(request => request, cancel);

    /// <summary>Every squad's draft as it would be with other inputs. Nothing is stored.</summary>
    public async Task<IReadOnlyList<BoardDraft>> PreviewAllAsync(Func<PlanRequest, Result<PlanRequest>> change, CancellationToken cancel = default)
    {
        IReadOnlyList<(SquadRow Squad, Result<PlanInput> Input)> inputs;
        await using (var db = await contexts.OpenAsync(cancel))
        {
            inputs = await PlanInputs.LoadAsync(db, null, clock.GetCurrentInstant(), published, cancel);
        }

        var ages = AgeGroup.All.ToList();
        return
        [
            .. inputs.Select(i => new BoardDraft(i.Squad.Id, i.Squad.Name, i.Squad.ToSquad().AgeGroup, DraftOf(i.Input, change)))
                .OrderBy(b => ages.IndexOf(b.AgeGroup)).ThenBy(b => b.Name, StringComparer.OrdinalIgnoreCase),
        ];
    }

    /// <summary>
    /// Publishes the squad's draft: the revision, what phones are told about each session, and the work that follows, all or nothing.
    /// </summary>
    /// <param name="expectedRevision">The latest revision the publisher saw; 0 for none.</param>
    /// <param name="commandId">Made when the button was shown: asking twice publishes once.</param>
    /// <param name="by">Null for the club's own set-up.</param>
    public async Task<Result<Revision>> PublishAsync(Guid squadId, int expectedRevision, Guid commandId, Guid? by, string note, CancellationToken cancel = default)
    {
        if (note.Trim().Length > LongestNote)
        {
            return new Problem("plan.note-too-long", $"The note has {note.Trim().Length} characters; use {LongestNote} at most.", "note");
        }

        await using var db = await contexts.OpenAsync(cancel);
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);

        // Publishers of one squad come one after the other; the second one sees the first one's revision.
        var locked = await db.Database.SqlQuery<Guid>($"select id as \"Value\" from club.squads where club_id = {db.ClubId} and id = {squadId} for update").ToListAsync(cancel);
        if (locked.Count == 0)
        {
            return Refusal.NotFound("squad");
        }

        if (await db.Revisions.AsNoTracking().SingleOrDefaultAsync(r => r.SquadId == squadId && r.CommandId == commandId, cancel) is { } done)
        {
            return RevisionOf(done);
        }

        var now = clock.GetCurrentInstant();
        if (!DraftOf(await PlanInputs.LoadOneAsync(db, squadId, now, published, cancel), request => request).TryGet(out var draft, out var problems))
        {
            return new Result<Revision>.Failed(problems);
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

        var revision = new RevisionRow
        {
            ClubId = db.ClubId, SquadId = squadId, Number = expectedRevision + 1, CommandId = commandId,
            Plan = PlanFile.WritePlan(draft.Plan), PublishedAt = now, PublishedBy = by, Note = note.Trim(),
        };
        db.Revisions.Add(revision);
        await StampAsync(db, squadId, draft, now, cancel);
        db.Outbox.Add(new OutboxRow { ClubId = db.ClubId, Id = NewId.Create(), Kind = OutboxKinds.RenderFeeds, SquadId = squadId, CreatedAt = now, NotBefore = now });
        db.Note(now, by, "plan.published", squadId, $"revision {revision.Number}");
        await db.SaveChangesAsync(cancel);
        await transaction.CommitAsync(cancel);
        return RevisionOf(revision);
    }

    /// <summary>The squad's revisions, newest first.</summary>
    public async Task<IReadOnlyList<Revision>> RevisionsAsync(Guid squadId, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return await db.Revisions.Where(r => r.SquadId == squadId).OrderByDescending(r => r.Number)
            .Select(r => new Revision(r.Number, r.PublishedAt, r.PublishedBy, r.Note)).ToListAsync(cancel);
    }

    /// <summary>A plan as it was published then.</summary>
    public async Task<Result<SquadPlan>> RevisionAsync(Guid squadId, int number, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return await db.Revisions.Where(r => r.SquadId == squadId && r.Number == number).Select(r => r.Plan).SingleOrDefaultAsync(cancel) is { } text
            ? PlanFile.ReadPlan(text)
            : Refusal.NotFound("revision");
    }

    /// <summary>What players see now.</summary>
    public async Task<Result<PublishedPlan>> PublishedAsync(Guid squadId, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        if (!(await published.LatestAsync(db, squadId, cancel)).TryGetValue(squadId, out var latest))
        {
            return new Problem("plan.not-published", "Nothing has been published for this squad yet.");
        }

        var club = await db.Clubs.AsNoTracking().SingleAsync(cancel);
        var name = await db.Squads.Where(s => s.Id == squadId).Select(s => s.Name).SingleAsync(cancel);
        var at = await db.Revisions.Where(r => r.SquadId == squadId && r.Number == latest.Number).Select(r => r.PublishedAt).SingleAsync(cancel);
        var since = clock.GetCurrentInstant() - CancelledIsToldFor;
        var rows = await db.Sessions.AsNoTracking().Where(s => s.SquadId == squadId && (s.CancelledAt == null || s.CancelledAt > since))
            .OrderBy(s => s.Date).ThenBy(s => s.Start).ThenBy(s => s.Uid).ToListAsync(cancel);
        var stamps = rows.Where(r => r.CancelledAt is null).ToDictionary(r => r.Uid, StampOf);
        var zone = DateTimeZoneProviders.Tzdb[club.TimeZone];
        return new PublishedPlan(
            squadId, name, club.Name, zone, club.FirstWeekday, latest.Number, at, latest.Plan,
            stamps,
            [.. rows.Where(r => r.CancelledAt is not null).Select(r => new CancelledSession(r.Uid, r.Date, r.Start, r.Minutes, r.Title, r.Kind, StampOf(r)))])
        {
            Earlier = await EarlierAsync(db, squadId, latest, at.InZone(zone).Date, stamps, cancel),
        };
    }

    /// <summary>The last days of the cycle before, as long as phones are told of cancellations.</summary>
    private async Task<IReadOnlyList<PlannedSession>> EarlierAsync(
        ClubCycleDb db, Guid squadId, (int Number, SquadPlan Plan) latest, LocalDate publishedOn, Dictionary<Guid, SessionStamp> stamps, CancellationToken cancel)
    {
        var cycles = new Dictionary<Guid, DateInterval> { [squadId] = latest.Plan.Cycle };
        var before = await published.BeforeAsync(db, cycles, new Dictionary<Guid, (int, SquadPlan)> { [squadId] = latest }, cancel);
        return before.TryGetValue(squadId, out var plan)
            ? [.. plan.Sessions.Where(s => s.Date > publishedOn.PlusDays(-CancelledIsToldFor.Days) && s.Date < latest.Plan.Cycle.Start && stamps.ContainsKey(s.Uid))]
            : [];
    }

    /// <summary>Brings what phones are told in line with the plan. What lies in the past stays as it was.</summary>
    private static async Task StampAsync(ClubCycleDb db, Guid squadId, SquadDraft draft, Instant now, CancellationToken cancel)
    {
        var today = now.InZone(draft.Request.Zone).Date;
        var uids = draft.Plan.Sessions.Select(s => s.Uid).ToList();
        var rows = await db.Sessions.Where(s => s.SquadId == squadId && (s.Date >= today || uids.Contains(s.Uid))).ToDictionaryAsync(s => s.Uid, cancel);
        foreach (var session in draft.Plan.Sessions)
        {
            if (!rows.Remove(session.Uid, out var row))
            {
                db.Sessions.Add(SessionStamps.New(db.ClubId, squadId, session, now));
            }
            else
            {
                SessionStamps.Update(row, session, now);
            }
        }

        foreach (var gone in rows.Values)
        {
            SessionStamps.Cancel(gone, now);
        }
    }

    private static Result<SquadDraft> DraftOf(Result<PlanInput> loaded, Func<PlanRequest, Result<PlanRequest>> change)
    {
        if (!loaded.TryGet(out var input, out var problems) || !change(input.Request).TryGet(out var request, out problems) || !AnnualPlanner.Plan(request).TryGet(out var plan, out problems))
        {
            return new Result<SquadDraft>.Failed(problems);
        }

        return new SquadDraft(request, plan, input.Revision, input.Accepted);
    }

    private static SessionStamp StampOf(SessionRow row) => new(row.Sequence, row.ChangedAt);

    private static Revision RevisionOf(RevisionRow row) => new(row.Number, row.PublishedAt, row.PublishedBy, row.Note);
}
