using Npgsql;

namespace ClubCycle.Data.Tests.Schema;

/// <summary>Read from PostgreSQL's own catalogue, so that a hand-written migration is held to it as well.</summary>
public sealed class ClubSchemaTests(ClubData data) : IClassFixture<ClubData>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Every_primary_key_unique_index_exclusion_and_foreign_key_of_club_data_begins_with_the_club()
    {
        var others = await ReadAsync(
            """
            select format('%s on %s: %s', i.indexrelid::regclass, i.indrelid::regclass, a.attname)
            from pg_index i join pg_class t on t.oid = i.indrelid join pg_namespace n on n.oid = t.relnamespace
            left join pg_attribute a on a.attrelid = t.oid and a.attnum = i.indkey[0]
            where n.nspname = 'club' and (i.indisunique or i.indisprimary or i.indisexclusion) and a.attname is distinct from 'club_id'
            union all
            select format('%s on %s: %s -> %s', c.conname, c.conrelid::regclass, a.attname, f.attname)
            from pg_constraint c join pg_class t on t.oid = c.conrelid join pg_namespace n on n.oid = t.relnamespace
            join pg_attribute a on a.attrelid = c.conrelid and a.attnum = c.conkey[1]
            join pg_attribute f on f.attrelid = c.confrelid and f.attnum = c.confkey[1]
            where n.nspname = 'club' and c.contype = 'f' and (a.attname <> 'club_id' or f.attname <> 'club_id')
            """);

        Assert.Empty(others);
    }

    [Fact]
    public async Task Every_table_of_club_data_forces_row_security_with_the_one_policy()
    {
        var tables = await ReadAsync("select c.relname from pg_class c join pg_namespace n on n.oid = c.relnamespace where n.nspname = 'club' and c.relkind in ('r', 'p')");
        var fenced = await ReadAsync(
            """
            select c.relname from pg_class c join pg_namespace n on n.oid = c.relnamespace join pg_policy p on p.polrelid = c.oid
            where n.nspname = 'club' and c.relrowsecurity and c.relforcerowsecurity and p.polcmd = '*' and p.polpermissive
            and pg_get_expr(p.polqual, p.polrelid) like '%club_id = %app.club%'
            """);

        Assert.Contains("players", tables);
        Assert.Equal(tables.Order(), fenced.Order());
    }

    [Fact]
    public async Task Every_table_that_screens_show_tells_of_its_changes()
    {
        // Written together with one that tells, by the worker, or shown on no screen that follows.
        string[] silent = ["audit", "edits", "erasures", "feed_bodies", "outbox", "sessions", "test_results"];
        var tables = await ReadAsync("select c.relname from pg_class c join pg_namespace n on n.oid = c.relnamespace where n.nspname = 'club' and c.relkind in ('r', 'p')");

        // tgtype 29: each row, after insert, update and delete.
        var telling = await ReadAsync(
            """
            select c.relname from pg_trigger t join pg_class c on c.oid = t.tgrelid join pg_namespace n on n.oid = c.relnamespace join pg_proc p on p.oid = t.tgfoid
            where n.nspname = 'club' and p.proname = 'tell_of_change' and t.tgtype = 29 and t.tgenabled = 'O'
            """);

        Assert.Equal(tables.Except(silent).Order(), telling.Order());
    }

    [Fact]
    public async Task A_table_with_a_squad_tells_which()
    {
        // Of a stint the season's squad would be known only by asking; the whole club is told.
        var unnamed = await ReadAsync(
            """
            select c.relname from pg_trigger t join pg_class c on c.oid = t.tgrelid join pg_proc p on p.oid = t.tgfoid
            where p.proname = 'tell_of_change' and t.tgnargs = 0 and exists (select from pg_attribute a where a.attrelid = c.oid and a.attname = 'squad_id' and not a.attisdropped)
            """);

        Assert.Empty(unnamed);
    }

    [Fact]
    public async Task The_role_of_the_app_is_bound_by_row_security() =>
        Assert.Equal(["no"], await ReadAsync("select case when rolsuper or rolbypassrls then 'yes' else 'no' end from pg_roles where rolname = current_user"));

    [Fact]
    public async Task The_model_holds_nothing_that_the_migrations_do_not_make()
    {
        await using var db = await data.Contexts.CreateDbContextAsync(Cancel);

        Assert.False(Microsoft.EntityFrameworkCore.RelationalDatabaseFacadeExtensions.HasPendingModelChanges(db.Database));
    }

    private async Task<List<string>> ReadAsync(string sql)
    {
        await using var connection = new NpgsqlConnection(data.ConnectionString);
        await connection.OpenAsync(Cancel);
        await using var command = new NpgsqlCommand(sql, connection);
        await using var reader = await command.ExecuteReaderAsync(Cancel);
        List<string> rows = [];
        while (await reader.ReadAsync(Cancel))
        {
            rows.Add(reader.GetString(0));
        }

        return rows;
    }
}
