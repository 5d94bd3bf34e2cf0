using System.Net;
using System.Net.Mime;
using ClubCycle.Data;

namespace ClubCycle.Web.Tests.Features.Print;

public sealed class PrintRightsTests(TestApp app) : IClassFixture<TestApp>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("wall-chart.pdf")]
    [InlineData("wall-chart.pdf?size=a2")]
    [InlineData("weeks/2026-10-07.pdf")]
    public async Task A_squad_coach_prints_the_own_squad_only(string page)
    {
        var club = await app.NewClubAsync();
        using var coach = await club.SignedInAsync(club.Coach);

        var own = await coach.GetAsync($"/print/squads/{club.OwnSquad}/{page}", Cancel);
        var other = await coach.GetAsync($"/print/squads/{club.OtherSquad}/{page}", Cancel);
        var none = await coach.GetAsync($"/print/squads/{NewId.Create()}/{page}", Cancel);

        Assert.Equal((HttpStatusCode.OK, MediaTypeNames.Application.Pdf), (own.StatusCode, own.Content.Headers.ContentType?.MediaType));
        Assert.Equal((HttpStatusCode.NotFound, HttpStatusCode.NotFound), (other.StatusCode, none.StatusCode));
        Assert.Equal(other.Content.Headers.ContentType, none.Content.Headers.ContentType);
    }

    [Fact]
    public async Task The_clubs_chart_shows_a_coach_the_squads_of_the_board()
    {
        var club = await app.NewClubAsync();
        using var coach = await club.SignedInAsync(club.Coach);
        using var head = await club.SignedInAsync(club.Head);

        using var own = new PrintedPdf(await coach.GetByteArrayAsync("/print/wall-chart.pdf", Cancel));
        using var all = new PrintedPdf(await head.GetByteArrayAsync("/print/wall-chart.pdf", Cancel));

        Assert.Equal((true, false), Squads(await own.TextAsync()));
        Assert.Equal((true, true), Squads(await all.TextAsync()));
    }

    [Fact]
    public async Task A_head_coach_of_another_club_finds_nothing()
    {
        var club = await app.NewClubAsync();
        var another = await app.NewClubAsync();
        using var head = await another.SignedInAsync(another.Head);

        Assert.Equal(HttpStatusCode.NotFound, (await head.GetAsync($"/print/squads/{club.OwnSquad}/wall-chart.pdf", Cancel)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await head.GetAsync($"/print/squads/{club.OwnSquad}/weeks/2026-10-07.pdf", Cancel)).StatusCode);
    }

    [Fact]
    public async Task A_stranger_is_asked_to_sign_in()
    {
        var club = await app.NewClubAsync();

        foreach (var page in new[] { "/print/wall-chart.pdf", $"/print/squads/{club.OwnSquad}/wall-chart.pdf", $"/print/squads/{club.OwnSquad}/weeks/2026-10-07.pdf" })
        {
            var answer = await app.Browser().GetAsync(page, Cancel);

            Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
            Assert.Contains("/account/sign-in", answer.Headers.Location!.ToString(), StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("wall-chart.pdf?size=a9", HttpStatusCode.BadRequest)]
    [InlineData("weeks/2031-01-01.pdf", HttpStatusCode.NotFound)]
    [InlineData("weeks/next.pdf", HttpStatusCode.NotFound)]
    public async Task What_is_not_printed_is_not_made_up(string page, HttpStatusCode status)
    {
        var club = await app.NewClubAsync();
        using var head = await club.SignedInAsync(club.Head);

        Assert.Equal(status, (await head.GetAsync($"/print/squads/{club.OwnSquad}/{page}", Cancel)).StatusCode);
    }

    [Fact]
    public async Task A_page_has_a_plain_file_name_and_is_kept_by_nobody()
    {
        var club = await app.NewClubAsync();
        using var head = await club.SignedInAsync(club.Head);

        var answer = await head.GetAsync($"/print/squads/{club.OwnSquad}/weeks/2026-10-07.pdf", Cancel);

        Assert.Equal("inline; filename=\"week-2026-10-05.pdf\"", answer.Content.Headers.ContentDisposition?.ToString());
        Assert.True(answer.Headers.CacheControl?.NoStore);
    }

    private static (bool Blue, bool Red) Squads(string text) => (text.Contains("Blue", StringComparison.Ordinal), text.Contains("Red", StringComparison.Ordinal));
}
