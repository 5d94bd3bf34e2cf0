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
        var near = read.Index()
            .Where(r => pairs[r.Index] is null && Fold(r.Item.Opponent) is not null)
            .SelectMany(r => byOpponent[Fold(r.Item.Opponent)!].Select(known => (r.Index, One: r.Item, Known: known, Days: DaysApart(r.Item, known))))
            // A cancelled match takes no other one with it.
            .Where(pair => pair.Days <= (pair.One.Cancelled ? 0 : FurthestMove))
            .OrderBy(pair => pair.Days)
            .ThenBy(pair => pair.One.Cancelled)
            .ThenBy(pair => pair.One.Start != pair.Known.Start);
        var taken = new HashSet<KnownFixture>(ReferenceEqualityComparer.Instance);
        foreach (var pair in near)
        {
            if (pairs[pair.Index] is null && taken.Add(pair.Known))
            {
                pairs[pair.Index] = pair.Known;
            }
        }

        free.RemoveAll(taken.Contains);
    }

    private static void PairByDate(IReadOnlyList<ReadFixture> read, KnownFixture?[] pairs, List<KnownFixture> free)
    {
        foreach (var (at, one) in read.Index().Where(r => pairs[r.Index] is null && !r.Item.Cancelled))
        {
            if (free.Where(known => known.Date == one.Date).OrderBy(known => known.Start != one.Start).FirstOrDefault() is { } known)
            {
                pairs[at] = known;
                free.Remove(known);
            }
        }
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
