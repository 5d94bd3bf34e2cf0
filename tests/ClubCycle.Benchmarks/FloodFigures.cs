using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Net;

namespace ClubCycle.Benchmarks;

/// <summary>
/// Wrong passwords of many people, from one address and then from as many addresses as tries; a calendar goes on asking, and the owner signs in from elsewhere, in a browser that was used
/// before and in new ones.
/// </summary>
internal static class FloodFigures
{
    private const int EachSecond = 200;
    private const int Links = 1_000;
    private static readonly TimeSpan Long = TimeSpan.FromSeconds(60);
    private static readonly TimeSpan BetweenFeeds = TimeSpan.FromMilliseconds(50);
    private static readonly TimeSpan BetweenSignIns = TimeSpan.FromSeconds(5);

    public static async Task PrintAsync()
    {
        await using var server = await OwnServer.StartAsync();
        await using var app = await server.WebAsync("--Proxies:Trusted=127.0.0.1", "--Https:AllowPlain=true");
        using var coach = await OwnServer.SetUpAsync(app.Address);
        await ManyLinks.FillAsync(server.OwnerConnectionString, ManyLinks.Feed(), Links);
        var load = await OwnServer.LoadAsync();

        List<double> quiet = [];
        using (var over = new CancellationTokenSource(TimeSpan.FromSeconds(10)))
        {
            await FeedsAsync(app.Address, quiet, over.Token);
        }

        Say("feed without a flood ms, p99", Percentile.Of(quiet, 0.99));
        coach.DefaultRequestHeaders.Add("X-Forwarded-For", "198.51.100.7");
        await FloodedAsync("one address", app.Address, coach, _ => "203.0.113.9");
        await FloodedAsync("many addresses", app.Address, coach, number => $"10.{number >> 16}.{(number >> 8) & 255}.{number & 255}");
        Console.WriteLine($"load average at the start: {load}");
        Console.WriteLine($"load average at the end: {await OwnServer.LoadAsync()}");
    }

    private static async Task FloodedAsync(string from, string address, HttpClient coach, Func<int, string> addressOf)
    {
        List<double> feeds = [];
        List<(double Took, HttpStatusCode Status)> known = [], anew = [];
        using var over = new CancellationTokenSource();
        var probes = Task.WhenAll(
            FeedsAsync(address, feeds, over.Token),
            SignInsAsync(() => coach, known, over.Token),
            SignInsAsync(() => Elsewhere(address), anew, over.Token));
        var answers = await FloodAsync(address, addressOf);
        await over.CancelAsync();
        await probes;

        Say($"{from}: wrong passwords sent", answers.Values.Sum());
        foreach (var (status, count) in answers.OrderBy(a => a.Key))
        {
            Say($"{from}: answered {(int)status}", count);
        }

        Say($"{from}: feed ms, p50", Percentile.Of(feeds, 0.5));
        Say($"{from}: feed ms, p99", Percentile.Of(feeds, 0.99));
        Say($"{from}: owner in a known browser, tries", known.Count);
        Say($"{from}: owner in a known browser, came in", known.Count(k => k.Status == HttpStatusCode.Redirect));
        Say($"{from}: owner in a known browser ms, worst", known.Max(k => k.Took));
        Say($"{from}: owner in a new browser, tries", anew.Count);
        Say($"{from}: owner in a new browser, came in", anew.Count(k => k.Status == HttpStatusCode.Redirect));
        Say($"{from}: owner in a new browser ms, worst", anew.Max(k => k.Took));
    }

    private static async Task<IReadOnlyDictionary<HttpStatusCode, int>> FloodAsync(string address, Func<int, string> addressOf)
    {
        using var attacker = OwnServer.Browser(address);
        var token = await OwnServer.TokenAsync(attacker, "/account/sign-in");
        ConcurrentDictionary<HttpStatusCode, int> answers = [];
        List<Task> sent = [];
        for (var watch = Stopwatch.StartNew(); watch.Elapsed < Long; await Task.Delay(5))
        {
            for (; sent.Count < watch.Elapsed.TotalSeconds * EachSecond;)
            {
                sent.Add(TryAsync(sent.Count));
            }
        }

        await Task.WhenAll(sent);
        return answers;

        async Task TryAsync(int number)
        {
            using var wrong = new HttpRequestMessage(HttpMethod.Post, "/account/sign-in")
            {
                Content = OwnServer.Form(token, [("email", $"person{number % 500}@example.org"), ("password", $"wrong password {number}")]),
            };
            wrong.Headers.Add("X-Forwarded-For", addressOf(number));
            using var answer = await attacker.SendAsync(wrong);
            answers.AddOrUpdate(answer.StatusCode, 1, (_, n) => n + 1);
        }
    }

    private static HttpClient Elsewhere(string address)
    {
        var browser = OwnServer.Browser(address);
        browser.DefaultRequestHeaders.Add("X-Forwarded-For", "198.51.100.8");
        return browser;
    }

    private static async Task FeedsAsync(string address, List<double> times, CancellationToken over)
    {
        using var calendar = OwnServer.Browser(address);
        for (var link = 1; !over.IsCancellationRequested; link = (link % Links) + 1)
        {
            var from = Stopwatch.GetTimestamp();
            using var answer = await calendar.GetAsync(ManyLinks.Address(link), CancellationToken.None);
            times.Add(Stopwatch.GetElapsedTime(from).TotalMilliseconds);
            answer.EnsureSuccessStatusCode();
            await Task.Delay(BetweenFeeds, CancellationToken.None);
        }
    }

    private static async Task SignInsAsync(Func<HttpClient> browserOf, List<(double Took, HttpStatusCode Status)> signIns, CancellationToken over)
    {
        while (!over.IsCancellationRequested)
        {
            var browser = browserOf();
            var from = Stopwatch.GetTimestamp();
            using var answer = await OwnServer.SendAsync(browser, "/account/sign-in", ("email", OwnServer.Email), ("password", OwnServer.Password));
            signIns.Add((Stopwatch.GetElapsedTime(from).TotalMilliseconds, answer.StatusCode));
            await Task.Delay(BetweenSignIns, CancellationToken.None);
        }
    }

    private static void Say(string name, double value) => Console.WriteLine($"{name}: {value.ToString("0.#", CultureInfo.InvariantCulture)}");
}
