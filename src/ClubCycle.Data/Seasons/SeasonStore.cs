using ClubCycle.Data.Audit;
using ClubCycle.Data.Edits;
using ClubCycle.Planning;
using ClubCycle.Planning.Seasons;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Seasons;

/// <summary>A season as stored.</summary>
/// <param name="SquadId">Null for the club's default.</param>
public sealed record StoredSeason(Guid Id, Guid? SquadId, Season Season, int Version);

/// <summary>The club's default seasons and the squads' own.</summary>
public sealed class SeasonStore(IClubDbFactory contexts, IClock clock)
{
    /// <summary>All seasons, in date order; the club's own before those of squads.</summary>
    public async Task<IReadOnlyList<StoredSeason>> ListAsync(CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        var rows = await db.Seasons.AsNoTracking().Include(s => s.Stints).ToListAsync(cancel);
        return [.. rows.Select(r => new StoredSeason(r.Id, r.SquadId, r.ToSeason(), r.Version)).OrderBy(s => s.SquadId is not null).ThenBy(s => s.Season.PreviousLastDay)];
    }

    /// <summary>The season a squad plans for now: its own when it has any, else the club's; the one under way or next, else the last.</summary>
    public async Task<Result<StoredSeason>> EffectiveAsync(Guid squadId, LocalDate today, CancellationToken cancel = default) =>
        EffectiveSeason.Of(await ListAsync(cancel), squadId, today) is { } season ? season : EffectiveSeason.Missing;

    /// <summary>The cycles that squads plan now; none of a squad without season dates.</summary>
    /// <param name="squadId">Null for all squads.</param>
    public async Task<IReadOnlyList<DateInterval>> EffectiveCyclesAsync(Guid? squadId, LocalDate today, CancellationToken cancel = default)
    {
        var seasons = await ListAsync(cancel);
        await using var db = await contexts.OpenAsync(cancel);
        var squads = await db.Squads.Where(s => squadId == null || s.Id == squadId).Select(s => s.Id).ToListAsync(cancel);
        return [.. squads.Select(s => EffectiveSeason.Of(seasons, s, today)?.Season.Cycle).OfType<DateInterval>()];
    }

    /// <param name="squadId">Null for the club's default.</param>
    public async Task<Result<Guid>> AddAsync(Guid? squadId, LocalDate? previousLastDay, IReadOnlyList<Stint> stints, Guid by, CancellationToken cancel = default)
    {
        if (!Season.Create(previousLastDay, stints).TryGet(out var season, out var problems))
        {
            return new Result<Guid>.Failed(problems);
        }

        await using var db = await contexts.OpenAsync(cancel);
        if (squadId is not null && !await db.Squads.AnyAsync(s => s.Id == squadId, cancel))
        {
            return Refusal.NotFound("squad");
        }

        var row = new SeasonRow { ClubId = db.ClubId, Id = NewId.Create(), SquadId = squadId, PreviousLastDay = season.PreviousLastDay };
        db.Seasons.Add(row);
        db.Stints.AddRange(StintsOf(row, season));
        var now = clock.GetCurrentInstant();
        db.Note(now, by, "season.added", squadId);
        await db.RememberAsync(now, by, squadId, $"New season {Words(season)}", cancel);
        return await db.TrySaveAsync(Refusal.Meanwhile("season"), cancel) is { } problem ? problem : row.Id;
    }

    public async Task<Result<int>> SaveAsync(Guid id, LocalDate? previousLastDay, IReadOnlyList<Stint> stints, int expectedVersion, Guid by, CancellationToken cancel = default)
    {
        if (!Season.Create(previousLastDay, stints).TryGet(out var season, out var problems))
        {
            return new Result<int>.Failed(problems);
        }

        await using var db = await contexts.OpenAsync(cancel);
        if (await db.Seasons.Include(s => s.Stints).SingleOrDefaultAsync(s => s.Id == id, cancel) is not { } row)
        {
            return Refusal.NotFound("season");
        }

        if (row.Version != expectedVersion)
        {
            return Refusal.Meanwhile("season");
        }

        // A season whose stints alone changed is changed too, so its version rises in any case.
        row.PreviousLastDay = season.PreviousLastDay;
        db.Entry(row).State = EntityState.Modified;
        foreach (var (i, stint) in season.Stints.Index())
        {
            var days = new DateInterval(stint.First, stint.Last);
            if (row.Stints.Find(s => s.Number == i + 1) is { } known)
            {
                known.Days = days;
            }
            else
            {
                db.Stints.Add(new StintRow { ClubId = row.ClubId, SeasonId = row.Id, Number = i + 1, Days = days });
            }
        }

        db.Stints.RemoveRange(row.Stints.Where(s => s.Number > season.Stints.Count));
        var now = clock.GetCurrentInstant();
        db.Note(now, by, "season.changed", row.SquadId);
        await db.RememberAsync(now, by, row.SquadId, $"Season dates: {Words(season)}", cancel);
        return await db.TrySaveAsync(Refusal.Meanwhile("season"), cancel) is { } problem ? problem : row.Version;
    }

    /// <summary>Removes a season; a squad without one of its own follows the club's again.</summary>
    public async Task<Result<Guid>> RemoveAsync(Guid id, int expectedVersion, Guid by, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        if (await db.Seasons.Include(s => s.Stints).SingleOrDefaultAsync(s => s.Id == id, cancel) is not { } row)
        {
            return Refusal.NotFound("season");
        }

        if (row.Version != expectedVersion)
        {
            return Refusal.Meanwhile("season");
        }

        var season = row.ToSeason();
        db.PhaseLengths.RemoveRange(await db.PhaseLengths.Where(l => l.SeasonId == id).ToListAsync(cancel));
        db.Stints.RemoveRange(row.Stints);
        db.Seasons.Remove(row);
        var now = clock.GetCurrentInstant();
        db.Note(now, by, "season.removed", row.SquadId);
        await db.RememberAsync(now, by, row.SquadId, $"Remove the season {Words(season)}", cancel);
        return await db.TrySaveAsync(Refusal.Meanwhile("season"), cancel) is { } problem ? problem : id;
    }

    private static string Words(Season season) => $"{EditWords.Day(season.Stints[0].First)} to {EditWords.Day(season.Stints[^1].Last)}";

    private static IEnumerable<StintRow> StintsOf(SeasonRow row, Season season) => season.Stints.Select((stint, i) => new StintRow
    {
        ClubId = row.ClubId, SeasonId = row.Id, Number = i + 1, Days = new DateInterval(stint.First, stint.Last),
    });
}
