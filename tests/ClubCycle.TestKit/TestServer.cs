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
    private readonly Role owner;
    private readonly Role app;
    private readonly Role backup;
    private readonly ConcurrentDictionary<string, bool> databases = new();

    private TestServer(string admin, Role owner, Role app, Role backup)
    {
        this.admin = admin;
        this.owner = owner;
        this.app = app;
        this.backup = backup;
    }

    /// <exception cref="DatabaseUnavailableException">There is none to be had here.</exception>
    public static Task<TestServer> GetAsync() => OfThisRun.Value;

    /// <summary>A new database, for the ordinary role that owns it, for the app's and for that of backups; empty, or a copy of another.</summary>
    public async Task<(string Owner, string App, string Backup)> CreateAsync(string name, string? template = null)
    {
        databases[name] = true;
        await RunAsync(admin, template is null ? $"create database {name} owner {owner.Name}" : $"create database {name} owner {owner.Name} template {template}");
        if (template is null)
            await RunAsync(new NpgsqlConnectionStringBuilder(admin) { Database = name }.ConnectionString, "create extension if not exists btree_gist");
        if (app != owner)
        {
            await AppRole.GrantAsync(AddressOf(owner, pooling: false), app.Name);
            await BackupRole.GrantAsync(AddressOf(owner, pooling: false), backup.Name);
        }

        return (AddressOf(owner, pooling: false), AddressOf(app, pooling: true), AddressOf(backup, pooling: false));

        string AddressOf(Role role, bool pooling) =>
            new NpgsqlConnectionStringBuilder(admin) { Database = name, Username = role.Name, Password = role.Password, Pooling = pooling, MaxPoolSize = 20 }.ConnectionString;
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
            return await WithOrdinaryRolesAsync(given);
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
        return new TestServer(server.SuperuserConnectionString, Role.Of(server.OwnerConnectionString), Role.Of(server.ConnectionString), Role.Of(server.BackupConnectionString));
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
        return await WithOrdinaryRolesAsync(container.GetConnectionString());
    }

    /// <summary>Row-level security does not bind superusers: they only make databases, the tests work as roles of their own. Whoever may make none is owner, app and backup in one.</summary>
    private static async Task<TestServer> WithOrdinaryRolesAsync(string connectionString)
    {
        var admin = new NpgsqlConnectionStringBuilder(connectionString) { Pooling = false };
        await using var connection = new NpgsqlConnection(admin.ConnectionString);
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand("select rolsuper or rolbypassrls from pg_roles where rolname = current_user", connection);
        if (await command.ExecuteScalarAsync() is false)
            return LeavingNothing(new TestServer(admin.ConnectionString, Role.Of(connectionString), Role.Of(connectionString), Role.Of(connectionString)), []);

        var (owner, app, backup) = (Role.New(), Role.New(), Role.New());
        foreach (var role in new[] { owner, app, backup })
            await RunAsync(admin.ConnectionString, $"create role {role.Name} login nosuperuser nobypassrls password '{role.Password}'");
        return LeavingNothing(new TestServer(admin.ConnectionString, owner, app, backup), [$"drop role {owner.Name}, {app.Name}, {backup.Name}"]);
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

    private sealed record Role(string Name, string Password)
    {
        public static Role New() => new("clubcycle_test_" + RandomNumberGenerator.GetHexString(8, lowercase: true), RandomNumberGenerator.GetHexString(32, lowercase: true));

        public static Role Of(string connectionString)
        {
            var address = new NpgsqlConnectionStringBuilder(connectionString);
            return new Role(address.Username!, address.Password ?? "");
        }
    }
}
