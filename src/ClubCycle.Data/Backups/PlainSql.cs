using Npgsql;

namespace ClubCycle.Data.Backups;

/// <summary>Statements about the database as a whole, which no model knows.</summary>
internal static class PlainSql
{
    /// <summary>Opens a connection of its own that sees the rows of every club.</summary>
    public static async Task<NpgsqlConnection> OpenEverywhereAsync(string connectionString, CancellationToken cancel)
    {
        var connection = new NpgsqlConnection(new NpgsqlConnectionStringBuilder(connectionString) { Pooling = false, ApplicationName = "ClubCycle backup", CommandTimeout = 0 }.ConnectionString);
        await connection.OpenAsync(cancel);
        await connection.RunAsync("select set_config('app.club', '*', false)", cancel);
        return connection;
    }

    public static async Task<int> RunAsync(this NpgsqlConnection connection, string sql, CancellationToken cancel, params object[] values)
    {
        await using var command = Command(connection, sql, values);
        return await command.ExecuteNonQueryAsync(cancel);
    }

    public static async Task<T?> OneAsync<T>(this NpgsqlConnection connection, string sql, CancellationToken cancel, params object[] values)
    {
        await using var command = Command(connection, sql, values);
        return await command.ExecuteScalarAsync(cancel) is T value ? value : default;
    }

    public static async Task<IReadOnlyList<T>> ListAsync<T>(this NpgsqlConnection connection, string sql, Func<NpgsqlDataReader, T> read, CancellationToken cancel, params object[] values)
    {
        List<T> list = [];
        await using var command = Command(connection, sql, values);
        await using var rows = await command.ExecuteReaderAsync(cancel);
        while (await rows.ReadAsync(cancel))
        {
            list.Add(read(rows));
        }

        return list;
    }

    /// <summary>The last migration; null for a database without our schema.</summary>
    public static async Task<string?> SchemaAsync(this NpgsqlConnection connection, CancellationToken cancel) =>
        await connection.OneAsync<bool>("select to_regclass('public.\"__EFMigrationsHistory\"') is not null", cancel)
            ? await connection.OneAsync<string>("select max(migration_id) from public.\"__EFMigrationsHistory\"", cancel)
            : null;

    /// <summary>How many rows each of our tables holds.</summary>
    public static async Task<IReadOnlyDictionary<string, long>> CountsAsync(this NpgsqlConnection connection, CancellationToken cancel)
    {
        var tables = await connection.ListAsync(
            "select format('%I.%I', schemaname, tablename) from pg_tables where schemaname in ('club', 'accounts') or (schemaname, tablename) = ('public', '__EFMigrationsHistory')", row => row.GetString(0), cancel);
        SortedDictionary<string, long> counts = new(StringComparer.Ordinal);
        foreach (var table in tables)
        {
            counts[table] = await connection.OneAsync<long>($"select count(*) from {table}", cancel);
        }

        return counts;
    }

    private static NpgsqlCommand Command(NpgsqlConnection connection, string sql, object[] values)
    {
        var command = new NpgsqlCommand(sql, connection);
        foreach (var value in values)
        {
            command.Parameters.Add(new NpgsqlParameter { Value = value });
        }

        return command;
    }
}
