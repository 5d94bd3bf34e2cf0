using System.Diagnostics;
using ClubCycle.Data;
using ClubCycle.Data.Embedded;
using ClubCycle.NothingLost.Kills;
using ClubCycle.TestKit;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Npgsql;

namespace ClubCycle.NothingLost.Upgrades;

/// <summary>
/// Two web nodes of an older version behind deploy/nginx.conf over one durable PostgreSQL. While calendars poll through the proxy and coaches edit and publish, the schema is migrated and
/// one node after the other is stopped and started in the newer version, as docs/operations.md says. Then what is stored is compared with what was acknowledged.
/// </summary>
internal sealed class UpgradeRun : IAsyncDisposable
{
    private const int Squads = 2;
    private const int PlayersEach = 25;
    private static readonly TimeSpan Quiet = TimeSpan.FromSeconds(4);
    private static readonly TimeSpan LongestWait = TimeSpan.FromMinutes(2);

    /// <summary>Longer than the proxy leaves a node alone that refused.</summary>
    private static readonly TimeSpan BeforeTheNext = TimeSpan.FromSeconds(6);

    private readonly TemporaryFolder _folder = TemporaryFolder.ReachableByAll("clubcycle-upgrade-");
    private readonly AfterUs _after;
    private readonly int[] _ports = [StartedProgram.FreePort(), StartedProgram.FreePort()];
    private readonly StartedProgram?[] _nodes = new StartedProgram?[2];
    private readonly HttpClient _http = new() { Timeout = TimeSpan.FromSeconds(5) };
    private readonly RunningClock _clock = new(RunningClock.Start);
    private readonly Journal _journal = new();
    private readonly Action<string> _say;
    private PrivatePostgres _server = null!;
    private CoachedClub _club = null!;

    private UpgradeRun(Action<string> say) => (_say, _after) = (say, AfterUs.EndServer(_folder.Path));

    /// <param name="say">Told of each step.</param>
    /// <exception cref="DatabaseUnavailableException">There is no PostgreSQL here.</exception>
    public static async Task<UpgradeFigures> RunAsync(Build older, Build newer, Action<string> say)
    {
        await using var run = new UpgradeRun(say);
        return await run.RunAsync(older, newer);
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var node in _nodes.OfType<StartedProgram>())
        {
            await node.DisposeAsync();
        }

        if (_server is not null)
        {
            await _server.DisposeAsync();
        }

