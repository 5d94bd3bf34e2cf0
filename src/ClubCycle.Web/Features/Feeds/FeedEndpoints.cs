using System.IO.Compression;
using System.Text.RegularExpressions;
using ClubCycle.Data.Feeds;
using ClubCycle.Data.Links;
using ClubCycle.Planning.Feeds;
using Microsoft.Net.Http.Headers;
using NodaTime;

namespace ClubCycle.Web.Features.Feeds;

/// <summary>Answers phones that poll a feed. Nothing is rendered here: a poll is one look-up and bytes that lie ready.</summary>
internal static partial class FeedEndpoints
{
    public const string Path = "/calendar";

    // All methods, so that a wrong one is answered here and never led to the sign-in page.
    public static void MapFeeds(this IEndpointRouteBuilder app) =>
        app.Map(Path + "/{**file}", AnswerAsync).AllowAnonymous().ExcludeFromDescription();

    private static async Task AnswerAsync(HttpContext http, FeedStore feeds, LinkStore links, IClock clock)
    {
        KeepPrivate(http.Response);
        if (!HttpMethods.IsGet(http.Request.Method) && !HttpMethods.IsHead(http.Request.Method))
        {
            http.Response.StatusCode = StatusCodes.Status405MethodNotAllowed;
            http.Response.Headers.Allow = "GET, HEAD";
            return;
        }

        var token = Address().Match(http.Request.RouteValues["file"] as string ?? "");
        var today = clock.GetCurrentInstant().InUtc().Date;
        if (!token.Success || await feeds.PollAsync(token.Groups[1].Value, FeedRendering.VariantOf(new FeedOptions(), waiting: false), FeedRendering.VariantOf(new FeedOptions(), waiting: true), today, http.RequestAborted) is not { Link.Live: true } feed)
        {
            // Wrong and revoked look the same.
            http.Response.StatusCode = StatusCodes.Status404NotFound;
            return;
        }

        if (feed.LastPollDay != today)
        {
            await links.TouchAsync(feed.Link, today, http.RequestAborted);
        }

        await SendAsync(http, feed.Body ?? FeedRendering.Empty);
    }

    private static async Task SendAsync(HttpContext http, FeedBody body)
    {
        var (encoding, bytes) = Chosen(http.Request, body);
        var etag = new EntityTagHeaderValue($"\"{body.Etag}{(encoding is null ? "" : "-" + encoding)}\"");
        var lastModified = DateTimeOffset.FromUnixTimeSeconds(body.LastModified.ToUnixTimeSeconds());
        var headers = http.Response.GetTypedHeaders();
        headers.ETag = etag;
        headers.LastModified = lastModified;
        http.Response.Headers.Vary = HeaderNames.AcceptEncoding;
        if (IsKnown(http.Request, etag, lastModified))
        {
            http.Response.StatusCode = StatusCodes.Status304NotModified;
            return;
        }

        http.Response.ContentType = "text/calendar; charset=utf-8";
        http.Response.ContentLength = bytes.Length;
        if (encoding is not null)
        {
            http.Response.Headers.ContentEncoding = encoding;
        }

        if (HttpMethods.IsGet(http.Request.Method))
        {
            await http.Response.Body.WriteAsync(bytes, http.RequestAborted);
        }
    }

    /// <summary>RFC 9110, 13.2.2: a tag decides alone; only without one does the date count.</summary>
    private static bool IsKnown(HttpRequest request, EntityTagHeaderValue etag, DateTimeOffset lastModified)
    {
        var asked = request.GetTypedHeaders();
        return asked.IfNoneMatch is { Count: > 0 } tags
            ? tags.Any(tag => tag.Equals(EntityTagHeaderValue.Any) || tag.Compare(etag, useStrongComparison: false))
            : asked.IfModifiedSince is { } since && lastModified <= since;
    }

    private static (string? Encoding, byte[] Bytes) Chosen(HttpRequest request, FeedBody body)
    {
        var accepted = request.GetTypedHeaders().AcceptEncoding;
        return Accepts("br") ? ("br", body.Brotli) : Accepts("gzip") ? ("gzip", body.Gzip) : (null, Plain(body));

        bool Accepts(string name) => accepted.Any(a => a.Value.Equals(name, StringComparison.OrdinalIgnoreCase) && a.Quality is not 0);
    }

    private static byte[] Plain(FeedBody body)
    {
        var plain = new byte[body.Length];
        using var packed = new GZipStream(new MemoryStream(body.Gzip), CompressionMode.Decompress);
        packed.ReadExactly(plain);
        return plain;
    }

    private static void KeepPrivate(HttpResponse response)
    {
        response.Headers.CacheControl = "private, no-cache";
        response.Headers["Referrer-Policy"] = "no-referrer";
        response.Headers["X-Robots-Tag"] = "noindex, nofollow";
        response.Headers.XContentTypeOptions = "nosniff";
        response.Headers.ContentSecurityPolicy = "default-src 'none'; sandbox";
    }

    [GeneratedRegex(@"\A([A-Za-z0-9_-]{43})\.ics\z")]
    private static partial Regex Address();
}
