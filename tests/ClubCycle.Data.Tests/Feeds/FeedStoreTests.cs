using ClubCycle.Data.Feeds;
using ClubCycle.Data.Links;
using ClubCycle.Data.Players;
using NodaTime;
using NodaTime.Text;

namespace ClubCycle.Data.Tests.Feeds;

public sealed class FeedStoreTests(ClubData data) : IClassFixture<ClubData>
{
    private static readonly LocalDate Today = new(2026, 3, 1);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_poll_reads_the_body_of_the_players_squad()
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        var token = await TokenAsync(club, squad);

        Assert.Null((await club.Store<FeedStore>().PollAsync(token, "full", "waiting", Today, Cancel))!.Body);
        await club.Store<FeedStore>().SaveAsync(squad, "full", Body("a", 1), Cancel);
        var polled = (await (await data.NewClubAsync("Elsewhere")).Store<FeedStore>().PollAsync(token, "full", "waiting", Today, Cancel))!;

        Assert.Equal("a", polled.Body!.Etag);
        Assert.Equal([1, 1], polled.Body.Gzip);
        Assert.Equal([1, 2], polled.Body.Brotli);
        Assert.Equal(squad, polled.Link.SquadId);
        Assert.Null(await club.Store<FeedStore>().PollAsync(LinkToken.Create(), "full", "waiting", Today, Cancel));
    }

    [Theory]
    [InlineData(false, null, "full")]
    [InlineData(true, null, "waiting")]
    [InlineData(true, "2025-03-01", "waiting")]
    [InlineData(true, "2025-03-02", "full")]
    public async Task Who_owes_the_health_questions_gets_the_feed_that_waits(bool asked, string? settled, string etag)
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        var token = await TokenAsync(club, squad);
        var players = club.Store<PlayerStore>();
        var player = Assert.Single(await players.ListAsync(squad, Cancel));
        (await players.LimitAsync(squad, player.Id, new PlayerLimits(null, asked, settled is null ? null : LocalDatePattern.Iso.Parse(settled).Value, null), player.Version, ClubData.By, Cancel)).OrThrow();
        foreach (var variant in new[] { "full", "waiting" })
        {
            await club.Store<FeedStore>().SaveAsync(squad, variant, Body(variant, 1), Cancel);
        }

        Assert.Equal(etag, (await club.Store<FeedStore>().PollAsync(token, "full", "waiting", Today, Cancel))!.Body!.Etag);
    }

    [Fact]
    public async Task A_revoked_link_gets_no_body()
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        var token = await TokenAsync(club, squad);
        await club.Store<FeedStore>().SaveAsync(squad, "full", Body("a", 1), Cancel);
        var link = (await club.Store<LinkStore>().FindAsync(token, Cancel))!;
        (await club.Store<LinkStore>().RevokeAsync(squad, link.PlayerId, link.LinkId, ClubData.By, Cancel)).OrThrow();

        var polled = (await club.Store<FeedStore>().PollAsync(token, "full", "waiting", Today, Cancel))!;

        Assert.False(polled.Link.Live);
        Assert.Null(polled.Body);
    }

    [Fact]
    public async Task The_same_text_saved_again_keeps_its_time_and_another_text_replaces_it()
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        var feeds = club.Store<FeedStore>();

        await feeds.SaveAsync(squad, "full", Body("a", 1), Cancel);
        await feeds.SaveAsync(squad, "full", Body("a", 2), Cancel);
        Assert.Equal(Instant.FromUnixTimeSeconds(1), (await feeds.FindAsync(squad, "full", Cancel))!.LastModified);

        await feeds.SaveAsync(squad, "full", Body("b", 3), Cancel);
        Assert.Equal(("b", Instant.FromUnixTimeSeconds(3)), ((await feeds.FindAsync(squad, "full", Cancel))!.Etag, (await feeds.FindAsync(squad, "full", Cancel))!.LastModified));
        Assert.Null(await feeds.FindAsync(squad, "other", Cancel));
    }

    private static FeedBody Body(string etag, byte second) => new(etag, [second, 1], [second, 2], 100, Instant.FromUnixTimeSeconds(second));

    private static async Task<string> TokenAsync(TestClub club, Guid squad) =>
        (await club.Store<LinkStore>().CreateAsync(squad, await club.PlayerAsync(squad), "phone", ClubData.By, Cancel)).OrThrow().Token;
}
