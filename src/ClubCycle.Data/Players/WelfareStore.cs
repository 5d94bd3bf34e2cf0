using ClubCycle.Data.Audit;
using ClubCycle.Planning;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Players;

/// <summary>A player as the welfare officer sees one.</summary>
public sealed record GuardedPlayer(Guid Id, string Name, Guid SquadId, string Squad, bool Protected);

/// <summary>Somebody read, exported, protected or erased one player's data.</summary>
/// <param name="By">Null for the program itself.</param>
/// <param name="Player">Null for a player who is gone.</param>
/// <param name="Reason">As written by whoever exported; else empty.</param>
public sealed record DataAccess(Instant At, string What, string? By, string? Squad, string? Player, string Reason);

/// <summary>What a welfare officer sees and does: every player of the club, those who are protected among them, and who looked at one.</summary>
public sealed class WelfareStore(IClubDbFactory contexts, IClock clock)
{
    public const int LongestReason = 200;

    public const string HistoryRead = "player.history-read";
    public const string Exported = "player.exported";
    public const string Protected = "player.protected";
    public const string Unprotected = "player.unprotected";
    public const string Erased = "player.erased";

    private static readonly string[] Told = [HistoryRead, Exported, Protected, Unprotected, Erased];

    public async Task<IReadOnlyList<GuardedPlayer>> ListAsync(CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return await (
            from player in db.EveryPlayer()
            join squad in db.Squads on player.SquadId equals squad.Id
            orderby player.Protected descending, squad.Name, player.Name, player.Id
            select new GuardedPlayer(player.Id, player.Name, squad.Id, squad.Name, player.Protected)).ToListAsync(cancel);
    }

    /// <summary>Takes a player off every list and ends all their links for good, or puts them back on the lists without any link.</summary>
    public async Task<Result<Guid>> ProtectAsync(Guid id, bool protect, Guid by, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        if (await db.EveryPlayer().SingleOrDefaultAsync(p => p.Id == id, cancel) is not { } row)
        {
            return Refusal.NotFound("player");
        }

        if (row.Protected == protect)
        {
            return id;
        }

        var now = clock.GetCurrentInstant();
        row.Protected = protect;
        foreach (var link in protect ? await db.Links.Where(l => l.PlayerId == id && l.RevokedAt == null).ToListAsync(cancel) : [])
        {
            link.RevokedAt = now;
        }

        db.Note(now, by, protect ? Protected : Unprotected, row.SquadId, id.ToString("D"));
        return await db.TrySaveAsync(Refusal.Meanwhile("player"), cancel) is { } problem ? problem : id;
    }

    /// <summary>Notes that somebody looked at one player's history, once a day each.</summary>
    public async Task NoteReadAsync(Guid squadId, Guid playerId, Guid by, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        var (now, player) = (clock.GetCurrentInstant(), playerId.ToString("D"));
        var day = now.InUtc().Date.AtStartOfDayInZone(DateTimeZone.Utc).ToInstant();
        if (!await db.Audit.AnyAsync(a => a.What == HistoryRead && a.By == by && a.Details == player && a.At >= day, cancel))
        {
            db.Note(now, by, HistoryRead, squadId, player);
            await db.SaveChangesAsync(cancel);
        }
    }

    /// <summary>Exports by others that this person has not seen yet, newest first.</summary>
    public async Task<IReadOnlyList<DataAccess>> UnseenExportsAsync(Guid person, int count, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        var seen = await db.Users.Where(u => u.Id == person).Select(u => u.ExportsSeenAt).SingleOrDefaultAsync(cancel) ?? Instant.MinValue;
        return await TellAsync(db, db.Audit.Where(a => a.What == Exported && a.By != person && a.At > seen), count, cancel);
    }

    /// <summary>This person has seen the exports up to one.</summary>
    public async Task ExportsSeenAsync(Guid person, Instant upTo, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        await db.Users.Where(u => u.Id == person && u.ClubId == db.ClubId && (u.ExportsSeenAt == null || u.ExportsSeenAt < upTo)).ExecuteUpdateAsync(set => set.SetProperty(u => u.ExportsSeenAt, upTo), cancel);
    }

    /// <summary>Whether the club has anybody whose task it is; else the head coaches watch each other.</summary>
    public async Task<bool> HasOfficerAsync(CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return await db.Users.AnyAsync(u => u.ClubId == db.ClubId && u.Role == Accounts.ClubRole.WelfareOfficer, cancel);
    }

    /// <summary>Who read, exported, protected or erased one player's data, newest first.</summary>
    public async Task<IReadOnlyList<DataAccess>> AccessAsync(int count, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return await TellAsync(db, db.Audit.Where(a => Told.Contains(a.What)), count, cancel);
    }

    private static async Task<IReadOnlyList<DataAccess>> TellAsync(ClubCycleDb db, IQueryable<AuditRow> audit, int count, CancellationToken cancel)
    {
        var rows = await audit.AsNoTracking().OrderByDescending(a => a.At).ThenByDescending(a => a.Id).Take(count).ToListAsync(cancel);
        var players = await db.EveryPlayer().ToDictionaryAsync(p => p.Id, p => p.Name, cancel);
        var people = await db.Users.Where(u => u.ClubId == db.ClubId).ToDictionaryAsync(u => u.Id, u => u.DisplayName, cancel);
        var squads = await db.Squads.ToDictionaryAsync(s => s.Id, s => s.Name, cancel);
        return rows.ConvertAll(row =>
        {
            var (id, reason) = row.Details.Split(' ', 2) is [var first, .. var rest] ? (first, rest.Length > 0 ? rest[0] : "") : ("", "");
            return new DataAccess(
                row.At, row.What, row.By is { } by ? people.GetValueOrDefault(by, "somebody who has left") : null,
                row.SquadId is { } squad ? squads.GetValueOrDefault(squad) : null,
                Guid.TryParse(id, out var player) ? players.GetValueOrDefault(player) : null, reason);
        });
    }
}
