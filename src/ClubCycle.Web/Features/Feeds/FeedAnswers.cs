using System.Collections.Frozen;
using System.Globalization;
using ClubCycle.Planning.Languages;
using ClubCycle.Data.Feeds;
using Microsoft.Extensions.Primitives;
using NodaTime;
using Npgsql;

namespace ClubCycle.Web.Features.Feeds;

/// <summary>Answers calendars that poll a feed. Nothing is rendered here: a poll is a hash, one look-up and bytes that lie ready.</summary>
internal sealed partial class FeedAnswers(FeedCache cache, PollDays days, MissLimit misses, IClock clock, ILogger<FeedAnswers> log)
{
    private const string Ending = ".ics";

    // While the database is away; some minutes are nothing to a calendar.
    private const string RetryWhenAway = "120";

    // An empty calendar would take every entry off the phone until the next poll.
    private const string RetryWhenRendering = "60";

    private static readonly StringValues Private = "private, no-cache";
    private static readonly StringValues NoReferrer = "no-referrer";
    private static readonly StringValues NoIndex = "noindex, nofollow";
    private static readonly StringValues NoSniff = "nosniff";
    private static readonly StringValues NothingRuns = "default-src 'none'; sandbox; frame-ancestors 'none'";
    private static readonly StringValues ByCoding = "Accept-Encoding";
    private static readonly StringValues Calendar = "text/calendar; charset=utf-8";

    private readonly FrozenDictionary<Language, ReadyBody> _empty = LanguageNames.All.ToFrozenDictionary(language => language, language => new ReadyBody(FeedRendering.Empty(language), ""));

    /// <param name="file">The address behind <see cref="FeedEndpoints.Path"/>, with its slash.</param>
    public Task AnswerAsync(HttpContext http, ReadOnlySpan<char> file)
    {
        if (!HttpMethods.IsGet(http.Request.Method) && !HttpMethods.IsHead(http.Request.Method))
        {
            http.Response.Headers.Allow = "GET, HEAD";
            return Bare(http.Response, StatusCodes.Status405MethodNotAllowed);
        }

        if (file is not ['/', .. var name] || !name.EndsWith(Ending, StringComparison.Ordinal) || !FeedCache.IsToken(name[..^Ending.Length]))
        {
            return Miss(http);
        }

        var found = cache.FindAsync(name[..^Ending.Length]);
        return found.IsCompletedSuccessfully ? AnswerAsync(http, found.Result) : WaitAsync(http, found);
    }

    private async Task WaitAsync(HttpContext http, ValueTask<ReadyLink?> finding)
    {
        ReadyLink? found;
        try
        {
            found = await finding;
        }
        catch (NpgsqlException away)
        {
            await Away(http.Response, away);
            return;
        }

        await AnswerAsync(http, found);
    }

    private Task AnswerAsync(HttpContext http, ReadyLink? found)
    {
        if (found is null)
        {
            // Wrong, revoked and malformed look the same.
            return Miss(http);
        }

        var today = clock.GetCurrentInstant().InUtc().Date;
        if (found.Noted != today)
        {
            days.Note(found.Link.ClubId, found.Link.LinkId, today);
            found.Noted = today;
        }

        var tag = found.On(today);
        return tag is null && found.Link.Rendering ? Later(http.Response, RetryWhenRendering)
            : ContentCodings.Chosen(http.Request.Headers.AcceptEncoding) is not { } coding ? NoneAccepted(http.Response)
            : DecidedByTag(http, tag ?? _empty[found.Link.Language].Tag, coding) ? Task.CompletedTask
            : tag is null ? SendAsync(http, _empty[found.Link.Language], coding)
            : SendAsync(http, found.Link, tag, coding);
    }

    private Task SendAsync(HttpContext http, PolledLink link, ReadyTag tag, ContentCoding coding)
    {
        var reading = cache.BodyAsync(link, tag.Tag);
        return reading.IsCompletedSuccessfully ? SendAsync(http, reading.Result ?? _empty[link.Language], coding) : WaitAsync(http, reading, _empty[link.Language], coding);
    }

    private async Task WaitAsync(HttpContext http, ValueTask<ReadyBody?> reading, ReadyBody otherwise, ContentCoding coding)
    {
        ReadyBody body;
        try
        {
            body = await reading ?? otherwise;
        }
        catch (NpgsqlException away)
        {
            await Away(http.Response, away);
            return;
        }

        await SendAsync(http, body, coding);
    }

    private static Task SendAsync(HttpContext http, ReadyBody body, ContentCoding coding)
    {
        var bytes = body.In(coding);
        var headers = http.Response.Headers;
        Tell(headers, body.Tag, coding);
        KeepPrivate(headers);
        headers.ContentType = Calendar;
        headers.ContentLength = bytes.Length;
        if (ContentCodings.NameOf(coding) is { } name)
        {
            headers.ContentEncoding = name;
        }

        if (!HttpMethods.IsGet(http.Request.Method))
        {
            return Task.CompletedTask;
        }

        var writing = http.Response.BodyWriter.WriteAsync(bytes);
        return writing.IsCompletedSuccessfully ? Task.CompletedTask : writing.AsTask();
    }

    /// <summary>Answers when the text need not be sent. A 304 repeats only what RFC 9110, 15.4.5 asks for: the rest stands in the answer that it confirms.</summary>
    private static bool DecidedByTag(HttpContext http, ReadyTag tag, ContentCoding coding)
    {
        if (Preconditions.Answer(http.Request.Headers, tag.EtagOf(coding), tag) is not { } status)
        {
            return false;
        }

        http.Response.StatusCode = status;
        Tell(http.Response.Headers, tag, coding);
        return true;
    }

    private static void Tell(IHeaderDictionary headers, ReadyTag tag, ContentCoding coding)
    {
        headers.CacheControl = Private;
        headers.ETag = tag.EtagOf(coding);
        headers.LastModified = tag.LastModifiedText;
        headers.Vary = ByCoding;
    }

    private static void KeepPrivate(IHeaderDictionary headers)
    {
        headers.CacheControl = Private;
        headers["Referrer-Policy"] = NoReferrer;
        headers["X-Robots-Tag"] = NoIndex;
        headers.XContentTypeOptions = NoSniff;
        headers.ContentSecurityPolicy = NothingRuns;
    }

    private Task Miss(HttpContext http)
    {
        if (misses.Count(http.Connection.RemoteIpAddress) is not { } wait)
        {
            return Bare(http.Response, StatusCodes.Status404NotFound);
        }

        http.Response.Headers.RetryAfter = Math.Max(1, (int)Math.Ceiling(wait.TotalSeconds)).ToString(CultureInfo.InvariantCulture);
        return Bare(http.Response, StatusCodes.Status429TooManyRequests);
    }

    private static Task NoneAccepted(HttpResponse response)
    {
        response.Headers.Vary = ByCoding;
        return Bare(response, StatusCodes.Status406NotAcceptable);
    }

    private Task Away(HttpResponse response, NpgsqlException away)
    {
        DatabaseAway(away.Message);
        return Later(response, RetryWhenAway);
    }

    private static Task Later(HttpResponse response, string seconds)
    {
        response.Headers.RetryAfter = seconds;
        return Bare(response, StatusCodes.Status503ServiceUnavailable);
    }

    private static Task Bare(HttpResponse response, int status)
    {
        response.StatusCode = status;
        response.ContentLength = 0;
        KeepPrivate(response.Headers);
        return Task.CompletedTask;
    }

    [LoggerMessage(LogLevel.Warning, "A calendar was told to come again, because the database does not answer: {Reason}")]
    private partial void DatabaseAway(string reason);
}
