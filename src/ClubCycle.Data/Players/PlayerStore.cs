using ClubCycle.Data.Audit;
using ClubCycle.Planning;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Players;

/// <summary>A player as the squad's coaches see one.</summary>
/// <param name="LiveLinks">Links that open the feed now.</param>
/// <param name="LastPollDay">Latest day on which one of the live links was polled.</param>
public sealed record StoredPlayer(Guid Id, Guid SquadId, string Name, int LiveLinks, LocalDate? LastPollDay, int Version);

/// <summary>The squads' players.</summary>
public sealed class PlayerStore(IClubDbFactory contexts, IClock clock)
{
    public const int LongestName = 60;

    public async Task<IReadOnlyList<StoredPlayer>> ListAsync(Guid squadId, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return await db.Players.Where(p => p.SquadId == squadId).OrderBy(p => p.Name).ThenBy(p => p.Id)
            .Select(p => new StoredPlayer(
                p.Id, p.SquadId, p.Name,
                db.Links.Count(l => l.PlayerId == p.Id && l.RevokedAt == null),
                db.Links.Where(l => l.PlayerId == p.Id && l.RevokedAt == null).Max(l => l.LastPollDay),
                p.Version))
            .ToListAsync(cancel);
    }

    /// <summary>Adds players, or none when a name cannot be taken.</summary>
    public async Task<Result<IReadOnlyList<Guid>>> AddAsync(Guid squadId, IReadOnlyList<string> names, Guid by, CancellationToken cancel = default)
    {
        if (names.Select((name, i) => NameProblem(name, $"players[{i}].name")).OfType<Problem>().ToList() is { Count: > 0 } problems)
        {
            return new Result<IReadOnlyList<Guid>>.Failed(problems);
        }

        await using var db = await contexts.OpenAsync(cancel);
        if (!await db.Squads.AnyAsync(s => s.Id == squadId, cancel))
        {
            return Refusal.NotFound("squad");
        }

        var rows = names.Select(name => new PlayerRow { ClubId = db.ClubId, Id = NewId.Create(), SquadId = squadId, Name = name.Trim() }).ToList();
        db.Players.AddRange(rows);
        db.Note(clock.GetCurrentInstant(), by, "players.added", squadId, $"{rows.Count}");
        await db.SaveChangesAsync(cancel);
        return new Result<IReadOnlyList<Guid>>.Ok([.. rows.Select(r => r.Id)]);
    }

    public async Task<Result<int>> RenameAsync(Guid squadId, Guid id, string name, int expectedVersion, Guid by, CancellationToken cancel = default)
    {
        if (NameProblem(name, "player.name") is { } invalid)
        {
            return invalid;
        }

        await using var db = await contexts.OpenAsync(cancel);
        if (await db.Players.SingleOrDefaultAsync(p => p.Id == id && p.SquadId == squadId, cancel) is not { } row)
        {
            return Refusal.NotFound("player");
        }

        if (row.Version != expectedVersion)
        {
            return Refusal.Meanwhile("player");
        }

        row.Name = name.Trim();
        db.Note(clock.GetCurrentInstant(), by, "player.renamed", row.SquadId);
        return await db.TrySaveAsync(Refusal.Meanwhile("player"), cancel) is { } problem ? problem : row.Version;
    }

    /// <summary>Erases a player with all links: their addresses stop working at once.</summary>
    public async Task<Result<Guid>> RemoveAsync(Guid squadId, Guid id, Guid by, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        if (await db.Players.SingleOrDefaultAsync(p => p.Id == id && p.SquadId == squadId, cancel) is not { } row)
        {
            return Refusal.NotFound("player");
        }

        db.Players.Remove(row);
        db.Note(clock.GetCurrentInstant(), by, "player.erased", row.SquadId);
        return await db.TrySaveAsync(Refusal.Meanwhile("player"), cancel) is { } problem ? problem : id;
    }

    private static Problem? NameProblem(string name, string at) =>
        string.IsNullOrWhiteSpace(name) ? new Problem("player.name-missing", "Give the player a name; a first name and an initial are enough.", at)
        : name.Trim().Length > LongestName ? new Problem("player.name-too-long", $"A player's name has {LongestName} characters at most; a first name and an initial are enough.", at)
        : null;
}
