using ClubCycle.Data.Audit;
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
        db.Note(clock.GetCurrentInstant(), by, "season.added", squadId);
        return await db.TrySaveAsync(Refusal.Meanwhile("season"), cancel) is { } problem ? problem : row.Id;
    }

    public async Task<Result<int>> SaveAsync(Guid id, LocalDate? previousLastDay, IReadOnlyList<Stint> stints, int expectedVersion, Guid by, CancellationToken cancel = default)
    {
        if (!Season.Create(previousLastDay, stints).TryGet(out var season, out var problems))
        {
            return new Result<int>.Failed(problems);
        }

        await using var db = await contexts.OpenAsync(cancel);
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        if (await db.Seasons.SingleOrDefaultAsync(s => s.Id == id, cancel) is not { } row)
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
        db.Note(clock.GetCurrentInstant(), by, "season.changed", row.SquadId);
        if (await db.TrySaveAsync(Refusal.Meanwhile("season"), cancel) is { } lost)
        {
            return lost;
        }

        await db.Stints.Where(s => s.SeasonId == id).ExecuteDeleteAsync(cancel);
        db.Stints.AddRange(StintsOf(row, season));
        if (await db.TrySaveAsync(Refusal.Meanwhile("season"), cancel) is { } problem)
        {
            return problem;
        }

        await transaction.CommitAsync(cancel);
        return row.Version;
    }

    /// <summary>Removes a season; a squad without one of its own follows the club's again.</summary>
    public async Task<Result<Guid>> RemoveAsync(Guid id, Guid by, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        if (await db.Seasons.SingleOrDefaultAsync(s => s.Id == id, cancel) is not { } row)
        {
            return Refusal.NotFound("season");
        }

        db.Seasons.Remove(row);
        db.Note(clock.GetCurrentInstant(), by, "season.removed", row.SquadId);
        return await db.TrySaveAsync(Refusal.Meanwhile("season"), cancel) is { } problem ? problem : id;
    }

    private static IEnumerable<StintRow> StintsOf(SeasonRow row, Season season) => season.Stints.Select((stint, i) => new StintRow
    {
        ClubId = row.ClubId, SeasonId = row.Id, Number = i + 1, Days = new DateInterval(stint.First, stint.Last),
    });
}
