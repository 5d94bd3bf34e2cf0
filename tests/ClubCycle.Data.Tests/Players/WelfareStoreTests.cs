using ClubCycle.Data.Accounts;
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
    public async Task An_export_is_unseen_by_everybody_but_the_exporter_until_they_have_seen_it()
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        var player = await club.PlayerAsync(squad);
        var (welfare, officer) = (club.Store<WelfareStore>(), await OfficerAsync(club));
        (await club.Store<PersonFileStore>().GatherAsync(squad, player, "The mother asked for it", ClubData.By, Cancel)).OrThrow();

        var unseen = Assert.Single(await welfare.UnseenExportsAsync(officer, 10, Cancel));
        Assert.Equal(("Ana P.", "The mother asked for it"), (unseen.Player, unseen.Reason));
        Assert.Empty(await welfare.UnseenExportsAsync(ClubData.By, 10, Cancel));
        await welfare.ExportsSeenAsync(officer, unseen.At, Cancel);

        Assert.Empty(await welfare.UnseenExportsAsync(officer, 10, Cancel));
    }

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

    private static async Task<Guid> OfficerAsync(TestClub club)
    {
        await using var db = await club.OpenAsync();
        var officer = new ClubUser { Id = NewId.Create(), ClubId = club.Id, DisplayName = "Kim", UserName = $"{NewId.Create():N}@example.org", Role = ClubRole.WelfareOfficer };
        db.Users.Add(officer);
        await db.SaveChangesAsync(Cancel);
        return officer.Id;
    }
}
