using ClubCycle.Data.Audit;
using ClubCycle.Data.Edits;
using ClubCycle.Data.Squads;
using ClubCycle.Planning;
using ClubCycle.Planning.Replanning;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using NodaTime;

namespace ClubCycle.Data.Plans;

/// <summary>Decisions about single sessions that re-planning keeps. The last decision about a slot of a week counts.</summary>
public sealed class PinStore(IClubDbFactory contexts, IClock clock)
{
    public const int LongestSlot = 120;

    private Seen? _seen;

    public async Task<IReadOnlyList<Pin>> ListAsync(Guid squadId, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        var rows = await db.Pins.AsNoTracking().Where(p => p.SquadId == squadId).OrderBy(p => p.WeekFirst).ThenBy(p => p.Slot).ToListAsync(cancel);
        return rows.ConvertAll(r => r.ToPin());
    }

    /// <summary>For somebody who decides about one session: refused when what was decided about it is no longer what they saw.</summary>
    /// <param name="decided">Null for nothing.</param>
    public PinStore WhoSaw(Pin? decided) => new(contexts, clock) { _seen = new Seen(decided) };

    /// <summary>Fixes a day and a time, or leaves the session out; what else was decided about it stays.</summary>
    public Task<Result<Pin>> PinAsync(Guid squadId, Pin pin, Guid by, CancellationToken cancel = default) =>
        ChangeAsync(squadId, pin.WeekFirst, pin.Slot, by, pin.Skipped ? "session.skipped" : "session.pinned", row => (row.Date, row.Start, row.Skipped) = (pin.Date, pin.Start, pin.Skipped), cancel);

    /// <summary>All that a coach decides about a session, in one act; what is null is the planner's again.</summary>
    public Task<Result<Pin>> EditAsync(Guid squadId, Pin pin, Guid by, CancellationToken cancel = default) => ChangeAsync(
        squadId, pin.WeekFirst, pin.Slot, by, "session.edited",
        row => (row.Date, row.Start, row.Skipped, row.Workout, row.Minutes, row.Note) = (pin.Date, pin.Start, pin.Skipped, pin.Workout, pin.Minutes, PinCheck.Trimmed(pin.Note)), cancel);

    /// <summary>Makes the slot's session another workout this week; a day that was fixed stays.</summary>
    /// <param name="workout">Null for the template's again.</param>
    public Task<Result<Pin>> SwapAsync(Guid squadId, LocalDate weekFirst, string slot, string? workout, Guid by, CancellationToken cancel = default) =>
        ChangeAsync(squadId, weekFirst, slot, by, workout is null ? "session.unswapped" : "session.swapped", row => row.Workout = workout, cancel);

    /// <summary>Leaves day, time and whether it takes place to the planner again. A swap, minutes and a note stay.</summary>
    public async Task<Result<Pin>> UnpinAsync(Guid squadId, LocalDate weekFirst, string slot, Guid by, CancellationToken cancel = default) =>
        slot.StartsWith(Pin.AddedSlot, StringComparison.Ordinal)
            ? new Problem("pin.added", "A session that a coach added has no other day than the one it was given. Move it, or remove it.", "pin.date")
            : await ChangeAsync(squadId, weekFirst, slot, by, "session.unpinned", row => (row.Date, row.Start, row.Skipped) = (null, null, false), cancel);

