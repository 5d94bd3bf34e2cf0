using ClubCycle.Data.Links;
using ClubCycle.Planning.Squads;
using NodaTime;
using Npgsql;
using NpgsqlTypes;

namespace ClubCycle.Data.Feeds;

/// <summary>What polls of feeds read and leave behind, on few connections of their own: however many calendars ask at once, screens find theirs free.</summary>
/// <remarks>They see every club, because a reader brings a secret and no club. One prepared statement a poll.</remarks>
public sealed class PollStore : IAsyncDisposable, IDisposable
{
    private const int Connections = 8;

    private const string LinkByToken =
        """
        select l.club_id, l.id, p.squad_id, l.revoked_at is null and not p.protected, l.last_poll_day, s.age_group, p.asks_health_questions, p.health_settled_on,
            f.variant, f.etag, f.last_modified, w.variant, w.etag, w.last_modified,
            (f.variant is null or w.variant is null) and exists (select from club.revisions r where r.club_id = p.club_id and r.squad_id = p.squad_id), l.options
        from club.links l
        join club.players p on p.club_id = l.club_id and p.id = l.player_id
        join club.squads s on s.club_id = p.club_id and s.id = p.squad_id
        left join club.feed_bodies f on f.club_id = p.club_id and f.squad_id = p.squad_id and f.variant = l.options
        left join club.feed_bodies w on w.club_id = p.club_id and w.squad_id = p.squad_id and w.variant = l.options || $2
        where l.token_hash = $1
        """;

    private readonly NpgsqlDataSource _database;

    public PollStore(string connectionString)
    {
        var builder = new NpgsqlDataSourceBuilder(new NpgsqlConnectionStringBuilder(connectionString)
        {
            ApplicationName = "ClubCycle feeds", Pooling = true, MaxPoolSize = Connections, MinPoolSize = 0, NoResetOnClose = true, MaxAutoPrepare = 10, AutoPrepareMinUsages = 2,
        }.ConnectionString);
        builder.UseNodaTime();
        builder.UsePhysicalConnectionInitializer(SeeEveryClub, SeeEveryClubAsync);
        _database = builder.Build();
    }

    /// <param name="hash">As <see cref="LinkToken"/> makes it of the secret.</param>
    /// <returns>Null when nobody has the secret.</returns>
    public async Task<PolledLink?> FindAsync(byte[] hash, CancellationToken cancel = default)
    {
        await using var command = _database.CreateCommand(LinkByToken);
        command.Parameters.Add(new NpgsqlParameter<byte[]> { TypedValue = hash });
        command.Parameters.Add(new NpgsqlParameter<string> { TypedValue = FeedVariant.Waiting, NpgsqlDbType = NpgsqlDbType.Text });
        await using var row = await command.ExecuteReaderAsync(cancel);
        return await row.ReadAsync(cancel)
            ? new PolledLink(
                row.GetGuid(0), row.GetGuid(1), row.GetGuid(2), row.GetBoolean(3), DayOf(row, 4),
                AgeGroup.Find(row.GetString(5)) ?? throw new InvalidOperationException($"Squad {row.GetGuid(2)} is stored with the unknown age group '{row.GetString(5)}'."),
                row.GetBoolean(6), DayOf(row, 7), TagOf(row, 8), TagOf(row, 11), row.GetBoolean(14), LinkStore.OptionsOf(row.GetString(15)).Language)
            : null;
    }

    public async Task<FeedBody?> BodyAsync(Guid clubId, Guid squadId, string variant, CancellationToken cancel = default)
    {
        await using var command = _database.CreateCommand("select etag, gzip, brotli, length, last_modified from club.feed_bodies where club_id = $1 and squad_id = $2 and variant = $3");
        command.Parameters.Add(new NpgsqlParameter<Guid> { TypedValue = clubId });
        command.Parameters.Add(new NpgsqlParameter<Guid> { TypedValue = squadId });
        command.Parameters.Add(new NpgsqlParameter<string> { TypedValue = variant });
        await using var row = await command.ExecuteReaderAsync(cancel);
        return await row.ReadAsync(cancel)
            ? new FeedBody(row.GetString(0), row.GetFieldValue<byte[]>(1), row.GetFieldValue<byte[]>(2), row.GetInt32(3), row.GetFieldValue<Instant>(4))
            : null;
    }

    /// <summary>Notes when links were last in use, in one statement; an earlier day than the stored one changes nothing.</summary>
    public async Task NoteAsync(IReadOnlyCollection<KeyValuePair<(Guid ClubId, Guid LinkId), LocalDate>> polls, CancellationToken cancel = default)
    {
        await using var command = _database.CreateCommand(
            """
            update club.links l set last_poll_day = polled.day from unnest($1, $2, $3) as polled (club, link, day)
            where l.club_id = polled.club and l.id = polled.link and (l.last_poll_day is null or l.last_poll_day < polled.day)
            """);
        command.Parameters.Add(new NpgsqlParameter<Guid[]> { TypedValue = [.. polls.Select(p => p.Key.ClubId)] });
        command.Parameters.Add(new NpgsqlParameter<Guid[]> { TypedValue = [.. polls.Select(p => p.Key.LinkId)] });
        command.Parameters.Add(new NpgsqlParameter<LocalDate[]> { TypedValue = [.. polls.Select(p => p.Value)] });
        await command.ExecuteNonQueryAsync(cancel);
    }

    public void Dispose() => _database.Dispose();

    public ValueTask DisposeAsync() => _database.DisposeAsync();

    private static LocalDate? DayOf(NpgsqlDataReader row, int column) => row.IsDBNull(column) ? null : row.GetFieldValue<LocalDate>(column);

    private static FeedTag? TagOf(NpgsqlDataReader row, int column) =>
        row.IsDBNull(column) ? null : new FeedTag(row.GetString(column), row.GetString(column + 1), row.GetFieldValue<Instant>(column + 2));

    private static NpgsqlCommand SettingOf(NpgsqlConnection connection) => new($"set app.club = '{ClubScope.Everywhere.Setting}'", connection);

    private static void SeeEveryClub(NpgsqlConnection connection)
    {
        using var setting = SettingOf(connection);
        setting.ExecuteNonQuery();
    }

    private static async Task SeeEveryClubAsync(NpgsqlConnection connection)
    {
        await using var setting = SettingOf(connection);
        await setting.ExecuteNonQueryAsync();
    }
}
