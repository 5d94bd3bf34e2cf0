using System.Diagnostics;
using System.Globalization;
using System.Net;
using ClubCycle.Data.Feeds;
using ClubCycle.TestKit;

namespace ClubCycle.Benchmarks;

/// <summary>
/// Polls of feeds over loopback, a million links in the table, the real program against a bare Kestrel on the same machine. The rounds alternate and the medians count.
/// </summary>
internal static class ServingFigures
{
    private const int Links = 1_000_000;
    private const int Rounds = 3;
    private const int Seconds = 4;
    private const int Herd = 20_000;
    private const int HerdConnections = 128;
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromMilliseconds(50);

    public static async Task PrintAsync()
    {
        var load = await OwnServer.LoadAsync();
        await using var server = await OwnServer.StartAsync();
        await using var app = await server.WebAsync();
        using var coach = await OwnServer.SetUpAsync(app.Address);
        var body = ManyLinks.Feed();
        await ManyLinks.FillAsync(server.OwnerConnectionString, body, Links);

        var file = Path.Combine(server.Folder, "body");
        await File.WriteAllBytesAsync(file, body.Gzip);
        var etag = $"\"{body.Etag}-gzip\"";
        var modified = DateTimeOffset.FromUnixTimeSeconds(body.LastModified.ToUnixTimeSeconds()).ToString("r", CultureInfo.InvariantCulture);
        await using var reading = await server.WebAsync("--Feeds:CacheMegabytes=0");
        await using var bare = await StartedProgram.StartAsync(Environment.GetCommandLineArgs()[0], address => ["bare", address, file, etag, modified], "/");

        var any = Path.Combine(server.Folder, "any.lua");
        await File.WriteAllTextAsync(any, $"request = function() return wrk.format('GET', string.format('/calendar/B%042d.ics', math.random(1, {Links}))) end");
        await CheckAsync(reading.Address, etag, body);
        await CheckAsync(app.Address, etag, body);

        string[] unchanged = ["Accept-Encoding: gzip", $"If-None-Match: {etag}"], whole = ["Accept-Encoding: gzip"];
        (string Name, Func<Task<double>> Run)[] cases =
        [
            ("bare304", () => Wrk.RunAsync(bare.Address + ManyLinks.Address(1), Seconds, unchanged)),
            ("kept304", () => Wrk.RunAsync(app.Address + ManyLinks.Address(1), Seconds, unchanged)),
            ("bare200", () => Wrk.RunAsync(bare.Address + ManyLinks.Address(1), Seconds, whole)),
            ("kept200", () => Wrk.RunAsync(app.Address + ManyLinks.Address(1), Seconds, whole)),
            ("read304", () => Wrk.RunAsync(reading.Address, Seconds, unchanged, any)),
        ];
        var rates = cases.ToDictionary(c => c.Name, _ => new List<double>());
        for (var round = 0; round <= Rounds; round++)
        {
            foreach (var (name, run) in cases)
            {
                var rate = await run();
                if (round > 0)
                {
                    rates[name].Add(rate);
                }
            }
        }

        Say("feed links in the table", Links, "0");
        Say("feed body bytes, gzip", body.Gzip.Length, "0");
        Say("feed 304 with a database read, requests/s", Median(rates["read304"]), "0");
        Say("feed 304 from memory, requests/s", Median(rates["kept304"]), "0");
        Say("bare Kestrel 304, requests/s", Median(rates["bare304"]), "0");
        Say("feed 304 from memory against bare Kestrel, %", 100 * Median(rates["kept304"]) / Median(rates["bare304"]), "0");
        Say("feed 200 from memory, requests/s", Median(rates["kept200"]), "0");
        Say("bare Kestrel 200 with the same bytes, requests/s", Median(rates["bare200"]), "0");
        Say("feed 200 from memory against bare Kestrel, %", 100 * Median(rates["kept200"]) / Median(rates["bare200"]), "0");
        await HerdAsync(app.Address, coach);
        Console.WriteLine($"load average at the start: {load}");
        Console.WriteLine($"load average at the end: {await OwnServer.LoadAsync()}");
    }

    /// <summary>Many calendars ask at the same moment for links that this node has not read yet, while a coach looks at two pages by turns.</summary>
    private static async Task HerdAsync(string address, HttpClient coach)
    {
        using var calendars = new HttpClient(new SocketsHttpHandler { MaxConnectionsPerServer = HerdConnections, AutomaticDecompression = DecompressionMethods.None });
        var pages = new Dictionary<string, List<double>> { ["/account/sign-in"] = [], ["/"] = [] };
        await LookAsync(coach, address, pages);
        foreach (var times in pages.Values)
        {
            times.Clear();
        }

        var errors = 0;
        using var over = new CancellationTokenSource();
        var looking = Task.Run(async () =>
        {
            while (!over.IsCancellationRequested)
            {
                await LookAsync(coach, address, pages);
                await Task.Delay(BetweenLooks);
            }
        });
        var from = Stopwatch.GetTimestamp();
        await Parallel.ForEachAsync(Enumerable.Range(2, Herd), new ParallelOptions { MaxDegreeOfParallelism = HerdConnections }, async (i, cancel) =>
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, address + ManyLinks.Address(i));
            request.Headers.AcceptEncoding.ParseAdd("gzip");
            using var answer = await calendars.SendAsync(request, cancel);
            if (answer.StatusCode != HttpStatusCode.OK)
            {
                Interlocked.Increment(ref errors);
            }
        });
        var took = Stopwatch.GetElapsedTime(from);
        await over.CancelAsync();
        await looking;

        Say($"herd of {Herd} cold links s", took.TotalSeconds, "0.0");
        Say("herd errors", errors, "0");
        foreach (var (page, name) in new[] { ("/account/sign-in", "sign-in page"), ("/", "year board") })
        {
            Say($"{name} during the herd p50 ms", pages[page].Order().ElementAt(pages[page].Count / 2), "0");
            Say($"{name} during the herd p99 ms", pages[page].Order().ElementAt((int)(pages[page].Count * 0.99)), "0");
        }
    }

    private static async Task LookAsync(HttpClient coach, string address, Dictionary<string, List<double>> pages)
    {
        foreach (var (page, times) in pages)
        {
            var from = Stopwatch.GetTimestamp();
            using var answer = await coach.GetAsync(address + page);
            times.Add(Stopwatch.GetElapsedTime(from).TotalMilliseconds);
            if (answer.StatusCode != HttpStatusCode.OK)
            {
                throw new InvalidOperationException($"{page} answered {answer.StatusCode}.");
            }
        }
    }

    /// <summary>What is measured is what it is taken for.</summary>
    private static async Task CheckAsync(string address, string etag, FeedBody body)
    {
        using var http = new HttpClient();
        http.DefaultRequestHeaders.AcceptEncoding.ParseAdd("gzip");
        var bytes = await http.GetByteArrayAsync(address + ManyLinks.Address(1));
        http.DefaultRequestHeaders.IfNoneMatch.ParseAdd(etag);
        using var again = await http.GetAsync(address + ManyLinks.Address(1));
        if (!bytes.SequenceEqual(body.Gzip) || again.StatusCode != HttpStatusCode.NotModified)
        {
            throw new InvalidOperationException($"The feed came with {bytes.Length} bytes and then {again.StatusCode}.");
        }
    }

    private static double Median(List<double> rates) => rates.Order().ElementAt(rates.Count / 2);

    private static void Say(string name, double value, string format) => Console.WriteLine($"{name}: {value.ToString(format, CultureInfo.InvariantCulture)}");
}
