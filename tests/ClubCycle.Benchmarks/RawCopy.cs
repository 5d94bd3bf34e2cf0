using NodaTime;
using Npgsql;

namespace ClubCycle.Benchmarks;

/// <summary>The rows of one publishing, and the fastest way PostgreSQL knows to take them: binary COPY into tables without row security, in one transaction.</summary>
internal sealed class RawCopy : IAsyncDisposable
{
    private static readonly string[] Tables = ["revisions", "sessions", "outbox"];

    private readonly NpgsqlDataSource _source;
    private readonly NpgsqlConnection _connection;
    private readonly Dictionary<string, List<object?[]>> _rows = [];
    private readonly Dictionary<string, string[]> _types = [];

    private RawCopy(NpgsqlDataSource source, NpgsqlConnection connection) => (_source, _connection) = (source, connection);

    public int Sessions => _rows["sessions"].Count;

    public double Megabytes => _rows["revisions"].SelectMany(r => r).OfType<string>().Sum(text => (double)text.Length) / 1e6;

    /// <summary>Makes the tables: columns, defaults, checks, primary and foreign keys and indexes are those of the club's tables.</summary>
    public static async Task<RawCopy> OpenAsync(string connectionString, Guid club)
    {
        var builder = new NpgsqlDataSourceBuilder(connectionString);
        builder.UseNodaTime();
        var source = builder.Build();
        var raw = new RawCopy(source, await source.OpenConnectionAsync());
        await raw.RunAsync($"select set_config('app.club', '{club}', false); create schema raw");
        foreach (var table in Tables)
        {
            await raw.RunAsync(
                $"""
                create table raw.{table} (like club.{table} including all);
                do $$
                declare key text;
                begin
                    for key in select pg_get_constraintdef(oid) from pg_constraint where conrelid = 'club.{table}'::regclass and contype = 'f' loop
                        execute 'alter table raw.{table} add ' || key;
                    end loop;
                end $$
                """);
        }

        return raw;
    }

    /// <summary>Reads what was written at that moment, and empties the plain tables for it.</summary>
    public async Task TakeAsync(Instant at)
    {
        foreach (var (table, when) in Tables.Zip(["published_at", "changed_at", "created_at"]))
        {
            await using var command = new NpgsqlCommand($"select * from club.{table} where {when} = $1", _connection) { Parameters = { new() { Value = at } } };
            await using var reader = await command.ExecuteReaderAsync();
            _types[table] = [.. Enumerable.Range(0, reader.FieldCount).Select(reader.GetDataTypeName)];
            List<object?[]> rows = [];
            while (await reader.ReadAsync())
            {
                rows.Add([.. Enumerable.Range(0, reader.FieldCount).Select(i => reader.IsDBNull(i) ? null : reader.GetValue(i))]);
            }

            _rows[table] = rows;
        }

        await RunAsync($"truncate {string.Join(", ", Tables.Select(t => $"raw.{t}"))}");
    }

    public async Task CopyAsync()
    {
        await using var transaction = await _connection.BeginTransactionAsync();
        foreach (var table in Tables)
        {
            await using var copy = await _connection.BeginBinaryImportAsync($"copy raw.{table} from stdin (format binary)");
            foreach (var row in _rows[table])
            {
                await copy.StartRowAsync();
                foreach (var (value, type) in row.Zip(_types[table]))
                {
                    await (value is null ? copy.WriteNullAsync() : copy.WriteAsync(value, type));
                }
            }

            await copy.CompleteAsync();
        }

        await transaction.CommitAsync();
    }

    public async ValueTask DisposeAsync()
    {
        await _connection.DisposeAsync();
        await _source.DisposeAsync();
    }

    private async Task RunAsync(string sql)
    {
        await using var command = new NpgsqlCommand(sql, _connection);
        await command.ExecuteNonQueryAsync();
    }
}
