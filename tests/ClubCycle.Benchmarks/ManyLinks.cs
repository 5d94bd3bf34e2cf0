using System.Globalization;
using System.IO.Compression;
using System.Text;
using ClubCycle.Data;
using ClubCycle.Data.Feeds;
using ClubCycle.Data.Squads;
using ClubCycle.Planning;
using ClubCycle.Planning.Squads;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Npgsql;

namespace ClubCycle.Benchmarks;

/// <summary>Links of many players with their feeds.</summary>
internal static class ManyLinks
{
    private const int Squads = 20;
    private const int PlayersPerSquad = 50;
    private const int Events = 200;
    private static readonly Guid By = NamedId.From("benchmark", "coach");

    public static string Address(int link) => $"/calendar/B{link.ToString("D42", CultureInfo.InvariantCulture)}.ics";

    /// <summary>Fills the only club of a database.</summary>
    public static async Task FillAsync(string connectionString, FeedBody body, int links)
    {
        await using var services = new ServiceCollection().AddLogging().AddSingleton<IClock>(new StandingClock()).AddClubCycleData(connectionString).BuildServiceProvider();
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
            from generate_series(1, {links}) i
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
    public static FeedBody Feed()
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

    private sealed class StandingClock : IClock
    {
        public Instant GetCurrentInstant() => Instant.FromUtc(2026, 3, 1, 12, 0);
    }
}