        _http.Dispose();
        _after.Dispose();
        _folder.Dispose();
    }

    private async Task<UpgradeFigures> RunAsync(Build older, Build newer)
    {
        _server = await PrivatePostgres.StartAsync(new PrivatePostgresSettings { DataFolder = _folder.Path });
        await MigrateAsync(older);
        _club = CoachedClub.OfLines(await OutputAsync(older.Editor, Environment(_server.ConnectionString), "club", _server.ConnectionString, Now, $"{Squads}", $"{PlayersEach}"));
        await Task.WhenAll(StartNodeAsync(0, older), StartNodeAsync(1, older));
        await using var proxy = await ProxyProgram.StartAsync(_ports);
        await using var before = Editor(older, 1);
        await before.StoppedAsync(Squads);
        before.Go();
        using var calendar = new HttpClient(proxy.Handler());
        await FeedsAsync(calendar);

        var times = new Dictionary<string, TimeSpan>();
        await using var load = FeedLoad.Start(proxy, [.. _club.Squads.SelectMany(s => s.Tokens)], "before");
        await using var ready = ReadyWatch.Start([.. _nodes.Select(n => n!.Address)]);
        await Task.Delay(Quiet);

        await StepAsync("migrate", () => MigrateAsync(newer));
        await StepAsync("swap the first node", () => SwapAsync(0, newer));
        await using var after = Editor(newer, 2);
        await StepAsync("hand over to the newer editor", async () =>
        {
            await after.StoppedAsync(Squads);
            await before.StopAsync(Squads);
            await before.EndAsync();
            after.Go();
            await Task.Delay(BeforeTheNext);
        });
        await StepAsync("swap the second node", () => SwapAsync(1, newer));
        load.Step = "after";
        await Task.Delay(Quiet);
        var answers = await load.StopAsync();
        var none = await ready.StopAsync();
        await after.StopAsync(Squads);
        await after.EndAsync();

        await using var services = new ServiceCollection().AddSingleton<IClock>(_clock)
            .AddClubCycleData(new NpgsqlConnectionStringBuilder(_server.ConnectionString) { Pooling = false }.ConnectionString).BuildServiceProvider();
        List<string> lost = [.. await _club.LostAsync(services, _journal)];
        await StepAsync("render what waits", async () => lost.AddRange(await _club.BehindAsync(services, calendar, Calendar)));
        return new UpgradeFigures(_journal, answers, load.LeftOut, lost, times, none);

        async Task StepAsync(string step, Func<Task> act)
        {
            _say(step);
            load.Step = step;
            var from = Stopwatch.GetTimestamp();
            await act();
            times[step] = Stopwatch.GetElapsedTime(from);
        }
    }

    private string Now => FormattableString.Invariant($"{_clock.GetCurrentInstant().ToUnixTimeMilliseconds()}");

    private static string Calendar(string token) => $"https://{ProxyProgram.Name}/calendar/{token}.ics";

    private EditorProgram Editor(Build build, int seed) =>
        EditorProgram.Start(_server.ConnectionString, _club.Id, _clock.GetCurrentInstant(), seed, _club.SquadIds, _journal, build.Editor);

    private async Task MigrateAsync(Build build) => await OutputAsync(build.Web, Environment(_server.OwnerConnectionString), "migrate");

    /// <summary>Ends with SIGTERM, starts, and is ready.</summary>
    private async Task SwapAsync(int number, Build build)
    {
        var node = _nodes[number]!;
        if (await node.StopAsync() is not 0 and var code)
        {
            throw new InvalidOperationException($"Node {number + 1} ended with {code}.");
        }

        await node.DisposeAsync();
        await StartNodeAsync(number, build);
    }

    private async Task StartNodeAsync(int number, Build build)
    {
        var node = await StartedProgram.StartAsync(build.Web, address => ["serve", $"--urls={address}", "--Proxies:Trusted=127.0.0.1"], "/health/live", Environment(_server.ConnectionString), _ports[number]);
        _nodes[number] = node;
        for (var waited = Stopwatch.StartNew(); !await ReadyWatch.IsReadyAsync(_http, node.Address); await Task.Delay(200))
        {
            if (waited.Elapsed > LongestWait)
            {
                throw new InvalidOperationException($"Node {number + 1} lives and does not get ready.");
            }
        }
    }

    private static Dictionary<string, string> Environment(string database) => new() { ["ConnectionStrings__ClubCycle"] = database };

    /// <summary>Waits until each squad was published for the first time and its feed is rendered.</summary>
    private async Task FeedsAsync(HttpClient calendar)
    {
        for (var waited = Stopwatch.StartNew(); ; await Task.Delay(200))
        {
            var rendered = await Task.WhenAll(_club.Squads.Select(async squad =>
            {
                using var answer = await calendar.GetAsync(Calendar(squad.Tokens[0]));
                return (await answer.Content.ReadAsStringAsync()).Contains("BEGIN:VEVENT", StringComparison.Ordinal);
            }));
            if (!rendered.Contains(false))
            {
                return;
            }

            if (waited.Elapsed > LongestWait)
            {
                throw new InvalidOperationException("The feeds did not come.");
            }
        }
    }

    /// <summary>What a command prints; throws when it fails.</summary>
    private static async Task<string> OutputAsync(string dll, IReadOnlyDictionary<string, string> environment, params IReadOnlyList<string> arguments)
    {
        var start = new ProcessStartInfo("dotnet", [dll, .. arguments]) { RedirectStandardOutput = true };
        foreach (var (name, value) in environment)
        {
            start.Environment[name] = value;
        }

        using var process = Process.Start(start)!;
        var output = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        return process.ExitCode == 0 ? output : throw new InvalidOperationException($"{Path.GetFileName(dll)} {arguments[0]} ended with {process.ExitCode}; its error is above.");
    }
}
