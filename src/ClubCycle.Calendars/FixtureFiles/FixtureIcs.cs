using ClubCycle.Calendars.Sheets;
using ClubCycle.Planning;
using NodaTime;

namespace ClubCycle.Calendars.FixtureFiles;

/// <summary>Reads matches from an iCalendar file of at most 1 MB. A file that is no such calendar gives a <c>fixture-file.*</c> problem.</summary>
public static class FixtureIcs
{
    public const int MostRepeating = 100;

    private static readonly TimeSpan TimeLimit = TimeSpan.FromSeconds(2);

    /// <summary>The entries as matches. Entries that repeat give a match a date: at most 1,000 within two years of the first.</summary>
    /// <param name="zone">The club's. Times without a zone are taken as its own.</param>
    /// <exception cref="OperationCanceledException">The caller cancelled.</exception>
    public static Task<Result<FixtureFile>> ReadAsync(byte[] bytes, DateTimeZone zone, CancellationToken cancel = default) =>
        ReadAsync(bytes, zone, TimeLimit, cancel);

    internal static async Task<Result<FixtureFile>> ReadAsync(byte[] bytes, DateTimeZone zone, TimeSpan within, CancellationToken cancel)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        var reading = Task.Run(() => Read(bytes, zone, limit.Token), CancellationToken.None);
        try
        {
            return await reading.WaitAsync(within, cancel);
        }
        catch (TimeoutException)
        {
            return new Problem("fixture-file.too-slow", "The calendar takes too long to read. Export the squad's own matches of one season only.");
        }
        finally
        {
            // The worker looks at this between two dates.
            await limit.CancelAsync();
        }
    }

    private static Result<FixtureFile> Read(byte[] bytes, DateTimeZone zone, CancellationToken cancel)
    {
        if (!IcsLines.Read(bytes).TryGet(out var lines, out var problems) || !IcsEntries.Cut(lines).TryGet(out var entries, out problems))
        {
            return new Result<FixtureFile>.Failed(problems);
        }

        if (entries.Count(entry => entry.Named("RRULE").Any()) > MostRepeating)
        {
            return new Problem("fixture-file.too-many-repeats", $"More than {MostRepeating} entries of the calendar repeat, which matches do not. Export the squad's own matches only.");
        }

        var bad = new List<BadRow>();
        var remarks = new List<string>();
        var withoutPlace = new List<(int Line, string Why)>();
        var kept = new Kept(bad);
        foreach (var entry in entries)
        {
            cancel.ThrowIfCancellationRequested();
            if (!EntryReader.Read(entry, zone, cancel).TryGet(out var dates, out problems))
            {
                bad.Add(BadRow.Of(entry.Line, entry.Raw, problems[0].Message));
                continue;
            }

            if (dates.Cut)
            {
                remarks.Add($"Line {entry.Line}: the entry repeats for more than {EntryReader.MostYears} years or {EntryReader.MostDates} dates; the later ones were left out. Enter those you need by hand.");
            }

            if (dates.WhyNoPlace is { } why)
            {
                withoutPlace.Add((entry.Line, why));
            }

            kept.Add(entry, dates);
            if (kept.Given > FixtureFile.MostRows)
            {
                return new Problem("file.too-many-rows", $"The calendar gives more than {FixtureFile.MostRows} dates. Export the squad's own matches of one season only.");
            }
        }

        if (withoutPlace is [var first, ..])
        {
            remarks.Add($"Entries that come without their place: {withoutPlace.Count}, the first on line {first.Line}. {first.Why}");
        }

        return new FixtureFile(kept.InOrder(), [.. bad.OrderBy(row => row.Line)], remarks);
    }

    /// <summary>One match for each source key: a change of one date before the series, then the later version.</summary>
    private sealed class Kept(List<BadRow> bad)
    {
        private readonly List<ReadFixture> withoutKey = [];
        private readonly Dictionary<string, (ReadFixture Fixture, IcsEntry Entry, EntryDates Dates)> byKey = new(StringComparer.Ordinal);

        /// <summary>All dates of the file, also those that another took the place of: each costs time.</summary>
        public int Given { get; private set; }

        public IReadOnlyList<ReadFixture> InOrder() =>
            [.. withoutKey.Concat(byKey.Values.Select(one => one.Fixture)).OrderBy(one => one.Line).ThenBy(one => one.Date).ThenBy(one => one.Start)];

        public void Add(IcsEntry entry, EntryDates dates)
        {
            Given += dates.Fixtures.Count;
            foreach (var fixture in dates.Fixtures)
            {
                if (fixture.SourceKey is not { } key)
                {
                    withoutKey.Add(fixture);
                }
                else if (!byKey.TryGetValue(key, out var other))
                {
                    byKey[key] = (fixture, entry, dates);
                }
                else
                {
                    var later = (dates.IsChangeOfOne, dates.Sequence).CompareTo((other.Dates.IsChangeOfOne, other.Dates.Sequence)) >= 0;
                    if (dates.IsChangeOfOne == other.Dates.IsChangeOfOne && entry != other.Entry)
                    {
                        var older = later ? other.Entry : entry;
                        bad.Add(BadRow.Of(older.Line, older.Raw, $"The same entry stands in the file again on line {(later ? entry : other.Entry).Line}, and that one was read. Delete the older one if both are meant to be one match; else give each an identifier (UID) of its own."));
                    }

                    byKey[key] = later ? (fixture, entry, dates) : other;
                }
            }
        }
    }
}
