using System.Net;
using System.Net.Security;
using System.Net.Sockets;
using System.Security.Authentication;
using System.Security.Cryptography.X509Certificates;
using System.Text.RegularExpressions;
using ClubCycle.TestKit;
using ClubCycle.Web.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;

namespace ClubCycle.Web.Tests.Hosting;

/// <summary>deploy/nginx.conf as it is but for ports, files and the certificate, in front of the application (ASVS 12.1.1, 12.1.2 and 12.2.1).</summary>
public sealed partial class ProxyFileTests : IClassFixture<ProxyFileTests.Proxy>
{
    private const string Name = ProxyProgram.Name;

    private readonly Proxy proxy;

    public ProxyFileTests(Proxy proxy)
    {
        Assert.SkipUnless(proxy.IsThere, "nginx is not installed");
        this.proxy = proxy;
    }

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public void The_file_allows_TLS_1_2_and_1_3_and_nothing_older()
    {
        Assert.Equal("TLSv1.2 TLSv1.3", Assert.Single(Protocols().Matches(Proxy.File)).Groups[1].Value);
        Assert.All(Assert.Single(Ciphers().Matches(Proxy.File)).Groups[1].Value.Split(':'), cipher => Assert.Matches("^ECDHE-.*(GCM|POLY1305)", cipher));
    }

    [Fact]
    public void The_file_hides_and_keeps_to_https_the_same_addresses_as_the_program() =>
        Assert.Equal(2, Proxy.File.Split(SecretAddresses.Paths + ")").Length - 1);

