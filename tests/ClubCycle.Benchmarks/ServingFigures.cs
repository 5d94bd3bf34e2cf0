using System.Diagnostics;
using System.Globalization;
using System.IO.Compression;
using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using ClubCycle.Data;
using ClubCycle.Data.Embedded;
using ClubCycle.Data.Feeds;
using ClubCycle.Data.Squads;
using ClubCycle.Planning;
using ClubCycle.Planning.Squads;
using ClubCycle.TestKit;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Npgsql;

namespace ClubCycle.Benchmarks;

/// <summary>
/// Polls of feeds over loopback, a million links in the table, the real program against a bare Kestrel on the same machine. The rounds alternate and the medians count.
/// </summary>
internal static partial class ServingFigures
{
    private const int Links = 1_000_000;
    private const int Squads = 20;
    private const int PlayersPerSquad = 50;
    private const int Events = 200;
    private const int Rounds = 3;
    private const int Seconds = 4;
    private const int Herd = 20_000;
    private const int HerdConnections = 128;
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromMilliseconds(50);
    private static readonly Guid By = NamedId.From("benchmark", "coach");

    public static async Task PrintAsync()
    {
        var load = await LoadAsync();
        using var folder = TemporaryFolder.ReachableByAll("clubcycle-benchmark-");
        using var after = AfterUs.EndServer(folder.Path);
        await using var server = await PrivatePostgres.StartAsync(new PrivatePostgresSettings { DataFolder = folder.Path });
        await using var services = new ServiceCollection().AddLogging().AddSingleton<IClock>(new StandingClock()).AddClubCycleData(server.ConnectionString).BuildServiceProvider();
        await DataSetup.MigrateAsync(services);

        var web = Path.Combine(new DirectoryInfo(AppContext.BaseDirectory).Parent!.Parent!.FullName, "ClubCycle.Web", new DirectoryInfo(AppContext.BaseDirectory).Name, "ClubCycle.Web.dll");
        var database = new Dictionary<string, string> { ["ConnectionStrings__ClubCycle"] = server.ConnectionString };
        await using var app = await StartedProgram.StartAsync(web, address => ["serve", $"--urls={address}"], "/health/live", database);
        using var coach = await SetUpAsync(app.Address);
        var body = Feed();
        await FillAsync(services, server.ConnectionString, body);

        var file = Path.Combine(folder.Path, "body");
        await File.WriteAllBytesAsync(file, body.Gzip);
        var etag = $"\"{body.Etag}-gzip\"";
        var modified = DateTimeOffset.FromUnixTimeSeconds(body.LastModified.ToUnixTimeSeconds()).ToString("r", CultureInfo.InvariantCulture);
        await using var reading = await StartedProgram.StartAsync(web, address => ["serve", $"--urls={address}", "--Feeds:CacheMegabytes=0"], "/health/live", database);
        await using var bare = await StartedProgram.StartAsync(Environment.GetCommandLineArgs()[0], address => ["bare", address, file, etag, modified], "/");

        var any = Path.Combine(folder.Path, "any.lua");
        await File.WriteAllTextAsync(any, $"request = function() return wrk.format('GET', string.format('/calendar/B%042d.ics', math.random(1, {Links}))) end");
        await CheckAsync(reading.Address, etag, body);
        await CheckAsync(app.Address, etag, body);

        string[] unchanged = ["Accept-Encoding: gzip", $"If-None-Match: {etag}"], whole = ["Accept-Encoding: gzip"];
        (string Name, Func<Task<double>> Run)[] cases =
        [
            ("bare304", () => Wrk.RunAsync(bare.Address + Address(1), Seconds, unchanged)),
            ("kept304", () => Wrk.RunAsync(app.Address + Address(1), Seconds, unchanged)),
            ("bare200", () => Wrk.RunAsync(bare.Address + Address(1), Seconds, whole)),
            ("kept200", () => Wrk.RunAsync(app.Address + Address(1), Seconds, whole)),
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
        Console.WriteLine($"load average at the end: {await LoadAsync()}");
    }

    private static async Task<string> LoadAsync() => (await File.ReadAllTextAsync("/proc/loadavg")).Split(' ')[0];

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
            using var request = new HttpRequestMessage(HttpMethod.Get, address + Address(i));
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

    /// <summary>The first person makes the club and is signed in.</summary>
    private static async Task<HttpClient> SetUpAsync(string address)
    {
        var coach = new HttpClient(new SocketsHttpHandler { AllowAutoRedirect = false });
        var form = await coach.GetStringAsync(address + "/setup");
        using var answer = await coach.PostAsync(address + "/setup", new FormUrlEncodedContent(new Dictionary<string, string>
        {
            ["__RequestVerificationToken"] = Token().Match(form).Groups[1].Value, ["club"] = "Benchmark club", ["timeZone"] = "Europe/Lisbon", ["firstWeekday"] = "Monday",
            ["name"] = "Robin", ["email"] = "robin@example.org", ["password"] = "window tractor lemon",
        }));
        return answer.StatusCode == HttpStatusCode.Redirect ? coach : throw new InvalidOperationException($"/setup answered {answer.StatusCode}.");
    }

    private static async Task FillAsync(IServiceProvider services, string connectionString, FeedBody body)
    {
        await using var source = NpgsqlDataSource.Create(new NpgsqlConnectionStringBuilder(connectionString) { CommandTimeout = 600 }.ConnectionString);
        await using var connection = await source.OpenConnectionAsync();
        await RunAsync("set app.club = '*'");
        await using var find = new NpgsqlCommand("select club_id from club.clubs", connection);
        var club = (Guid)(await find.ExecuteScalarAsync())!;
        using var scope = services.CreateScope();
        scope.ServiceProvider.GetRequiredService<CurrentClub>().Use(club);
        for (var i = 0; i < Squads; i++)
        {
            var squad = (await scope.ServiceProvider.GetRequiredService<SquadStore>().AddAsync(
                new Squad(Guid.Empty, $"Squad {i + 1}", AgeGroup.Senior, TrainingAge.Some, [], IsoDayOfWeek.Saturday, new LocalTime(12, 0), []), null, By)).OrThrow();
            await scope.ServiceProvider.GetRequiredService<FeedStore>().SaveAsync(squad, "spm", body);
        }

        await RunAsync(
            $"""
            insert into club.players (club_id, id, squad_id, name, asks_health_questions, version)
            select club_id, gen_random_uuid(), id, 'Player ' || n, false, 1 from club.squads, generate_series(1, {PlayersPerSquad}) n;
            alter table club.links disable trigger tell_of_change;
            insert into club.links (club_id, id, player_id, token_hash, name, options, created_at)
            select p.club_id, gen_random_uuid(), p.id, sha256(convert_to('B' || lpad(i::text, 42, '0'), 'UTF8')), 'phone', 'spm', now()
            from generate_series(1, {Links}) i
            join (select club_id, id, row_number() over () - 1 as n from club.players) p on p.n = i % {Squads * PlayersPerSquad};
            alter table club.links enable trigger tell_of_change;
            """);
        await RunAsync("vacuum analyze club.links");
        await RunAsync("analyze");

        async Task RunAsync(string sql)
        {
            await using var command = new NpgsqlCommand(sql, connection);
            await command.ExecuteNonQueryAsync();
        }
    }

    /// <summary>A year of entries, of about the length that real ones have.</summary>
    private static FeedBody Feed()
    {
        var text = new StringBuilder("BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//Benchmark//EN\r\n");
        for (var i = 0; i < Events; i++)
        {
            var day = new LocalDate(2026, 3, 1).PlusDays(i);
            text.Append(CultureInfo.InvariantCulture, $"BEGIN:VEVENT\r\nUID:{NamedId.From("event", i.ToString(CultureInfo.InvariantCulture))}\r\nDTSTAMP:20260301T120000Z\r\nDTSTART:{day:yyyyMMdd}T183000Z\r\nDTEND:{day:yyyyMMdd}T193000Z\r\n")
                .Append(CultureInfo.InvariantCulture, $"SUMMARY:Session {i % 17}\r\nDESCRIPTION:Warm-up {5 + (i % 7)} min\\nRuns {i % 11} x {10 + (i % 13)} m\\nCool-down {5 + (i % 5)} min\r\nSEQUENCE:{i % 3}\r\nEND:VEVENT\r\n");
        }

        var bytes = Encoding.UTF8.GetBytes(text.Append("END:VCALENDAR\r\n").ToString());
        return new FeedBody("0123456789abcdef0123456789abcdef", Packed(to => new GZipStream(to, CompressionLevel.SmallestSize)), Packed(to => new BrotliStream(to, CompressionLevel.SmallestSize)), bytes.Length, Instant.FromUtc(2026, 3, 1, 12, 0));

        byte[] Packed(Func<Stream, Stream> packer)
        {
            var packed = new MemoryStream();
            using (var stream = packer(packed))
            {
                stream.Write(bytes);
            }

            return packed.ToArray();
        }
    }

    /// <summary>What is measured is what it is taken for.</summary>
    private static async Task CheckAsync(string address, string etag, FeedBody body)
    {
        using var http = new HttpClient();
        http.DefaultRequestHeaders.AcceptEncoding.ParseAdd("gzip");
        var bytes = await http.GetByteArrayAsync(address + Address(1));
        http.DefaultRequestHeaders.IfNoneMatch.ParseAdd(etag);
        using var again = await http.GetAsync(address + Address(1));
        if (!bytes.SequenceEqual(body.Gzip) || again.StatusCode != HttpStatusCode.NotModified)
        {
            throw new InvalidOperationException($"The feed came with {bytes.Length} bytes and then {again.StatusCode}.");
        }
    }

    private static string Address(int link) => $"/calendar/B{link.ToString("D42", CultureInfo.InvariantCulture)}.ics";

    private static double Median(List<double> rates) => rates.Order().ElementAt(rates.Count / 2);

    private static void Say(string name, double value, string format) => Console.WriteLine($"{name}: {value.ToString(format, CultureInfo.InvariantCulture)}");

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex Token();

    private sealed class StandingClock : IClock
    {
        public Instant GetCurrentInstant() => Instant.FromUtc(2026, 3, 1, 12, 0);
    }
}
