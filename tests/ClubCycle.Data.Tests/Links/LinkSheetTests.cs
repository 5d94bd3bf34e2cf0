using ClubCycle.Data.Links;
using ClubCycle.Data.Players;
using ClubCycle.Planning.Feeds;
using NodaTime;

namespace ClubCycle.Data.Tests.Links;

public sealed class LinkSheetTests(ClubData data) : IClassFixture<ClubData>
{
    private static readonly LocalDate Day = new(2026, 3, 9);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Everyone_without_a_link_gets_one_named_after_the_sheet()
    {
        var (club, squad) = await NewSquadAsync("Ana P.", "Bo L.", "Cleo M.");
        var links = club.Store<LinkStore>();
        var bo = (await club.Store<PlayerStore>().ListAsync(squad, Cancel))[1];
        (await links.CreateAsync(squad, bo.Id, "phone", ClubData.By, Cancel)).OrThrow();

        var sheet = (await links.CreateSheetAsync(squad, false, null, Day, ClubData.By, Cancel)).OrThrow();

        Assert.Equal("Sheet of 9 Mar 2026", sheet.Name);
        Assert.Equal(["Ana P.", "Cleo M."], sheet.Links.Select(l => l.Player));
        Assert.Equal([1, 1, 1], (await club.Store<PlayerStore>().ListAsync(squad, Cancel)).Select(p => p.LiveLinks));
        Assert.True((await links.FindAsync(sheet.Links[0].Link.Token, Cancel))!.Live);
    }

    [Fact]
    public async Task Everyone_can_get_a_further_link_and_the_older_ones_live_on()
    {
        var (club, squad) = await NewSquadAsync("Ana P.", "Bo L.");
        var links = club.Store<LinkStore>();

        var first = (await links.CreateSheetAsync(squad, true, null, Day, ClubData.By, Cancel)).OrThrow();
        var second = (await links.CreateSheetAsync(squad, true, new FeedOptions(DayOnly: true), Day, ClubData.By, Cancel)).OrThrow();

        Assert.Equal("Sheet of 9 Mar 2026, 2", second.Name);
        Assert.Equal([2, 2], (await club.Store<PlayerStore>().ListAsync(squad, Cancel)).Select(p => p.LiveLinks));
        Assert.True((await links.FindAsync(first.Links[0].Link.Token, Cancel))!.Live);
    }

    [Fact]
    public async Task Nobody_gets_a_link_when_one_player_cannot_have_another()
    {
        var (club, squad) = await NewSquadAsync("Ana P.", "Bo L.");
        var links = club.Store<LinkStore>();
        var ana = (await club.Store<PlayerStore>().ListAsync(squad, Cancel))[0].Id;
        for (var i = 0; i < LinkStore.MostLivePerPlayer; i++)
        {
            (await links.CreateAsync(squad, ana, $"phone {i}", ClubData.By, Cancel)).OrThrow();
        }

        Problems.AssertProblem("link.too-many", await links.CreateSheetAsync(squad, true, null, Day, ClubData.By, Cancel));

        Assert.Equal([LinkStore.MostLivePerPlayer, 0], (await club.Store<PlayerStore>().ListAsync(squad, Cancel)).Select(p => p.LiveLinks));
    }

    [Fact]
    public async Task A_squad_where_everyone_has_a_link_is_told_so()
    {
        var (club, squad) = await NewSquadAsync("Ana P.");
        var links = club.Store<LinkStore>();

        Problems.AssertProblem("sheet.no-players", await links.CreateSheetAsync(await club.SquadAsync("Empty"), true, null, Day, ClubData.By, Cancel));
        (await links.CreateSheetAsync(squad, false, null, Day, ClubData.By, Cancel)).OrThrow();
        Problems.AssertProblem("sheet.nobody-without", await links.CreateSheetAsync(squad, false, null, Day, ClubData.By, Cancel));
    }

    [Fact]
    public async Task What_nobody_opened_is_revoked_in_one_act_and_what_is_used_lives_on()
    {
        var (club, squad) = await NewSquadAsync("Ana P.", "Bo L.", "Cleo M.");
        var links = club.Store<LinkStore>();
        var sheet = (await links.CreateSheetAsync(squad, true, null, Day, ClubData.By, Cancel)).OrThrow();
        var other = (await links.CreateSheetAsync(squad, true, null, Day, ClubData.By, Cancel)).OrThrow();
        var used = (await links.FindAsync(sheet.Links[1].Link.Token, Cancel))!;
        await links.TouchAsync(used, Day, Cancel);

        Assert.Equal([new StoredSheet(other.Name, 3, 3), new StoredSheet(sheet.Name, 3, 2)], await links.SheetsAsync(squad, Cancel));
        Assert.Equal(2, (await links.RevokeUnusedAsync(squad, sheet.Name, ClubData.By, Cancel)).OrThrow());

        Assert.Equal([new StoredSheet(other.Name, 3, 3), new StoredSheet(sheet.Name, 1, 0)], await links.SheetsAsync(squad, Cancel));
        Assert.Equal(used, await links.FindAsync(sheet.Links[1].Link.Token, Cancel));
        Assert.False((await links.FindAsync(sheet.Links[0].Link.Token, Cancel))!.Live);
    }

    private async Task<(TestClub Club, Guid Squad)> NewSquadAsync(params IReadOnlyList<string> names)
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        (await club.Store<PlayerStore>().AddAsync(squad, names, ClubData.By, Cancel)).OrThrow();
        return (club, squad);
    }
}
