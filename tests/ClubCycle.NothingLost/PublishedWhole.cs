using ClubCycle.Data;
using ClubCycle.Data.Outbox;
using ClubCycle.Planning;
using ClubCycle.Planning.PlanFiles;
using Microsoft.EntityFrameworkCore;

namespace ClubCycle.NothingLost;

/// <summary>A publishing writes a revision, what phones are told, and work for the feeds: all of it or nothing.</summary>
internal static class PublishedWhole
{
    /// <summary>What is missing of a squad's latest publishing; null for nothing.</summary>
    /// <param name="newest">The squad's feed shows this revision already, so the work may be done.</param>
    public static async Task<string?> WrongAsync(ClubCycleDb db, Guid squad, Func<SquadPlan, Task<bool>> newest)
    {
        var numbers = await db.Revisions.Where(r => r.SquadId == squad).OrderBy(r => r.Number).Select(r => r.Number).ToListAsync();
        if (!numbers.SequenceEqual(Enumerable.Range(1, numbers.Count)))
        {
            return $"revisions are {string.Join(", ", numbers)}";
        }

        if (numbers.Count == 0)
        {
            return await db.Sessions.AnyAsync(s => s.SquadId == squad) ? "phones are told of sessions that nobody published" : null;
        }

        var latest = await db.Revisions.Where(r => r.SquadId == squad && r.Number == numbers.Count).Select(r => new { r.Plan, r.PublishedAt }).SingleAsync();
        var plan = PlanFile.ReadPlan(latest.Plan).OrThrow();
        var told = await db.Sessions.AsNoTracking().Where(s => s.SquadId == squad && s.CancelledAt == null).Select(s => new { s.Uid, s.Date, s.Start, s.Minutes }).ToListAsync();
        var planned = plan.Sessions.Select(s => new { s.Uid, s.Date, s.Start, s.Minutes }).ToHashSet();
        if (!planned.SetEquals(told))
        {
            return $"revision {numbers.Count} has {planned.Count} sessions and phones are told of {told.Count}, {planned.Intersect(told).Count()} of them the same";
        }

        return await db.Outbox.AnyAsync(o => o.SquadId == squad && o.Kind == OutboxKinds.RenderFeeds) || await newest(plan) ? null : $"revision {numbers.Count} is not in the feed, and nobody will render it";
    }
}
