using System.Buffers;
using System.Collections.Concurrent;
using System.Diagnostics;
using System.Diagnostics.Metrics;
using System.Net.Http.Headers;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Text;
using ClubCycle.Data.Links;
using ClubCycle.Data.Players;
using ClubCycle.Web.Tests.Commands;
using Microsoft.Extensions.DependencyInjection;

namespace ClubCycle.Web.Tests.Hosting;

/// <summary>A hundred links, opened rightly and wrongly, and everything that was written meanwhile searched for them.</summary>
[Trait("Beside", "screens")]
public sealed class SecretsStaySecretTests : IClassFixture<TestApp>
{
    private const int Links = 100;

    /// <summary>As many of them are also asked for in every wrong way.</summary>
    private const int Pestered = 12;

    private readonly TestApp app;

    public SecretsStaySecretTests(TestApp app)
    {
        this.app = app;

        // Its own console stays readable; the node's is the one to be searched.
        app.Settings["Logging:Console:LogLevel:Default"] = "None";
    }

    /// <summary>Each category that the program silences, so that the test hears it: what is off today may be on tomorrow.</summary>
    private static readonly Dictionary<string, string> EveryLevel = new[]
    {
        "Default", "Microsoft", "System", "Npgsql", "Microsoft.AspNetCore.Hosting.Diagnostics", "Microsoft.AspNetCore.HttpLogging", "Microsoft.AspNetCore.Server.Kestrel", "Microsoft.EntityFrameworkCore.Database.Command",
        "Microsoft.Extensions.Hosting.Internal.Host", "Microsoft.AspNetCore.DataProtection.KeyManagement.XmlKeyManager",
    }.ToDictionary(category => $"Logging__Console__LogLevel__{category}", _ => "Trace");

