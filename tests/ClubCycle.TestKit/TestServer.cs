using System.Collections.Concurrent;
using System.Security.Cryptography;
using ClubCycle.Data.Embedded;
using Npgsql;
using Testcontainers.PostgreSql;

namespace ClubCycle.TestKit;

/// <summary>
/// The one PostgreSQL of a test run: the one named by CLUBCYCLE_TEST_DATABASE, else a private one in a temporary folder,
/// else a container. It goes when the run ends.
/// </summary>
internal sealed class TestServer
{
    public const string Setting = "CLUBCYCLE_TEST_DATABASE";

    private const string Prefix = "clubcycle-test-run-";

    private static readonly Lazy<Task<TestServer>> OfThisRun = new(StartAsync);

    private readonly string admin;
    private readonly string role;
    private readonly string password;
    private readonly ConcurrentDictionary<string, bool> databases = new();

    private TestServer(string admin, string role, string password)
    {
        this.admin = admin;
        this.role = role;
        this.password = password;
    }

    /// <exception cref="DatabaseUnavailableException">There is none to be had here.</exception>
    public static Task<TestServer> GetAsync() => OfThisRun.Value;

    /// <summary>A new database owned by the ordinary role; empty, or a copy of another.</summary>
    public async Task<string> CreateAsync(string name, string? template = null)
    {
        databases[name] = true;
        await RunAsync(admin, template is null ? $"create database {name} owner {role}" : $"create database {name} owner {role} template {template}");
        if (template is null)
            await RunAsync(new NpgsqlConnectionStringBuilder(admin) { Database = name }.ConnectionString, "create extension if not exists btree_gist");
        return new NpgsqlConnectionStringBuilder(admin) { Database = name, Username = role, Password = password, Pooling = true, MaxPoolSize = 20 }.ConnectionString;
    }

    public async Task DropAsync(string name)
    {
        await RunAsync(admin, $"drop database if exists {name} with (force)");
        databases.TryRemove(name, out _);
    }

    public static async Task RunAsync(string connectionString, string sql)
    {
        await using var connection = new NpgsqlConnection(connectionString);
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand(sql, connection);
        await command.ExecuteNonQueryAsync();
    }

    private static async Task<TestServer> StartAsync()
    {
        if (Environment.GetEnvironmentVariable(Setting) is { Length: > 0 } given)
            return await WithOrdinaryRoleAsync(given);
        try
        {
            return await StartPrivateAsync();
        }
        catch (DatabaseUnavailableException missing) when (missing.Problem.Code is "database.no-programs" or "database.programs-too-old")
        {
            return await StartContainerAsync(missing);
        }
    }

    private static async Task<TestServer> StartPrivateAsync()
    {
        await RemoveAbandonedAsync();
        var folder = TemporaryFolder.ReachableByAll(Prefix);
        var server = await PrivatePostgres.StartAsync(new PrivatePostgresSettings { DataFolder = folder.Path, Durable = false });
        AppDomain.CurrentDomain.ProcessExit += (_, _) =>
        {
            server.DisposeAsync().AsTask().GetAwaiter().GetResult();
            folder.Dispose();
        };
        var app = new NpgsqlConnectionStringBuilder(server.ConnectionString);
        return new TestServer(server.SuperuserConnectionString, app.Username!, app.Password!);
    }

    /// <summary>A run that was killed could not stop its server: the next run does.</summary>
    private static async Task RemoveAbandonedAsync()
    {
        foreach (var folder in Directory.EnumerateDirectories(Path.GetTempPath(), Prefix + "*"))
        {
            if (await PrivatePostgres.EndAbandonedAsync(folder))
                Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task<TestServer> StartContainerAsync(DatabaseUnavailableException missing)
    {
        PostgreSqlContainer container;
        try
        {
            container = new PostgreSqlBuilder("postgres:17").Build();
            await container.StartAsync();
        }
        catch (Exception noEngine) when (noEngine is not OutOfMemoryException)
        {
            throw new DatabaseUnavailableException(missing.Problem, noEngine);
        }

        // The container's own reaper removes it when this process is gone.
        return await WithOrdinaryRoleAsync(container.GetConnectionString());
    }

    /// <summary>Row-level security does not bind superusers: they only make databases, the tests work as a role of their own.</summary>
    private static async Task<TestServer> WithOrdinaryRoleAsync(string connectionString)
    {
        var admin = new NpgsqlConnectionStringBuilder(connectionString) { Pooling = false };
        await using var connection = new NpgsqlConnection(admin.ConnectionString);
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand("select rolsuper or rolbypassrls from pg_roles where rolname = current_user", connection);
        if (await command.ExecuteScalarAsync() is false)
            return LeavingNothing(new TestServer(admin.ConnectionString, admin.Username!, admin.Password ?? ""), []);

        var role = "clubcycle_test_" + RandomNumberGenerator.GetHexString(8, lowercase: true);
        var password = RandomNumberGenerator.GetHexString(32, lowercase: true);
        await RunAsync(admin.ConnectionString, $"create role {role} login nosuperuser nobypassrls password '{password}'");
        return LeavingNothing(new TestServer(admin.ConnectionString, role, password), [$"drop role {role}"]);
    }

    /// <summary>A server that others use too is left as it was found.</summary>
    private static TestServer LeavingNothing(TestServer server, IReadOnlyList<string> last)
    {
        AppDomain.CurrentDomain.ProcessExit += (_, _) =>
        {
            foreach (var sql in server.databases.Keys.Select(name => $"drop database if exists {name} with (force)").Concat(last))
                RunAsync(server.admin, sql).GetAwaiter().GetResult();
        };
        return server;
    }
}
