using ClubCycle.Data.Audit;
using ClubCycle.Data.Links;
using ClubCycle.Data.Outbox;
using ClubCycle.Data.Squads;
using ClubCycle.Planning.Feeds;
using ClubCycle.Planning.Languages;
using ClubCycle.Planning.Squads;
using Microsoft.EntityFrameworkCore;

namespace ClubCycle.Data.Tests.Links;

public sealed class LinkOptionsTests(ClubData data) : IClassFixture<ClubData>
{
    private static readonly FeedOptions MatchesOnly = new(Sessions: false, Practices: false, ReminderMinutes: 60);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_link_keeps_what_its_calendar_shows()
    {
        var (club, squad, player) = await NewPlayerAsync();

        (await club.Store<LinkStore>().CreateAsync(squad, player, "phone", MatchesOnly, ClubData.By, Cancel)).OrThrow();

        Assert.Equal(MatchesOnly, Assert.Single(await club.Store<LinkStore>().ListAsync(squad, player, Cancel)).Options);
    }

    [Fact]
    public async Task Places_are_shown_to_adults_and_not_to_minors_unless_asked_for()
    {
        var (club, adults, adult) = await NewPlayerAsync();
        var minors = (await club.Store<SquadStore>().AddAsync(ClubData.Squad("U14", AgeGroup.Youth(14)), null, ClubData.By, Cancel)).OrThrow();
        var minor = await club.PlayerAsync(minors);
        await club.AgreeAsync(minors, minor);
        var links = club.Store<LinkStore>();

        (await links.CreateAsync(adults, adult, "usual", ClubData.By, Cancel)).OrThrow();
        (await links.CreateAsync(minors, minor, "usual", ClubData.By, Cancel)).OrThrow();
        (await links.CreateAsync(minors, minor, "asked for", new FeedOptions(Places: true), ClubData.By, Cancel)).OrThrow();

        Assert.True(Assert.Single(await links.ListAsync(adults, adult, Cancel)).Options.Places);
        Assert.Equal([("usual", false), ("asked for", true)], (await links.ListAsync(minors, minor, Cancel)).Select(l => (l.Name, l.Options.Places)));
    }

    [Fact]
    public async Task A_change_keeps_the_address_and_the_player()
    {
        var (club, squad, player) = await NewPlayerAsync();
        var links = club.Store<LinkStore>();
        var link = (await links.CreateAsync(squad, player, "phone", ClubData.By, Cancel)).OrThrow();

        (await links.ChangeAsync(squad, player, link.Id, " tablet ", MatchesOnly, ClubData.By, Cancel)).OrThrow();

        Assert.Equal(new FoundLink(club.Id, link.Id, player, squad, Live: true, Language.English), await links.FindAsync(link.Token, Cancel));
        var stored = Assert.Single(await links.ListAsync(squad, player, Cancel));
        Assert.Equal(("tablet", MatchesOnly), (stored.Name, stored.Options));
    }

    [Fact]
    public async Task A_calendar_that_would_stay_empty_is_refused()
    {
        var (club, squad, player) = await NewPlayerAsync();
        var links = club.Store<LinkStore>();
        var link = (await links.CreateAsync(squad, player, "phone", ClubData.By, Cancel)).OrThrow();
        FeedOptions nothing = new(false, false, false, true);

        Problems.AssertProblem("link.shows-nothing", await links.CreateAsync(squad, player, "tablet", nothing, ClubData.By, Cancel));
        Problems.AssertProblem("link.shows-nothing", await links.ChangeAsync(squad, player, link.Id, "phone", nothing, ClubData.By, Cancel));
        Problems.AssertProblem("link.shows-nothing", await links.CreateSheetAsync(squad, true, nothing, new(2026, 3, 1), ClubData.By, Cancel));
    }

    [Fact]
    public async Task A_reminder_that_is_not_on_offer_is_refused()
    {
        var (club, squad, player) = await NewPlayerAsync();

        Problems.AssertProblem("link.reminder", await club.Store<LinkStore>().CreateAsync(squad, player, "phone", new FeedOptions(ReminderMinutes: 7), ClubData.By, Cancel));
    }

    [Fact]
    public async Task A_language_that_is_not_on_offer_is_refused()
    {
        var (club, squad, player) = await NewPlayerAsync();

        Problems.AssertProblem("link.language", await club.Store<LinkStore>().CreateAsync(squad, player, "phone", new FeedOptions(Language: (Language)9), ClubData.By, Cancel));
    }

    [Fact]
    public async Task A_new_link_is_in_English_and_keeps_another_language_that_was_chosen()
    {
        var (club, squad, player) = await NewPlayerAsync();
        var links = club.Store<LinkStore>();
        (await links.CreateAsync(squad, player, "usual", ClubData.By, Cancel)).OrThrow();
        (await links.CreateAsync(squad, player, "chosen", new FeedOptions(ReminderMinutes: 1440, Language: Language.Spanish), ClubData.By, Cancel)).OrThrow();

        Assert.Equal([("usual", Language.English), ("chosen", Language.Spanish)], (await links.ListAsync(squad, player, Cancel)).Select(l => (l.Name, l.Options.Language)).OrderBy(l => l.Language));
    }