    /// <summary>Adds a session that no template asks for, in the week of its day.</summary>
    public async Task<Result<Pin>> AddAsync(Guid squadId, LocalDate date, LocalTime? start, string workout, int minutes, string? note, Guid by, CancellationToken cancel = default)
    {
        if (PlanDates.Problem(date, "pin", "pin.date") is { } outside)
        {
            return outside;
        }

        await using var db = await contexts.OpenAsync(cancel);
        await using var transaction = await ToChangeAsync(db, squadId, cancel);
        if (await SquadAsync(db, squadId, cancel) is not { } squad)
        {
            return Refusal.NotFound("squad");
        }

        var club = await db.Clubs.AsNoTracking().SingleAsync(cancel);
        if (date < clock.GetCurrentInstant().InZone(DateTimeZoneProviders.Tzdb[club.TimeZone]).Date)
        {
            return new Problem("pin.over", "That day is over. Choose today or a day to come.", "pin.date");
        }

        var week = date.With(DateAdjusters.PreviousOrSame(club.FirstWeekday));
        var taken = await db.Pins.Where(p => p.SquadId == squadId && p.WeekFirst == week && p.Slot.StartsWith(Pin.AddedSlot)).Select(p => p.Slot).ToListAsync(cancel);
        if (taken.Count >= PinCheck.MostAdded)
        {
            return new Problem("pin.too-many", $"A week takes {PinCheck.MostAdded} added sessions at most. Remove one of them first.", "pin");
        }

        var row = new PinRow { ClubId = db.ClubId, SquadId = squadId, WeekFirst = week, Slot = await FreeSlotAsync(db, squad.Id, week, taken, cancel) };
        (row.Date, row.Start, row.Workout, row.Minutes, row.Note) = (date, start, workout, minutes, PinCheck.Trimmed(note));
        db.Pins.Add(row);
        return await SaveAsync(db, squad, row, by, "session.added", cancel);
    }

