using System.Collections.Concurrent;

namespace ClubCycle.Data.Live;

/// <summary>Passes changes on to those who asked for them, on this node. Nobody hears of another club.</summary>
public sealed class ClubChanges
{
    private readonly ConcurrentDictionary<Subscription, byte> _subscriptions = new();
    private Action<ClubChange?>? _feeds;

    /// <param name="squad">Null for any squad of the club. Changes of the whole club are always told.</param>
    /// <param name="tell">Called from the listener's thread: it hands on, works elsewhere and does not throw.</param>
    /// <returns>Disposing it ends the subscription.</returns>
    public IDisposable Subscribe(Guid club, Guid? squad, Action<ClubChange> tell)
    {
        var subscription = new Subscription(this, club, squad, tell);
        _subscriptions[subscription] = 0;
        return subscription;
    }

    /// <summary>For what a node keeps of all clubs' feeds, and shows to nobody but their own readers.</summary>
    /// <param name="tell">As in <see cref="Subscribe"/>; null when everything may have changed.</param>
    public void SubscribeFeeds(Action<ClubChange?> tell) => _feeds += tell;

    /// <param name="feedsOnly">Nothing that a screen shows.</param>
    internal void Tell(ClubChange change, bool feedsOnly = false)
    {
        _feeds?.Invoke(change);
        if (feedsOnly)
        {
            return;
        }

        foreach (var subscription in _subscriptions.Keys.Where(s => s.Club == change.ClubId && (s.Squad is null || change.SquadId is null || s.Squad == change.SquadId)))
        {
            subscription.Tell(change);
        }
    }

    /// <summary>After a time of silence everything may have changed.</summary>
    internal void TellAll()
    {
        _feeds?.Invoke(null);
        foreach (var subscription in _subscriptions.Keys)
        {
            subscription.Tell(new ClubChange(subscription.Club, null, null));
        }
    }

    private sealed class Subscription(ClubChanges of, Guid club, Guid? squad, Action<ClubChange> tell) : IDisposable
    {
        public Guid Club => club;

        public Guid? Squad => squad;

        public Action<ClubChange> Tell => tell;

        public void Dispose() => of._subscriptions.TryRemove(this, out _);
    }
}
