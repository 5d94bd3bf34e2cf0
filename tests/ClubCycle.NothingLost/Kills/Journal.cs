using System.Collections.Concurrent;

namespace ClubCycle.NothingLost.Kills;

/// <summary>What an editor said before and after each save. Saves of one thing come one after the other.</summary>
internal sealed class Journal
{
    private readonly ConcurrentDictionary<string, Entry> _things = new(StringComparer.Ordinal);
    private int _saved;
    private int _published;

    public int Saved => _saved;

    public int Published => _published;

    /// <summary>Lines of <see cref="Editor"/>: <c>begin THING VALUE</c>, <c>saved THING VALUE</c>.</summary>
    public void Read(string line)
    {
        if (line.Split(' ', 3) is not [var word, var thing, var value] || word is not ("begin" or "saved"))
        {
            return;
        }

        var entry = _things.GetOrAdd(thing, _ => new Entry());
        lock (entry)
        {
            if (word == "begin")
            {
                entry.InDoubt.Add(value);
                return;
            }

            (entry.Last, entry.InDoubt) = (value, []);
        }

        Interlocked.Increment(ref _saved);
        if (thing.StartsWith("revision", StringComparison.Ordinal))
        {
            Interlocked.Increment(ref _published);
        }
    }

    /// <summary>What is wrong with a thing as it is stored now; null when it holds its last acknowledged save, or a later one that was cut off before its answer.</summary>
    public string? Lost(string thing, string now)
    {
        if (!_things.TryGetValue(thing, out var entry))
        {
            return null;
        }

        lock (entry)
        {
            if (entry.Last is null || now == entry.Last || entry.InDoubt.Contains(now))
            {
                return null;
            }

            return $"{thing} is {now}, although {entry.Last} was acknowledged and only {(entry.InDoubt.Count == 0 ? "nothing" : string.Join(", ", entry.InDoubt))} came after it";
        }
    }

    private sealed class Entry
    {
        public string? Last { get; set; }

        public List<string> InDoubt { get; set; } = [];
    }
}
