using ClubCycle.Data.Audit;
using ClubCycle.Planning;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Links;

/// <summary>A link as coaches see it: everything but the secret.</summary>
public sealed record StoredLink(Guid Id, Guid PlayerId, string Name, Instant CreatedAt, Instant? RevokedAt, LocalDate? LastPollDay);

/// <summary>A new link with its secret, which is never shown again.</summary>
public sealed record NewLink(Guid Id, string Token);

/// <summary>Whom a secret address belongs to.</summary>
/// <param name="Live">False once revoked.</param>
public sealed record FoundLink(Guid ClubId, Guid LinkId, Guid PlayerId, Guid SquadId, bool Live);

/// <summary>Secret addresses of players' pages and feeds.</summary>
public sealed class LinkStore(IDbContextFactory<ClubCycleDb> everywhere, IClubDbFactory contexts, IClock clock)
{
    public const int LongestName = 60;
    public const int MostLivePerPlayer = 10;

    public async Task<IReadOnlyList<StoredLink>> ListAsync(Guid squadId, Guid playerId, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return await LinksOf(db, squadId, playerId).OrderBy(l => l.CreatedAt).ThenBy(l => l.Id)
            .Select(l => new StoredLink(l.Id, l.PlayerId, l.Name, l.CreatedAt, l.RevokedAt, l.LastPollDay)).ToListAsync(cancel);
    }

    /// <param name="name">Tells the player's links apart, such as "own phone".</param>
    public async Task<Result<NewLink>> CreateAsync(Guid squadId, Guid playerId, string name, Guid by, CancellationToken cancel = default)
    {
        if (TypedText.LineProblem(name, LongestName, "link.name", "link's name", "link.name") is { } unreadable)
        {
            return unreadable;
        }

        await using var db = await contexts.OpenAsync(cancel);
        if (!await db.Players.AnyAsync(p => p.Id == playerId && p.SquadId == squadId, cancel))
        {
            return Refusal.NotFound("player");
        }

        if (await db.Links.CountAsync(l => l.PlayerId == playerId && l.RevokedAt == null, cancel) >= MostLivePerPlayer)
        {
            return new Problem("link.too-many", $"This player has {MostLivePerPlayer} live links. Revoke one that is no longer used.", "link");
        }

        var token = LinkToken.Create();
        var row = new LinkRow
        {
            ClubId = db.ClubId, Id = NewId.Create(), PlayerId = playerId, TokenHash = LinkToken.HashOf(token)!, Name = TypedText.Tidy(name), CreatedAt = clock.GetCurrentInstant(),
        };
        db.Links.Add(row);
        db.Note(row.CreatedAt, by, "link.created", squadId, row.Id.ToString("D"));
        await db.SaveChangesAsync(cancel);
        return new NewLink(row.Id, token);
    }

    /// <summary>The address stops working at once and for good.</summary>
    public async Task<Result<Guid>> RevokeAsync(Guid squadId, Guid playerId, Guid linkId, Guid by, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        if (await LinksOf(db, squadId, playerId).SingleOrDefaultAsync(l => l.Id == linkId, cancel) is not { } row)
        {
            return Refusal.NotFound("link");
        }

        if (row.RevokedAt is null)
        {
            row.RevokedAt = clock.GetCurrentInstant();
            db.Note(row.RevokedAt.Value, by, "link.revoked", squadId, row.Id.ToString("D"));
            await db.SaveChangesAsync(cancel);
        }

        return linkId;
    }

    /// <summary>Looks a secret up among all clubs. Null when nobody has it.</summary>
    public async Task<FoundLink?> FindAsync(string token, CancellationToken cancel = default)
    {
        if (LinkToken.HashOf(token) is not { } hash)
        {
            return null;
        }

        await using var db = await everywhere.OpenAsync(ClubScope.Everywhere, cancel);
        return await (
            from link in db.Links
            join player in db.Players on new { link.ClubId, Id = link.PlayerId } equals new { player.ClubId, player.Id }
            where link.TokenHash == hash
            select new FoundLink(link.ClubId, link.Id, player.Id, player.SquadId, link.RevokedAt == null)).SingleOrDefaultAsync(cancel);
    }

    /// <summary>Notes that a link is in use, at most once a day.</summary>
    /// <param name="day">Today in the club's zone or in UTC; only the day is kept.</param>
    public async Task TouchAsync(FoundLink link, LocalDate day, CancellationToken cancel = default)
    {
        await using var db = await everywhere.OpenAsync(ClubScope.Of(link.ClubId), cancel);
        await db.Links.Where(l => l.Id == link.LinkId && (l.LastPollDay == null || l.LastPollDay < day))
            .ExecuteUpdateAsync(set => set.SetProperty(l => l.LastPollDay, day), cancel);
    }

    private static IQueryable<LinkRow> LinksOf(ClubCycleDb db, Guid squadId, Guid playerId) =>
        db.Links.Where(l => l.PlayerId == playerId && db.Players.Any(p => p.Id == playerId && p.SquadId == squadId));
}