    private static IReadOnlyList<string>? _tokens;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Neither_console_nor_log_file_holds_a_token_or_its_hash_whatever_is_asked_for()
    {
        var tokens = await TokensAsync();
        await using var node = await RunningNode.StartAsync(app.ConnectionString, EveryLevel);
        using var phone = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false, UseCookies = false }) { BaseAddress = node.Address };

        foreach (var token in tokens)
        {
            await OpenAsync(phone, token);
        }

        foreach (var token in tokens.Take(Pestered))
        {
            await PesterAsync(phone, token);
            foreach (var line in new[] { $"GET /p/{token} HTTP/9.9", $"GET /p/{token}", $"GET //p//{token} HTTP/1.1\r\nHost: x", $"GET /calendar/{token}.ics%00 HTTP/1.1\r\nHost: x", $"GET /p/{token}\u0001 HTTP/1.1\r\nHost: x", $"GET /calendar/{token}.ics HTTP/1.1\r\nHost: not a host", $"/p/{token} GET HTTP/1.1" })
            {
                await AskRawlyAsync(node.Address, line + "\r\n\r\n");
            }
        }

        await node.StopAsync();
        var file = Path.GetTempFileName();
        await File.WriteAllTextAsync(file, node.Output, Cancel);
        var written = await File.ReadAllTextAsync(file, Cancel);
        File.Delete(file);

        // It did hear the requests, their SQL, the errors and the refusals.
        Assert.Contains("Request starting", written, StringComparison.Ordinal);
        Assert.Contains("token_hash", written, StringComparison.Ordinal);
        Assert.Contains("An unhandled exception has occurred", written, StringComparison.Ordinal);
        Assert.Contains("ntiforgery", written, StringComparison.Ordinal);
        Assert.Contains("/p/…", written, StringComparison.Ordinal);
        AssertHoldsNone(tokens, written);
    }

    [Fact]
    public async Task Neither_traces_nor_metrics_hold_a_token_or_its_hash()
    {
        var tokens = await TokensAsync();
        ConcurrentQueue<string> heard = new();
        using var traces = new ActivityListener
        {
            ShouldListenTo = _ => true,
            Sample = (ref ActivityCreationOptions<ActivityContext> _) => ActivitySamplingResult.AllDataAndRecorded,
            ActivityStopped = activity => heard.Enqueue(TextOf(activity)),
        };
        ActivitySource.AddActivityListener(traces);
        using var metrics = new MeterListener { InstrumentPublished = (instrument, listener) => listener.EnableMeasurementEvents(instrument) };
        Hear<byte>(metrics, heard);
        Hear<short>(metrics, heard);
        Hear<int>(metrics, heard);
        Hear<long>(metrics, heard);
        Hear<float>(metrics, heard);
        Hear<double>(metrics, heard);
        Hear<decimal>(metrics, heard);
        metrics.Start();
        var phone = app.Browser();

        foreach (var token in tokens)
        {
            await OpenAsync(phone, token);
        }

        foreach (var token in tokens.Take(Pestered))
        {
            await PesterAsync(phone, token);
        }

        metrics.RecordObservableInstruments();
        var all = string.Join('\n', heard);
        Assert.Contains("Microsoft.AspNetCore.Hosting.HttpRequestIn", all, StringComparison.Ordinal);
        Assert.Contains("http.server.request.duration", all, StringComparison.Ordinal);
        Assert.Contains("Npgsql", all, StringComparison.Ordinal);
        AssertHoldsNone(tokens, all);
    }

    [Fact]
    public async Task What_is_sent_to_a_collector_holds_no_token_and_no_hash()
    {
        var tokens = await TokensAsync();
        await using var collector = await Collector.StartAsync();
        await using var node = await RunningNode.StartAsync(app.ConnectionString, new Dictionary<string, string>
        {
            ["OTEL_EXPORTER_OTLP_ENDPOINT"] = collector.Address, ["OTEL_EXPORTER_OTLP_PROTOCOL"] = "http/protobuf", ["OTEL_BSP_MAX_QUEUE_SIZE"] = "100000", ["OTEL_BSP_SCHEDULE_DELAY"] = "200",
        });
        using var phone = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false, UseCookies = false }) { BaseAddress = node.Address };

        foreach (var token in tokens)
        {
            await OpenAsync(phone, token);
        }

        foreach (var token in tokens.Take(Pestered))
        {
            await PesterAsync(phone, token);
        }

        await node.StopAsync();
        var heard = collector.Heard;
        Assert.Equal(["/v1/metrics", "/v1/traces"], collector.Paths.Order());
        Assert.Contains("clubcycle.feed.answers", heard, StringComparison.Ordinal);
        Assert.Contains("http.server.request.duration", heard, StringComparison.Ordinal);
        Assert.Contains(Encoding.Latin1.GetString("/calendar/…"u8), heard, StringComparison.Ordinal);
        Assert.Contains(Encoding.Latin1.GetString("/p/…"u8), heard, StringComparison.Ordinal);
        AssertHoldsNone(tokens, heard);
    }

    private static void Hear<T>(MeterListener metrics, ConcurrentQueue<string> heard)
        where T : struct => metrics.SetMeasurementEventCallback<T>((instrument, value, tags, _) => heard.Enqueue($"{instrument.Meter.Name} {instrument.Name} {value} {string.Join(' ', tags.ToArray())}"));

    private static string TextOf(Activity activity) => string.Join(' ',
    [
        activity.Source.Name, activity.OperationName, activity.DisplayName, activity.StatusDescription, activity.TraceStateString,
        .. activity.TagObjects.Select(tag => tag.ToString()), .. activity.Baggage.Select(item => item.ToString()),
        .. activity.Events.SelectMany(e => e.Tags.Select(tag => tag.ToString()).Prepend(e.Name)),
    ]);

    private static void AssertHoldsNone(IReadOnlyList<string> tokens, string written)
    {
        Assert.Equal(Links, tokens.Distinct().Count());

        // Looked for all at once: what was written is long.
        var secrets = SearchValues.Create([.. tokens.SelectMany(SecretsOf)], StringComparison.OrdinalIgnoreCase);
        if (written.AsSpan().IndexOfAny(secrets) is >= 0 and var at)
        {
            Assert.Fail("A secret was written: " + written[Math.Max(0, at - 200)..Math.Min(written.Length, at + 100)]);
        }
    }

    private static string[] SecretsOf(string token)
    {
        var hash = SHA256.HashData(Encoding.ASCII.GetBytes(token));
        return [token, Convert.ToHexString(hash), Encoding.Latin1.GetString(hash), Convert.ToBase64String(hash), Convert.ToBase64String(hash).TrimEnd('='), Convert.ToBase64String(hash).TrimEnd('=').Replace('+', '-').Replace('/', '_')];
    }

    /// <summary>What phones and people do with a link every day.</summary>
    private static async Task OpenAsync(HttpClient phone, string token)
    {
        foreach (var path in new[] { $"/calendar/{token}.ics", $"/p/{token}" })
        {
            using var answer = await phone.GetAsync(new Uri(path, UriKind.Relative), Cancel);
        }
    }

    /// <summary>What a nuisance does with one.</summary>
    private static async Task PesterAsync(HttpClient phone, string token)
    {
        var wrong = new string([.. token.Reverse()]);
        foreach (var path in new[]
        {
            $"/calendar/{token}.ics", $"/calendar/{wrong}.ics", $"/calendar/{token}", $"/CALENDAR/{token}.ics", $"/calendar/%zz/{token}.ics", $"/calendar/%2e%2e/{token}", $"/calendar/%C0%AF{token}.ics",
            $"/p/{token}", $"/p/{wrong}", $"/P/{token}", $"/p/{token}/x", $"/p/{token}/health", $"/p/{token}?q={token}", $"/p//{token}",
            $"/{token}", $"/nowhere/{token}.ics", $"/squads?back=/p/{token}", $"/squads/{token}", $"/account/sign-in?ReturnUrl=%2Fp%2F{token}", $"/account/sign-in-link/{token}", $"/health/ready?{token}", $"/_blazor?id={token}", $"/not-found?code={token}",
        })
        {
            using var answer = await phone.GetAsync(new Uri(path, UriKind.Relative), Cancel);
        }

        using var head = await phone.SendAsync(new HttpRequestMessage(HttpMethod.Head, $"/calendar/{token}.ics") { Headers = { Referrer = new Uri($"http://localhost/p/{token}") } }, Cancel);
        using var wrongMethod = await phone.PostAsync(new Uri($"/calendar/{token}.ics", UriKind.Relative), null, Cancel);
        using var withoutAntiforgery = await phone.PostAsync(new Uri($"/account/sign-in?ReturnUrl=/p/{token}", UriKind.Relative), new FormUrlEncodedContent([KeyValuePair.Create("email", $"/p/{token}"), KeyValuePair.Create("password", token)]), Cancel);
        using var linkWithoutAntiforgery = await phone.PostAsync(new Uri($"/account/sign-in-link/{token}", UriKind.Relative), new FormUrlEncodedContent([]), Cancel);

        // A form that breaks off: the reader throws.
        using var broken = new StringContent("--x\r\nContent-Disposition: form-data; name=\"question-1\"\r\n\r\nno");
        broken.Headers.ContentType = MediaTypeHeaderValue.Parse("multipart/form-data; boundary=x");
        try
        {
            using var failed = await phone.PostAsync(new Uri($"/p/{token}/health", UriKind.Relative), broken, Cancel);
        }
        catch (IOException)
        {
            // Without a network in between the exception itself arrives here.
        }
    }

    /// <summary>What no client library sends.</summary>
    private static async Task AskRawlyAsync(Uri node, string request)
    {
        using var socket = new TcpClient();
        await socket.ConnectAsync(node.Host, node.Port, Cancel);
        await using var stream = socket.GetStream();
        await stream.WriteAsync(Encoding.Latin1.GetBytes(request), Cancel);
        socket.Client.Shutdown(SocketShutdown.Send);
        using var answer = new StreamReader(stream);
        await answer.ReadToEndAsync(Cancel);
    }

    /// <summary>The same for all tests of the class, which share a database and run one after the other.</summary>
    private async Task<IReadOnlyList<string>> TokensAsync() => _tokens ??= await NewTokensAsync();

    private async Task<IReadOnlyList<string>> NewTokensAsync()
    {
        var club = await app.NewClubAsync();
        await club.PublishAsync();
        return await app.InClubAsync(club.Id, async services =>
        {
            List<string> tokens = [];
            var links = services.GetRequiredService<LinkStore>();
            foreach (var player in (await services.GetRequiredService<PlayerStore>().AddAsync(club.OwnSquad, [.. Enumerable.Range(1, Links / LinkStore.MostLivePerPlayer).Select(i => $"Player {i}")], club.Head, Cancel)).OrThrow())
            {
                for (var i = 0; i < LinkStore.MostLivePerPlayer; i++)
                {
                    tokens.Add((await links.CreateAsync(club.OwnSquad, player, $"phone {i}", club.Head, Cancel)).OrThrow().Token);
                }
            }

            return tokens;
        });
    }
}
