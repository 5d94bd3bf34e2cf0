using System.Diagnostics;
using ClubCycle.Data.Feeds;
using ClubCycle.Data.Live;
using ClubCycle.Web.Features.Feeds;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;
using NodaTime;

namespace ClubCycle.Web.Tests.Feeds;

/// <summary>What a node keeps, with and without hearing of changes.</summary>
public sealed class FeedCacheTests(TestApp app) : IClassFixture<TestApp>
{
    private readonly TestClock _clock = new(Instant.FromUtc(2026, 3, 3, 12, 0));

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_node_that_hears_nothing_sees_a_revoked_link_within_a_minute()
    {
        var club = await app.NewClubAsync();
        var link = await club.NewLinkAsync();
        using var cache = Deaf();
        Assert.NotNull(await cache.FindAsync(link.Token));

        await club.RevokeAsync(link.Id);
        Assert.NotNull(await cache.FindAsync(link.Token));
        _clock.Now += Duration.FromSeconds(61);

        Assert.Null(await cache.FindAsync(link.Token));
    }

    [Fact]
    public async Task A_node_that_hears_nothing_sees_a_new_text_within_a_minute()
    {
        var club = await app.NewClubAsync();
        var link = await club.NewLinkAsync();
        using var cache = Deaf();
        Assert.Null((await cache.FindAsync(link.Token))!.On(Today));

        await SaveAsync(club);
        _clock.Now += Duration.FromSeconds(61);

        Assert.Equal("a", (await cache.FindAsync(link.Token))!.On(Today)!.Tag.Etag);
    }

    [Fact]
    public async Task A_node_that_hears_sees_every_change_at_once()
    {
        var club = await app.NewClubAsync();
        var link = await club.NewLinkAsync();
        using var cache = Cache(app.Services.GetRequiredService<ClubChanges>());
        await SaveAsync(club);
        await UntilAsync(async () => (await cache.FindAsync(link.Token))!.On(Today)?.Tag.Etag == "a");

        await club.RevokeAsync(link.Id);

        await UntilAsync(async () => await cache.FindAsync(link.Token) is null);
    }

    [Fact]
    public async Task A_kept_link_is_not_read_again()
    {
        var club = await app.NewClubAsync();
        var link = await club.NewLinkAsync();
        using var cache = Deaf();

        var first = await cache.FindAsync(link.Token);

        Assert.Same(first, await cache.FindAsync(link.Token));
    }

    [Fact]
    public async Task Without_memory_each_poll_reads()
    {
        var club = await app.NewClubAsync();
        var link = await club.NewLinkAsync();
        using var cache = Cache(new ClubChanges(), megabytes: 0);

        Assert.NotSame(await cache.FindAsync(link.Token), await cache.FindAsync(link.Token));
    }

    [Fact]
    public async Task A_full_memory_lets_go_and_goes_on_answering()
    {
        var club = await app.NewClubAsync();
        var changes = new ClubChanges();
        using var cache = Cache(changes, megabytes: 1);
        var token = (await club.NewLinkAsync()).Token;

        // Far more wrong ones than are remembered: right ones stay.
        var kept = await cache.FindAsync(token);
        for (var i = 0; i < 12_000; i++)
        {
            Assert.Null(await cache.FindAsync(i.ToString("D43", System.Globalization.CultureInfo.InvariantCulture)));
        }

        Assert.Same(kept, await cache.FindAsync(token));
    }

    private LocalDate Today => _clock.Now.InUtc().Date;

    private FeedCache Deaf() => Cache(new ClubChanges());

    private FeedCache Cache(ClubChanges changes, int megabytes = 8) =>
        new(app.Services.GetRequiredService<PollStore>(), new KeptChanges(changes), Options.Create(new FeedLimits { CacheMegabytes = megabytes }), _clock);

    /// <summary>Under every usual name.</summary>
    private static Task<bool> SaveAsync(TestClub club) => club.App.InClubAsync(club.Id, async services =>
    {
        foreach (var variant in new[] { "spm", "spml" })
        {
            await services.GetRequiredService<FeedStore>().SaveAsync(club.OwnSquad, variant, new FeedBody("a", [1], [1], 1, Instant.FromUnixTimeSeconds(1)), Cancel);
        }

        return true;
    });

    private static async Task UntilAsync(Func<Task<bool>> happened)
    {
        for (var watch = Stopwatch.StartNew(); !await happened(); await Task.Delay(20, Cancel))
        {
            Assert.True(watch.Elapsed < TimeSpan.FromSeconds(20), "Nothing was seen within 20 seconds.");
        }
    }
}
