using System.Net;
using System.Text;
using ClubCycle.Planning;
using ClubCycle.Planning.Feeds;
using ClubCycle.Web.Features.Plans;
using ClubCycle.Web.Features.Players;
using ClubCycle.Web.Features.Seasons;
using ClubCycle.Web.Features.Settings;
using ClubCycle.Web.Features.Templates;
using ClubCycle.Web.Hosting;
using Microsoft.Extensions.DependencyInjection;

namespace ClubCycle.Web.Tests.Hosting;

/// <summary>ASVS 2.4.1 and 15.2.2: one count a person for plans over HTTP, files, pages to print, imports and new links.</summary>
public sealed class CostlyWorkTests : IAsyncLifetime
{
    private const int Limit = 3;

    private readonly TestApp _app = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        _app.Settings["Costly:PerMinute"] = "3";
        await _app.InitializeAsync();
    }

    public ValueTask DisposeAsync() => _app.DisposeAsync();

    [Theory]
    [InlineData("plan")]
    [InlineData("file")]
    [InlineData("print")]
    [InlineData("export")]
    public async Task Whoever_asks_for_more_in_a_minute_is_told_to_wait(string what)
    {
        var club = await _app.NewClubAsync();
        var browser = await club.SignedInAsync(club.Head);

        List<HttpResponseMessage> answers = [];
        for (var i = 0; i <= Limit; i++)
        {
            answers.Add(await AskAsync(browser, club, what));
        }

        Assert.DoesNotContain(HttpStatusCode.TooManyRequests, answers.Take(Limit).Select(a => a.StatusCode));
        Assert.Equal((HttpStatusCode.TooManyRequests, "60"), (answers[^1].StatusCode, Assert.Single(answers[^1].Headers.GetValues("Retry-After"))));
        Assert.Equal(CostlyWork.TooOften.Message, await answers[^1].Content.ReadAsStringAsync(Cancel));
    }

    [Fact]
    public async Task Everything_costly_counts_together_and_others_are_not_held_up()
    {
        var club = await _app.NewClubAsync();
        var browser = await club.SignedInAsync(club.Coach);
        for (var i = 0; i < Limit; i++)
        {
            await AskAsync(browser, club, "plan");
        }

        Assert.Equal(HttpStatusCode.TooManyRequests, (await AskAsync(browser, club, "print")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await AskAsync(await club.SignedInAsync(club.Head), club, "print")).StatusCode);
    }

    [Theory]
    [InlineData("template")]
    [InlineData("matches")]
    [InlineData("closed days")]
    [InlineData("link")]
    [InlineData("sheet")]
    [InlineData("sign-in link")]
    public async Task Imports_and_new_links_are_refused_with_a_plain_sentence(string what)
    {
        var club = await _app.NewClubAsync();
        var work = _app.Services.GetRequiredService<CostlyWork>();
        for (var i = 0; i < Limit; i++)
        {
            Assert.True(work.Allows(club.Head));
        }

        var problem = await _app.AsAsync(club.Head, s => RefusalAsync(s, club, what));

        Assert.Equal(CostlyWork.TooOften, problem);
    }

    private static async Task<Problem?> RefusalAsync(IServiceProvider s, TestClub club, string what)
    {
        var players = s.GetRequiredService<PlayerActions>();
        var player = (await players.ListAsync(club.OwnSquad, Cancel)).OrThrow()[0];
        return what switch
        {
            "template" => Of(await s.GetRequiredService<TemplateActions>().ImportAsync("{}", Cancel)),
            "matches" => Of(await s.GetRequiredService<PlanActions>().TakeFileAsync(club.OwnSquad, [], [], Cancel)),
            "closed days" => Of(await s.GetRequiredService<SeasonActions>().TakeClosedAsync(null, [], Cancel)),
            "link" => Of(await players.NewLinkAsync(player, "phone", FeedOptions.UsualFor(ClubCycle.Planning.Squads.AgeGroup.Senior), Cancel)),
            "sheet" => Of(await players.NewSheetAsync(club.OwnSquad, true, FeedOptions.UsualFor(ClubCycle.Planning.Squads.AgeGroup.Senior), Cancel)),
            _ => Of(await s.GetRequiredService<ClubActions>().NewLinkAsync(club.Coach, Cancel)),
        };

        static Problem? Of<T>(Result<T> result) => result is Result<T>.Failed failed ? failed.First : null;
    }

    private static async Task<HttpResponseMessage> AskAsync(HttpClient browser, TestClub club, string what) => what switch
    {
        "plan" => await browser.PostAsync("/api/v1/plan", new StringContent(A.PlanRequest(), Encoding.UTF8, "application/json"), Cancel),
        "file" => await browser.GetAsync($"/templates/{Guid.Empty}/file", Cancel),
        "print" => await browser.GetAsync("/print/wall-chart.pdf", Cancel),
        _ => await TestApp.SendFormAsync(browser, $"/squads/{club.OwnSquad}/players/{club.Player}", $"/squads/{club.OwnSquad}/players/{club.Player}/data.json", ("reason", "The mother asked for it")),
    };
}
