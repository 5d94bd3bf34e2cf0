using ClubCycle.Data.Audit;
using ClubCycle.Data.Outbox;
using ClubCycle.Planning;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Notices;

/// <summary>Notices of changes on their way to a squad's address. Each revision's goes out once; the audit trail remembers.</summary>
public sealed class NoticeStore(IClubDbFactory contexts, IClock clock)
{
    private const string Queued = "notice.queued";

    public async Task<bool> WasQueuedAsync(Guid squadId, int revision, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return await WasQueuedAsync(db, squadId, revision, cancel);
    }

    /// <summary>Puts a notice into the outbox with a note in the audit trail, both or neither.</summary>
    public async Task<Result<Guid>> QueueAsync(Guid squadId, NoticeToSend notice, Guid by, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);

        // Two who press at once come one after the other.
        var address = await db.Database.SqlQuery<string>($"select coalesce(notice_address, '') as \"Value\" from club.squads where club_id = {db.ClubId} and id = {squadId} for update").ToListAsync(cancel);
        if (address is not [var to])
        {
            return Refusal.NotFound("squad");
        }

        if (to.Length == 0)
        {
            return new Problem("notice.no-address", "The squad has no address for notices. Write one in its settings first.");
        }

        if (await WasQueuedAsync(db, squadId, notice.Revision, cancel))
        {
            return new Problem("notice.sent-already", $"The notice of revision {notice.Revision} was sent before. Copy it if somebody did not get it.");
        }

        var now = clock.GetCurrentInstant();
        var row = new OutboxRow { ClubId = db.ClubId, Id = NewId.Create(), Kind = OutboxKinds.SendNotice, SquadId = squadId, Body = notice.Write(), CreatedAt = now, NotBefore = now };
        db.Outbox.Add(row);
        db.Note(now, by, Queued, squadId, RevisionText(notice.Revision));
        await db.SaveChangesAsync(cancel);
        await transaction.CommitAsync(cancel);
        return row.Id;
    }

    /// <summary>Where the squad's notices go; null for nowhere.</summary>
    public async Task<string?> AddressAsync(Guid squadId, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return await db.Squads.Where(s => s.Id == squadId).Select(s => s.NoticeAddress).SingleOrDefaultAsync(cancel);
    }

    /// <summary>Remembers how it ended, such as <c>notice.sent</c>.</summary>
    public async Task NoteAsync(Guid squadId, int revision, string what, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        db.Note(clock.GetCurrentInstant(), null, what, squadId, RevisionText(revision));
        await db.SaveChangesAsync(cancel);
    }

    private static Task<bool> WasQueuedAsync(ClubCycleDb db, Guid squadId, int revision, CancellationToken cancel)
    {
        var details = RevisionText(revision);
        return db.Audit.AnyAsync(a => a.SquadId == squadId && a.What == Queued && a.Details == details, cancel);
    }

    private static string RevisionText(int revision) => $"revision {revision}";
}
