using System.IO.Compression;
using ClubCycle.Data.Feeds;

namespace ClubCycle.Web.Features.Feeds;

/// <summary>A feed in all its codings.</summary>
internal sealed class ReadyBody(FeedBody body, string variant)
{
    private readonly byte[][] _bytes = [Unpacked(body), body.Gzip, body.Brotli];

    public ReadyTag Tag { get; } = new(new FeedTag(variant, body.Etag, body.LastModified));

    /// <summary>In memory.</summary>
    public int Size => _bytes[0].Length + _bytes[1].Length + _bytes[2].Length;

    public byte[] In(ContentCoding coding) => _bytes[(int)coding];

    private static byte[] Unpacked(FeedBody body)
    {
        var plain = new byte[body.Length];
        using var packed = new GZipStream(new MemoryStream(body.Gzip), CompressionMode.Decompress);
        packed.ReadExactly(plain);
        return plain;
    }
}
