using System.Net;
using ClubCycle.Data.Templates;
using ClubCycle.Planning;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Templates;
using ClubCycle.Web.Features.Templates;
using Microsoft.Extensions.DependencyInjection;

namespace ClubCycle.Web.Tests.Features;

public sealed class TemplateFileTests(TestApp app) : IClassFixture<TestApp>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_template_saved_as_a_file_and_read_back_asks_for_the_same()
    {
        var club = await app.NewClubAsync();
        var template = (await ListAsync(club))[0];
        var browser = await club.SignedInAsync(club.Head);

        var answer = await browser.GetAsync($"/templates/{template.Id}/file?version={template.LatestVersion}", Cancel);
        var json = await answer.Content.ReadAsStringAsync(Cancel);
        var imported = (await app.AsAsync(club.Head, s => s.GetRequiredService<TemplateActions>().ImportAsync(json, Cancel))).OrThrow();

        Assert.Equal("attachment", answer.Content.Headers.ContentDisposition!.DispositionType);
        var again = (await app.AsAsync(club.Head, s => s.GetRequiredService<TemplateActions>().FindAsync(imported, null, Cancel))).OrThrow();
        Assert.Empty(TemplateChanges.Between(TemplateFile.Read(json).OrThrow(), again.Template));
        Assert.NotEqual(template.Name, again.Template.Name);
    }

    [Fact]
    public async Task A_template_s_file_is_for_coaches_of_the_club()
    {
        var club = await app.NewClubAsync();
        var elsewhere = await app.NewClubAsync();
        var address = $"/templates/{(await ListAsync(club))[0].Id}/file";

        Assert.Equal(HttpStatusCode.Redirect, (await app.Browser().GetAsync(address, Cancel)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await (await elsewhere.SignedInAsync(elsewhere.Head)).GetAsync(address, Cancel)).StatusCode);
    }

    [Theory]
    [InlineData("")]
    [InlineData("[]")]
    [InlineData("{\"name\": \"x\"}")]
    [InlineData("PK\u0003\u0004")]
    public async Task A_file_that_is_no_template_is_refused_and_adds_nothing(string json)
    {
        var club = await app.NewClubAsync();
        var before = (await ListAsync(club)).Count;

        Assert.IsType<Result<Guid>.Failed>(await app.AsAsync(club.Head, s => s.GetRequiredService<TemplateActions>().ImportAsync(json, Cancel)));

        Assert.Equal(before, (await ListAsync(club)).Count);
    }

    [Fact]
    public async Task A_wrong_place_in_a_file_is_named()
    {
        var club = await app.NewClubAsync();
        var json = TemplateFile.Write(BuiltInTemplates.All[0]).Replace("\"unloadEvery\": ", "\"unloadEvery\": 7", StringComparison.Ordinal);

        var refused = Assert.IsType<Result<Guid>.Failed>(await app.AsAsync(club.Head, s => s.GetRequiredService<TemplateActions>().ImportAsync(json, Cancel)));

        Assert.Equal("loading.unloadEvery", refused.First.At);
    }

    private Task<IReadOnlyList<TemplateSummary>> ListAsync(TestClub club) => app.AsAsync(club.Head, async s => (await s.GetRequiredService<TemplateActions>().ListAsync(Cancel)).OrThrow());
}
