using System.Collections.Concurrent;

namespace ClubCycle.NothingLost.Kills;

/// <summary>What an editor said before and after each save. Saves of one thing come one after the other.</summary>
internal sealed class Journal
{
    private readonly ConcurrentDictionary<string, Entry> _things = new(StringComparer.Ordinal);
    private int _saved;
    private readonly ConcurrentQueue<string> _failed = [];
    private int _published;
    private int _conflicts;

    public int Saved => _saved;

    public int Published => _published;

    /// <summary>Refused because somebody else had saved first.</summary>
    public int Conflicts => _conflicts;

    /// <summary>What was not saved for any other reason, or not answered.</summary>
    public IReadOnlyCollection<string> Failed => _failed;

    /// <summary>Lines of <see cref="Editor"/>: <c>begin THING VALUE</c>, then <c>saved THING VALUE</c>, <c>refused THING CODE</c> or <c>failed THING WHY</c>.</summary>
    public void Read(string line)
    {
        if (line.Split(' ', 3) is not [var word, var thing, var value] || word is not ("begin" or "saved" or "refused" or "failed"))
        {
            return;
        }

        var entry = _things.GetOrAdd(thing, _ => new Entry());
        lock (entry)
        {
            switch (word)
            {
                case "begin":
                    entry.InDoubt.Add(value);
                    return;
                case "refused":
                    entry.InDoubt.RemoveAt(entry.InDoubt.Count - 1);
                    if (value.EndsWith(".changed-meanwhile", StringComparison.Ordinal))
                    {
                        Interlocked.Increment(ref _conflicts);
                        return;
                    }

                    _failed.Enqueue(line);
                    return;
                case "failed":
                    _failed.Enqueue(line);
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
