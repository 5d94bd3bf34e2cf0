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
