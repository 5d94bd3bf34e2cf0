using ClubCycle.Data.Audit;
using ClubCycle.Data.Clubs;
using ClubCycle.Data.Edits;
using ClubCycle.Data.Seasons;
using ClubCycle.Data.Squads;
using ClubCycle.Planning;
using ClubCycle.Planning.Phases;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Plans;

/// <summary>Lengths that coaches give the phases of a squad's cycle, for the season that the squad plans for now.</summary>
public sealed class PhaseLengthStore(IClubDbFactory contexts, IClock clock)
{
    private IReadOnlyList<PhaseLength>? _seen;

    public async Task<IReadOnlyList<PhaseLength>> ListAsync(Guid squadId, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return await SeasonAsync(db, squadId, cancel) is { } season
            ? [.. (await db.PhaseLengths.AsNoTracking().Where(l => l.SquadId == squadId && l.SeasonId == season).ToListAsync(cancel)).Select(l => l.ToLength()).OrderBy(l => l.Gap).ThenBy(l => l.Phase)]
            : [];
    }

    /// <summary>For somebody whose change rests on the lengths that were set: refused when those of the gap are no longer what they saw.</summary>
    public PhaseLengthStore WhoSaw(IReadOnlyList<PhaseLength> lengths) => new(contexts, clock) { _seen = lengths };

    /// <summary>These lengths instead of all that the gap had; none leaves its phases to the planner again.</summary>
    public async Task<Result<Guid>> SetAsync(Guid squadId, int gap, IReadOnlyList<PhaseLength> lengths, Guid by, CancellationToken cancel = default)
    {
        if (gap < 0 || lengths.Any(l => l.Gap != gap || l.Phase < 0 || l.Weeks is < 0 or > PhaseLength.MostWeeks) || lengths.DistinctBy(l => (l.Chain, l.Phase)).Count() < lengths.Count)
        {
            return new Problem("length.range", $"A phase lasts 0 to {PhaseLength.MostWeeks} weeks, and each phase of the gap has one length. Set them again.", "lengths");
        }

        await using var db = await contexts.OpenAsync(cancel);
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        await db.LockToChangeAsync(squadId, cancel);
        if (!await db.Squads.AnyAsync(s => s.Id == squadId, cancel))
        {
            return Refusal.NotFound("squad");
        }

        if (await SeasonAsync(db, squadId, cancel) is not { } season)
        {
            return EffectiveSeason.Missing;
        }

        var rows = await db.PhaseLengths.Where(l => l.SquadId == squadId && l.SeasonId == season && l.Gap == gap).ToListAsync(cancel);
        if (_seen is { } seen && !rows.Select(r => r.ToLength()).ToHashSet().SetEquals(seen.Where(l => l.Gap == gap)))
        {
            return new Problem("phase.changed-meanwhile", "The phases changed after you opened this page. Look at them again, and make your change if you still want to.", "lengths");
        }

        db.PhaseLengths.RemoveRange(rows.Where(r => !lengths.Any(l => l.Chain == r.Chain && l.Phase == r.Phase)));
        foreach (var length in lengths)
        {
            var row = rows.Find(r => r.Chain == length.Chain && r.Phase == length.Phase);
            if (row is null)
            {
                db.PhaseLengths.Add(row = new PhaseLengthRow { ClubId = db.ClubId, SquadId = squadId, SeasonId = season, Gap = gap, Chain = length.Chain, Phase = length.Phase });
            }

            row.Weeks = length.Weeks;
        }

        var now = clock.GetCurrentInstant();
        db.Note(now, by, lengths.Count == 0 ? "phases.released" : "phases.set", squadId, string.Join(", ", lengths.Select(l => $"{l.Chain} {l.Phase}: {l.Weeks} weeks")));
        await db.RememberAsync(now, by, squadId, lengths.Count == 0 ? "Let the planner choose phase lengths" : $"Phase lengths: {string.Join(" and ", lengths.Select(l => $"{l.Weeks} weeks"))}", cancel);
        return await db.TryCommitAsync(Refusal.Meanwhile("phase"), cancel) is { } problem ? problem : squadId;
    }

    private async Task<Guid?> SeasonAsync(ClubCycleDb db, Guid squadId, CancellationToken cancel)
    {
        var today = await ClubStore.TodayAsync(db, clock, cancel);
        var seasons = (await db.Seasons.AsNoTracking().Include(s => s.Stints).Where(s => s.SquadId == null || s.SquadId == squadId).ToListAsync(cancel))
            .ConvertAll(s => new StoredSeason(s.Id, s.SquadId, s.ToSeason(), s.Version));
        return EffectiveSeason.Of(seasons, squadId, today)?.Id;
    }
}
