using System.Text;

namespace ClubCycle.Calendars.FixtureFiles;

/// <summary>What a file changes in the matches a squad has already. Nothing is decided: a person sees it first.</summary>
/// <param name="Read">One for each match of the file, in its order.</param>
/// <param name="NotInFile">Stored matches that the file does not name, in their order. They stay unless a person removes them.</param>
public sealed record FixtureMatch(IReadOnlyList<MatchedFixture> Read, IReadOnlyList<KnownFixture> NotInFile)
{
    /// <summary>A match against the same opponent counts as moved up to this many days.</summary>
    public const int FurthestMove = 60;

    /// <summary>Pairs each read match with a stored one: by source key, else by opponent and nearest date, else by date. A stored one is paired once.</summary>
    public static FixtureMatch Against(IReadOnlyList<KnownFixture> existing, IReadOnlyList<ReadFixture> read)
    {
        var pairs = new KnownFixture?[read.Count];
        var free = existing.ToList();
        PairByKey(read, pairs, free);
        PairByOpponent(read, pairs, free);
        PairByDate(read, pairs, free);
        return new FixtureMatch([.. read.Select((one, at) => Say(one, pairs[at]))], free);
    }

    private static void PairByKey(IReadOnlyList<ReadFixture> read, KnownFixture?[] pairs, List<KnownFixture> free)
    {
        var byKey = free.Where(known => known.SourceKey is not null).ToLookup(known => known.SourceKey!, StringComparer.Ordinal);
        var taken = new HashSet<KnownFixture>(ReferenceEqualityComparer.Instance);
        foreach (var (at, one) in read.Index().Where(r => r.Item.SourceKey is not null))
        {
            pairs[at] = byKey[one.SourceKey!].FirstOrDefault(taken.Add);
        }

        free.RemoveAll(taken.Contains);
    }

    private static void PairByOpponent(IReadOnlyList<ReadFixture> read, KnownFixture?[] pairs, List<KnownFixture> free)
    {
        var byOpponent = free.Where(known => Fold(known.Opponent) is not null).ToLookup(known => Fold(known.Opponent)!, StringComparer.Ordinal);

        // A cancelled match takes no other one with it.
        PairBest(pairs, free, read.Index()
            .Where(r => Fold(r.Item.Opponent) is not null)
            .SelectMany(r => byOpponent[Fold(r.Item.Opponent)!].Where(known => DaysApart(r.Item, known) <= (r.Item.Cancelled ? 0 : FurthestMove)).Select(known => (r.Index, r.Item, known))));
    }

    private static void PairByDate(IReadOnlyList<ReadFixture> read, KnownFixture?[] pairs, List<KnownFixture> free)
    {
        var byDate = free.ToLookup(known => known.Date);
        PairBest(pairs, free, read.Index().Where(r => !r.Item.Cancelled).SelectMany(r => byDate[r.Item.Date].Select(known => (r.Index, r.Item, known))));
    }

    /// <summary>The nearest pairs first; on one day those that the file leaves as they are, and of these first the matches that have least choice.</summary>
    private static void PairBest(KnownFixture?[] pairs, List<KnownFixture> free, IEnumerable<(int At, ReadFixture One, KnownFixture Known)> possible)
    {
        var open = possible.Where(pair => pairs[pair.At] is null).ToLookup(pair => Say(pair.One, pair.Known) is MatchedFixture.Changed);
        var choices = open[false].CountBy(pair => pair.At).ToDictionary();
        var best = open[false].OrderBy(pair => choices[pair.At]).ThenBy(pair => pair.One.Start != pair.Known.Start)
            .Concat(open[true].OrderBy(pair => pair.One.Start != pair.Known.Start))
            .OrderBy(pair => DaysApart(pair.One, pair.Known))
            .ThenBy(pair => pair.One.Cancelled);
        var taken = new HashSet<KnownFixture>(ReferenceEqualityComparer.Instance);
        foreach (var (at, _, known) in best)
        {
            if (pairs[at] is null && taken.Add(known))
            {
                pairs[at] = known;
            }
        }

        free.RemoveAll(taken.Contains);
    }

    private static MatchedFixture Say(ReadFixture read, KnownFixture? known)
    {
        if (read.Cancelled)
        {
            return new MatchedFixture.Cancelled(read, known);
        }

        if (known is null)
        {
            return new MatchedFixture.New(read);
        }

        // What the file does not say stays as it is.
        var to = known with { Date = read.Date, Start = read.Start ?? known.Start, Opponent = read.Opponent ?? known.Opponent, SourceKey = read.SourceKey ?? known.SourceKey, Place = read.Place ?? known.Place };
        return to with { SourceKey = known.SourceKey } == known ? new MatchedFixture.Same(read, to) : new MatchedFixture.Changed(read, known, to);
    }

    private static int DaysApart(ReadFixture read, KnownFixture known) =>
        Math.Abs(NodaTime.Period.DaysBetween(read.Date, known.Date));

    private static string? Fold(string? opponent) =>
        string.IsNullOrWhiteSpace(opponent) ? null : opponent.Trim().Normalize(NormalizationForm.FormC).ToUpperInvariant();
}
