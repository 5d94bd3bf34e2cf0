using ClubCycle.Data.Fixtures;
using ClubCycle.Data.Seasons;
using ClubCycle.Data.Squads;
using ClubCycle.Planning;
using ClubCycle.Planning.Seasons;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Plans;

/// <summary>Everything stored that a squad's year depends on.</summary>
/// <param name="UsualMatches">Nobody has entered a match in this cycle: the request holds one a match day.</param>
/// <param name="Revision">Number of the latest revision, of whatever cycle; 0 before the first.</param>
/// <param name="Latest">What is published for the cycle; null for nothing. The request stays close to another plan while one is being restored.</param>
/// <param name="Own">The squad's own rows among them, without what belongs to the whole club.</param>
internal sealed record PlanInput(
    SquadRow Squad, PlanRequest Request, bool UsualMatches, int Revision, SquadPlan? Latest, IReadOnlyList<AcceptedFinding> Accepted, IReadOnlyList<IUndoableRow> Own);

/// <summary>Loads what planning needs, for one squad or for all, in the same few queries.</summary>
internal static class PlanInputs
{
    /// <summary>Four weeks, and the days between a cycle's start and its first whole week.</summary>
    private const int DaysBefore = 34;

    public static async Task<Result<PlanInput>> LoadOneAsync(ClubCycleDb db, Guid squadId, Instant now, PublishedPlans? published, CancellationToken cancel) =>
        await LoadAsync(db, [squadId], now, published, cancel) is [var (_, input)] ? input : Refusal.NotFound("squad");

