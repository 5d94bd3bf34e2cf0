using Microsoft.Extensions.Primitives;
using Microsoft.Net.Http.Headers;

namespace ClubCycle.Web.Features.Feeds;

/// <summary>What a reader makes its request depend on, in the order of RFC 9110, 13.2.2.</summary>
internal static class Preconditions
{
    /// <summary>304, 412, or null when the text is to be sent.</summary>
    public static int? Answer(IHeaderDictionary asked, string etag, ReadyTag tag)
    {
        if (asked.IfMatch is { Count: > 0 } wanted)
        {
            if (!Names(wanted, etag, weakly: false))
            {
                return StatusCodes.Status412PreconditionFailed;
            }
        }
        else if (DateIn(asked.IfUnmodifiedSince) is { } unmodified && tag.LastModified > unmodified)
        {
            return StatusCodes.Status412PreconditionFailed;
        }

        // A tag decides alone, even one that is not understood; only without one does the date count.
        if (asked.IfNoneMatch is { Count: > 0 } known)
        {
            return Names(known, etag, weakly: true) ? StatusCodes.Status304NotModified : null;
        }

        return asked.IfModifiedSince is { Count: 1 } since && (since[0] == tag.LastModifiedText || (DateIn(since) is { } modified && tag.LastModified <= modified))
            ? StatusCodes.Status304NotModified
            : null;
    }

    /// <summary>Is the tag in the list? What is no tag is passed over.</summary>
    private static bool Names(StringValues lines, string etag, bool weakly)
    {
        if (lines.Count == 1 && (lines[0] == etag || lines[0].AsSpan().Trim() is "*"))
        {
            return true;
        }

        foreach (var line in lines)
        {
            for (var rest = line.AsSpan(); !rest.IsEmpty;)
            {
                rest = rest.TrimStart(" \t,");
                var weak = rest.StartsWith("W/\"");
                var tag = weak ? rest[2..] : rest;
                if (!tag.StartsWith('"'))
                {
                    var comma = rest.IndexOf(',');
                    rest = comma < 0 ? [] : rest[comma..];
                    continue;
                }

                var length = tag[1..].IndexOf('"');
                if (length < 0)
                {
                    break;
                }

                if ((weakly || !weak) && tag[..(length + 2)].SequenceEqual(etag))
                {
                    return true;
                }

                rest = tag[(length + 2)..];
            }
        }

        return false;
    }

    private static DateTimeOffset? DateIn(StringValues lines) => lines.Count == 1 && HeaderUtilities.TryParseDate(lines[0], out var date) ? date : null;
}
