using System.Globalization;
using System.Net.Sockets;
using ClubCycle.Data;
using ClubCycle.Data.Fixtures;
using ClubCycle.Data.Plans;
using ClubCycle.Data.Seasons;
using ClubCycle.Planning;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Npgsql;

namespace ClubCycle.NothingLost.Kills;

/// <summary>
/// One coach a squad, who edits and publishes through the stores until the process is killed or its input ends. Says on its output what it is about to save and, once it is saved,
/// that it is; <c>stop</c> and <c>go</c> on its input hold it between two saves.
/// </summary>
internal sealed class Editor(IServiceProvider services, Guid club, int seed) : IDisposable
{
    public const string AddedSlot = "added.1";
    public static readonly LocalDate Week = new(2026, 4, 6);

    private static readonly TimeSpan WhileAway = TimeSpan.FromMilliseconds(50);

    private readonly Guid _by = NewId.Create();
    private readonly SemaphoreSlim _gate = new(0);
    private volatile bool _stopped = true;
    private int _written;

    public static async Task RunAsync(string connectionString, Guid club, Instant now, int seed, IReadOnlyList<Guid> squads)
    {
        await using var services = new ServiceCollection().AddSingleton<IClock>(new RunningClock(now)).AddClubCycleData(connectionString).BuildServiceProvider();
        using var editor = new Editor(services, club, seed);

        // Reading the console holds its thread.
        await Task.WhenAny([Task.Run(() => editor.ObeyAsync(squads.Count)), .. squads.Select((squad, i) => Task.Run(() => editor.EditAsync(squad, new Random(unchecked((seed * 31) + i)))))]).Unwrap();
    }

    public void Dispose() => _gate.Dispose();

    private static void Say(string line)
    {
        lock (Console.Out)
        {
            Console.Out.WriteLine(line);
            Console.Out.Flush();
        }
    }

    /// <summary>Ends when nobody is there to give orders.</summary>
    private async Task ObeyAsync(int squads)
    {
        while (await Console.In.ReadLineAsync() is { } order)
        {
            _stopped = order == "stop";
            if (!_stopped)
            {
                _gate.Release(squads);
            }
        }
    }

    private async Task EditAsync(Guid squad, Random random)
    {
        while (true)
        {
            if (_stopped)
            {
                Say($"stopped {squad} now");
                await _gate.WaitAsync();
                continue;
            }

            try
            {
                await (random.Next(10) switch
                {
                    < 4 => DecideAsync(squad, random),
                    < 6 => ChangeMatchAsync(squad, random),
                    6 => MoveSeasonAsync(squad, random),
                    _ => PublishAsync(squad),
                });
            }
            catch (Exception away) when (IsAway(away))
            {
                await Task.Delay(WhileAway);
            }
        }
    }

    private async Task DecideAsync(Guid squad, Random random)
    {
        using var scope = Scope();
        var pins = scope.ServiceProvider.GetRequiredService<PinStore>();
        var seen = (await pins.ListAsync(squad)).Single(p => p.Slot == AddedSlot);
        var pin = seen with { Date = Week.PlusDays(random.Next(7)), Start = new LocalTime(18, random.Next(60)), Note = Text() };
        await SaveAsync($"session/{squad}", pin.Note!, () => pins.WhoSaw(seen).EditAsync(squad, pin, _by));
    }

    private async Task ChangeMatchAsync(Guid squad, Random random)
    {
        using var scope = Scope();
        var fixtures = scope.ServiceProvider.GetRequiredService<FixtureStore>();
        var (seen, _) = (await fixtures.EnteredAsync(squad))[0];
        var text = Text();
        await SaveAsync($"match/{squad}", text, () => fixtures.SaveAsync(squad, seen.Id, seen.Fixture.Date, new LocalTime(14, random.Next(60)), text, null, seen.Version, _by));
    }

    private async Task MoveSeasonAsync(Guid squad, Random random)
    {
        using var scope = Scope();
        var seasons = scope.ServiceProvider.GetRequiredService<SeasonStore>();
        var seen = (await seasons.ListAsync()).Single(s => s.SquadId == squad);
        var stints = APlan.Stints(random.Next(5));
        await SaveAsync($"season/{squad}", Season(seen.Version + 1, stints[0].First), () => seasons.SaveAsync(seen.Id, APlan.Before, stints, seen.Version, _by));
    }

    public static string Season(int version, LocalDate first) => string.Create(CultureInfo.InvariantCulture, $"{version}:{first:uuuu-MM-dd}");

    /// <summary>A coach whose publishing got no answer presses the same button again.</summary>
    private async Task PublishAsync(Guid squad)
    {
        using var scope = Scope();
        var plans = scope.ServiceProvider.GetRequiredService<PlanStore>();
        var revisions = await scope.ServiceProvider.GetRequiredService<RevisionStore>().ListAsync(squad);
        var (expected, command) = (revisions.Count, NewId.Create());
        for (var tries = 0; ; tries++)
        {
            try
            {
                await SaveAsync($"revision/{squad}", $"{expected + 1}", async () => await plans.PublishAsync(squad, expected, command, _by, "") switch
                {
                    Result<Revision>.Ok(var revision) when revision.Number != expected + 1 => throw new InvalidOperationException($"Published as revision {revision.Number}, although {expected + 1} was asked for."),
                    var published => published,
                });
                return;
            }
            catch (Exception away) when (IsAway(away) && tries < 200)
            {
                await Task.Delay(WhileAway);
            }
        }
    }

    private static async Task SaveAsync<T>(string thing, string value, Func<Task<Result<T>>> save)
    {
        Say($"begin {thing} {value}");
        try
        {
            Say(await save() switch
            {
                Result<T>.Ok => $"saved {thing} {value}",
                Result<T>.Failed failed => $"refused {thing} {failed.First.Code}",
                var other => throw new InvalidOperationException($"Unknown result {other}"),
            });
        }
        catch (Exception away) when (IsAway(away))
        {
            Say($"failed {thing} {away.GetBaseException().Message.ReplaceLineEndings(" ")}");
            throw;
        }
    }

    private IServiceScope Scope()
    {
        var scope = services.CreateScope();
        scope.ServiceProvider.GetRequiredService<CurrentClub>().Use(club);
        return scope;
    }

    /// <summary>The server went away, is starting, or is stopping; anything else that it says is a defect.</summary>
    private static bool IsAway(Exception? trouble) => trouble switch
    {
        null => false,
        PostgresException said => said.SqlState.StartsWith("57P", StringComparison.Ordinal) || said.SqlState.StartsWith("08", StringComparison.Ordinal),
        NpgsqlException or SocketException or IOException or TimeoutException => true,
        _ => IsAway(trouble.InnerException),
    };

    private string Text() => string.Create(CultureInfo.InvariantCulture, $"n{seed}x{Interlocked.Increment(ref _written)}");
}
