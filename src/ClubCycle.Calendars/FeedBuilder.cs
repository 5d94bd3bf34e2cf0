using ClubCycle.Planning;
using ClubCycle.Planning.Feeds;
using ClubCycle.Planning.Languages;
using NodaTime;

namespace ClubCycle.Calendars;

/// <summary>Turns a plan into what players subscribe to.</summary>
public static class FeedBuilder
{
    /// <summary>All sessions, practices and matches. Active recovery stays out: it is optional and would crowd the calendar.</summary>
    /// <param name="stamp">Sequence and last change as stored with each session.</param>
    public static FeedCalendar From(
        SquadPlan plan,
        DateTimeZone zone,
        string name,
        Func<PlannedSession, (int Sequence, Instant LastChanged)> stamp) =>
        Calendar(name, Language.English, plan.Sessions.Where(IsInFeed).Select(session =>
        {
            var (sequence, lastChanged) = stamp(session);
            return EventFor(session, zone, sequence, lastChanged);
        }));

    public static bool IsInFeed(PlannedSession session) => session.Kind != SessionKind.ActiveRecovery;

    /// <summary>One event; the caller says whether it was called off.</summary>
    public static FeedEvent EventFor(PlannedSession session, DateTimeZone zone, int sequence, Instant lastChanged, bool cancelled = false, PhraseBook? phrases = null) => new(
        session.Uid,
        session.StartsAt,
        session.Minutes,
        zone,
        SessionText.Title(session.Kind, session.Title, phrases),
        SessionText.Describe(session, phrases),
        [.. session.Qualities.Select(quality => SessionText.WordFor(quality, phrases))],
        sequence,
        lastChanged,
        cancelled);

    /// <summary>Whether the options ask for sessions of a kind.</summary>
    public static bool Shows(FeedOptions options, SessionKind kind) => kind switch
    {
        SessionKind.Session => options.Sessions,
        SessionKind.Practice => options.Practices,
        SessionKind.Match => options.Matches,
        SessionKind.ActiveRecovery => false,
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a kind of session."),
    };

    /// <summary>The event as the options show it. A day that tells no time has no start to remind of.</summary>
    public static FeedEvent AsAsked(FeedEvent one, string? place, FeedOptions options) => one with
    {
        Place = options.Places && !string.IsNullOrWhiteSpace(place) ? place : null,
        DayOnly = options.DayOnly,
        ReminderMinutes = options.DayOnly || one.Cancelled ? null : options.ReminderMinutes,
    };

    public static FeedCalendar Calendar(string name, Language language, IEnumerable<FeedEvent> events) =>
        new(name, language.Code(), [.. events.OrderBy(e => e.StartsAt).ThenBy(e => e.Uid)]);
}
