using System.Globalization;
using ClubCycle.Data.Feeds;
using NodaTime;

namespace ClubCycle.Web.Features.Feeds;

/// <summary>A link with the headers of its answers written out.</summary>
/// <param name="Read">Which changes were known when it was read, as <see cref="KeptChanges.Of"/> counts them.</param>
internal sealed record ReadyLink(PolledLink Link, long Read)
{
    private readonly ReadyTag? _full = Link.Full is { } full ? new ReadyTag(full) : null;
    private readonly ReadyTag? _waiting = Link.Waiting is { } waiting ? new ReadyTag(waiting) : null;

    /// <summary>The last day that was noted or is about to be.</summary>
    public LocalDate? Noted { get; set; } = Link.LastPollDay;

    /// <summary>Null while nothing is published or rendered.</summary>
    public ReadyTag? On(LocalDate today) => ReferenceEquals(Link.On(today), Link.Full) ? _full : _waiting;
}

/// <summary>What tells a text's versions apart, as it goes over the wire.</summary>
internal sealed class ReadyTag(FeedTag tag)
{
    private readonly string[] _etags = [$"\"{tag.Etag}\"", $"\"{tag.Etag}-gzip\"", $"\"{tag.Etag}-br\""];

    public FeedTag Tag => tag;

    /// <summary>HTTP knows whole seconds.</summary>
    public DateTimeOffset LastModified { get; } = DateTimeOffset.FromUnixTimeSeconds(tag.LastModified.ToUnixTimeSeconds());

    public string LastModifiedText { get; } = DateTimeOffset.FromUnixTimeSeconds(tag.LastModified.ToUnixTimeSeconds()).ToString("r", CultureInfo.InvariantCulture);

    /// <summary>Each coding has a tag of its own, because its bytes are its own.</summary>
    public string EtagOf(ContentCoding coding) => _etags[(int)coding];
}
