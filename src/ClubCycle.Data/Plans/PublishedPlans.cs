using System.Collections.Concurrent;
using ClubCycle.Planning;
using ClubCycle.Planning.PlanFiles;
using Microsoft.EntityFrameworkCore;

namespace ClubCycle.Data.Plans;

/// <summary>The latest published plans. A revision never changes, so each is read from its text once.</summary>
public sealed class PublishedPlans
{
    private const int Most = 500;
    private readonly ConcurrentDictionary<(Guid Club, Guid Squad), (int Number, SquadPlan Plan)> _plans = new();

    /// <summary>Number and plan of each squad's latest revision.</summary>
    internal async Task<Dictionary<Guid, (int Number, SquadPlan Plan)>> LatestAsync(ClubCycleDb db, Guid? only, CancellationToken cancel)
    {
        var latest = await db.Revisions.Where(r => only == null || r.SquadId == only)
            .GroupBy(r => r.SquadId).Select(g => new { SquadId = g.Key, Number = g.Max(r => r.Number) }).ToListAsync(cancel);
        var unread = latest.Where(l => !_plans.TryGetValue((db.ClubId, l.SquadId), out var known) || known.Number != l.Number).ToList();
        if (unread.Count > 0)
        {
            var squads = unread.ConvertAll(l => l.SquadId);
            var texts = await db.Revisions
                .Where(r => squads.Contains(r.SquadId) && r.Number == db.Revisions.Where(o => o.SquadId == r.SquadId).Max(o => o.Number))
                .Select(r => new { r.SquadId, r.Number, r.Plan }).ToListAsync(cancel);
            if (_plans.Count + texts.Count > Most)
            {
                _plans.Clear();
            }

            foreach (var text in texts)
            {
                _plans[(db.ClubId, text.SquadId)] = (text.Number, PlanFile.ReadPlan(text.Plan).OrThrow());
            }
        }

        return latest.ToDictionary(l => l.SquadId, l => _plans[(db.ClubId, l.SquadId)]);
    }
}
