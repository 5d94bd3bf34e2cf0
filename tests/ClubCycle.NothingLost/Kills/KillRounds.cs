using System.Diagnostics;
using System.Globalization;
using System.Net;
using ClubCycle.Data;
using ClubCycle.Data.Embedded;
using ClubCycle.TestKit;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Npgsql;

namespace ClubCycle.NothingLost.Kills;

/// <summary>
/// A durable PostgreSQL, a web node that renders and serves feeds, and an editing process whose coaches change sessions, matches and season dates and publish through the same
/// stores as the screens. One of the three is killed at a random moment and started again; then what is stored is compared with what was acknowledged.
/// </summary>
public sealed class KillRounds : IAsyncDisposable
{
    private const int Squads = 4;
    private static readonly TimeSpan LongestWait = TimeSpan.FromMinutes(3);

    private readonly TemporaryFolder _folder = TemporaryFolder.ReachableByAll("clubcycle-kills-");
    private readonly AfterUs _after;
    private readonly int _port = StartedProgram.FreePort();
    private readonly string _web;
    private readonly Random _random;
    private readonly int _seed;
    private readonly Journal _journal = new();
    private readonly RunningClock _clock = new(RunningClock.Start);
    private readonly HttpClient _http = new() { Timeout = TimeSpan.FromSeconds(5) };
    private readonly List<string> _wrong = [];
    private readonly List<TimeSpan> _databaseReady = [];
    private readonly List<TimeSpan> _webReady = [];
    private PrivatePostgres _server = null!;
    private StartedProgram? _node;
    private EditorProgram? _editor;
    private ServiceProvider? _services;
    private CoachedClub _club = null!;
    private int _editors;
    private int _editorsKilled;

    private KillRounds(string web, int seed)
    {
        (_web, _seed, _random) = (web, seed, new Random(seed));
        _after = AfterUs.EndServer(_folder.Path);
    }

    /// <param name="web">ClubCycle.Web.dll.</param>
    /// <param name="say">Told of each round.</param>
    /// <exception cref="DatabaseUnavailableException">There is no PostgreSQL here.</exception>
    public static async Task<KillFigures> RunAsync(string web, int rounds, int seed, Action<string> say)
    {
        await using var kills = new KillRounds(web, seed);
        await kills.SetUpAsync();
        for (var round = 0; round < rounds; round++)
        {
            // The short form has each kind of kill too.
            say($"round {round + 1}: {await kills.RoundAsync(round < 4 ? round : kills._random.Next(10))}, {kills._journal.Saved} saves, {kills._wrong.Count} wrong");
        }

        kills._wrong.AddRange(await kills._club.BehindAsync(kills._services!, kills._http, token => $"{kills._node!.Address}/calendar/{token}.ics"));
        return new KillFigures(kills._journal.Saved, kills._journal.Published, kills._wrong, kills._databaseReady, kills._webReady, kills._editorsKilled);
    }

    public async ValueTask DisposeAsync()
    {
        if (_editor is not null)
        {
            await _editor.DisposeAsync();
        }

        if (_node is not null)
        {
            await _node.DisposeAsync();
        }

        if (_services is not null)
        {
            await _services.DisposeAsync();
        }

        if (_server is not null)
        {
            await _server.DisposeAsync();
        }

        _http.Dispose();
        _after.Dispose();
        _folder.Dispose();
    }

    private async Task SetUpAsync()
    {
        await StartServerAsync();
        _services = new ServiceCollection().AddSingleton<IClock>(_clock).AddClubCycleData(LookingOn).BuildServiceProvider();
        await DataSetup.MigrateAsync(_server.OwnerConnectionString);
        _club = await CoachedClub.MakeAsync(_services, Squads, players: 1);
        await StartNodeAsync();
        await StartEditorAsync();
    }

    private async Task<string> RoundAsync(int kind)
    {
        _editor!.Go();
        await _editor.SaveAsync();
        await Task.Delay(_random.Next(500));
        var from = Stopwatch.GetTimestamp();
        string what;
        switch (kind)
        {
            case 0 or 4 or 5:
                what = "PostgreSQL killed";
                KillServer(alone: true);
                await DatabaseBackAsync(from);
                break;
            case 1 or 6:
                what = "PostgreSQL killed with all its processes";
                KillServer(alone: false);
                await DatabaseBackAsync(from);
                break;
            case 2 or 7 or 8:
                what = "web node killed";
                await _node!.DisposeAsync();
                await StartNodeAsync();
                await FeedAsync();
                _webReady.Add(Stopwatch.GetElapsedTime(from));
                break;
            default:
                what = "editor killed";
                await _editor.DisposeAsync();
                _editorsKilled++;
                await StartEditorAsync();
                _editor.Go();
                break;
        }

        await _editor.StopAsync(Squads);
        _wrong.AddRange(await _club.LostAsync(_services!, _journal));
        return what;
    }

    private async Task DatabaseBackAsync(long from)
    {
        // Gives the folder back; there is nothing left to stop.
        await _server.DisposeAsync();
        await StartServerAsync();
        await _editor!.SaveAsync();
        await FeedAsync();
        _databaseReady.Add(Stopwatch.GetElapsedTime(from));
    }

    private async Task StartServerAsync() => _server = await PrivatePostgres.StartAsync(new PrivatePostgresSettings { DataFolder = _folder.Path, Port = _port });

    private async Task StartNodeAsync() => _node = await StartedProgram.StartAsync(
        _web, address => ["serve", $"--urls={address}", "--Feeds:CacheMegabytes=0"], "/health/live", new Dictionary<string, string> { ["ConnectionStrings__ClubCycle"] = _server.ConnectionString });

    private async Task StartEditorAsync()
    {
        _editor = EditorProgram.Start(_server.ConnectionString, _club.Id, _clock.GetCurrentInstant(), unchecked((_seed * 1000) + _editors++) & 0xFFFFFF, _club.SquadIds, _journal);
        await _editor.StoppedAsync(Squads);
    }

    private void KillServer(bool alone)
    {
        var id = int.Parse(File.ReadLines(Path.Combine(_folder.Path, "postgres", "cluster", "postmaster.pid")).First(), CultureInfo.InvariantCulture);
        List<int> processes = [id, .. alone ? [] : ChildrenOf(id)];
        foreach (var process in processes)
        {
            try
            {
                using var one = Process.GetProcessById(process);
                one.Kill();
            }
            catch (ArgumentException)
            {
                // It ended by itself.
            }
        }
    }

    private static IEnumerable<int> ChildrenOf(int parent) =>
        File.ReadAllText($"/proc/{parent}/task/{parent}/children").Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(id => int.Parse(id, CultureInfo.InvariantCulture));

    /// <summary>Waits for a calendar from the database.</summary>
    private async Task FeedAsync()
    {
        for (var waited = Stopwatch.StartNew(); ; await Task.Delay(50))
        {
            try
            {
                using var answer = await _http.GetAsync($"{_node!.Address}/calendar/{_club.Squads[0].Tokens[0]}.ics");
                if (answer.StatusCode == HttpStatusCode.OK)
                {
                    return;
                }
            }
            catch (Exception away) when (away is HttpRequestException or TaskCanceledException && waited.Elapsed < LongestWait)
            {
                continue;
            }

            if (waited.Elapsed > LongestWait)
            {
                throw new InvalidOperationException("The feed did not come back.");
            }
        }
    }

    /// <summary>Whoever only looks on keeps no connection over a kill.</summary>
    private string LookingOn => new NpgsqlConnectionStringBuilder(_server.ConnectionString) { Pooling = false }.ConnectionString;
}
