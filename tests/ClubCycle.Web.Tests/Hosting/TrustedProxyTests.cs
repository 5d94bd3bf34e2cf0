using System.Globalization;
using ClubCycle.Web.Hosting;
using ClubCycle.Web.Tests.Feeds;

namespace ClubCycle.Web.Tests.Hosting;

/// <summary>Who is counted when a proxy asks for others. The peer is this machine, over a real connection.</summary>
public sealed class TrustedProxyTests
{
    private const int Limit = 5;

    [Theory]
    [InlineData("127.0.0.1, ::1")]
    [InlineData("127.0.0.0/8,::1/128")]
    public async Task Behind_a_trusted_proxy_each_forwarded_address_has_a_limit_of_its_own(string trusted)
    {
        await using var app = await StartAsync(trusted);

        Assert.Equal([404, 404, 404, 404, 404, 429], await MissAsync(app, Limit + 1, _ => "198.51.100.1"));
        Assert.Equal([404], await MissAsync(app, 1, _ => "198.51.100.2"));
    }

    [Fact]
    public async Task What_a_caller_writes_before_the_proxy_s_own_entry_changes_nothing()
    {
        await using var app = await StartAsync("127.0.0.1, ::1");

        Assert.Equal([404, 404, 404, 404, 404, 429], await MissAsync(app, Limit + 1, i => $"203.0.113.{i}, 198.51.100.1"));
    }

    [Fact]
    public async Task Several_trusted_proxies_in_a_row_are_gone_through()
    {
        await using var app = await StartAsync("127.0.0.1, ::1, 10.1.0.0/16");

        Assert.Equal([404, 404, 404, 404, 404, 429], await MissAsync(app, Limit + 1, i => $"198.51.100.1, 10.1.0.{i}"));
        Assert.Equal([404], await MissAsync(app, 1, _ => "198.51.100.2, 10.1.0.1"));
    }

    [Theory]
    [InlineData("")]
    [InlineData("192.0.2.7")]
    [InlineData("192.0.2.0/24, 2001:db8::/32")]
    public async Task From_anybody_else_the_header_is_ignored(string trusted)
    {
        await using var app = await StartAsync(trusted);

        Assert.Equal([404, 404, 404, 404, 404, 429, 429], await MissAsync(app, Limit + 2, i => $"198.51.100.{i}"));
    }

    [Theory]
    [InlineData("127.0.0.1, ::1")]
    [InlineData("")]
    public async Task Links_that_work_are_never_limited(string trusted)
    {
        await using var app = await StartAsync(trusted);
        var link = await (await app.NewClubAsync()).NewLinkAsync();
        await MissAsync(app, Limit + 1, _ => "198.51.100.1");

        List<int> answers = [];
        for (var i = 0; i < 20 * Limit; i++)
        {
            answers.Add(await AskAsync(app, $"/calendar/{link.Token}.ics", "198.51.100.1"));
        }

        Assert.Equal([200], answers.Distinct());
    }

    [Theory]
    [InlineData("127.0.0.1, ::1", "https://")]
    [InlineData("192.0.2.7", "http://")]
    public async Task Addresses_to_copy_are_https_when_the_trusted_proxy_says_so(string trusted, string scheme)
    {
        await using var app = await StartAsync(trusted);
        var link = await (await app.NewClubAsync()).NewLinkAsync();

        var page = await Wire.GetAsync(app, $"/p/{link.Token}", "X-Forwarded-Proto: https");

        Assert.Contains($"{scheme}localhost/calendar/{link.Token}.ics", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", null)]
    [InlineData("10.0.0.5,10.1.0.0/16, fd00::/8", null)]
    [InlineData("10.0.0.5, proxy.example.org", "proxy.example.org")]
    [InlineData("10.0.0.0/33", "10.0.0.0/33")]
    [InlineData("10.1.0.0/", "10.1.0.0/")]
    public void What_is_no_address_is_named(string trusted, string? wrong)
    {
        var said = new TrustedProxies().Validate(null, new TrustedProxies { Trusted = trusted });

        Assert.Equal(wrong is null, said.Succeeded);
        Assert.Contains(wrong ?? "", said.FailureMessage ?? "", StringComparison.Ordinal);
    }

    private static async Task<TestApp> StartAsync(string trusted)
    {
        TestApp app = new() { OnTheWire = true };
        app.Settings["Proxies:Trusted"] = trusted;
        app.Settings["Feeds:MissesPerMinute"] = Limit.ToString(CultureInfo.InvariantCulture);
        await app.InitializeAsync();
        return app;
    }

    private static async Task<List<int>> MissAsync(TestApp app, int times, Func<int, string> forwarded)
    {
        List<int> answers = [];
        for (var i = 0; i < times; i++)
        {
            answers.Add(await AskAsync(app, $"/calendar/{i.ToString("D43", CultureInfo.InvariantCulture)}.ics", forwarded(i)));
        }

        return answers;
    }

    private static async Task<int> AskAsync(TestApp app, string address, string forwarded) =>
        Wire.Status(await Wire.GetAsync(app, address, $"X-Forwarded-For: {forwarded}", "X-Forwarded-Proto: https"));
}
