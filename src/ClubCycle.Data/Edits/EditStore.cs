using ClubCycle.Data.Audit;
using ClubCycle.Data.Seasons;
using ClubCycle.Data.Squads;
using ClubCycle.Planning;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Edits;

/// <summary>What a person can undo and redo next; null for nothing.</summary>
public sealed record EditState(Edit? Undo, Edit? Redo);

/// <param name="Words">What was done.</param>
public sealed record Edit(Guid Id, string Words, Instant At);

/// <summary>Each person's own edits of a squad, or of the whole club: the last can be undone, what was undone can be redone, also on another day.</summary>
public sealed class EditStore(IClubDbFactory contexts, IClock clock)
{
    public const int LongestWords = 200;

    /// <summary>So many edits of a person are kept for each squad and for the club.</summary>
    public const int Most = 100;

    /// <param name="squadId">Null for the whole club.</param>
    public async Task<EditState> StateAsync(Guid? squadId, Guid by, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        var next = await ToUndo(db, squadId, by).Take(1).Concat(ToRedo(db, squadId, by).Take(1))
            .Select(e => new { e.UndoneAt, Edit = new Edit(e.Id, e.Words, e.At) }).ToListAsync(cancel);
        return new EditState(next.Find(n => n.UndoneAt is null)?.Edit, next.Find(n => n.UndoneAt is not null)?.Edit);
    }

    /// <summary>Takes an edit back. Refused when it is not the person's last, or when somebody changed the same since.</summary>
    /// <param name="squadId">Null for the whole club.</param>
    public async Task<Result<Edit>> UndoAsync(Guid? squadId, Guid edit, Guid by, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        await db.LockToChangeAsync(squadId, cancel);
        if (await ToUndo(db, squadId, by).FirstOrDefaultAsync(cancel) is not { } row || row.Id != edit)
        {
            return NotNext;
        }

        row.UndoneAt = clock.GetCurrentInstant();
        return await DoAsync(db, row, [.. RowChange.Read(row.Changes).Reverse().Select(c => c.Reverse())], "edit.undone", cancel);
    }

    /// <summary>Does an edit again that was undone. Refused when it is not the next one, or when somebody changed the same since.</summary>
    /// <param name="squadId">Null for the whole club.</param>
    public async Task<Result<Edit>> RedoAsync(Guid? squadId, Guid edit, Guid by, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        await db.LockToChangeAsync(squadId, cancel);
        if (await ToRedo(db, squadId, by).FirstOrDefaultAsync(cancel) is not { } row || row.Id != edit)
        {
            return NotNext;
        }

        row.UndoneAt = null;
        return await DoAsync(db, row, RowChange.Read(row.Changes), "edit.redone", cancel);
    }

    private async Task<Result<Edit>> DoAsync(ClubCycleDb db, EditRow edit, IReadOnlyList<RowChange> changes, string what, CancellationToken cancel)
    {
        // Stints have no version of their own. Their season's is read before them, so that a save in between is noticed.
        if (changes.Any(c => c.Table == db.Model.FindEntityType(typeof(StintRow))!.GetTableName()))
        {
            await db.Seasons.LoadAsync(cancel);
        }

        foreach (var change in changes)
        {
            if (!await change.ApplyAsync(db, cancel))
            {
                return Changed(edit);
            }
        }

        // Whoever has a season's form open sees that its dates are others now.
        foreach (var stint in db.ChangeTracker.Entries<StintRow>().Where(s => s.State != EntityState.Unchanged).ToList())
        {
            if (await db.Seasons.FindAsync([stint.Entity.ClubId, stint.Entity.SeasonId], cancel) is { } season && db.Entry(season).State == EntityState.Unchanged)
            {
                db.Entry(season).State = EntityState.Modified;
            }
        }

        db.Note(clock.GetCurrentInstant(), edit.By, what, edit.SquadId, edit.Words);
        return await db.TryCommitAsync(Changed(edit), cancel) is { } problem ? problem : new Edit(edit.Id, edit.Words, edit.At);
    }

    private static IQueryable<EditRow> ToUndo(ClubCycleDb db, Guid? squadId, Guid by) =>
        db.Edits.Where(e => e.SquadId == squadId && e.By == by && e.UndoneAt == null).OrderByDescending(e => e.Number);

    // A new edit removes what was undone, so that whatever is undone comes after all that counts.
    private static IQueryable<EditRow> ToRedo(ClubCycleDb db, Guid? squadId, Guid by) =>
        db.Edits.Where(e => e.SquadId == squadId && e.By == by && e.UndoneAt != null).OrderBy(e => e.Number);

    private static Problem NotNext { get; } = new("edit.not-next", "This is not the next step any more. Look at what the button says now, and press it again if you still want to.");

    private static Problem Changed(EditRow edit) => new(
        "edit.changed-meanwhile", $"'{edit.Words}' cannot be taken back or done again: the same was changed after it. Look at how it is now, and change it by hand if it is still wrong.");
}
