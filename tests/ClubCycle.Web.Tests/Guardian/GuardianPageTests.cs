using System.Net;
using ClubCycle.Data.Players;
using ClubCycle.Planning.Languages;
using ClubCycle.Planning.Players;
using ClubCycle.Planning.Squads;
using Microsoft.Extensions.DependencyInjection;

namespace ClubCycle.Web.Tests.Guardian;

public sealed class GuardianPageTests(TestApp app) : IClassFixture<TestApp>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_guardian_reads_what_is_stored_and_confirms_without_an_account()
    {
        var (club, address) = await AskedAsync();

        var page = await app.Browser().GetStringAsync(address, Cancel);
        var answer = await SendAsync(address, "yes");

        Assert.Contains("What is stored", page, StringComparison.Ordinal);
        Assert.Equal((HttpStatusCode.SeeOther, address), (answer.StatusCode, answer.Headers.Location?.ToString()));
        Assert.Contains("You confirmed on 3 Mar 2026", await app.Browser().GetStringAsync(address, Cancel), StringComparison.Ordinal);
        Assert.Equal(GuardianAnswer.Confirmed, (await PlayerAsync(club)).Guardian.Answer);
    }

    [Fact]
    public async Task Taking_it_back_by_the_same_link_ends_the_players_page()
    {
        var (club, address) = await AskedAsync();
        await SendAsync(address, "yes");
        var link = await club.NewLinkAsync();
        Assert.Equal(HttpStatusCode.OK, (await app.Browser().GetAsync($"/p/{link.Token}", Cancel)).StatusCode);

        await SendAsync(address, "no");

        Assert.Equal(HttpStatusCode.NotFound, (await app.Browser().GetAsync($"/p/{link.Token}", Cancel)).StatusCode);
        Assert.Contains("You took your confirmation back", await app.Browser().GetStringAsync(address, Cancel), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_page_shows_the_first_name_only()
    {
        var (_, address) = await AskedAsync();

        var page = await app.Browser().GetStringAsync(address, Cancel);

        Assert.Contains("Ines", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Kestrel", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_page_has_no_script_and_no_live_connection()
    {
        var (_, address) = await AskedAsync();

        Assert.DoesNotContain("<script", await app.Browser().GetStringAsync(address, Cancel), StringComparison.OrdinalIgnoreCase);
    }

    [Theory]
    [InlineData(Language.Dutch, "nl")]
    [InlineData(Language.German, "de")]
    [InlineData(Language.Spanish, "es")]
    public async Task The_page_speaks_the_language_of_its_link_whatever_the_browser_asks_for(Language language, string code)
    {
        var (_, address) = await AskedAsync(language);

        Assert.Contains($"<html lang=\"{code}\"", await app.Browser().GetStringAsync(address, Cancel), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_page_is_kept_nowhere_and_its_address_does_not_travel_on()
    {
        var (_, address) = await AskedAsync();

        var answer = await app.Browser().GetAsync(address, Cancel);

        Assert.Equal(
            ("no-store", "no-referrer", "noindex, nofollow"),
            (answer.Headers.CacheControl?.ToString(), Assert.Single(answer.Headers.GetValues("Referrer-Policy")), Assert.Single(answer.Headers.GetValues("X-Robots-Tag"))));
    }

    [Fact]
    public async Task A_dead_address_looks_like_one_that_never_was()
    {
        var (club, address) = await AskedAsync();
        await app.InClubAsync(club.Id, async s => (await s.GetRequiredService<GuardianStore>().EndLinkAsync(club.OwnSquad, club.Player, club.Head, Cancel)).OrThrow());

        var (dead, never) = (await app.Browser().GetAsync(address, Cancel), await app.Browser().GetAsync($"/g/{new string('A', 43)}", Cancel));

        Assert.Equal((HttpStatusCode.NotFound, HttpStatusCode.NotFound), (dead.StatusCode, never.StatusCode));
        Assert.Equal(await never.Content.ReadAsStringAsync(Cancel), await dead.Content.ReadAsStringAsync(Cancel));
    }

    [Fact]
    public async Task An_answer_that_is_neither_yes_nor_no_changes_nothing()
    {
        var (club, address) = await AskedAsync();

        Assert.Equal(HttpStatusCode.BadRequest, (await SendAsync(address, "perhaps")).StatusCode);
        Assert.Null((await PlayerAsync(club)).Guardian.Answer);
    }

    [Fact]
    public async Task Who_is_old_enough_now_reads_it_on_the_own_page()
    {
        var (club, address) = await AskedAsync();
        await SendAsync(address, "yes");
        await club.PublishAsync();
        var link = await club.NewLinkAsync();
        var player = await PlayerAsync(club);

        await app.InClubAsync(club.Id, async s => (await s.GetRequiredService<PlayerStore>().LimitAsync(club.OwnSquad, club.Player, player.Limits with { BirthYear = 2009 }, player.Version, club.Head, Cancel)).OrThrow());

        Assert.Contains("You are old enough now to decide for yourself", await app.Browser().GetStringAsync($"/p/{link.Token}", Cancel), StringComparison.Ordinal);
        Assert.Contains("no longer needed", await app.Browser().GetStringAsync(address, Cancel), StringComparison.Ordinal);
    }

    private async Task<(TestClub Club, string Address)> AskedAsync(Language language = Language.English)
    {
        var club = await app.NewClubAsync(AgeGroup.Youth(14));
        return (club, "/g/" + await app.InClubAsync(club.Id, async s => (await s.GetRequiredService<GuardianStore>().AskAsync(club.OwnSquad, club.Player, language, club.Head, Cancel)).OrThrow()));
    }

    private Task<StoredPlayer> PlayerAsync(TestClub club) => app.InClubAsync(club.Id, async s => (await s.GetRequiredService<PlayerStore>().ListAsync(club.OwnSquad, Cancel)).Single(p => p.Id == club.Player));

    private Task<HttpResponseMessage> SendAsync(string address, string answer) => app.Browser().PostAsync(address, new FormUrlEncodedContent([KeyValuePair.Create("answer", answer)]), Cancel);
}
