using System.Text.RegularExpressions;
using ClubCycle.Data.Links;
using ClubCycle.Data.Players;
using ClubCycle.Planning.Languages;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Tests.Links;

public sealed class LinkStoreTests(ClubData data) : IClassFixture<ClubData>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_token_is_43_characters_an_address_may_hold_and_no_two_are_equal()
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        var player = await club.PlayerAsync(squad);

        List<string> tokens = [];
        for (var i = 0; i < LinkStore.MostLivePerPlayer; i++)
        {
            tokens.Add((await club.Store<LinkStore>().CreateAsync(squad, player, $"phone {i}", ClubData.By, Cancel)).OrThrow().Token);
        }

        // 32 bytes make 43 characters of the URL-safe alphabet without padding (RFC 4648, section 5).
        Assert.All(tokens, token => Assert.Matches(new Regex("^[A-Za-z0-9_-]{43}$"), token));
        Assert.Equal(tokens.Count, tokens.Distinct().Count());
        Problems.AssertProblem("link.too-many", await club.Store<LinkStore>().CreateAsync(squad, player, "one more", ClubData.By, Cancel));
    }

    [Fact]
    public async Task The_database_holds_a_hash_and_nowhere_the_token()
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        var player = await club.PlayerAsync(squad);
        var token = (await club.Store<LinkStore>().CreateAsync(squad, player, "phone", ClubData.By, Cancel)).OrThrow().Token;

        await using var db = await club.OpenAsync();
        var tables = await db.Database.SqlQuery<string>($"select table_schema || '.' || table_name as \"Value\" from information_schema.tables where table_schema in ('club', 'accounts')").ToListAsync(Cancel);
        var raw = Convert.ToHexStringLower(System.Buffers.Text.Base64Url.DecodeFromChars(token));
        foreach (var table in tables)
        {
#pragma warning disable EF1002 // The name comes from the catalogue.
            var rows = await db.Database.SqlQueryRaw<string>($"select t::text as \"Value\" from {table} t").ToListAsync(Cancel);
#pragma warning restore EF1002
            Assert.DoesNotContain(rows, row => row.Contains(token, StringComparison.Ordinal) || row.Contains(raw, StringComparison.Ordinal));
        }

        Assert.Contains("club.links", tables);
        Assert.Equal(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.ASCII.GetBytes(token)), (await db.Links.SingleAsync(Cancel)).TokenHash);
    }

    [Fact]
    public async Task A_token_finds_its_player_without_a_club_being_known()
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        var player = await club.PlayerAsync(squad);
        var link = (await club.Store<LinkStore>().CreateAsync(squad, player, "phone", ClubData.By, Cancel)).OrThrow();
        var elsewhere = (await data.NewClubAsync("Elsewhere")).Store<LinkStore>();

        Assert.Equal(new FoundLink(club.Id, link.Id, player, squad, Live: true, Language.English), await elsewhere.FindAsync(link.Token, Cancel));
        Assert.Null(await elsewhere.FindAsync(LinkToken.Create(), Cancel));
        Assert.Null(await elsewhere.FindAsync("", Cancel));
        Assert.Null(await elsewhere.FindAsync(link.Token + "=", Cancel));
    }

    [Fact]
    public async Task Another_spelling_of_the_same_bytes_opens_nothing()
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        var player = await club.PlayerAsync(squad);
        var token = (await club.Store<LinkStore>().CreateAsync(squad, player, "phone", ClubData.By, Cancel)).OrThrow().Token;

        // The last character carries four bits of the secret and two spare ones.
        const string alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
        var twin = token[..^1] + alphabet[alphabet.IndexOf(token[^1], StringComparison.Ordinal) ^ 1];

        Assert.Null(await club.Store<LinkStore>().FindAsync(twin, Cancel));
    }

    [Fact]
    public async Task A_revoked_link_is_dead_and_the_players_other_links_live()
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        var player = await club.PlayerAsync(squad);
        var links = club.Store<LinkStore>();
        var lost = (await links.CreateAsync(squad, player, "lost phone", ClubData.By, Cancel)).OrThrow();
        var kept = (await links.CreateAsync(squad, player, "mother's phone", ClubData.By, Cancel)).OrThrow();

        (await links.RevokeAsync(squad, player, lost.Id, ClubData.By, Cancel)).OrThrow();
        (await links.RevokeAsync(squad, player, lost.Id, ClubData.By, Cancel)).OrThrow();

        Assert.False((await links.FindAsync(lost.Token, Cancel))!.Live);
        Assert.True((await links.FindAsync(kept.Token, Cancel))!.Live);
        Assert.Equal(1, Assert.Single(await club.Store<PlayerStore>().ListAsync((await links.FindAsync(kept.Token, Cancel))!.SquadId, Cancel)).LiveLinks);
    }

    [Fact]
    public async Task Erasing_a_player_takes_the_links_along()
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        var player = await club.PlayerAsync(squad);
        var link = (await club.Store<LinkStore>().CreateAsync(squad, player, "phone", ClubData.By, Cancel)).OrThrow();

        (await club.Store<PlayerStore>().RemoveAsync(squad, player, ClubData.By, Cancel)).OrThrow();

        Assert.Null(await club.Store<LinkStore>().FindAsync(link.Token, Cancel));
    }

    [Fact]
    public async Task Only_the_latest_day_of_use_is_kept()
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        var player = await club.PlayerAsync(squad);
        var links = club.Store<LinkStore>();
        var found = (await links.FindAsync((await links.CreateAsync(squad, player, "phone", ClubData.By, Cancel)).OrThrow().Token, Cancel))!;

        await links.TouchAsync(found, new LocalDate(2026, 5, 2), Cancel);
        await links.TouchAsync(found, new LocalDate(2026, 5, 1), Cancel);

        Assert.Equal(new LocalDate(2026, 5, 2), Assert.Single(await links.ListAsync(squad, player, Cancel)).LastPollDay);
        Assert.Equal(new LocalDate(2026, 5, 2), Assert.Single(await club.Store<PlayerStore>().ListAsync(squad, Cancel)).LastPollDay);
    }

    [Fact]
    public async Task Another_club_can_neither_revoke_nor_add_a_link()
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        var player = await club.PlayerAsync(squad);
        var link = (await club.Store<LinkStore>().CreateAsync(squad, player, "phone", ClubData.By, Cancel)).OrThrow();
        var elsewhere = (await data.NewClubAsync("Elsewhere")).Store<LinkStore>();

        Problems.AssertProblem("link.not-found", await elsewhere.RevokeAsync(squad, player, link.Id, ClubData.By, Cancel));
        Problems.AssertProblem("player.not-found", await elsewhere.CreateAsync(squad, player, "phone", ClubData.By, Cancel));
        Assert.True((await elsewhere.FindAsync(link.Token, Cancel))!.Live);
    }
}
