using ClubCycle.TestKit;
using Npgsql;

namespace ClubCycle.Data.Tests.Embedded;

public sealed class TestDatabaseTests
{
    [Fact]
    public async Task Each_database_starts_migrated_and_knows_nothing_of_the_others()
    {
        var migrations = 0;
        await using var one = await TestDatabase.CreateAsync(Migrate, "test-database-tests");
        await using var other = await TestDatabase.CreateAsync(Migrate, "test-database-tests");

        await RunAsync(one, "insert into notes values ('mine')");

        Assert.Equal(1L, await RunAsync(one, "select count(*) from notes"));
        Assert.Equal(0L, await RunAsync(other, "select count(*) from notes"));
        Assert.Equal(1, migrations);
        Assert.Equal(false, await RunAsync(one, "select rolsuper or rolbypassrls from pg_roles where rolname = current_user"));

        Task Migrate(string connectionString)
        {
            migrations++;
            return RunAsync(connectionString, "create table notes (word text)");
        }
    }

    private static Task<object?> RunAsync(TestDatabase database, string sql) => RunAsync(database.ConnectionString, sql);

    private static async Task<object?> RunAsync(string connectionString, string sql)
    {
        await using var connection = new NpgsqlConnection(connectionString);
        await connection.OpenAsync(TestContext.Current.CancellationToken);
        await using var command = new NpgsqlCommand(sql, connection);
        return await command.ExecuteScalarAsync(TestContext.Current.CancellationToken);
    }
}
