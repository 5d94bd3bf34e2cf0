using System.Collections.Concurrent;

namespace ClubCycle.NothingLost.Editing;

/// <summary>
/// The acknowledged writes of everything that is edited, each from what its author saw to what they wrote. Done one after the other, the writes of a thing make one path
/// that starts at what it was first, uses each write once, and ends at what it is now: a write that was lost, or made over something unseen, leaves no such path.
/// </summary>
internal sealed class Ledger
{
    private readonly ConcurrentDictionary<string, ConcurrentBag<(string Seen, string Written)>> _writes = new(StringComparer.Ordinal);

    public int Count => _writes.Values.Sum(w => w.Count);

    public void Acknowledge(string thing, string seen, string written) => _writes.GetOrAdd(thing, _ => []).Add((seen, written));

    /// <summary>Why no order of the writes explains a thing; null when one does.</summary>
    public string? Unexplained(string thing, string first, string now)
    {
        List<(string Seen, string Written)> writes = _writes.TryGetValue(thing, out var known) ? [.. known] : [];
        var surplus = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var (seen, written) in writes.Append((now, first)))
        {
            surplus[seen] = surplus.GetValueOrDefault(seen) + 1;
            surplus[written] = surplus.GetValueOrDefault(written) - 1;
        }

        HashSet<string> reached = [first];
        while (writes.Any(w => reached.Contains(w.Seen) && reached.Add(w.Written)))
        {
        }

        return surplus.Values.All(s => s == 0) && writes.All(w => reached.Contains(w.Seen)) && reached.Contains(now)
            ? null
            : $"{thing}: was {first}, is {now}, and no order of {string.Join("; ", writes.Select(w => $"{w.Seen} -> {w.Written}"))} explains that";
    }
}