    private static Problem? Check(LocalDate weekFirst, string slot) =>
        PlanDates.Problem(weekFirst, "pin", "pin.weekFirst") ?? (slot.Length <= LongestSlot && slot.Contains('.') && slot.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c is '-' or '.')
            ? null : new Problem("pin.slot", "There is no such session. Go back to the week and choose it there.", "pin.slot"));

    /// <summary>Takes a session out again that a coach added.</summary>
    public async Task<Result<Guid>> RemoveAddedAsync(Guid squadId, LocalDate weekFirst, string slot, Guid by, CancellationToken cancel = default)
    {
        if (Check(weekFirst, slot) is { } unreadable)
        {
            return unreadable;
        }

        await using var db = await contexts.OpenAsync(cancel);
        await using var transaction = await ToChangeAsync(db, squadId, cancel);
        if (!slot.StartsWith(Pin.AddedSlot, StringComparison.Ordinal) || await RowAsync(db, squadId, weekFirst, slot, cancel) is not { } row)
        {
            return Refusal.NotFound("session");
        }

        if (_seen is { } seen && seen.Pin != row.ToPin())
        {
            return Refusal.Meanwhile("session");
        }

        db.Pins.Remove(row);
        var now = clock.GetCurrentInstant();
        db.Note(now, by, "session.removed", squadId, Details(row));
        await db.RememberAsync(now, by, squadId, $"Remove {EditWords.Slot(row.Slot, row.WeekFirst)}", cancel);
        return await db.TryCommitAsync(Refusal.Meanwhile("session"), cancel) is { } problem ? problem : squadId;
    }

    /// <summary>The next number that neither a decision nor anything players were told of has, so that phones never take one session for another.</summary>
    private static async Task<string> FreeSlotAsync(ClubCycleDb db, Guid squadId, LocalDate week, List<string> taken, CancellationToken cancel)
    {
        var candidates = Enumerable.Range(1, 100).Select(Pin.AddedSlotOf).Except(taken, StringComparer.Ordinal).ToDictionary(slot => PlannedSession.UidOf(squadId, week, slot));
        var told = await db.Sessions.Where(s => s.SquadId == squadId && candidates.Keys.Contains(s.Uid)).Select(s => s.Uid).ToListAsync(cancel);
        return candidates.First(c => !told.Contains(c.Key)).Value;
    }

    private async Task<Result<Pin>> ChangeAsync(Guid squadId, LocalDate weekFirst, string slot, Guid by, string what, Action<PinRow> change, CancellationToken cancel)
    {
        if (Check(weekFirst, slot) is { } unreadable)
        {
            return unreadable;
        }

        await using var db = await contexts.OpenAsync(cancel);
        await using var transaction = await ToChangeAsync(db, squadId, cancel);
        if (await SquadAsync(db, squadId, cancel) is not { } squad)
        {
            return Refusal.NotFound("squad");
        }

        var known = await RowAsync(db, squadId, weekFirst, slot, cancel);
        if (_seen is { } seen && seen.Pin != known?.ToPin())
        {
            return Refusal.Meanwhile("session");
        }

        var row = known ?? new PinRow { ClubId = db.ClubId, SquadId = squadId, WeekFirst = weekFirst, Slot = slot };
        change(row);
        if (known is null && (row.ToPin().IsAdded || SaysNothing(row)))
        {
            return Refusal.NotFound(row.ToPin().IsAdded ? "session" : "pin");
        }

        if (SaysNothing(row))
        {
            db.Pins.Remove(row);
        }
        else if (known is null)
        {
            db.Pins.Add(row);
        }

        return await SaveAsync(db, squad, row, by, what, cancel);
    }

    private async Task<Result<Pin>> SaveAsync(ClubCycleDb db, SquadRow squad, PinRow row, Guid by, string what, CancellationToken cancel)
    {
        var pin = row.ToPin();
        if (!SaysNothing(row) && ProblemsOf(pin, squad) is { Count: > 0 } problems)
        {
            return new Result<Pin>.Failed(problems);
        }

        (row.DecidedBy, row.DecidedAt) = (by, clock.GetCurrentInstant());
        db.Note(row.DecidedAt, by, what, squad.Id, Details(row));
        await db.RememberAsync(row.DecidedAt, by, squad.Id, $"{Verb(what)} {EditWords.Slot(row.Slot, row.WeekFirst)}", cancel);
        return await db.TryCommitAsync(Refusal.Meanwhile("session"), cancel) is { } problem ? problem : pin;
    }

    private static List<Problem> ProblemsOf(Pin pin, SquadRow squad) =>
        pin.IsAdded && pin.Skipped ? [new Problem("pin.added", "A session that a coach added is not skipped but removed.", "pin")]
        : pin.Date is { } date && (date < pin.WeekFirst || date > pin.WeekFirst.PlusDays(6)) ? [new Problem("pin.outside-week", "A session stays in its week. Choose a day of the same week, or skip it here and add one there.", "pin.date")]
        : [.. PinCheck.Check(pin, squad.ToSquad().AgeGroup, "pin")];

    private static bool SaysNothing(PinRow row) => row is { Date: null, Start: null, Skipped: false, Workout: null, Minutes: null, Note: null };

    /// <summary>From here on nobody else decides about the squad's sessions until the transaction ends.</summary>
    private static async Task<IDbContextTransaction> ToChangeAsync(ClubCycleDb db, Guid squadId, CancellationToken cancel)
    {
        var transaction = await db.Database.BeginTransactionAsync(cancel);
        await db.LockToChangeAsync(squadId, cancel);
        return transaction;
    }

    private static Task<SquadRow?> SquadAsync(ClubCycleDb db, Guid squadId, CancellationToken cancel) => db.Squads.AsNoTracking().SingleOrDefaultAsync(s => s.Id == squadId, cancel);

    private static Task<PinRow?> RowAsync(ClubCycleDb db, Guid squadId, LocalDate weekFirst, string slot, CancellationToken cancel) =>
        db.Pins.SingleOrDefaultAsync(p => p.SquadId == squadId && p.WeekFirst == weekFirst && p.Slot == slot, cancel);

    private static string Verb(string what) => what switch
    {
        "session.skipped" => "Skip",
        "session.pinned" => "Move",
        "session.edited" => "Edit",
        "session.swapped" => "Swap",
        "session.unswapped" => "Swap back",
        "session.unpinned" => "Unpin",
        "session.added" => "Add",
        _ => throw new InvalidOperationException($"No words for '{what}'."),
    };

    private static string Details(PinRow row) => $"{row.Slot}, week of {row.WeekFirst:uuuu-MM-dd}";

    private sealed record Seen(Pin? Pin);
}
