using ClubCycle.Data.Links;
using ClubCycle.Planning.Players;
using ClubCycle.Planning.Squads;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Feeds;

/// <summary>A feed as it goes out.</summary>
/// <param name="Etag">Of the uncompressed text, without quotes.</param>
/// <param name="Length">Bytes of the uncompressed text.</param>
public sealed record FeedBody(string Etag, byte[] Gzip, byte[] Brotli, int Length, Instant LastModified);

/// <summary>The answer to a poll.</summary>
/// <param name="Body">Null while nothing is published or rendered.</param>
public sealed record PolledFeed(FoundLink Link, FeedBody? Body, LocalDate? LastPollDay);

/// <summary>Feeds ready to be sent.</summary>
public sealed class FeedStore(IDbContextFactory<ClubCycleDb> everywhere, IClubDbFactory contexts)
{
    /// <summary>The feed behind a secret address, in one query. Null when nobody has the secret.</summary>
    /// <param name="variant">For most.</param>
    /// <param name="waiting">For players who owe the health questions.</param>
    /// <param name="today">Decides who owes them.</param>
    public async Task<PolledFeed?> PollAsync(string token, string variant, string waiting, LocalDate today, CancellationToken cancel = default)
    {
        if (LinkToken.HashOf(token) is not { } hash)
        {
            return null;
        }

        var tooOld = HealthQuestions.LastDayTooOld(today);
        var masters = AgeGroup.Masters.Name;
        await using var db = await everywhere.OpenAsync(ClubScope.Everywhere, cancel);
        return await (
            from link in db.Links
            join player in db.Players on new { link.ClubId, Id = link.PlayerId } equals new { player.ClubId, player.Id }
            join squad in db.Squads on new { player.ClubId, Id = player.SquadId } equals new { squad.ClubId, squad.Id }
            let owes = (player.AsksHealthQuestions || squad.AgeGroup == masters) && (player.HealthSettledOn == null || player.HealthSettledOn <= tooOld)
            join body in db.FeedBodies on new { player.ClubId, player.SquadId, Variant = owes ? waiting : variant } equals new { body.ClubId, body.SquadId, body.Variant } into bodies
            from body in bodies.DefaultIfEmpty()
            where link.TokenHash == hash
            select new PolledFeed(
                new FoundLink(link.ClubId, link.Id, player.Id, player.SquadId, link.RevokedAt == null),
                body == null || link.RevokedAt != null ? null : new FeedBody(body.Etag, body.Gzip, body.Brotli, body.Length, body.LastModified),
                link.LastPollDay)).SingleOrDefaultAsync(cancel);
    }

    public async Task<FeedBody?> FindAsync(Guid squadId, string variant, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return await db.FeedBodies.Where(b => b.SquadId == squadId && b.Variant == variant)
            .Select(b => new FeedBody(b.Etag, b.Gzip, b.Brotli, b.Length, b.LastModified)).SingleOrDefaultAsync(cancel);
    }

    /// <summary>Replaces the squad's feed. The same text keeps its time of change, so that phones go on getting "not modified".</summary>
    public async Task SaveAsync(Guid squadId, string variant, FeedBody body, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        await db.Database.ExecuteSqlAsync(
            $"""
             insert into club.feed_bodies as old (club_id, squad_id, variant, etag, gzip, brotli, length, last_modified)
             values ({db.ClubId}, {squadId}, {variant}, {body.Etag}, {body.Gzip}, {body.Brotli}, {body.Length}, {body.LastModified})
             on conflict (club_id, squad_id, variant) do update
             set etag = excluded.etag, gzip = excluded.gzip, brotli = excluded.brotli, length = excluded.length, last_modified = excluded.last_modified
             where old.etag <> excluded.etag
             """,
            cancel);
    }
}
