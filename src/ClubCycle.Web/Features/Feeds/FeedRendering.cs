using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using ClubCycle.Calendars;
using ClubCycle.Data.Feeds;
using ClubCycle.Data.Plans;
using ClubCycle.Planning;
using ClubCycle.Planning.Feeds;
using ClubCycle.Planning.Languages;
using NodaTime;

namespace ClubCycle.Web.Features.Feeds;

/// <summary>Turns what is published into the bytes that phones get.</summary>
internal static class FeedRendering
{
    // The highest quality takes far longer for little.
    private static readonly BrotliCompressionOptions Brotli = new() { Quality = 9 };

    /// <summary>The name of one text of a squad's feed.</summary>
    /// <param name="waiting">The same times without what to do, for players who owe the health questions.</param>
    public static string VariantOf(FeedOptions options, bool waiting) => FeedVariant.Of(options.Code, waiting);

    /// <summary>What is published from <see cref="PublishedPlan.ShownFrom"/> on, as a link's options show it.</summary>
    public static FeedBody Render(PublishedPlan published, FeedOptions options, bool waiting) =>
        Pack(Calendar(published, options, waiting), published.PublishedAt);

    internal static FeedCalendar Calendar(PublishedPlan published, FeedOptions options, bool waiting)
    {
        var phrases = PhraseBook.For(options.Language);
        var planned = published.Sessions
            .Where(session => session.Date >= published.ShownFrom && FeedBuilder.Shows(options, session.Kind))
            .Select(session => FeedBuilder.AsAsked(EventOf(waiting ? WithoutSteps(session) : session, published, phrases), session.Place, options));
        var calledOff = published.Cancelled
            .Where(gone => FeedBuilder.Shows(options, gone.Kind))
            .Select(gone => FeedBuilder.AsAsked(EventOf(gone, published.Zone, phrases), gone.Place, options));
        return FeedBuilder.Calendar($"{published.SquadName}, {published.ClubName}", options.Language, planned.Concat(calledOff));
    }

    /// <summary>For a link that was handed out before anything was published.</summary>
    public static FeedBody Empty(Language language) => Pack(FeedBuilder.Calendar(PhraseBook.For(language).Say("Squad calendar"), language, []), Instant.FromUnixTimeSeconds(0));

    private static PlannedSession WithoutSteps(PlannedSession session) => session with
    {
        Steps = [],
        Why = session.Kind == SessionKind.Session ? ["What to do comes after the health questions: answer them on your player page, or ask your coach."] : session.Why,
    };

    private static FeedEvent EventOf(PlannedSession session, PublishedPlan published, PhraseBook phrases)
    {
        var stamp = published.Stamps.TryGetValue(session.Uid, out var known)
            ? known
            : throw new InvalidOperationException($"Session {session.Uid} of squad {published.SquadId} is published without a stamp.");
        return FeedBuilder.EventFor(session, published.Zone, stamp.Sequence, stamp.LastChanged, phrases: phrases);
    }

    private static FeedEvent EventOf(CancelledSession gone, DateTimeZone zone, PhraseBook phrases) => new(
        gone.Uid, gone.Date.At(gone.Start), gone.Minutes, zone, SessionText.Title(gone.Kind, gone.Title, phrases), "", [], gone.Stamp.Sequence, gone.Stamp.LastChanged, Cancelled: true);

    private static FeedBody Pack(FeedCalendar calendar, Instant lastModified)
    {
        var bytes = Encoding.UTF8.GetBytes(IcsWriter.Write(calendar));
        return new FeedBody(
            Convert.ToHexStringLower(SHA256.HashData(bytes)[..16]),
            Compressed(bytes, to => new GZipStream(to, CompressionLevel.SmallestSize)),
            Compressed(bytes, to => new BrotliStream(to, Brotli)),
            bytes.Length,
            lastModified);
    }

    private static byte[] Compressed(byte[] bytes, Func<Stream, Stream> compressor)
    {
        var packed = new MemoryStream();
        using (var stream = compressor(packed))
        {
            stream.Write(bytes);
        }

        return packed.ToArray();
    }
}
