using ClubCycle.Data.Feeds;
using ClubCycle.Data.Links;
using ClubCycle.Data.Players;
using ClubCycle.Planning;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace ClubCycle.Data.Tests.Players;

public sealed class WelfareStoreTests(ClubData data) : IClassFixture<ClubData>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_protected_player_is_on_the_welfare_officers_list_only()
    {
        var (club, squad, player) = await PlayerAsync();

        (await club.Store<WelfareStore>().ProtectAsync(player, true, ClubData.By, Cancel)).OrThrow();

        Assert.Empty(await club.Store<PlayerStore>().ListAsync(squad, Cancel));
        Assert.Equal(new GuardedPlayer(player, "Ana P.", squad, "Women 1", true), Assert.Single(await club.Store<WelfareStore>().ListAsync(Cancel)));
    }

    [Fact]
    public async Task Coaches_with_an_old_page_open_do_nothing_more_to_a_protected_player()
    {
        var (club, squad, player) = await PlayerAsync();
        var stored = Assert.Single(await club.Store<PlayerStore>().ListAsync(squad, Cancel));
        (await club.Store<WelfareStore>().ProtectAsync(player, true, ClubData.By, Cancel)).OrThrow();

        Problems.AssertProblem("player.not-found", await club.Store<LinkStore>().CreateAsync(squad, player, "phone", ClubData.By, Cancel));
        Problems.AssertProblem("player.not-found", await club.Store<PlayerStore>().RenameAsync(squad, player, "Ana", stored.Version, ClubData.By, Cancel));
        Problems.AssertProblem("player.not-found", await club.Store<PlayerStore>().RemoveAsync(squad, player, ClubData.By, Cancel));
        Problems.AssertProblem("player.not-found", await club.Store<PersonFileStore>().GatherAsync(squad, player, "asked", ClubData.By, Cancel));
        Problems.AssertProblem("sheet.no-players", await club.Store<LinkStore>().CreateSheetAsync(squad, true, null, new LocalDate(2026, 3, 1), ClubData.By, Cancel));
    }

    [Fact]
    public async Task Protecting_ends_every_link_for_good()
    {
        var (club, squad, player) = await PlayerAsync();
        var link = (await club.Store<LinkStore>().CreateAsync(squad, player, "phone", ClubData.By, Cancel)).OrThrow();
        Assert.True((await club.Store<LinkStore>().FindAsync(link.Token, Cancel))!.Live);

        (await club.Store<WelfareStore>().ProtectAsync(player, true, ClubData.By, Cancel)).OrThrow();
        Assert.Null(await club.Store<LinkStore>().FindAsync(link.Token, Cancel));
        Assert.False((await PolledAsync(link))!.Live);

        (await club.Store<WelfareStore>().ProtectAsync(player, false, ClubData.By, Cancel)).OrThrow();
        Assert.False((await club.Store<LinkStore>().FindAsync(link.Token, Cancel))!.Live);
        Assert.False((await PolledAsync(link))!.Live);
        Assert.Single(await club.Store<PlayerStore>().ListAsync(squad, Cancel));
    }

    [Fact]
    public async Task A_player_of_another_club_cannot_be_protected()
    {
        var (_, _, player) = await PlayerAsync();
        var other = await data.NewClubAsync();

        Problems.AssertProblem("player.not-found", await other.Store<WelfareStore>().ProtectAsync(player, true, ClubData.By, Cancel));
        Assert.Empty(await other.Store<WelfareStore>().ListAsync(Cancel));
    }

    [Fact]
    public async Task Looking_at_a_players_tests_is_told_once_a_day_for_each_person()
    {
        var (club, squad, player) = await PlayerAsync();
        var welfare = club.Store<WelfareStore>();
        await welfare.NoteReadAsync(squad, player, ClubData.By, Cancel);
        await welfare.NoteReadAsync(squad, player, ClubData.By, Cancel);
        await welfare.NoteReadAsync(squad, player, NamedId.From("test", "another coach"), Cancel);
        data.Clock.Now = ClubData.Start + Duration.FromHours(12);
        await welfare.NoteReadAsync(squad, player, ClubData.By, Cancel);

        var told = await welfare.AccessAsync(10, Cancel);

        Assert.Equal(3, told.Count);
        Assert.All(told, access => Assert.Equal(("player.history-read", "Ana P.", "Women 1"), (access.What, access.Player, access.Squad)));
    }

    [Fact]
    public async Task An_export_is_told_with_its_reason_and_an_erasure_without_a_name()
    {
        var (club, squad, player) = await PlayerAsync();
        (await club.Store<PersonFileStore>().GatherAsync(squad, player, " The mother asked for it ", ClubData.By, Cancel)).OrThrow();
        (await club.Store<PlayerStore>().RemoveAsync(squad, player, ClubData.By, Cancel)).OrThrow();

        var told = await club.Store<WelfareStore>().AccessAsync(10, Cancel);

        Assert.Equal(["player.erased", "player.exported"], told.Select(t => t.What).Order(StringComparer.Ordinal));
        Assert.Equal("The mother asked for it", told.Single(t => t.What == "player.exported").Reason);
        Assert.All(told, access => Assert.Null(access.Player));
    }

    private Task<PolledLink?> PolledAsync(NewLink link) => data.Services.GetRequiredService<PollStore>().FindAsync(LinkToken.HashOf(link.Token)!, Cancel);

    private async Task<(TestClub Club, Guid Squad, Guid Player)> PlayerAsync()
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        return (club, squad, await club.PlayerAsync(squad));
    }
}
