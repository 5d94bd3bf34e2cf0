using System.Net;

namespace ClubCycle.Web.Tests.Shell;

/// <summary>ASVS 4.4.2.</summary>
public sealed class OwnPagesOnlyTests(TestApp app) : IClassFixture<TestApp>
{
    [Theory]
    [InlineData("Origin", "https://elsewhere.example", true)]
    [InlineData("Origin", "null", true)]
    [InlineData("Origin", "http://localhost", false)]
    [InlineData("Sec-Fetch-Site", "cross-site", true)]
    [InlineData("Sec-Fetch-Site", "same-site", true)]
    [InlineData("Sec-Fetch-Site", "same-origin", false)]
    public async Task A_live_page_is_not_opened_by_another_site(string header, string value, bool refused)
    {
        var browser = await (await app.NewClubAsync()).SignedInAsync((await app.NewClubAsync()).Head);
        using var request = new HttpRequestMessage(HttpMethod.Post, "/_blazor/negotiate?negotiateVersion=1") { Headers = { { header, value } } };

        var answer = await browser.SendAsync(request, TestContext.Current.CancellationToken);

        Assert.Equal(refused ? HttpStatusCode.Forbidden : HttpStatusCode.OK, answer.StatusCode);
    }
}