    [Fact]
    public async Task A_revoked_link_cannot_be_changed_back_to_life()
    {
        var (club, squad, player) = await NewPlayerAsync();
        var links = club.Store<LinkStore>();
        var link = (await links.CreateAsync(squad, player, "phone", ClubData.By, Cancel)).OrThrow();
        (await links.RevokeAsync(squad, player, link.Id, ClubData.By, Cancel)).OrThrow();

        Problems.AssertProblem("link.revoked", await links.ChangeAsync(squad, player, link.Id, "phone", MatchesOnly, ClubData.By, Cancel));
        Assert.False((await links.FindAsync(link.Token, Cancel))!.Live);
    }

    [Fact]
    public async Task Other_options_have_the_squads_feeds_rendered_and_another_name_does_not()
    {
        var (club, squad, player) = await NewPlayerAsync();
        await club.PublishAsync(squad);
        var links = club.Store<LinkStore>();
        var link = (await links.CreateAsync(squad, player, "phone", new FeedOptions(), ClubData.By, Cancel)).OrThrow();
        var before = await RendersAsync(club, squad);

        (await links.ChangeAsync(squad, player, link.Id, "tablet", new FeedOptions(), ClubData.By, Cancel)).OrThrow();
        var renamed = await RendersAsync(club, squad);
        (await links.ChangeAsync(squad, player, link.Id, "tablet", MatchesOnly, ClubData.By, Cancel)).OrThrow();

        Assert.Equal((2, 2, 3), (before, renamed, await RendersAsync(club, squad)));
    }

    [Fact]
    public async Task Before_anything_is_published_there_is_nothing_to_render()
    {
        var (club, squad, player) = await NewPlayerAsync();

        (await club.Store<LinkStore>().CreateAsync(squad, player, "phone", ClubData.By, Cancel)).OrThrow();

        Assert.Equal(0, await RendersAsync(club, squad));
    }

    [Fact]
    public async Task What_was_made_changed_and_revoked_is_noted_without_name_or_secret()
    {
        var (club, squad, player) = await NewPlayerAsync();
        var links = club.Store<LinkStore>();
        var link = (await links.CreateAsync(squad, player, "Ana's phone", new FeedOptions(), ClubData.By, Cancel)).OrThrow();
        (await links.ChangeAsync(squad, player, link.Id, "Ana's phone", MatchesOnly, ClubData.By, Cancel)).OrThrow();
        (await links.RevokeAsync(squad, player, link.Id, ClubData.By, Cancel)).OrThrow();

        var notes = (await club.Store<AuditStore>().LatestAsync(10, Cancel)).Where(n => n.What.StartsWith("link.", StringComparison.Ordinal)).ToList();

        Assert.Equal([("link.changed", $"{link.Id:D} m-r60"), ("link.created", $"{link.Id:D} spm"), ("link.revoked", $"{link.Id:D}")], notes.Select(n => (n.What, n.Details)).Order());
        Assert.All(notes, n => Assert.Equal((ClubData.By, squad), (n.By, n.SquadId)));
    }

    [Fact]
    public async Task All_links_of_a_player_die_in_one_act_and_nobody_elses()
    {
        var (club, squad, player) = await NewPlayerAsync();
        var links = club.Store<LinkStore>();
        var own = (await links.CreateAsync(squad, player, "phone", ClubData.By, Cancel)).OrThrow();
        var tablet = (await links.CreateAsync(squad, player, "tablet", ClubData.By, Cancel)).OrThrow();
        var other = (await links.CreateAsync(squad, await club.PlayerAsync(squad, "Bo L."), "phone", ClubData.By, Cancel)).OrThrow();

        Assert.Equal(2, (await links.RevokeAllAsync(squad, player, ClubData.By, Cancel)).OrThrow());

        Assert.Equal((false, false, true), (await LiveAsync(own), await LiveAsync(tablet), await LiveAsync(other)));
        Assert.Equal(0, (await links.RevokeAllAsync(squad, player, ClubData.By, Cancel)).OrThrow());

        async Task<bool> LiveAsync(NewLink link) => (await links.FindAsync(link.Token, Cancel))!.Live;
    }

    [Fact]
    public async Task Another_club_can_neither_change_nor_sweep_links()
    {
        var (club, squad, player) = await NewPlayerAsync();
        var link = (await club.Store<LinkStore>().CreateAsync(squad, player, "phone", ClubData.By, Cancel)).OrThrow();
        var elsewhere = (await data.NewClubAsync("Elsewhere")).Store<LinkStore>();

        Problems.AssertProblem("link.not-found", await elsewhere.ChangeAsync(squad, player, link.Id, "mine", MatchesOnly, ClubData.By, Cancel));
        Problems.AssertProblem("player.not-found", await elsewhere.RevokeAllAsync(squad, player, ClubData.By, Cancel));
        Problems.AssertProblem("squad.not-found", await elsewhere.CreateSheetAsync(squad, true, null, new(2026, 3, 1), ClubData.By, Cancel));
        Assert.Equal(0, (await elsewhere.RevokeUnusedAsync(squad, "phone", ClubData.By, Cancel)).OrThrow());
        Assert.True((await elsewhere.FindAsync(link.Token, Cancel))!.Live);
    }

    private async Task<(TestClub Club, Guid Squad, Guid Player)> NewPlayerAsync()
    {
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        return (club, squad, await club.PlayerAsync(squad));
    }

    private static async Task<int> RendersAsync(TestClub club, Guid squad)
    {
        await using var db = await club.OpenAsync();
        return await db.Outbox.CountAsync(o => o.SquadId == squad && o.Kind == OutboxKinds.RenderFeeds, Cancel);
    }
}
