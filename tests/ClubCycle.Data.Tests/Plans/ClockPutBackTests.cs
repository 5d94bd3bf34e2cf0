using ClubCycle.Data.Feeds;
using ClubCycle.Data.Plans;
using ClubCycle.Planning;
using ClubCycle.Planning.Replanning;
using NodaTime;

namespace ClubCycle.Data.Tests.Plans;

/// <summary>A machine whose clock was ahead, until somebody put it right.</summary>
public sealed class ClockPutBackTests(ClubData data) : IClassFixture<ClubData>
{
    private static readonly LocalDate Week = new(2026, 5, 4);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_is_published_after_the_clock_was_put_back_replaces_the_feed_and_counts_as_newer()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        var feeds = club.Store<FeedStore>();
        data.Clock.Now = ClubData.Start + Duration.FromHours(5);
        await club.PublishAsync(squad);
        var before = (await club.Store<PlanStore>().PublishedAsync(squad, Cancel)).OrThrow();
        await feeds.SaveAsync(squad, "spm", Body("before", before.PublishedAt), Cancel);

        data.Clock.Now = ClubData.Start;
        var session = before.Sessions.First(s => s.Kind == SessionKind.Session && s.Date > Week);
        var week = session.Date.With(DateAdjusters.PreviousOrSame(IsoDayOfWeek.Monday));
        (await club.Store<PinStore>().PinAsync(squad, new Pin(week, session.Slot, session.Date, session.Start.PlusMinutes(5)), ClubData.By, Cancel)).OrThrow();
        await club.PublishAsync(squad, 1);

        var after = (await club.Store<PlanStore>().PublishedAsync(squad, Cancel)).OrThrow();
        await feeds.SaveAsync(squad, "spm", Body("after", after.PublishedAt), Cancel);
        Assert.Equal("after", (await feeds.FindAsync(squad, "spm", Cancel))!.Etag);
        Assert.True(after.Stamps[session.Uid].LastChanged > before.Stamps[session.Uid].LastChanged);
        Assert.Equal(before.Stamps[session.Uid].Sequence + 1, after.Stamps[session.Uid].Sequence);
    }

    private static FeedBody Body(string etag, Instant at) => new(etag, [1], [2], 100, at);
}