    /// <param name="only">Null for every squad of the club.</param>
    /// <param name="published">Null when the caller does not care what is published.</param>
    /// <param name="change">What would be different; null for what is stored.</param>
    public static async Task<IReadOnlyList<(SquadRow Squad, Result<PlanInput> Input)>> LoadAsync(
        ClubCycleDb db, IReadOnlyCollection<Guid>? only, Instant now, PublishedPlans? published, CancellationToken cancel, InputChange? change = null)
    {
        var club = await db.Clubs.AsNoTracking().SingleAsync(cancel);
        var zone = DateTimeZoneProviders.Tzdb[club.TimeZone];
        var today = now.InZone(zone).Date;
        var squads = await db.Squads.AsNoTracking().Where(s => only == null || only.Contains(s.Id)).ToListAsync(cancel);
        var seasonRows = await db.Seasons.AsNoTracking().Include(s => s.Stints).Where(s => only == null || s.SquadId == null || only.Contains(s.SquadId.Value)).ToListAsync(cancel);
        var seasons = seasonRows.ConvertAll(s => new StoredSeason(s.Id, s.SquadId, s.ToSeason(), s.Version));
        var closed = (await db.ClosedDays.AsNoTracking().Where(c => only == null || c.SquadId == null || only.Contains(c.SquadId.Value)).ToListAsync(cancel))
            .OrderBy(c => c.Days.Start).ThenBy(c => c.Days.End).ThenBy(c => c.Why, StringComparer.Ordinal).ToList();
        var fixtures = (await db.Fixtures.AsNoTracking().Where(f => only == null || only.Contains(f.SquadId)).ToListAsync(cancel)).ToLookup(f => f.SquadId);
        var pins = (await db.Pins.AsNoTracking().Where(p => only == null || only.Contains(p.SquadId)).ToListAsync(cancel)).ToLookup(p => p.SquadId);
        var lengths = (await db.PhaseLengths.AsNoTracking().Where(l => only == null || only.Contains(l.SquadId)).ToListAsync(cancel)).ToLookup(l => (l.SquadId, l.SeasonId));
        var accepted = (await db.AcceptedFindings.AsNoTracking().Where(a => only == null || only.Contains(a.SquadId)).ToListAsync(cancel)).ToLookup(a => a.SquadId);
        var templates = await (published ?? new PublishedPlans()).TemplatesAsync(db, squads.Select(s => (s.TemplateId, s.TemplateVersion)), cancel);
        var latest = published is null ? [] : await published.LatestAsync(db, only, cancel);
        var restored = published is null ? [] : await PublishedPlans.OlderAsync(
            db, squads.Where(s => s.RestoredFrom is not null && s.RestoredOver == latest.GetValueOrDefault(s.Id).Number).ToDictionary(s => s.Id, s => s.RestoredFrom!.Value), cancel);
        var cycles = squads.Select(s => (Squad: s.Id, Season: SeasonOf(s))).Where(s => s.Season is not null).ToDictionary(s => s.Squad, s => s.Season!.Season.Cycle);
        var before = published is null ? [] : await published.BeforeAsync(db, cycles, latest, cancel);

        return [.. squads.Select(squad => (squad, InputOf(squad)))];

        StoredSeason? SeasonOf(SquadRow squad) => change?.Season is { } other ? new StoredSeason(change.SeasonId, squad.Id, other, 0) : EffectiveSeason.Of(seasons, squad.Id, today);

        Result<PlanInput> InputOf(SquadRow squad)
        {
            if (SeasonOf(squad) is not { Season: var season, Id: var seasonId })
            {
                return EffectiveSeason.Missing;
            }

            var cycle = season.Cycle;
            List<ClosedDays> ownClosed =
            [
                .. closed.Where(c => c.SquadId is null || c.SquadId == squad.Id).Select(c => new ClosedDays(c.Days.Start, c.Days.End, c.Why)),
                .. change?.Closed ?? [],
            ];
            List<FixtureRow> entered = [.. fixtures[squad.Id].Where(f => cycle.Contains(f.Date)).OrderBy(f => f.Date).ThenBy(f => f.Start).ThenBy(f => f.Id)];
            List<PinRow> decided = [.. pins[squad.Id].Where(p => cycle.Contains(p.WeekFirst.PlusDays(6)) || cycle.Contains(p.WeekFirst)).OrderBy(p => p.WeekFirst).ThenBy(p => p.Slot, StringComparer.Ordinal)];
            List<PhaseLengthRow> set = [.. lengths[(squad.Id, seasonId)].OrderBy(l => l.Gap).ThenBy(l => l.Phase)];
            var (revision, plan) = latest.GetValueOrDefault(squad.Id);
            LocalDate? planFrom = today > cycle.Start && today <= cycle.End ? today : null;
            var current = plan is not null && plan.Cycle.Intersection(cycle) is not null ? plan : null;
            var request = new PlanRequest(
                zone, club.FirstWeekday, squad.ToSquad(), season,
                entered.Count > 0 ? entered.ConvertAll(f => f.ToFixture()) : UsualMatches.Of(squad.Id, squad.MatchDay, season, ownClosed),
                ownClosed,
                templates[(squad.TemplateId, squad.TemplateVersion)],
                planFrom,
                Published: current is not null && restored.TryGetValue(squad.Id, out var older) ? WithPastOf(current, older, planFrom) : current,
                Pins: decided.ConvertAll(p => p.ToPin()),
                Lengths: set.ConvertAll(l => l.ToLength()),
                Before: before.TryGetValue(squad.Id, out var last) ? [.. last.Sessions.Where(s => s.Date >= cycle.Start.PlusDays(-DaysBefore))] : null);
            var ownSeason = seasonRows.Find(s => s.Id == seasonId && s.SquadId == squad.Id);
            return new PlanInput(
                squad, request, entered.Count == 0, revision, current, [.. accepted[squad.Id].Select(AcceptedFinding.Of)],
                [squad, .. entered, .. decided, .. set, .. closed.Where(c => c.SquadId == squad.Id && c.Days.Intersection(cycle) is not null), .. ownSeason is null ? [] : (IUndoableRow[])[ownSeason, .. ownSeason.Stints]]);
        }
    }

    /// <summary>An older plan whose past is what happened.</summary>
    private static SquadPlan WithPastOf(SquadPlan current, SquadPlan older, LocalDate? planFrom)
    {
        var happened = current.Sessions.Where(s => s.Date < planFrom).ToList();
        var known = happened.Select(s => s.Uid).ToHashSet();
        return older with { Sessions = [.. happened, .. older.Sessions.Where(s => !(s.Date < planFrom) && !known.Contains(s.Uid))] };
    }
}
