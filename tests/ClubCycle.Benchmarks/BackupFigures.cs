using System.Diagnostics;
using System.Globalization;
using ClubCycle.Data;
using ClubCycle.Data.Backups;
using ClubCycle.Data.Clubs;
using ClubCycle.Data.Embedded;
using ClubCycle.Data.Plans;
using ClubCycle.Data.Seasons;
using ClubCycle.Data.Squads;
using ClubCycle.Planning;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Npgsql;

namespace ClubCycle.Benchmarks;

/// <summary>A database of 500 MB, most of it published plans, is backed up and restored into an empty one with all checks.</summary>
internal static class BackupFigures
{
    private const long Bytes = 500_000_000;

    /// <summary>Squads and their revisions as one year of a very large club has them; the sizes are PostgreSQL's own, after its compression.</summary>
    private const int SquadsAtOnce = 50;
    private static readonly Guid By = NamedId.From("benchmark", "coach");

    public static async Task PrintAsync()
    {
        await using var server = await OwnServer.StartAsync();
        var clock = new StandingClock();
        await FillAsync(server.OwnerConnectionString, clock);
        var target = new NpgsqlConnectionStringBuilder(server.OwnerConnectionString) { Database = "restored" }.ConnectionString;
        await RunAsync(server.SuperuserConnectionString, $"create database restored owner {PrivatePostgres.Owner}");

        var from = Stopwatch.GetTimestamp();
        var made = (await new BackupStore(clock).MakeAsync(server.BackupConnectionString, Path.Combine(server.Folder, "backups"))).OrThrow();
        Say("backup of the database s", Stopwatch.GetElapsedTime(from).TotalSeconds, "0.0");
        Say("backup, database MB", await SizeAsync(server.ConnectionString) / 1e6, "0");
        Say("backup, file MB", made.Bytes / 1e6, "0");
        Say("backup, rows", made.Manifest.Rows.Values.Sum(), "0");

        from = Stopwatch.GetTimestamp();
        var restored = (await new RestoreStore(clock).RestoreAsync(target, made.Path, replace: false)).OrThrow();
        Say("restore with every check s", Stopwatch.GetElapsedTime(from).TotalSeconds, "0.0");
        Say("restore, published plans read", restored.Plans, "0");
    }

    private static async Task FillAsync(string connectionString, IClock clock)
    {
        await using var services = new ServiceCollection().AddSingleton(clock).AddLogging().AddClubCycleData(connectionString).BuildServiceProvider();
        await using var scope = services.CreateAsyncScope();
        var id = (await scope.ServiceProvider.GetRequiredService<ClubStore>().CreateAsync("Benchmark club", "Europe/Lisbon", IsoDayOfWeek.Monday)).OrThrow();
        scope.ServiceProvider.GetRequiredService<CurrentClub>().Use(id);
        (await scope.ServiceProvider.GetRequiredService<SeasonStore>().AddAsync(null, null, [new Stint(new LocalDate(2026, 10, 1), new LocalDate(2026, 11, 30)), new Stint(new LocalDate(2027, 1, 1), new LocalDate(2027, 2, 28))], By)).OrThrow();
        var squad = (await scope.ServiceProvider.GetRequiredService<SquadStore>().AddAsync(
            new Squad(Guid.Empty, "Squad", AgeGroup.Senior, TrainingAge.Some, [new Practice(IsoDayOfWeek.Tuesday, new LocalTime(18, 0), 75, Practice.UsualPhases)], IsoDayOfWeek.Saturday, new LocalTime(12, 0), []), null, By)).OrThrow();
        (await scope.ServiceProvider.GetRequiredService<PlanStore>().PublishAsync(squad, 0, NewId.Create(), By, "")).OrThrow();

        // The same plan again and again, as revisions of squads that are copies of the first.
        while (await SizeAsync(connectionString) < Bytes)
        {
            await RunAsync(connectionString,
                $"""
                select set_config('app.club', '*', false);
                create temp table copies as select gen_random_uuid() as id, number from generate_series(1, {SquadsAtOnce}) number;
                create temp table squad_copy as select * from club.squads where id = '{squad}';
                create temp table copied as select (jsonb_populate_record(null::club.squads, to_jsonb(s) || jsonb_build_object('id', c.id, 'name', left(c.id::text, 30)))).* from squad_copy s, copies c;
                insert into club.squads select * from copied;
                insert into club.revisions select (jsonb_populate_record(null::club.revisions, to_jsonb(r) || jsonb_build_object('squad_id', c.id, 'number', n, 'command_id', gen_random_uuid()))).*
                    from club.revisions r, copies c, generate_series(1, 4) n where r.squad_id = '{squad}';
                insert into club.sessions select (jsonb_populate_record(null::club.sessions, to_jsonb(s) || jsonb_build_object('squad_id', c.id))).* from club.sessions s, copies c where s.squad_id = '{squad}';
                drop table copies, squad_copy, copied;
                """);
        }
    }

    private static async Task RunAsync(string connectionString, string sql)
    {
        await using var connection = new NpgsqlConnection(connectionString);
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand(sql, connection) { CommandTimeout = 0 };
        await command.ExecuteNonQueryAsync();
    }

    private static async Task<long> SizeAsync(string connectionString)
    {
        await using var connection = new NpgsqlConnection(connectionString);
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand("select pg_database_size(current_database())", connection);
        return (long)(await command.ExecuteScalarAsync())!;
    }

    private static void Say(string name, double value, string format) => Console.WriteLine($"{name}: {value.ToString(format, CultureInfo.InvariantCulture)}");

    private sealed class StandingClock : IClock
    {
        public Instant GetCurrentInstant() => Instant.FromUtc(2026, 3, 1, 12, 0);
    }
}
