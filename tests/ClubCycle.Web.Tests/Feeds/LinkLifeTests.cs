using System.Diagnostics;
using System.Net;
using ClubCycle.Data.Links;
using ClubCycle.Data.Players;
using ClubCycle.Planning.Feeds;
using ClubCycle.Web.Tests.Commands;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace ClubCycle.Web.Tests.Feeds;

/// <summary>When a link lives and when it dies, as phones see it. A node may remember a link for a minute at most.</summary>
public sealed class LinkLifeTests(TestApp app) : IClassFixture<TestApp>
{
    private static readonly TimeSpan LongestMemory = TimeSpan.FromSeconds(60);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Revoking_all_links_of_a_player_ends_every_calendar_and_page_and_leaves_other_players_alone()
    {
        var club = await app.NewClubAsync();
        var other = await OtherPlayerAsync(club);
        var (phone, tablet) = (await club.NewLinkAsync(), await club.NewLinkAsync());
        var kept = await (club with { Player = other }).NewLinkAsync();
        await AssertLivesAsync(app.Browser(), phone, tablet, kept);

        await app.InClubAsync(club.Id, async s => (await s.GetRequiredService<LinkStore>().RevokeAllAsync(club.OwnSquad, club.Player, club.Head, Cancel)).OrThrow());

        await AssertDiesAsync(app.Browser(), phone);
        await AssertDiesAsync(app.Browser(), tablet);
        await AssertLivesAsync(app.Browser(), kept);
    }

    [Fact]
    public async Task Removing_a_player_ends_the_calendar_and_the_page()
    {
        var club = await app.NewClubAsync();
        var link = await club.NewLinkAsync();
        await AssertLivesAsync(app.Browser(), link);

        await app.InClubAsync(club.Id, async s => (await s.GetRequiredService<PlayerStore>().RemoveAsync(club.OwnSquad, club.Player, club.Head, Cancel)).OrThrow());

        await AssertDiesAsync(app.Browser(), link);
    }

    [Fact]
    public async Task A_dead_link_is_answered_like_one_that_never_was()
    {
        var club = await app.NewClubAsync();
        var revoked = await club.NewLinkAsync();
        await club.RevokeAsync(revoked.Id);
        await AssertDiesAsync(app.Browser(), revoked);

        var never = await app.Browser().GetAsync(Feed(new NewLink(default, new string('A', 43))), Cancel);
        var dead = await app.Browser().GetAsync(Feed(revoked), Cancel);

        Assert.Equal(never.StatusCode, dead.StatusCode);
        Assert.Equal(await never.Content.ReadAsStringAsync(Cancel), await dead.Content.ReadAsStringAsync(Cancel));
        Assert.Equal(never.Headers.Select(h => h.Key).Order(), dead.Headers.Select(h => h.Key).Order());
    }

    [Fact]
    public async Task A_link_revoked_on_one_node_is_dead_on_another_within_a_minute()
    {
        var club = await app.NewClubAsync();
        var link = await club.NewLinkAsync();
        await using var node = await RunningNode.StartAsync(app.ConnectionString);
        using var phone = new HttpClient { BaseAddress = node.Address };
        await AssertLivesAsync(phone, link);

        await club.RevokeAsync(link.Id);

        await AssertDiesAsync(phone, link);
    }

    [Fact]
    public async Task A_calendar_goes_on_at_the_same_address_when_its_options_change()
    {
        var club = await app.NewClubAsync();
        await club.PublishAsync();
        var link = await club.NewLinkAsync();

        await app.InClubAsync(club.Id, async s => (await s.GetRequiredService<LinkStore>().ChangeAsync(club.OwnSquad, club.Player, link.Id, "tablet", new FeedOptions(Sessions: false, DayOnly: true), club.Head, Cancel)).OrThrow());

        await AssertLivesAsync(app.Browser(), link);
    }

    [Fact]
    public async Task Opening_the_page_counts_as_use_by_the_day_so_that_a_card_somebody_took_is_not_swept_away()
    {
        var club = await app.NewClubAsync();
        var (opened, left) = await app.InClubAsync(club.Id, async s =>
        {
            await s.GetRequiredService<PlayerStore>().AddAsync(club.OwnSquad, ["Zeno U."], club.Head, Cancel);
            var sheet = (await s.GetRequiredService<LinkStore>().CreateSheetAsync(club.OwnSquad, true, null, new LocalDate(2026, 3, 3), club.Head, Cancel)).OrThrow();
            return (sheet.Links[0].Link, sheet.Links[1].Link);
        });

        Assert.Equal(HttpStatusCode.OK, (await app.Browser().GetAsync($"/p/{opened.Token}", Cancel)).StatusCode);

        await app.InClubAsync(club.Id, async s => (await s.GetRequiredService<LinkStore>().RevokeUnusedAsync(club.OwnSquad, "Sheet of 3 Mar 2026", club.Head, Cancel)).OrThrow());
        await AssertDiesAsync(app.Browser(), left);
        await AssertLivesAsync(app.Browser(), opened);
        Assert.Contains(await app.InClubAsync(club.Id, s => s.GetRequiredService<LinkStore>().ListAsync(club.OwnSquad, club.Player, Cancel)), l => l.LastPollDay == new LocalDate(2026, 3, 3));
    }

    private Task<Guid> OtherPlayerAsync(TestClub club) => app.InClubAsync(club.Id, async s =>
        (await s.GetRequiredService<PlayerStore>().AddAsync(club.OwnSquad, ["Bo Lind"], club.Head, Cancel)).OrThrow()[0]);

    private static string Feed(NewLink link) => $"/calendar/{link.Token}.ics";

    private static async Task AssertLivesAsync(HttpClient phone, params IEnumerable<NewLink> links)
    {
        foreach (var link in links)
        {
            foreach (var address in new[] { Feed(link), $"/p/{link.Token}" })
            {
                Assert.Equal(HttpStatusCode.OK, await StatusAsync(phone, address));
            }
        }
    }

    /// <summary>A calendar is told to come again while its feed is rendered.</summary>
    private static async Task<HttpStatusCode> StatusAsync(HttpClient phone, string address)
    {
        var since = Stopwatch.StartNew();
        while (true)
        {
            var status = (await phone.GetAsync(new Uri(address, UriKind.Relative), Cancel)).StatusCode;
            if (status != HttpStatusCode.ServiceUnavailable || since.Elapsed > LongestMemory)
            {
                return status;
            }

            await Task.Delay(100, Cancel);
        }
    }

    private static async Task AssertDiesAsync(HttpClient phone, NewLink link)
    {
        var since = Stopwatch.StartNew();
        foreach (var address in new[] { Feed(link), $"/p/{link.Token}" })
        {
            while ((await phone.GetAsync(new Uri(address, UriKind.Relative), Cancel)).StatusCode != HttpStatusCode.NotFound)
            {
                Assert.True(since.Elapsed < LongestMemory, $"{address[..3]}… still answers {since.Elapsed.TotalSeconds:0} s after its end");
                await Task.Delay(500, Cancel);
            }
        }
    }
}
