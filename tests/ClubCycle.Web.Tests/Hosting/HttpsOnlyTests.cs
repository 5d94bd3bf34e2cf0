using System.Net;
using ClubCycle.Web.Hosting;
using ClubCycle.Web.Tests.Feeds;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.Extensions.Options;

namespace ClubCycle.Web.Tests.Hosting;

/// <summary>Who is answered in the clear (ASVS 3.3.1, 4.1.2, 4.4.1, 12.2.1). A trusted proxy says that somebody else asks.</summary>
public sealed class HttpsOnlyTests(HttpsOnlyTests.BehindProxy behind) : IClassFixture<HttpsOnlyTests.BehindProxy>
{
    private const string Elsewhere = "X-Forwarded-For: 198.51.100.1";

    [Theory]
    [InlineData("/calendar/{0}.ics")]
    [InlineData("/CALENDAR/{0}.ics")]
    [InlineData("/p/{0}")]
    [InlineData("/p")]
    [InlineData("/g/{0}")]
    [InlineData("/account/sign-in-link/{0}")]
    public async Task What_hangs_on_a_secret_address_is_not_found_over_plain_http_and_leads_nowhere(string address)
    {
        var path = string.Format(System.Globalization.CultureInfo.InvariantCulture, address, behind.Token);

        var answer = await Wire.GetAsync(behind.App, path, Elsewhere, "X-Forwarded-Proto: http");

        Assert.Equal((404, null, ""), (Wire.Status(answer), Wire.Header(answer, "Location"), Wire.Body(answer)));
    }

    [Theory]
    [InlineData("/calendar/{0}.ics")]
    [InlineData("/p/{0}")]
    public async Task Over_https_and_from_this_machine_it_is_answered(string address)
    {
        var path = string.Format(System.Globalization.CultureInfo.InvariantCulture, address, behind.Token);

        Assert.Equal(200, Wire.Status(await Wire.GetAsync(behind.App, path, Elsewhere, "X-Forwarded-Proto: https")));
        Assert.Equal(200, Wire.Status(await Wire.GetAsync(behind.App, path)));
    }

    [Theory]
    [InlineData("/account/sign-in?returnUrl=%2Fsquads", "https://localhost/account/sign-in?returnUrl=%2Fsquads")]
    [InlineData("/", "https://localhost/")]
    public async Task Pages_lead_on_to_https(string page, string to)
    {
        var answer = await Wire.GetAsync(behind.App, page, Elsewhere);

        Assert.Equal((307, to), (Wire.Status(answer), Wire.Header(answer, "Location")));
    }

    [Theory]
    [InlineData("POST", "/account/sign-in")]
    [InlineData("GET", "/_blazor")]
    [InlineData("POST", "/_blazor/negotiate")]
    [InlineData("POST", "/api/v1/plan")]
    [InlineData("GET", "/openapi/v1.json")]
    public async Task Forms_programs_and_live_pages_are_refused_in_the_clear(string method, string path)
    {
        var answer = await Wire.AskAsync(behind.App, method, path, Elsewhere, "Content-Length: 0");

        Assert.Equal((403, null), (Wire.Status(answer), Wire.Header(answer, "Location")));
    }

    [Fact]
    public async Task Whether_it_lives_may_be_asked_in_the_clear() =>
        Assert.Equal(200, Wire.Status(await Wire.GetAsync(behind.App, "/health/live", Elsewhere)));

    [Theory]
    [InlineData("http://+:8080", null, 403)]
    [InlineData("https://+:8443", "https://club.example:8443/squads", 307)]
    [InlineData("https://+:443", "https://club.example/squads", 307)]
    public async Task Without_a_proxy_pages_lead_on_to_the_apps_own_https_if_it_has_any(string listens, string? to, int status)
    {
        var http = await AskAsync("192.0.2.7", new HttpsSettings(), listens);

        Assert.Equal((status, to ?? ""), (http.Response.StatusCode, http.Response.Headers.Location.ToString()));
    }

    [Theory]
    [InlineData("192.0.2.7", true, 200)]
    [InlineData("192.0.2.7", false, 403)]
    [InlineData("127.0.0.1", false, 200)]
    [InlineData("::1", false, 200)]
    [InlineData("::ffff:127.0.0.1", false, 200)]
    public async Task Other_machines_are_answered_in_the_clear_only_when_a_setting_says_so(string from, bool allowed, int status) =>
        Assert.Equal(status, (await AskAsync(from, new HttpsSettings { AllowPlain = allowed }, "http://+:8080")).Response.StatusCode);

    private static async Task<HttpContext> AskAsync(string from, HttpsSettings settings, string listens)
    {
        DefaultHttpContext http = new() { Request = { Method = "GET", Scheme = "http", Host = new HostString("club.example", 8080), Path = "/squads" } };
        http.Connection.RemoteIpAddress = IPAddress.Parse(from);
        await new HttpsOnly(_ => Task.CompletedTask, Options.Create(settings), Options.Create(new TrustedProxies()), new Listening(listens)).InvokeAsync(http);
        return http;
    }

    private sealed class Listening : IServer
    {
        public Listening(string address)
        {
            ServerAddressesFeature addresses = new();
            addresses.Addresses.Add(address);
            Features.Set<IServerAddressesFeature>(addresses);
        }

        public IFeatureCollection Features { get; } = new FeatureCollection();

        public Task StartAsync<TContext>(IHttpApplication<TContext> application, CancellationToken cancellationToken)
            where TContext : notnull => Task.CompletedTask;

        public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

        public void Dispose()
        {
        }
    }

    public sealed class BehindProxy : IAsyncLifetime
    {
        internal TestApp App { get; } = new() { OnTheWire = true };

        internal string Token { get; private set; } = "";

        public async ValueTask InitializeAsync()
        {
            App.Settings["Proxies:Trusted"] = "127.0.0.1, ::1";
            await App.InitializeAsync();
            Token = (await (await App.NewClubAsync()).NewLinkAsync()).Token;
        }

        public ValueTask DisposeAsync() => App.DisposeAsync();
    }
}
