using System.Collections.Concurrent;
using System.Security.Cryptography;
using ClubCycle.Data.Embedded;
using Xunit;

namespace ClubCycle.TestKit;

/// <summary>A fresh, migrated database on a real server, seen as the ordinary role that the app uses. One a test class.</summary>
public sealed class TestDatabase : IAsyncDisposable
{
    private static readonly ConcurrentDictionary<string, Lazy<Task<string>>> Templates = new();
    private static int made;

    private readonly TestServer? server;
    private readonly string name;
    private readonly string connectionString;
    private readonly string whyNone;

    private TestDatabase(TestServer? server, string name, string connectionString, string whyNone)
    {
        this.server = server;
        this.name = name;
        this.connectionString = connectionString;
        this.whyNone = whyNone;
    }

    /// <summary>Skips the running test when there is no server (with CI=true <see cref="CreateAsync"/> has failed already).</summary>
    public string ConnectionString
    {
        get
        {
            Assert.SkipWhen(server is null, whyNone);
            return connectionString;
        }
    }

    /// <param name="migrate">Brings an empty database, given by its connection string, up to date. Runs once a run and a <paramref name="schema"/>.</param>
    /// <param name="schema">Names what <paramref name="migrate"/> makes, when a run has more than one.</param>
    /// <exception cref="DatabaseUnavailableException">No server, and CI=true.</exception>
    public static async Task<TestDatabase> CreateAsync(Func<string, Task> migrate, string schema = "app")
    {
        TestServer server;
        try
        {
            server = await TestServer.GetAsync();
        }
        catch (DatabaseUnavailableException missing) when (Environment.GetEnvironmentVariable("CI") is not "true")
        {
            return new TestDatabase(null, "", "", missing.Message);
        }

        var template = await Templates.GetOrAdd(schema, _ => new Lazy<Task<string>>(() => MakeTemplateAsync(server, migrate))).Value;
        var name = NewName();
        return new TestDatabase(server, name, await server.CreateAsync(name, template), "");
    }

    public async ValueTask DisposeAsync()
    {
        if (server is not null)
            await server.DropAsync(name);
    }

    private static async Task<string> MakeTemplateAsync(TestServer server, Func<string, Task> migrate)
    {
        var name = NewName();
        var connectionString = await server.CreateAsync(name);
        // A template may have no connections while it is copied, and a pool would keep some.
        await migrate(new Npgsql.NpgsqlConnectionStringBuilder(connectionString) { Pooling = false }.ConnectionString);
        return name;
    }

    /// <summary>Random, because several test programs may share a server.</summary>
    private static string NewName() => $"clubcycle_test_{RandomNumberGenerator.GetHexString(8, lowercase: true)}_{Interlocked.Increment(ref made)}";
}
