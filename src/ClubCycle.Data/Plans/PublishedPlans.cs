using System.Collections.Concurrent;
using ClubCycle.Planning;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Templates;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Text;

namespace ClubCycle.Data.Plans;

/// <summary>The latest published plans and the templates that squads use. Neither a revision nor a version of a template ever changes, so each is read from its text once.</summary>
public sealed class PublishedPlans
{
    private const int Most = 500;

    /// <summary>Characters that hold the cycle's days.</summary>
    private const int StartOfPlan = 80;
    private readonly ConcurrentDictionary<(Guid Club, Guid Squad), (int Number, SquadPlan Plan)> _plans = new();
    private readonly ConcurrentDictionary<(Guid Club, Guid Squad, LocalDate LastDay), (int Latest, SquadPlan? Plan)> _before = new();
    private readonly ConcurrentDictionary<(Guid Club, Guid Template, int Number), Template> _templates = new();

    /// <summary>Number and plan of each squad's latest revision.</summary>
    /// <param name="only">Null for every squad of the club.</param>
    internal async Task<Dictionary<Guid, (int Number, SquadPlan Plan)>> LatestAsync(ClubCycleDb db, IReadOnlyCollection<Guid>? only, CancellationToken cancel)
    {
        var latest = await db.Revisions.Where(r => only == null || only.Contains(r.SquadId))
            .GroupBy(r => r.SquadId).Select(g => new { SquadId = g.Key, Number = g.Max(r => r.Number) }).ToListAsync(cancel);
        Dictionary<Guid, (int Number, SquadPlan Plan)> plans = [];
        foreach (var l in latest)
        {
            if (_plans.TryGetValue((db.ClubId, l.SquadId), out var known) && known.Number == l.Number)
            {
                plans.Add(l.SquadId, known);
            }
        }

        if (latest.Count > plans.Count)
        {
            var unread = latest.Select(l => l.SquadId).Except(plans.Keys).ToList();
            var texts = await db.Revisions
                .Where(r => unread.Contains(r.SquadId) && r.Number == db.Revisions.Where(o => o.SquadId == r.SquadId).Max(o => o.Number))
                .Select(r => new { r.SquadId, r.Number, r.Plan }).ToListAsync(cancel);
            foreach (var text in texts)
            {
                var plan = PlanFile.ReadPlan(text.Plan).OrThrow();
                plans.Add(text.SquadId, (text.Number, plan));
                Keep(db.ClubId, text.SquadId, text.Number, plan);
            }
        }

        return plans;
    }

    /// <summary>Plans of certain revisions, latest or not.</summary>
    internal static async Task<Dictionary<Guid, SquadPlan>> OlderAsync(ClubCycleDb db, IReadOnlyDictionary<Guid, int> numbers, CancellationToken cancel)
    {
        Dictionary<Guid, SquadPlan> plans = [];
        foreach (var (squad, number) in numbers)
        {
            if (await db.Revisions.Where(r => r.SquadId == squad && r.Number == number).Select(r => r.Plan).SingleOrDefaultAsync(cancel) is { } text)
            {
                plans.Add(squad, PlanFile.ReadPlan(text).OrThrow());
            }
        }

        return plans;
    }

    /// <summary>Remembers a revision, once it is committed.</summary>
    internal void Keep(Guid club, Guid squad, int number, SquadPlan plan) => Put(_plans, (club, squad), (number, plan));

    private static void Put<TKey, TValue>(ConcurrentDictionary<TKey, TValue> kept, TKey key, TValue value)
        where TKey : notnull
    {
        if (kept.Count >= Most)
        {
            kept.Clear();
        }

        kept[key] = value;
    }

    /// <summary>The latest published plan of each squad's cycle before, where it ended on the day before the given cycle starts.</summary>
    /// <param name="latest">As <see cref="LatestAsync"/> gives them.</param>
    internal async Task<Dictionary<Guid, SquadPlan>> BeforeAsync(
        ClubCycleDb db, IReadOnlyDictionary<Guid, DateInterval> cycles, IReadOnlyDictionary<Guid, (int Number, SquadPlan Plan)> latest, CancellationToken cancel)
    {
        Dictionary<Guid, SquadPlan> before = [];
        foreach (var (squad, (number, plan)) in latest)
        {
            if (!cycles.TryGetValue(squad, out var cycle))
            {
                continue;
            }

            var lastDay = cycle.Start.PlusDays(-1);
            var found = plan.Cycle.End == lastDay ? plan
                : plan.Cycle.End < lastDay || number == 1 ? null
                : await EarlierAsync(db, squad, number, lastDay, cancel);
            if (found is not null)
            {
                before[squad] = found;
            }
        }

        return before;
    }

    private async Task<SquadPlan?> EarlierAsync(ClubCycleDb db, Guid squad, int latest, LocalDate lastDay, CancellationToken cancel)
    {
        if (_before.TryGetValue((db.ClubId, squad, lastDay), out var known) && known.Latest == latest)
        {
            return known.Plan;
        }

        // A plan file begins with its cycle's first and last day.
        var day = LocalDatePattern.Iso.Format(lastDay);
        var text = await db.Revisions.Where(r => r.SquadId == squad && r.Plan.Substring(0, StartOfPlan).Contains("\"last\": \"" + day))
            .OrderByDescending(r => r.Number).Select(r => r.Plan).FirstOrDefaultAsync(cancel);
        var plan = text is null ? null : PlanFile.ReadPlan(text).OrThrow();
        Put(_before, (db.ClubId, squad, lastDay), (latest, plan));
        return plan;
    }

    /// <summary>Versions of templates.</summary>
    internal async Task<Dictionary<(Guid Id, int Number), Template>> TemplatesAsync(ClubCycleDb db, IEnumerable<(Guid Id, int Number)> used, CancellationToken cancel)
    {
        Dictionary<(Guid Id, int Number), Template> templates = [];
        HashSet<(Guid Id, int Number)> unread = [];
        foreach (var version in used)
        {
            if (_templates.TryGetValue((db.ClubId, version.Id, version.Number), out var known))
            {
                templates[version] = known;
            }
            else
            {
                unread.Add(version);
            }
        }

        if (unread.Count == 0)
        {
            return templates;
        }

        var (ids, numbers) = (unread.Select(u => u.Id).Distinct().ToList(), unread.Select(u => u.Number).Distinct().ToList());
        var texts = await db.TemplateVersions.Where(v => ids.Contains(v.TemplateId) && numbers.Contains(v.Number)).Select(v => new { v.TemplateId, v.Number, v.Body }).ToListAsync(cancel);
        foreach (var text in texts.Where(t => unread.Contains((t.TemplateId, t.Number))))
        {
            var template = TemplateFile.Read(text.Body).OrThrow();
            templates[(text.TemplateId, text.Number)] = template;
            Put(_templates, (db.ClubId, text.TemplateId, text.Number), template);
        }

        return templates;
    }
}
