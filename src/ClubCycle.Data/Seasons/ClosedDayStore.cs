using ClubCycle.Data.Audit;
using ClubCycle.Data.Edits;
using ClubCycle.Planning;
using ClubCycle.Planning.Seasons;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Seasons;

/// <param name="SquadId">Null for the whole club.</param>
public sealed record StoredClosedDays(Guid Id, Guid? SquadId, ClosedDays Days);

/// <summary>Days on which the club or a squad does not train.</summary>
public sealed class ClosedDayStore(IClubDbFactory contexts, IClock clock)
{
    public const int MostAtOnce = 200;

    public async Task<IReadOnlyList<StoredClosedDays>> ListAsync(CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        var rows = await db.ClosedDays.AsNoTracking().ToListAsync(cancel);
        return [.. rows.Select(r => new StoredClosedDays(r.Id, r.SquadId, new ClosedDays(r.Days.Start, r.Days.End, r.Why))).OrderBy(c => c.Days.First).ThenBy(c => c.Id)];
    }

    /// <param name="squadId">Null for the whole club.</param>
    public async Task<Result<Guid>> AddAsync(Guid? squadId, ClosedDays days, Guid by, CancellationToken cancel = default)
    {
        if (days.Problems() is { Count: > 0 } problems)
        {
            return new Result<Guid>.Failed(problems);
        }

        await using var db = await contexts.OpenAsync(cancel);
        if (squadId is not null && !await db.Squads.AnyAsync(s => s.Id == squadId, cancel))
        {
            return Refusal.NotFound("squad");
        }

        var row = RowOf(db, squadId, days);
        db.ClosedDays.Add(row);
        var now = clock.GetCurrentInstant();
        db.Note(now, by, "closed-days.added", squadId);
        await db.RememberAsync(now, by, squadId, $"Close {Words(days)}", cancel);
        await db.SaveChangesAsync(cancel);
        return row.Id;
    }

    /// <summary>Takes many closed days at once, all or none; those that are closed already are not taken twice.</summary>
    /// <param name="squadId">Null for the whole club.</param>
    /// <returns>How many were taken.</returns>
    public async Task<Result<int>> TakeAsync(Guid? squadId, IReadOnlyList<ClosedDays> days, Guid by, CancellationToken cancel = default)
    {
        if (days.Count > MostAtOnce)
        {
            return new Problem("closed.too-many", $"These are {days.Count} closed days at once; {MostAtOnce} at most. Take them in parts.", "closed");
        }

        if (days.SelectMany(d => d.Problems()).Distinct().ToList() is { Count: > 0 } problems)
        {
            return new Result<int>.Failed(problems);
        }

        await using var db = await contexts.OpenAsync(cancel);
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);

        // Who takes days for a club comes one after the other, so that nothing is taken twice. Publishers, who add rows to the club, do not wait for them.
        await db.Database.ExecuteSqlAsync($"select 1 from club.clubs where club_id = {db.ClubId} for no key update", cancel);
        if (squadId is not null && !await db.Squads.AnyAsync(s => s.Id == squadId, cancel))
        {
            return Refusal.NotFound("squad");
        }

        var known = (await db.ClosedDays.AsNoTracking().Where(c => c.SquadId == null || c.SquadId == squadId).ToListAsync(cancel)).ConvertAll(c => new ClosedDays(c.Days.Start, c.Days.End, c.Why));
        var taken = 0;
        foreach (var one in days.Where(one => !one.AreWithin(known)))
        {
            known.Add(one);
            db.ClosedDays.Add(RowOf(db, squadId, one));
            taken++;
        }

        if (taken > 0)
        {
            var now = clock.GetCurrentInstant();
            db.Note(now, by, "closed-days.added", squadId, $"{taken} at once");
            await db.RememberAsync(now, by, squadId, $"Close {taken} entries of days", cancel);
            await db.SaveChangesAsync(cancel);
        }

        await transaction.CommitAsync(cancel);
        return taken;
    }

    /// <param name="squadId">Null for the whole club.</param>
    public async Task<Result<Guid>> RemoveAsync(Guid? squadId, Guid id, Guid by, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        if (await db.ClosedDays.SingleOrDefaultAsync(c => c.Id == id && c.SquadId == squadId, cancel) is not { } row)
        {
            return Refusal.NotFound("closed-days");
        }

        db.ClosedDays.Remove(row);
        var now = clock.GetCurrentInstant();
        db.Note(now, by, "closed-days.removed", row.SquadId);
        await db.RememberAsync(now, by, row.SquadId, $"Open {Words(new ClosedDays(row.Days.Start, row.Days.End, row.Why))} again", cancel);
        return await db.TrySaveAsync(Refusal.NotFound("closed-days"), cancel) is { } problem ? problem : id;
    }

    private static string Words(ClosedDays days) => days.First == days.Last ? EditWords.Day(days.First) : $"{EditWords.Day(days.First)} to {EditWords.Day(days.Last)}";
    private static ClosedDaysRow RowOf(ClubCycleDb db, Guid? squadId, ClosedDays days) =>
        new() { ClubId = db.ClubId, Id = NewId.Create(), SquadId = squadId, Days = new DateInterval(days.First, days.Last), Why = TypedText.Tidy(days.Why) };
}
