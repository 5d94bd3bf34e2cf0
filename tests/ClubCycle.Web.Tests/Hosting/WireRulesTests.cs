using ClubCycle.Web.Tests.Feeds;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.StaticAssets;
using Microsoft.Extensions.DependencyInjection;

namespace ClubCycle.Web.Tests.Hosting;

/// <summary>Requests and answers as they travel, in the application as clubs run it.</summary>
public sealed class WireRulesTests(WireRulesTests.Listening listening) : IClassFixture<WireRulesTests.Listening>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    /// <summary>ASVS 4.2.1: the second request hides in the first for whoever believes the other length.</summary>
    [Theory]
    [InlineData("Content-Length: 0\nContent-Length: 44")]
    [InlineData("Content-Length: 0, 44")]
    [InlineData("Content-Length: 0x0")]
    [InlineData("Transfer-Encoding: xchunked")]
    [InlineData("Transfer-Encoding: chunked, identity")]
    [InlineData("Content-Length : 44")]
    public async Task A_request_whose_end_is_unclear_is_refused_and_nothing_in_it_is_answered(string lengths)
    {
        var answer = await Wire.SendAsync(listening.App, $"POST /account/sign-in HTTP/1.1\nHost: localhost\n{lengths}\n\nGET /health/live HTTP/1.1\nHost: localhost\n\n");

        Assert.InRange(Wire.Status(answer), 400, 501);
        Assert.Equal(1, answer.Split("HTTP/1.1 ").Length - 1);
        Assert.Equal("close", Wire.Header(answer, "Connection"));
    }

    /// <summary>ASVS 4.2.1: RFC 9112, 6.1 lets chunks decide and has the connection closed.</summary>
    [Fact]
    public async Task A_request_with_a_length_and_chunks_is_taken_by_its_chunks()
    {
        var answer = await Wire.SendAsync(listening.App, "POST /account/sign-in HTTP/1.1\nHost: localhost\nContent-Length: 60\nTransfer-Encoding: chunked\n\n0\n\nGET /health/live HTTP/1.1\nHost: localhost\nConnection: close\n\n");

        Assert.DoesNotContain("Healthy", answer, StringComparison.Ordinal);
    }

    /// <summary>ASVS 13.4.4.</summary>
    [Theory]
    [InlineData("/")]
    [InlineData("/account/sign-in")]
    [InlineData("/p/x")]
    [InlineData("/calendar/x.ics")]
    [InlineData("/health/live")]
    [InlineData("/api/v1/plan")]
    [InlineData("/css/clubcycle.css")]
    [InlineData("/no/such")]
    public async Task TRACE_mirrors_nothing(string path)
    {
        var answer = await Wire.AskAsync(listening.App, "TRACE", path, "X-Mirror: canary");

        Assert.InRange(Wire.Status(answer), 400, 499);
        Assert.DoesNotContain("canary", answer, StringComparison.Ordinal);
    }

    /// <summary>ASVS 15.3.7.</summary>
    [Theory]
    [InlineData("GET", "/account/sign-in?returnUrl=%2F&returnUrl=%2Fsquads", "")]
    [InlineData("GET", "/not-found?code=404&CODE=500", "")]
    [InlineData("GET", "/print/wall-chart.pdf?size=a3&size=a4", "")]
    [InlineData("POST", "/account/sign-in", "email=a&email=b&password=c")]
    [InlineData("POST", "/p/x/health", "question-1=no&question-1=yes")]
    public async Task One_name_with_two_values_is_refused(string method, string path, string form)
    {
        var answer = await Wire.SendAsync(
            listening.App, $"{method} {path} HTTP/1.1\nHost: localhost\nConnection: close\nContent-Type: application/x-www-form-urlencoded\nContent-Length: {form.Length}\n\n{form}");

        Assert.Equal(400, Wire.Status(answer));
    }

    /// <summary>ASVS 3.4.6 and 4.1.1.</summary>
    [Theory]
    [InlineData("/account/sign-in", 200, "text/html; charset=utf-8")]
    [InlineData("/no/such", 302, null)]
    [InlineData("/not-found?code=404", 200, "text/html; charset=utf-8")]
    [InlineData("/css/clubcycle.css", 200, "text/css; charset=utf-8")]
    [InlineData("/js/start.js", 200, "text/javascript; charset=utf-8")]
    [InlineData("/p/worker.js", 200, "text/javascript; charset=utf-8")]
    [InlineData("/p/x", 404, "text/html; charset=utf-8")]
    [InlineData("/p/{0}", 200, "text/html; charset=utf-8")]
    [InlineData("/calendar/x.ics", 404, null)]
    [InlineData("/calendar/{0}.ics", 200, "text/calendar; charset=utf-8")]
    [InlineData("/health/live", 200, "text/plain")]
    [InlineData("/api/v1/plan", 401, null)]
    public async Task Every_answer_forbids_framing_and_texts_name_their_signs(string path, int status, string? type)
    {
        var answer = await Wire.GetAsync(listening.App, string.Format(System.Globalization.CultureInfo.InvariantCulture, path, listening.Token));

        Assert.Equal((status, type), (Wire.Status(answer), Wire.Header(answer, "Content-Type")));
        Assert.Contains("frame-ancestors 'none'", Wire.Header(answer, "Content-Security-Policy"), StringComparison.Ordinal);
    }

    /// <summary>ASVS 15.2.3: whatever is added to or left in the program by accident shows here.</summary>
    [Fact]
    public void These_are_all_addresses_that_there_are()
    {
        var there = listening.App.Services.GetServices<EndpointDataSource>().SelectMany(source => source.Endpoints).OfType<RouteEndpoint>()
            .Where(endpoint => endpoint.Metadata.GetMetadata<StaticAssetDescriptor>() is null)
            .Select(endpoint => "/" + endpoint.RoutePattern.RawText!.TrimStart('/'))
            .Distinct().ToList();

        var (more, less) = (there.Except(Addresses).Order(StringComparer.Ordinal), Addresses.Except(there));
        Assert.True(there.Count == Addresses.Length && !more.Any(), $"Not listed here:\n{string.Join('\n', more)}\nNot there:\n{string.Join('\n', less)}");
    }

    private static readonly string[] Addresses =
    [
        "/",
        "/_blazor",
        "/_blazor/disconnect/",
        "/_blazor/initializers/",
        "/_blazor/negotiate",
        "/_framework/opaque-redirect",
        "/account/denied",
        "/account/language",
        "/account/passkeys",
        "/account/passkeys/challenge",
        "/account/passkeys/remove",
        "/account/password",
        "/account/second-factor",
        "/account/sign-in",
        "/account/sign-in-link/{token}",
        "/account/sign-in/code",
        "/account/sign-in/passkey",
        "/account/sign-in/passkey/challenge",
        "/account/sign-ins",
        "/account/sign-out",
        "/api/v1/plan",
        "/check",
        "/error",
        "/exercises",
        "/exercises/{Name}",
        "/exports",
        "/g/{token}",
        "/health/live",
        "/health/ready",
        "/not-found",
        "/openapi/{documentName}.json",
        "/p/app.webmanifest",
        "/p/{**token}",
        "/p/{token}/health",
        "/print/squads/{squad:guid}/wall-chart.pdf",
        "/print/squads/{squad:guid}/weeks/{day}.pdf",
        "/print/wall-chart.pdf",
        "/seasons",
        "/settings",
        "/setup",
        "/squads",
        "/squads/{Squad:guid}",
        "/squads/{Squad:guid}/matches",
        "/squads/{Squad:guid}/players",
        "/squads/{Squad:guid}/players/sheet",
        "/squads/{Squad:guid}/players/{Player:guid}",
        "/squads/{Squad:guid}/revisions",
        "/squads/{Squad:guid}/session/{Uid:guid}",
        "/squads/{Squad:guid}/week",
        "/squads/{Squad:guid}/week/{Day}",
        "/squads/{Squad:guid}/year",
        "/squads/{squad:guid}/players/{player:guid}/data.{form:regex(^(json|csv)$)}",
        "/templates",
        "/templates/{Id:guid}",
        "/templates/{id:guid}/file",
        "/welfare",
    ];

    public sealed class Listening : IAsyncLifetime
    {
        internal TestApp App { get; } = new() { OnTheWire = true };

        internal string Token { get; private set; } = "";

        public async ValueTask InitializeAsync()
        {
            App.Settings["environment"] = "Production";
            await App.InitializeAsync();
            Token = (await (await App.NewClubAsync()).NewLinkAsync()).Token;
        }

        public ValueTask DisposeAsync() => App.DisposeAsync();
    }
}
