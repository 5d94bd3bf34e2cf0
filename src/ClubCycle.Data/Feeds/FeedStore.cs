using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Feeds;

/// <summary>A feed as it goes out.</summary>
/// <param name="Etag">Of the uncompressed text, without quotes.</param>
/// <param name="Length">Bytes of the uncompressed text.</param>
public sealed record FeedBody(string Etag, byte[] Gzip, byte[] Brotli, int Length, Instant LastModified);

/// <summary>Feeds ready to be sent.</summary>
public sealed class FeedStore(IClubDbFactory contexts)
{
    public async Task<FeedBody?> FindAsync(Guid squadId, string variant, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return await db.FeedBodies.Where(b => b.SquadId == squadId && b.Variant == variant)
            .Select(b => new FeedBody(b.Etag, b.Gzip, b.Brotli, b.Length, b.LastModified)).SingleOrDefaultAsync(cancel);
    }

    /// <summary>Replaces the squad's feed. The same text keeps its time of change, so that phones go on getting "not modified"; a worker that was held up puts no older plan over a newer one.</summary>
    public async Task SaveAsync(Guid squadId, string variant, FeedBody body, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        await db.Database.ExecuteSqlAsync(
            $"""
             insert into club.feed_bodies as old (club_id, squad_id, variant, etag, gzip, brotli, length, last_modified)
             values ({db.ClubId}, {squadId}, {variant}, {body.Etag}, {body.Gzip}, {body.Brotli}, {body.Length}, {body.LastModified})
             on conflict (club_id, squad_id, variant) do update
             set etag = excluded.etag, gzip = excluded.gzip, brotli = excluded.brotli, length = excluded.length, last_modified = excluded.last_modified
             where old.etag <> excluded.etag and old.last_modified <= excluded.last_modified
             """,
            cancel);
    }
}
