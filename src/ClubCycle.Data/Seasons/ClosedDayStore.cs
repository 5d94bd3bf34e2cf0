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
    public const int LongestWhy = ClosedDays.LongestWhy;

    public async Task<IReadOnlyList<StoredClosedDays>> ListAsync(CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        var rows = await db.ClosedDays.AsNoTracking().ToListAsync(cancel);
        return [.. rows.Select(r => new StoredClosedDays(r.Id, r.SquadId, new ClosedDays(r.Days.Start, r.Days.End, r.Why))).OrderBy(c => c.Days.First).ThenBy(c => c.Id)];
    }

    /// <param name="squadId">Null for the whole club.</param>
    public async Task<Result<Guid>> AddAsync(Guid? squadId, ClosedDays days, Guid by, CancellationToken cancel = default)
    {
        if ((PlanDates.Problem(days.First, "closed", "closed.first") ?? PlanDates.Problem(days.Last, "closed", "closed.last")) is { } outside)
        {
            return outside;
        }

        if (days.Last < days.First)
        {
            return new Problem("closed.reversed", "The closed days end before they start. Swap the two dates.", "closed.last");
        }

        if (TypedText.LineProblem(days.Why, LongestWhy, "closed.why", "reason", "closed.why") is { } unreadable)
        {
            return unreadable;
        }

        await using var db = await contexts.OpenAsync(cancel);
        if (squadId is not null && !await db.Squads.AnyAsync(s => s.Id == squadId, cancel))
        {
            return Refusal.NotFound("squad");
        }

        var row = new ClosedDaysRow { ClubId = db.ClubId, Id = NewId.Create(), SquadId = squadId, Days = new DateInterval(days.First, days.Last), Why = TypedText.Tidy(days.Why) };
        db.ClosedDays.Add(row);
        var now = clock.GetCurrentInstant();
        db.Note(now, by, "closed-days.added", squadId);
        await db.RememberAsync(now, by, squadId, $"Close {Words(days)}", cancel);
        await db.SaveChangesAsync(cancel);
        return row.Id;
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
        await db.SaveChangesAsync(cancel);
        return id;
    }

    private static string Words(ClosedDays days) => days.First == days.Last ? EditWords.Day(days.First) : $"{EditWords.Day(days.First)} to {EditWords.Day(days.Last)}";
}
