using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Net;

namespace ClubCycle.Benchmarks;

/// <summary>One address sends wrong passwords of many people; a calendar goes on asking, and the owner signs in from elsewhere.</summary>
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
        await using var app = await server.WebAsync("--Proxies:Trusted=127.0.0.1");
        using var coach = await OwnServer.SetUpAsync(app.Address);
        await ManyLinks.FillAsync(server.OwnerConnectionString, ManyLinks.Feed(), Links);
        var load = await OwnServer.LoadAsync();

        List<double> quiet = [];
        using (var over = new CancellationTokenSource(TimeSpan.FromSeconds(10)))
        {
            await FeedsAsync(app.Address, quiet, over.Token);
        }

        List<double> feeds = [], signIns = [];
        using var flooded = new CancellationTokenSource();
        var probes = Task.WhenAll(FeedsAsync(app.Address, feeds, flooded.Token), SignInsAsync(app.Address, signIns, flooded.Token));
        var answers = await FloodAsync(app.Address);
        await flooded.CancelAsync();
        await probes;

        Say("wrong passwords sent", answers.Values.Sum());
        foreach (var (status, count) in answers.OrderBy(a => a.Key))
        {
            Say($"answered {(int)status}", count);
        }

        Say("feed without the flood ms, p99", Percentile.Of(quiet, 0.99));
        Say("feed during the flood ms, p50", Percentile.Of(feeds, 0.5));
        Say("feed during the flood ms, p99", Percentile.Of(feeds, 0.99));
        Say("owner's sign-ins during the flood", signIns.Count);
        Say("owner's sign-in ms, median", Percentile.Of(signIns, 0.5));
        Say("owner's sign-in ms, worst", Percentile.Of(signIns, 1));
        Console.WriteLine($"load average at the start: {load}");
        Console.WriteLine($"load average at the end: {await OwnServer.LoadAsync()}");
    }

    private static async Task<IReadOnlyDictionary<HttpStatusCode, int>> FloodAsync(string address)
    {
        using var attacker = OwnServer.Browser(address);
        attacker.DefaultRequestHeaders.Add("X-Forwarded-For", "203.0.113.9");
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
            using var answer = await attacker.PostAsync("/account/sign-in", OwnServer.Form(token, [("email", $"person{number % 500}@example.org"), ("password", $"wrong password {number}")]));
            answers.AddOrUpdate(answer.StatusCode, 1, (_, n) => n + 1);
        }
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

    private static async Task SignInsAsync(string address, List<double> times, CancellationToken over)
    {
        while (!over.IsCancellationRequested)
        {
            using var owner = OwnServer.Browser(address);
            owner.DefaultRequestHeaders.Add("X-Forwarded-For", "198.51.100.7");
            var from = Stopwatch.GetTimestamp();
            using var answer = await OwnServer.SendAsync(owner, "/account/sign-in", ("email", OwnServer.Email), ("password", OwnServer.Password));
            times.Add(Stopwatch.GetElapsedTime(from).TotalMilliseconds);
            if (answer.StatusCode != HttpStatusCode.Redirect)
            {
                throw new InvalidOperationException($"The owner's sign-in was answered {answer.StatusCode}.");
            }

            await Task.Delay(BetweenSignIns, CancellationToken.None);
        }
    }

    private static void Say(string name, double value) => Console.WriteLine($"{name}: {value.ToString("0.#", CultureInfo.InvariantCulture)}");
}
