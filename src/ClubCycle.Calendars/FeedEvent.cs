using NodaTime;

namespace ClubCycle.Calendars;

/// <summary>One event of a feed.</summary>
/// <param name="Start">Local to <paramref name="Zone"/>; see <see cref="StartsAt"/> for times a clock change skips or repeats.</param>
/// <param name="Sequence">Rises with every change of time, length, place, title or status, and for nothing else (RFC 5545, 3.8.7.4).</param>
/// <param name="LastChanged">Also the time stamp of the event, so that an unchanged plan gives unchanged bytes.</param>
/// <param name="Cancelled">Kept in the feed as called off, so that phones take it away or strike it through.</param>
public sealed record FeedEvent(
    Guid Uid,
    LocalDateTime Start,
    int Minutes,
    DateTimeZone Zone,
    string Title,
    string Description,
    IReadOnlyList<string> Categories,
    int Sequence,
    Instant LastChanged,
    bool Cancelled)
{
    /// <summary>Where it takes place; null leaves it out.</summary>
    public string? Place { get; init; }

    /// <summary>Lasts the whole day of its start in the club's zone, tells no time and leaves the day free.</summary>
    public bool DayOnly { get; init; }

    /// <summary>So long before the start the calendar may remind; null for never.</summary>
    public int? ReminderMinutes { get; init; }

    /// <summary>A start that the clocks skip moves on by the length of the skip; of a repeated hour the first counts.</summary>
    public Instant StartsAt => Start.InZoneLeniently(Zone).ToInstant();

    public Instant EndsAt => StartsAt + Duration.FromMinutes(Minutes);
}
