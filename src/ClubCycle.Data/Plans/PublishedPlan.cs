using ClubCycle.Planning;
using ClubCycle.Planning.Squads;
using NodaTime;

namespace ClubCycle.Data.Plans;

/// <summary>What players of a squad see, with the stamps their calendars go by.</summary>
/// <param name="Stamps">By the session's uid: how often its time, length, place, title or cancellation changed, and when last.</param>
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
    /// <summary>How long calendars keep what is over.</summary>
    public static readonly Period KeptFor = Period.FromDays(30);

    /// <summary>The age group of the squad: what its players' calendars show as a rule.</summary>
    public AgeGroup Ages { get; init; } = AgeGroup.Senior;

    /// <summary>The first day that calendars hold. It goes by the day of publishing, so that a feed never changes by itself.</summary>
    public LocalDate ShownFrom => PublishedAt.InZone(Zone).Date - KeptFor;

    /// <summary>What was published of the cycle before and took place lately: it stays on phones.</summary>
    public IReadOnlyList<PlannedSession> Earlier { get; init; } = [];

    /// <summary>All that phones hold, in date order.</summary>
    public IEnumerable<PlannedSession> Sessions => Earlier.Concat(Plan.Sessions);
}

public sealed record SessionStamp(int Sequence, Instant LastChanged);

public sealed record CancelledSession(Guid Uid, LocalDate Date, LocalTime Start, int Minutes, string Title, SessionKind Kind, SessionStamp Stamp, string? Place = null);

/// <summary>A line of the squad's publishing history.</summary>
public sealed record Revision(int Number, Instant PublishedAt, Guid? PublishedBy, string Note)
{
    /// <summary>Name of who published it; null when that is not known any more, or was not asked for.</summary>
    public string? Publisher { get; init; }
}
