using System.Buffers;
using System.Runtime.InteropServices;
using System.Security.Cryptography;
using System.Text;
using ClubCycle.Data.Feeds;
using Microsoft.Extensions.Caching.Memory;
using Microsoft.Extensions.Internal;
using Microsoft.Extensions.Options;
using NodaTime;

namespace ClubCycle.Web.Features.Feeds;

/// <summary>
/// Links and feeds that this node read. A change of the club is heard and makes what was read before it old; a link that is a minute old is read again in any case,
/// for a time when nothing is heard. A text is kept by its tag and so never gets old.
/// </summary>
internal sealed class FeedCache : IDisposable
{
    /// <summary>The net under what is heard of changes.</summary>
    public static readonly TimeSpan OldestLink = TimeSpan.FromSeconds(60);

    private const int MostUnknown = 10_000;

    // In memory, roughly: the entry and its key, the link, and two tags with their texts.
    private const int LinkBytes = 1_500;

    private static readonly SearchValues<char> TokenCharacters = SearchValues.Create("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_");

    private readonly PollStore _polls;
    private readonly KeptChanges _changes;
    private readonly MemoryCache? _links;
    private readonly MemoryCache? _bodies;

    // By themselves, so that nobody drives right addresses out with wrong ones.
    private readonly MemoryCache? _unknown;

    public FeedCache(PollStore polls, KeptChanges changes, IOptions<FeedLimits> limits, IClock clock)
    {
        (_polls, _changes) = (polls, changes);
        if (limits.Value.CacheMegabytes is var megabytes and > 0)
        {
            _links = Cache(megabytes * 500_000L);
            _bodies = Cache(megabytes * 500_000L);
            _unknown = Cache(MostUnknown);
        }

        MemoryCache Cache(long size) => new(new MemoryCacheOptions { SizeLimit = size, CompactionPercentage = 0.2, Clock = new CacheClock(clock) });
    }

    /// <summary>Can it be a secret at all?</summary>
    public static bool IsToken(ReadOnlySpan<char> text) => text.Length == 43 && !text.ContainsAnyExcept(TokenCharacters);

    /// <returns>Null when nobody has the secret, or nobody has it any more.</returns>
    public ValueTask<ReadyLink?> FindAsync(ReadOnlySpan<char> token)
    {
        Span<byte> text = stackalloc byte[64];
        Span<byte> hash = stackalloc byte[SHA256.HashSizeInBytes];
        SHA256.HashData(text[..Encoding.UTF8.GetBytes(token, text)], hash);
        if (_links is null)
        {
            return new(ReadAsync(null, hash.ToArray()));
        }

        object key = MemoryMarshal.Read<Key>(hash);
        return _links.TryGetValue(key, out ReadyLink? link) && link!.Read == _changes.Of(link.Link.ClubId, link.Link.SquadId) ? new(link.Link.Live ? link : null)
            : _unknown!.TryGetValue(key, out _) ? default
            : new(ReadAsync(key, hash.ToArray()));
    }

    /// <summary>The text that the tag names, or the one that has replaced it meanwhile; null when it is gone.</summary>
    public ValueTask<ReadyBody?> BodyAsync(PolledLink link, FeedTag tag) =>
        _bodies is not null && _bodies.TryGetValue(tag.Etag, out ReadyBody? kept) && kept!.Tag.Tag.LastModified == tag.LastModified ? new(kept) : new(ReadBodyAsync(link, tag.Variant));

    public void Dispose()
    {
        _links?.Dispose();
        _bodies?.Dispose();
        _unknown?.Dispose();
    }

    private async Task<ReadyLink?> ReadAsync(object? key, byte[] hash)
    {
        var told = _changes.Told;
        if (await _polls.FindAsync(hash) is not { } found)
        {
            if (key is not null)
            {
                _unknown!.Set(key, true, new MemoryCacheEntryOptions { Size = 1, AbsoluteExpirationRelativeToNow = OldestLink });
            }

            return null;
        }

        var link = new ReadyLink(found, _changes.Of(found.ClubId, found.SquadId));

        // What changed while it was read may be in it or not.
        if (key is not null && told == _changes.Told)
        {
            _links!.Set(key, link, new MemoryCacheEntryOptions { Size = LinkBytes, AbsoluteExpirationRelativeToNow = OldestLink });
        }

        return found.Live ? link : null;
    }

    private async Task<ReadyBody?> ReadBodyAsync(PolledLink link, string variant)
    {
        if (await _polls.BodyAsync(link.ClubId, link.SquadId, variant) is not { } read)
        {
            return null;
        }

        var body = new ReadyBody(read, variant);
        _bodies?.Set(read.Etag, body, new MemoryCacheEntryOptions { Size = body.Size });
        return body;
    }

    private readonly record struct Key(ulong A, ulong B, ulong C, ulong D);

    private sealed class CacheClock(IClock clock) : ISystemClock
    {
        public DateTimeOffset UtcNow => clock.GetCurrentInstant().ToDateTimeOffset();
    }
}
