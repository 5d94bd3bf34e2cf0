using ClubCycle.Calendars;
using ClubCycle.Calendars.Tests.Outside;
using ClubCycle.Data.Plans;
using ClubCycle.Planning;
using ClubCycle.Planning.Feeds;
using ClubCycle.Planning.Squads;
using ClubCycle.Web.Features.Feeds;
using NodaTime;

namespace ClubCycle.Web.Tests.Feeds;

/// <summary>Feeds of the demo club and of seasons of every shape, in programs that share no code with ours.</summary>
[Trait("Beside", "screens")]
public sealed class SubscriberTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("clubcycle-feeds-");

    public void Dispose() => _folder.Delete(recursive: true);

    /// <summary>Of every squad every variant in use, with and without what to do.</summary>
    private static readonly Lazy<IReadOnlyList<(FeedCalendar Feed, FeedOptions Options)>> EveryFeed = new(() => [.. Feeds(each: 1)]);

    /// <summary>Of every squad a third of them, of every variant some squads: for readers that take their time.</summary>
    private static readonly Lazy<IReadOnlyList<(FeedCalendar Feed, FeedOptions Options)>> SomeFeeds = new(() => [.. Feeds(each: 3)]);

    private static IEnumerable<(FeedCalendar Feed, FeedOptions Options)> Feeds(int each) =>
        from plan in Plans().Index()
        from options in PublishedSquad.OptionsInUse(plan.Item.Ages).Index()
        where (plan.Index + options.Index) % each == 0
        from waiting in options.Item == FeedOptions.UsualFor(plan.Item.Ages) ? (bool[])[false, true] : [false]
        select (FeedRendering.Calendar(plan.Item.Published, options.Item, waiting), options.Item);

    [Theory]
    [InlineData(FeedReaders.Libical)]
    [InlineData(FeedReaders.IcalJs)]
    public void Readers_of_somebody_else_find_every_event_of_every_squad_in_every_variant(string reader) => AssertFindsAll(reader, EveryFeed.Value);

    [Fact]
    public void A_slow_reader_finds_every_event_of_every_squad() => AssertFindsAll(FeedReaders.Python, SomeFeeds.Value);

    private void AssertFindsAll(string reader, IReadOnlyList<(FeedCalendar Feed, FeedOptions Options)> feeds)
    {
        var read = FeedReaders.Read(reader, [.. feeds.Select((one, n) => Write(n, IcsWriter.Write(one.Feed)))]);

        Assert.Equal(feeds.Count, read.Count);
        Assert.All(feeds.Zip(read), pair => Assert.Equal(pair.First.Feed.Events.Select(FeedReaders.Line), pair.Second));
    }

    [Fact]
    public void Khal_lists_every_event_of_every_squad()
    {
        // Two that differ in what khal does not list are one to it.
        var feeds = SomeFeeds.Value.Select(one => one.Feed).DistinctBy(feed => $"{feed.Name} {string.Join('\n', feed.Events.Select(KhalStore.Line))}").ToList();
        using var khal = new KhalStore(feeds.Count);
        foreach (var (n, feed) in feeds.Index())
        {
            khal.Poll(IcsWriter.Write(feed), n);
        }

        var listed = khal.ListAll("2025-01-01", "2028-12-31");

        Assert.All(feeds.Zip(listed), pair => Assert.Equal(pair.First.Events.Select(KhalStore.Line).Order(StringComparer.Ordinal), pair.Second));
    }

    [Fact]
    public void What_readers_are_shown_holds_every_squad_and_every_value_of_every_option()
    {
        foreach (var feeds in new[] { EveryFeed.Value, SomeFeeds.Value })
        {
            Assert.Equal(PublishedSquad.Demo.Count + PublishedSquad.Seasons.Count, feeds.Select(one => one.Feed.Name).Distinct().Count());
            Assert.Equal(EveryFeed.Value.Select(one => one.Options).ToHashSet(), feeds.Select(one => one.Options).ToHashSet());
        }

        foreach (var ages in PublishedSquad.Demo.Select(r => r.Squad.AgeGroup).Distinct())
        {
            var inUse = PublishedSquad.OptionsInUse(ages);
            Assert.All(typeof(FeedOptions).GetProperties().Where(p => p.CanWrite), option => Assert.Equal(
                PublishedSquad.AllOptions.Select(option.GetValue).ToHashSet(), inUse.Select(option.GetValue).ToHashSet()));
        }
    }

    [Theory]
    [InlineData("spml", 1)]
    [InlineData("spm", 2)]
    [InlineData("spmld", 3)]
    [InlineData("pml-r60", 4)]
    [InlineData("sd", 5)]
    public void A_calendar_that_keeps_events_by_uid_always_holds_what_is_published(string code, int seed)
    {
        var polls = Polls(FeedOptions.Of(code)!, seed, count: 15);

        var held = FeedReaders.Poll([.. polls.Select((feed, n) => Write(n, IcsWriter.Write(feed)))]);

        Assert.All(polls.Zip(held), pair => Assert.Equal(pair.First.Events.Select(Held).Order(StringComparer.Ordinal), pair.Second.Order(StringComparer.Ordinal)));
        Assert.Contains(polls[^1].Events, e => e.Sequence > 1);
    }

    [Theory]
    [InlineData("spml", 6)]
    [InlineData("spmld", 7)]
    public void Khals_calendar_has_no_duplicate_and_no_orphan_after_any_poll(string code, int seed)
    {
        using var khal = new KhalStore();
        foreach (var feed in Polls(FeedOptions.Of(code)!, seed, count: 6))
        {
            khal.Poll(IcsWriter.Write(feed));

            Assert.Equal(feed.Events.Select(KhalStore.Line).Order(StringComparer.Ordinal), khal.List("2025-01-01", "2028-12-31"));
        }
    }

    /// <summary>The year as coaches change it: moves, cancellations, additions, other titles and places, and what comes back.</summary>
    private static List<FeedCalendar> Polls(FeedOptions options, int seed, int count)
    {
        var random = new Random(seed);
        var squad = PublishedSquad.Of(PublishedSquad.Seasons[seed % PublishedSquad.Seasons.Count]);
        var all = squad.Plan.Sessions;
        var first = all.First(s => s.Kind == SessionKind.Match);
        List<PublishedPlan> published = [squad.Publish()];
        Next([.. all.Where(s => s.Uid != first.Uid)]);
        Next(all);
        Next([.. all.Select(s => s.Uid == first.Uid ? s with { Date = s.Date.PlusDays(1), Place = "Elsewhere" } : s)]);
        while (published.Count < count)
        {
            Next(random.Edit(squad.Plan.Sessions, all, squad.Now.InZone(squad.Request.Zone).Date));
        }

        return published.ConvertAll(p => FeedRendering.Calendar(p, options, waiting: false));

        void Next(IReadOnlyList<PlannedSession> sessions)
        {
            squad.Now += Duration.FromDays(5);
            published.Add(squad.Publish(sessions));
        }
    }

    /// <summary>Some days into the year and with a session called off, so that every kind of entry comes up.</summary>
    private static List<(PublishedPlan Published, AgeGroup Ages)> Plans() => [.. PublishedSquad.Demo.Concat(PublishedSquad.Seasons).Select(request =>
    {
        var squad = PublishedSquad.Of(request);
        squad.Publish();
        squad.Now += Duration.FromDays(5);
        return (squad.Publish([.. squad.Plan.Sessions.Where((_, n) => n % 23 != 22)]), request.Squad.AgeGroup);
    })];

    private static string Held(FeedEvent one)
    {
        var fields = FeedReaders.Line(one).Split('\t');
        return string.Join('\t', fields[0], fields[1], fields[2], fields[5], fields[8], fields[9]);
    }

    private string Write(int number, string feed)
    {
        var path = Path.Combine(_folder.FullName, $"{number}.ics");
        File.WriteAllText(path, feed);
        return path;
    }
}
