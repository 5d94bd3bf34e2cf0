using NodaTime;

namespace ClubCycle.Calendars.Tests.Outside;

public sealed class ForeignReaderTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("clubcycle-feed-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Theory]
    [InlineData(FeedReaders.Python)]
    [InlineData(FeedReaders.Libical)]
    [InlineData(FeedReaders.IcalJs)]
    public void A_reader_of_somebody_else_finds_the_same_events(string reader)
    {
        var path = Path.Combine(_folder.FullName, "feed.ics");
        File.WriteAllText(path, IcsWriter.Write(YearOfEvents()));

        Assert.Equal(YearOfEvents().Events.Select(FeedReaders.Line), FeedReaders.Read(reader, [path]).Single());
    }

    [Theory]
    [InlineData(FeedReaders.Python)]
    [InlineData(FeedReaders.Libical)]
    [InlineData(FeedReaders.IcalJs)]
    public void A_reader_of_somebody_else_finds_the_moments_and_days_around_clock_changes(string reader)
    {
        List<(FeedEvent Event, string Start, string End)> expected =
        [
            .. ClockChangeTests.Evenings.Select(row => row.Data).Select(e => (Evening(e.Item1, e.Item2), e.Item3, e.Item3.Replace(":30:00Z", ":59:00Z", StringComparison.Ordinal).Replace(":00:00Z", ":29:00Z", StringComparison.Ordinal))),
            .. ClockChangeTests.Days.Select(row => row.Data).SelectMany(d => ClockChangeTests.AllDay(d.Item1, d.Item2)),
        ];
        var path = Path.Combine(_folder.FullName, "changes.ics");
        File.WriteAllText(path, IcsWriter.Write(A.Feed([.. expected.Select(e => e.Event)])));

        var read = FeedReaders.Read(reader, [path]).Single().Select(line => string.Join(' ', line.Split('\t')[..3]));

        Assert.Equal(expected.Select(e => $"{e.Event.Uid} {e.Start} {e.End}").Order(StringComparer.Ordinal), read.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Khal_imports_the_feed_and_lists_the_same_events()
    {
        using var khal = new KhalStore();
        khal.Import(IcsWriter.Write(YearOfEvents()));

        Assert.Equal(YearOfEvents().Events.Select(KhalStore.Line).Order(StringComparer.Ordinal), khal.List("2026-01-01", "2027-12-31"));
    }

    /// <summary>29 minutes long, so that its end lies in the hour of its start.</summary>
    private static FeedEvent Evening(string zone, string local) =>
        A.Event(uid: $"{zone} {local}", start: NodaTime.Text.LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm").Parse(local).Value, zone: zone, minutes: 29);

    private static FeedCalendar YearOfEvents()
    {
        string[] zones = ["Europe/Dublin", "Africa/Casablanca", "Australia/Lord_Howe", "Pacific/Auckland", "Asia/Kolkata", "America/Santiago", "Africa/Cairo"];
        var first = new LocalDateTime(2026, 3, 1, 18, 30);
        return FeedBuilder.Calendar("Women 1 — Ü, ;", Planning.Languages.Language.English, Enumerable.Range(0, 180).Select(n => A.Event(
            uid: $"event {n}",
            start: first.PlusDays(2 * n),
            minutes: 45 + (n % 4 * 15),
            zone: zones[n % zones.Length],
            title: $"Easy run {n}, again; \\ 🏑 שלום {new string('é', n % 60)}.",
            description: $"How hard: easy.\n- Step {n}: 3 × 12, rest 30 s 🏑🏑🏑🏑🏑🏑🏑🏑🏑🏑🏑🏑🏑🏑🏑🏑🏑🏑🏑🏑",
            sequence: n % 5,
            cancelled: n % 17 == 16) with
        {
            DayOnly = n % 5 == 2,
            Place = n % 3 == 0 ? null : $"Pitch {n}, north; ملعب \\ 🏑",
            ReminderMinutes = n % 5 == 2 || n % 17 == 16 ? null : Planning.Feeds.FeedOptions.Reminders[n % 5],
        }));
    }
}
