using ClubCycle.Data.Audit;
using ClubCycle.Data.Edits;
using ClubCycle.Planning;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Workouts;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Plans;

/// <summary>Decisions about single sessions that re-planning keeps. The last decision about a slot of a week counts.</summary>
public sealed class PinStore(IClubDbFactory contexts, IClock clock)
{
    public const int LongestSlot = 120;

    public async Task<IReadOnlyList<Pin>> ListAsync(Guid squadId, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        var rows = await db.Pins.AsNoTracking().Where(p => p.SquadId == squadId).OrderBy(p => p.WeekFirst).ThenBy(p => p.Slot).ToListAsync(cancel);
        return rows.ConvertAll(r => r.ToPin());
    }

    public async Task<Result<Pin>> PinAsync(Guid squadId, Pin pin, Guid by, CancellationToken cancel = default)
    {
        if (Check(pin.WeekFirst, pin.Slot) is { } unreadable)
        {
            return unreadable;
        }

        await using var db = await contexts.OpenAsync(cancel);
        if (!await db.Squads.AnyAsync(s => s.Id == squadId, cancel))
        {
            return Refusal.NotFound("squad");
        }

        if (pin.Date is { } date && (date < pin.WeekFirst || date > pin.WeekFirst.PlusDays(6)))
        {
            return new Problem("pin.outside-week", "A session stays in its week. Choose a day of the same week, or skip it here and add one there.", "pin.date");
        }

        var row = await db.Pins.SingleOrDefaultAsync(p => p.SquadId == squadId && p.WeekFirst == pin.WeekFirst && p.Slot == pin.Slot, cancel);
        if (row is null)
        {
            db.Pins.Add(row = new PinRow { ClubId = db.ClubId, SquadId = squadId, WeekFirst = pin.WeekFirst, Slot = pin.Slot });
        }

        (row.Date, row.Start, row.Skipped, row.DecidedBy, row.DecidedAt) = (pin.Date, pin.Start, pin.Skipped, by, clock.GetCurrentInstant());
        db.Note(row.DecidedAt, by, pin.Skipped ? "session.skipped" : "session.pinned", squadId, $"{pin.Slot}, week of {pin.WeekFirst:uuuu-MM-dd}");
        await db.RememberAsync(row.DecidedAt, by, squadId, $"{(pin.Skipped ? "Skip" : "Move")} {EditWords.Slot(pin.Slot, pin.WeekFirst)}", cancel);
        await db.SaveChangesAsync(cancel);
        return pin;
    }

    /// <summary>Makes the slot's session another workout this week; a day that was fixed stays.</summary>
    /// <param name="workout">Null for the template's again.</param>
    public async Task<Result<Guid>> SwapAsync(Guid squadId, LocalDate weekFirst, string slot, string? workout, Guid by, CancellationToken cancel = default)
    {
        if (Check(weekFirst, slot) is { } unreadable)
        {
            return unreadable;
        }

        await using var db = await contexts.OpenAsync(cancel);
        if (await db.Squads.AsNoTracking().SingleOrDefaultAsync(s => s.Id == squadId, cancel) is not { } squad)
        {
            return Refusal.NotFound("squad");
        }

        if (workout is not null && WorkoutCatalogue.Find(workout)?.AllowedFor(squad.ToSquad().AgeGroup) != true)
        {
            return new Problem("pin.workout", $"This workout is not for {squad.AgeGroup}. Choose one from the list.", "pin.workout");
        }

        var row = await db.Pins.SingleOrDefaultAsync(p => p.SquadId == squadId && p.WeekFirst == weekFirst && p.Slot == slot, cancel);
        if (row is null)
        {
            if (workout is null)
            {
                return Refusal.NotFound("pin");
            }

            db.Pins.Add(row = new PinRow { ClubId = db.ClubId, SquadId = squadId, WeekFirst = weekFirst, Slot = slot });
        }

        (row.Workout, row.DecidedBy, row.DecidedAt) = (workout, by, clock.GetCurrentInstant());
        if (row is { Workout: null, Date: null, Skipped: false })
        {
            db.Pins.Remove(row);
        }

        db.Note(row.DecidedAt, by, workout is null ? "session.unswapped" : "session.swapped", squadId, $"{slot}, week of {weekFirst:uuuu-MM-dd}");
        await db.RememberAsync(row.DecidedAt, by, squadId, $"{(workout is null ? "Swap back" : "Swap")} {EditWords.Slot(slot, weekFirst)}", cancel);
        await db.SaveChangesAsync(cancel);
        return squadId;
    }

    private static Problem? Check(LocalDate weekFirst, string slot) =>
        PlanDates.Problem(weekFirst, "pin", "pin.weekFirst") ?? (slot.Length <= LongestSlot && slot.Contains('.') && slot.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c is '-' or '.')
            ? null : new Problem("pin.slot", "There is no such session. Go back to the week and choose it there.", "pin.slot"));

    /// <summary>Leaves the slot to the planner again.</summary>
    public async Task<Result<Guid>> UnpinAsync(Guid squadId, LocalDate weekFirst, string slot, Guid by, CancellationToken cancel = default)
    {
        if (Check(weekFirst, slot) is { } unreadable)
        {
            return unreadable;
        }

        await using var db = await contexts.OpenAsync(cancel);
        if (await db.Pins.SingleOrDefaultAsync(p => p.SquadId == squadId && p.WeekFirst == weekFirst && p.Slot == slot, cancel) is not { } row)
        {
            return Refusal.NotFound("pin");
        }

        db.Pins.Remove(row);
        var now = clock.GetCurrentInstant();
        db.Note(now, by, "session.unpinned", squadId, $"{slot}, week of {weekFirst:uuuu-MM-dd}");
        await db.RememberAsync(now, by, squadId, $"Unpin {EditWords.Slot(slot, weekFirst)}", cancel);
        await db.SaveChangesAsync(cancel);
        return squadId;
    }
}
