using System.Globalization;
using System.Net;
using ClubCycle.Web.Features.Feeds;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Options;

namespace ClubCycle.Web.Tests.Feeds;

public sealed class MissLimitTests(TestApp app) : IClassFixture<TestApp>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("192.0.2.1", "192.0.2.1", true)]
    [InlineData("192.0.2.1", "192.0.2.2", false)]
    [InlineData("192.0.2.1", "::ffff:192.0.2.1", true)]
    [InlineData("2001:db8:1:2::1", "2001:db8:1:2:ffff::9", true)]
    [InlineData("2001:db8:1:2::1", "2001:db8:1:3::1", false)]
    public void An_address_shares_its_limit_with_what_the_same_household_chooses(string first, string second, bool shared)
    {
        using var limit = new MissLimit(Options.Create(new FeedLimits { MissesPerMinute = 1 }), NullLogger<MissLimit>.Instance);
        Assert.Null(limit.Count(IPAddress.Parse(first)));

        var wait = limit.Count(IPAddress.Parse(second));

        Assert.Equal(shared, wait is not null);
        Assert.InRange(wait ?? TimeSpan.FromSeconds(1), TimeSpan.FromTicks(1), TimeSpan.FromMinutes(1));
    }

    [Fact]
    public async Task Who_tries_too_many_wrong_addresses_is_told_to_wait_and_right_ones_go_on_working()
    {
        app.Settings["Feeds:MissesPerMinute"] = "5";
        var club = await app.NewClubAsync();
        var link = await club.NewLinkAsync();
        var browser = app.Browser();

        List<HttpResponseMessage> answers = [];
        for (var i = 0; i < 8; i++)
        {
            // Whoever forges the header is still who they are.
            browser.DefaultRequestHeaders.Remove("X-Forwarded-For");
            browser.DefaultRequestHeaders.Add("X-Forwarded-For", $"198.51.100.{i}");
            answers.Add(await browser.GetAsync(i % 2 == 0 ? "/calendar/x.ics" : $"/calendar/{i.ToString("D43", CultureInfo.InvariantCulture)}.ics", Cancel));
        }

        Assert.Equal([404, 404, 404, 404, 404, 429, 429, 429], answers.Select(a => (int)a.StatusCode));
        Assert.InRange(answers[^1].Headers.RetryAfter!.Delta!.Value, TimeSpan.FromSeconds(1), TimeSpan.FromMinutes(1));
        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync($"/calendar/{link.Token}.ics", Cancel)).StatusCode);
    }

    [Theory]
    [InlineData(-1, 60, "Feeds:CacheMegabytes")]
    [InlineData(64, 0, "Feeds:MissesPerMinute")]
    public void A_limit_that_makes_no_sense_is_named(int megabytes, int misses, string setting) =>
        Assert.Contains(setting, new FeedLimits().Validate(null, new FeedLimits { CacheMegabytes = megabytes, MissesPerMinute = misses }).FailureMessage, StringComparison.Ordinal);
}
