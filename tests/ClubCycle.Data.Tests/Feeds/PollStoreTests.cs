using ClubCycle.Data.Feeds;
using ClubCycle.Data.Links;
using ClubCycle.Data.Players;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using NodaTime.Text;

namespace ClubCycle.Data.Tests.Feeds;

public sealed class PollStoreTests(ClubData data) : IClassFixture<ClubData>
{
    private static readonly LocalDate Today = new(2026, 3, 1);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private PollStore Polls => data.Services.GetRequiredService<PollStore>();

    [Fact]
    public async Task A_poll_finds_the_tags_of_the_players_squad_and_then_the_body()
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        var token = await TokenAsync(club, squad);

        Assert.Null((await FindAsync(token))!.On(Today));
        await SaveAsync(club, squad, "spm", "spm-w", "spml", "spml-w");
        var link = (await FindAsync(token))!;
        var tag = link.On(Today)!;

        Assert.Equal((club.Id, squad, true), (link.ClubId, link.SquadId, link.Live));
        Assert.Equal(await OptionsAsync(club, link), tag.Etag);
        Assert.Equal([7, 2], (await Polls.BodyAsync(club.Id, squad, tag.Variant, Cancel))!.Brotli);
        Assert.Null(await FindAsync(LinkToken.Create()));
    }

    [Fact]
    public async Task Each_link_gets_the_text_of_its_own_options()
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        var token = await TokenAsync(club, squad);
        await SaveAsync(club, squad, "spm", "spml", "sm-r60");
        await using (var db = await club.OpenAsync())
        {
            await db.Links.ExecuteUpdateAsync(set => set.SetProperty(l => l.Options, "sm-r60"), Cancel);
        }

        Assert.Equal("sm-r60", (await FindAsync(token))!.On(Today)!.Etag);
    }

    [Theory]
    [InlineData(false, null, false)]
    [InlineData(true, null, true)]
    [InlineData(true, "2025-03-01", true)]
    [InlineData(true, "2025-03-02", false)]
    public async Task Who_owes_the_health_questions_gets_the_feed_that_waits(bool asked, string? settled, bool waits)
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        var token = await TokenAsync(club, squad);
        var players = club.Store<PlayerStore>();
        var player = Assert.Single(await players.ListAsync(squad, Cancel));
        (await players.LimitAsync(squad, player.Id, new PlayerLimits(null, asked, settled is null ? null : LocalDatePattern.Iso.Parse(settled).Value, null), player.Version, ClubData.By, Cancel)).OrThrow();
        await SaveAsync(club, squad, "spm", "spm-w", "spml", "spml-w");

        Assert.Equal(waits, (await FindAsync(token))!.On(Today)!.Etag.EndsWith("-w", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_revoked_link_is_found_dead()
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        var token = await TokenAsync(club, squad);
        var link = (await club.Store<LinkStore>().FindAsync(token, Cancel))!;
        (await club.Store<LinkStore>().RevokeAsync(squad, link.PlayerId, link.LinkId, ClubData.By, Cancel)).OrThrow();

        Assert.False((await FindAsync(token))!.Live);
    }

    [Fact]
    public async Task Days_of_last_use_are_noted_for_several_clubs_at_once_and_never_go_back()
    {
        var links = new List<PolledLink>();
        foreach (var name in new[] { "First", "Second" })
        {
            var club = await data.NewClubAsync(name);
            links.Add((await FindAsync(await TokenAsync(club, await club.SquadAsync())))!);
        }

        await NoteAsync(Today);
        await NoteAsync(Today.PlusDays(-1));

        foreach (var link in links)
        {
            await using var db = await data.TestClub(link.ClubId).OpenAsync();
            Assert.Equal(Today, (await db.Links.SingleAsync(Cancel)).LastPollDay);
        }

        Task NoteAsync(LocalDate day) => Polls.NoteAsync([.. links.Select(l => KeyValuePair.Create((l.ClubId, l.LinkId), day))], Cancel);
    }

    private Task<PolledLink?> FindAsync(string token) => Polls.FindAsync(LinkToken.HashOf(token)!, Cancel);

    private static async Task SaveAsync(TestClub club, Guid squad, params string[] variants)
    {
        foreach (var variant in variants)
        {
            await club.Store<FeedStore>().SaveAsync(squad, variant, new FeedBody(variant, [7, 1], [7, 2], 100, Instant.FromUnixTimeSeconds(7)), Cancel);
        }
    }

    private static async Task<string> OptionsAsync(TestClub club, PolledLink link)
    {
        await using var db = await club.OpenAsync();
        return (await db.Links.SingleAsync(l => l.Id == link.LinkId, Cancel)).Options;
    }

    private static async Task<string> TokenAsync(TestClub club, Guid squad) =>
        (await club.Store<LinkStore>().CreateAsync(squad, await club.PlayerAsync(squad), "phone", ClubData.By, Cancel)).OrThrow().Token;
}
