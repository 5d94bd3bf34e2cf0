using System.Globalization;
using Microsoft.Extensions.Primitives;

namespace ClubCycle.Web.Features.Feeds;

internal enum ContentCoding
{
    Identity,
    Gzip,
    Brotli,
}

/// <summary>Which coding a reader wants (RFC 9110, 12.5.3).</summary>
internal static class ContentCodings
{
    private const int Unsaid = -1;

    /// <summary>The name in headers; null for identity.</summary>
    public static string? NameOf(ContentCoding coding) => coding switch
    {
        ContentCoding.Identity => null,
        ContentCoding.Gzip => "gzip",
        ContentCoding.Brotli => "br",
        _ => throw new InvalidOperationException($"Unknown coding {coding}"),
    };

    /// <summary>The best liked; of equals the shortest. Null when every one of ours is refused. What is not understood is passed over.</summary>
    public static ContentCoding? Chosen(StringValues accepted)
    {
        int brotli = Unsaid, gzip = Unsaid, identity = Unsaid, any = Unsaid;
        foreach (var line in accepted)
        {
            foreach (var range in line.AsSpan().Split(','))
            {
                Read(line.AsSpan()[range].Trim(), ref brotli, ref gzip, ref identity, ref any);
            }
        }

        brotli = brotli != Unsaid ? brotli : any;
        gzip = gzip != Unsaid ? gzip : any;
        var refused = identity == 0 || (identity == Unsaid && any == 0);
        return brotli > 0 && brotli >= gzip && brotli >= identity ? ContentCoding.Brotli
            : gzip > 0 && gzip >= identity ? ContentCoding.Gzip
            : refused ? null
            : ContentCoding.Identity;
    }

    private static void Read(ReadOnlySpan<char> element, ref int brotli, ref int gzip, ref int identity, ref int any)
    {
        var end = element.IndexOf(';');
        var name = (end < 0 ? element : element[..end]).Trim();
        if (Weight(end < 0 ? [] : element[(end + 1)..].Trim()) is not { } weight)
        {
            return;
        }

        if (name.Equals("br", StringComparison.OrdinalIgnoreCase))
        {
            brotli = weight;
        }
        else if (name.Equals("gzip", StringComparison.OrdinalIgnoreCase) || name.Equals("x-gzip", StringComparison.OrdinalIgnoreCase))
        {
            gzip = weight;
        }
        else if (name.Equals("identity", StringComparison.OrdinalIgnoreCase))
        {
            identity = weight;
        }
        else if (name is "*")
        {
            any = weight;
        }
    }

    /// <summary>In thousandths; null when it is none.</summary>
    private static int? Weight(ReadOnlySpan<char> text) =>
        text.IsEmpty ? 1000
        : text.Length is > 2 and <= 7 && text[0] is 'q' or 'Q' && text[1] == '='
            && decimal.TryParse(text[2..], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var weight) && weight is >= 0 and <= 1
            ? (int)(weight * 1000)
            : null;
}
