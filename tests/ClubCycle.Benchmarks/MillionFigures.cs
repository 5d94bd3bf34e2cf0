using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Http.Headers;
using Npgsql;

namespace ClubCycle.Benchmarks;

/// <summary>
/// A million links, asked for at the pace at which as many subscribers' calendars poll: 212 a second by the usual hours of the usual programs (45 % hourly with 1.3 devices,
/// 35 % each 12 hours, 15 % each 3 hours, 5 % each half hour), nine of ten with the ETag that they had.
/// </summary>
internal static class MillionFigures
{
    private const int Links = 1_000_000;
    private const int EachSecond = 212;
    private static readonly TimeSpan Look = TimeSpan.FromSeconds(10);

    public static async Task PrintAsync(int minutes)
    {
        await using var server = await OwnServer.StartAsync();
        await using var app = await server.WebAsync();
        using var coach = await OwnServer.SetUpAsync(app.Address);
        var body = ManyLinks.Feed();
        await ManyLinks.FillAsync(server.OwnerConnectionString, body, Links);
        using var calendars = new HttpClient(new SocketsHttpHandler { AutomaticDecompression = DecompressionMethods.None, MaxConnectionsPerServer = 200 });
        using var web = Process.GetProcessById(app.Id);
        var load = await OwnServer.LoadAsync();

        ConcurrentBag<double> times = [];
        ConcurrentBag<Task> asked = [];
        var memory = MemoryWatch.TenthsAsync(app.Id, TimeSpan.FromMinutes(minutes));
        List<long> connections = [];
        var (wrong, sent) = (0, 0);
        var (cpu, watch) = (web.TotalProcessorTime, Stopwatch.StartNew());
        for (var nextLook = Look; watch.Elapsed < TimeSpan.FromMinutes(minutes); await Task.Delay(5))
        {
            for (; sent < watch.Elapsed.TotalSeconds * EachSecond; sent++)
            {
                asked.Add(AskAsync(Random.Shared.Next(1, Links + 1), unchanged: Random.Shared.Next(10) > 0));
            }

            if (watch.Elapsed > nextLook)
            {
                connections.Add(await ConnectionsAsync(server.ConnectionString));
                nextLook += Look;
            }
        }

        await Task.WhenAll(asked);
        web.Refresh();
        Say("minutes", watch.Elapsed.TotalMinutes);
        Say("feed requests a second", sent / watch.Elapsed.TotalSeconds);
        Say("feed errors", wrong);
        Say("feed ms, p50", Percentile.Of(times, 0.5));
        Say("feed ms, p99", Percentile.Of(times, 0.99));
        Say("web node, % of one core", 100 * (web.TotalProcessorTime - cpu) / watch.Elapsed);
        Say("web node, % of the processor", 100 * (web.TotalProcessorTime - cpu) / watch.Elapsed / Environment.ProcessorCount);
        Console.WriteLine(await memory);
        Say("database connections, most", connections.Max());
        Console.WriteLine($"load average at the start: {load}");
        Console.WriteLine($"load average at the end: {await OwnServer.LoadAsync()}");

        async Task AskAsync(int link, bool unchanged)
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, app.Address + ManyLinks.Address(link));
            request.Headers.AcceptEncoding.ParseAdd("gzip");
            if (unchanged)
            {
                request.Headers.IfNoneMatch.Add(new EntityTagHeaderValue($"\"{body.Etag}-gzip\""));
            }

            var from = Stopwatch.GetTimestamp();
            using var answer = await calendars.SendAsync(request);
            times.Add(Stopwatch.GetElapsedTime(from).TotalMilliseconds);
            if (answer.StatusCode != (unchanged ? HttpStatusCode.NotModified : HttpStatusCode.OK))
            {
                Interlocked.Increment(ref wrong);
            }
        }
    }

    private static async Task<long> ConnectionsAsync(string connectionString)
    {
        await using var connection = new NpgsqlConnection(new NpgsqlConnectionStringBuilder(connectionString) { Pooling = false }.ConnectionString);
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand("select count(*) from pg_stat_activity where datname = current_database() and pid <> pg_backend_pid()", connection);
        return (long)(await command.ExecuteScalarAsync())!;
    }

    private static void Say(string name, double value) => Console.WriteLine($"{name}: {value.ToString("0.#", CultureInfo.InvariantCulture)}");
}
