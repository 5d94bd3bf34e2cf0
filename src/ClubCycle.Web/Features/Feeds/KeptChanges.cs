using ClubCycle.Data.Live;

namespace ClubCycle.Web.Features.Feeds;

/// <summary>Counts changes by club and squad, so that what was read before one is known to be old. A fixed number of counters: two clubs that share one are read again once too often.</summary>
internal sealed class KeptChanges
{
    private const int Counters = 4096;

    private readonly long[] _counts = new long[Counters];
    private long _all;
    private long _told;

    public KeptChanges(ClubChanges changes) => changes.SubscribeFeeds(Count);

    /// <summary>Grows with each change of any club.</summary>
    public long Told => Interlocked.Read(ref _told);

    /// <summary>Grows with each change that concerns the squad.</summary>
    public long Of(Guid club, Guid squad) => Interlocked.Read(ref _all) + Interlocked.Read(ref Counter(club)) + Interlocked.Read(ref Counter(squad));

    private void Count(ClubChange? change)
    {
        // First: whoever reads one of the counts below after this change sees that something was told, too.
        Interlocked.Increment(ref _told);
        Interlocked.Increment(ref change is null ? ref _all : ref Counter(change.SquadId ?? change.ClubId));
    }

    private ref long Counter(Guid id) => ref _counts[(uint)id.GetHashCode() % Counters];
}
