using ClubCycle.Data.Feeds;
using NodaTime;

namespace ClubCycle.Data.Tests.Feeds;

public sealed class FeedStoreTests(ClubData data) : IClassFixture<ClubData>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_same_text_saved_again_keeps_its_time_and_another_text_replaces_it()
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        var feeds = club.Store<FeedStore>();

        await feeds.SaveAsync(squad, "spm", Body("a", 1), Cancel);
        await feeds.SaveAsync(squad, "spm", Body("a", 2), Cancel);
        Assert.Equal(Instant.FromUnixTimeSeconds(1), (await feeds.FindAsync(squad, "spm", Cancel))!.LastModified);

        await feeds.SaveAsync(squad, "spm", Body("b", 3), Cancel);
        Assert.Equal(("b", Instant.FromUnixTimeSeconds(3)), ((await feeds.FindAsync(squad, "spm", Cancel))!.Etag, (await feeds.FindAsync(squad, "spm", Cancel))!.LastModified));
        Assert.Null(await feeds.FindAsync(squad, "other", Cancel));
    }

    [Fact]
    public async Task A_worker_that_was_held_up_does_not_put_an_older_plan_over_a_newer_one()
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        var feeds = club.Store<FeedStore>();

        await feeds.SaveAsync(squad, "spm", Body("new", 5), Cancel);
        await feeds.SaveAsync(squad, "spm", Body("old", 4), Cancel);

        Assert.Equal("new", (await feeds.FindAsync(squad, "spm", Cancel))!.Etag);
    }

    private static FeedBody Body(string etag, byte second) => new(etag, [second, 1], [second, 2], 100, Instant.FromUnixTimeSeconds(second));
}
