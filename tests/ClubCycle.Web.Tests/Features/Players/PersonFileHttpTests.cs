using System.Net;
using System.Text.Json;

namespace ClubCycle.Web.Tests.Features.Players;

public sealed class PersonFileHttpTests(TestApp app) : IClassFixture<TestApp>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_coach_saves_all_about_a_player_as_a_file()
    {
        var club = await app.NewClubAsync();
        var browser = await club.SignedInAsync(club.Coach);

        var json = await SendAsync(browser, club, "json", "The mother asked for it");
        var csv = await SendAsync(browser, club, "csv", "The mother asked for it");

        Assert.Equal((HttpStatusCode.OK, "attachment"), (json.StatusCode, json.Content.Headers.ContentDisposition?.DispositionType));
        Assert.Equal("Ines Kestrel", JsonDocument.Parse(await json.Content.ReadAsStringAsync(Cancel)).RootElement.GetProperty("name").GetString());
        Assert.Equal(("text/csv", "attachment"), (csv.Content.Headers.ContentType?.MediaType, csv.Content.Headers.ContentDisposition?.DispositionType));
        Assert.Contains("player,,name,Ines Kestrel\r\n", await csv.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_file_says_who_made_it_and_when()
    {
        var club = await app.NewClubAsync();

        var answer = await SendAsync(await club.SignedInAsync(club.Coach), club, "csv", "The mother asked for it");

        Assert.Equal("player-exported-20260303T120000Z.csv", answer.Content.Headers.ContentDisposition?.FileName);
        Assert.StartsWith("part,number,field,value\r\nplayer,,exportedBy,Coach SquadCoach\r\nplayer,,exportedAt,2026-03-03T12:00:00Z\r\n", (await answer.Content.ReadAsStringAsync(Cancel)).TrimStart('\uFEFF'), StringComparison.Ordinal);
    }

    [Fact]
    public async Task After_five_files_in_a_day_a_sentence_says_that_it_is_enough()
    {
        var club = await app.NewClubAsync();
        var browser = await club.SignedInAsync(club.Coach);
        for (var i = 0; i < 5; i++)
        {
            Assert.Equal(HttpStatusCode.OK, (await SendAsync(browser, club, "csv", "asked")).StatusCode);
        }

        var answer = await SendAsync(browser, club, "csv", "asked");

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("most for one person in a day", await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_a_reason_there_is_no_file()
    {
        var club = await app.NewClubAsync();

        Assert.Equal(HttpStatusCode.BadRequest, (await SendAsync(await club.SignedInAsync(club.Coach), club, "json", " ")).StatusCode);
    }

    [Fact]
    public async Task Without_the_forms_token_there_is_no_file()
    {
        var club = await app.NewClubAsync();
        var browser = await club.SignedInAsync(club.Coach);

        Assert.Equal(HttpStatusCode.BadRequest, (await browser.PostAsync(Address(club, "json"), new FormUrlEncodedContent([KeyValuePair.Create("reason", "asked")]), Cancel)).StatusCode);
    }

    [Fact]
    public async Task A_coach_of_another_squad_finds_no_such_player()
    {
        var club = await app.NewClubAsync();
        var browser = await club.SignedInAsync(await club.NewCoachAsync(Data.Accounts.ClubRole.SquadCoach, club.OtherSquad));

        Assert.Equal(HttpStatusCode.NotFound, (await SendAsync(browser, club, "json", "curious", $"/squads/{club.OtherSquad}/players")).StatusCode);
    }

    private static Task<HttpResponseMessage> SendAsync(HttpClient browser, TestClub club, string form, string reason, string? page = null) =>
        TestApp.SendFormAsync(browser, page ?? $"/squads/{club.OwnSquad}/players/{club.Player}", Address(club, form), ("reason", reason));

    private static string Address(TestClub club, string form) => $"/squads/{club.OwnSquad}/players/{club.Player}/data.{form}";
}