    [Theory]
    [InlineData(SslProtocols.Tls12)]
    [InlineData(SslProtocols.Tls13)]
    public async Task Both_are_spoken_with_forward_secrecy(SslProtocols version)
    {
        await using var tls = await HandshakeAsync(version, Name);

        Assert.Equal(version, tls.SslProtocol);
        Assert.Matches("^TLS_(ECDHE_|AES_|CHACHA20_)", tls.NegotiatedCipherSuite.ToString());
        Assert.DoesNotContain("CBC", tls.NegotiatedCipherSuite.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("-tls1_1")]
    [InlineData("-tls1")]
    public async Task Older_ones_are_refused_even_by_a_client_that_would(string version)
    {
        var said = await proxy.OpensslAsync(version);

        Assert.Contains("alert protocol version", said, StringComparison.Ordinal);
        Assert.Contains("Cipher is (NONE)", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_name_that_is_not_ours_gets_no_certificate() =>
        await Assert.ThrowsAnyAsync<Exception>(async () => (await HandshakeAsync(SslProtocols.Tls13, "other.example.org")).Dispose());

    [Fact]
    public async Task A_calendar_is_answered_and_neither_log_holds_its_secret()
    {
        var answer = await proxy.AskAsync(HttpMethod.Get, $"https://{Name}/calendar/{proxy.Token}.ics?x={proxy.Token}");
        var page = await proxy.AskAsync(HttpMethod.Get, $"https://{Name}/p/{proxy.Token}");

        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.OK), (answer.StatusCode, page.StatusCode));
        Assert.Contains($"https://{Name}", await page.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        var log = await proxy.LogAsync(" /p/- 200 ");
        Assert.Contains(" GET /calendar/- 200 ", log, StringComparison.Ordinal);
        Assert.DoesNotContain(proxy.Token, log, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/calendar/x.ics", 404, null)]
    [InlineData("/p/x", 404, null)]
    [InlineData("/P/x", 404, null)]
    [InlineData("/account/sign-in-link/x", 404, null)]
    [InlineData("/squads?a=b", 307, "https://club.example.org/squads?a=b")]
    [InlineData("/print/x", 307, "https://club.example.org/print/x")]
    public async Task In_the_clear_pages_lead_on_and_secrets_do_not(string path, int status, string? to)
    {
        var answer = await proxy.AskAsync(HttpMethod.Get, $"http://{Name}{path}");

        Assert.Equal((status, to), ((int)answer.StatusCode, answer.Headers.Location?.OriginalString));
    }

    [Fact]
    public async Task The_session_form_and_live_page_work_behind_it()
    {
        var page = await proxy.AskAsync(HttpMethod.Get, $"https://{Name}/account/sign-in");
        var live = await proxy.AskAsync(HttpMethod.Post, $"https://{Name}/_blazor/negotiate?negotiateVersion=1", ("Origin", $"https://{Name}"));

        Assert.Contains(page.Headers.GetValues("Set-Cookie"), cookie => cookie.StartsWith("__Host-ClubCycle.Form=", StringComparison.Ordinal));
        Assert.Contains("max-age=63072000", Assert.Single(page.Headers.GetValues("Strict-Transport-Security")), StringComparison.Ordinal);
        Assert.NotEqual(HttpStatusCode.Forbidden, live.StatusCode);
    }

    private async Task<SslStream> HandshakeAsync(SslProtocols version, string name)
    {
        TcpClient client = new();
        await client.ConnectAsync("127.0.0.1", proxy.Https, Cancel);
        SslStream tls = new(client.GetStream(), leaveInnerStreamOpen: false, (_, shown, _, _) => proxy.IsOwn(shown));
        await tls.AuthenticateAsClientAsync(new SslClientAuthenticationOptions { TargetHost = name, EnabledSslProtocols = version }, Cancel);
        return tls;
    }

    [GeneratedRegex("ssl_protocols (.*);")]
    private static partial Regex Protocols();

    [GeneratedRegex("ssl_ciphers (.*);")]
    private static partial Regex Ciphers();

    public sealed class Proxy : IAsyncLifetime
    {
        private readonly TestApp _app = new() { OnTheWire = true };
        private ProxyProgram? _nginx;

        internal static string File => ProxyProgram.File;

        internal int Https => Nginx.Https;

        internal string Token { get; private set; } = "";

        internal bool IsThere => _nginx is not null;

        private ProxyProgram Nginx => _nginx ?? throw new InvalidOperationException("nginx is not installed");

        internal bool IsOwn(X509Certificate? shown) => Nginx.IsOwn(shown);

        public async ValueTask InitializeAsync()
        {
            if (!ProxyProgram.IsInstalled && Environment.GetEnvironmentVariable("CI") is not "true")
            {
                return;
            }

            _app.Settings["Proxies:Trusted"] = "127.0.0.1";
            _app.Settings["environment"] = "Production";
            await _app.InitializeAsync();
            Token = (await (await _app.NewClubAsync()).NewLinkAsync()).Token;
            _nginx = await ProxyProgram.StartAsync(new Uri(_app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First()).Port);
        }

        public async ValueTask DisposeAsync()
        {
            if (_nginx is not null)
            {
                await _nginx.DisposeAsync();
                await _app.DisposeAsync();
            }
        }

        internal async Task<HttpResponseMessage> AskAsync(HttpMethod method, string address, params (string Name, string Value)[] headers)
        {
            using HttpClient client = new(Nginx.Handler());
            using HttpRequestMessage request = new(method, address);
            foreach (var (name, value) in headers)
            {
                request.Headers.Add(name, value);
            }

            var answer = await client.SendAsync(request, Cancel);
            await answer.Content.LoadIntoBufferAsync(Cancel);
            return answer;
        }

        /// <summary>Once it holds what is waited for, with what nginx complained about.</summary>
        internal async Task<string> LogAsync(string until)
        {
            for (var i = 0; i < 100; i++)
            {
                var log = await Nginx.LogAsync();
                if (log.Contains(until, StringComparison.Ordinal))
                {
                    return log;
                }

                await Task.Delay(50, Cancel);
            }

            throw new TimeoutException($"The log never held {until}");
        }

        internal Task<string> OpensslAsync(string version) =>
            ProxyProgram.OutputOfAsync("openssl", "s_client", "-connect", $"127.0.0.1:{Https}", "-servername", Name, "-cipher", "DEFAULT:@SECLEVEL=0", version);
    }
}
