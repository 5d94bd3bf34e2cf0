using ClubCycle.Planning;
using NodaTime;

namespace ClubCycle.Data.Plans;

/// <summary>What players of a squad see, with the stamps their calendars go by.</summary>
/// <param name="Stamps">By the session's uid: how often its time, title or cancellation changed, and when last.</param>
/// <param name="Cancelled">Sessions that were taken out lately; calendars should be told.</param>
public sealed record PublishedPlan(
    Guid SquadId,
    string SquadName,
    string ClubName,
    DateTimeZone Zone,
    IsoDayOfWeek FirstWeekday,
    int Revision,
    Instant PublishedAt,
    SquadPlan Plan,
    IReadOnlyDictionary<Guid, SessionStamp> Stamps,
    IReadOnlyList<CancelledSession> Cancelled)
{
    /// <summary>What was published of the cycle before and took place lately: it stays on phones.</summary>
    public IReadOnlyList<PlannedSession> Earlier { get; init; } = [];

    /// <summary>All that phones hold, in date order.</summary>
    public IEnumerable<PlannedSession> Sessions => Earlier.Concat(Plan.Sessions);
}

public sealed record SessionStamp(int Sequence, Instant LastChanged);

public sealed record CancelledSession(Guid Uid, LocalDate Date, LocalTime Start, int Minutes, string Title, SessionKind Kind, SessionStamp Stamp);

/// <summary>A line of the squad's publishing history.</summary>
public sealed record Revision(int Number, Instant PublishedAt, Guid? PublishedBy, string Note)
{
    /// <summary>Name of who published it; null when that is not known any more, or was not asked for.</summary>
    public string? Publisher { get; init; }
}
