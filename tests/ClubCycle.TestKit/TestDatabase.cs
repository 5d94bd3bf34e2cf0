using System.Collections.Concurrent;
using System.Security.Cryptography;
using ClubCycle.Data.Embedded;
using Xunit;

namespace ClubCycle.TestKit;

/// <summary>A fresh, migrated database on a real server, seen as the role that the app uses, which owns nothing in it. One a test class.</summary>
public sealed class TestDatabase : IAsyncDisposable
{
    private static readonly ConcurrentDictionary<string, Lazy<Task<string>>> Templates = new();
    private static int made;

    private readonly TestServer? server;
    private readonly string name;
    private readonly string owner;
    private readonly string app;
    private readonly string backup;
    private readonly string whyNone;

    private TestDatabase(TestServer? server, string name, string owner, string app, string backup, string whyNone)
    {
        this.server = server;
        this.name = name;
        this.owner = owner;
        this.app = app;
        this.backup = backup;
        this.whyNone = whyNone;
    }

    /// <summary>Skips the running test when there is no server (with CI=true <see cref="CreateAsync"/> has failed already).</summary>
    public string ConnectionString => UnlessNone(app);

    /// <summary>Of the role that owns the tables, for what is no work of the app's. Skips as well.</summary>
    public string OwnerConnectionString => UnlessNone(owner);

    /// <summary>Of the role that reads. Skips as well.</summary>
    public string BackupConnectionString => UnlessNone(backup);

    /// <param name="migrate">Brings an empty database, given by its owner's connection string, up to date. Runs once a run and a <paramref name="schema"/>.</param>
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
            return new TestDatabase(null, "", "", "", "", missing.Message);
        }

        var template = await Templates.GetOrAdd(schema, _ => new Lazy<Task<string>>(() => MakeTemplateAsync(server, migrate))).Value;
        var name = NewName();
        var (owner, app, backup) = await server.CreateAsync(name, template);
        return new TestDatabase(server, name, owner, app, backup, "");
    }

    public async ValueTask DisposeAsync()
    {
        if (server is not null)
            await server.DropAsync(name);
    }

    private static async Task<string> MakeTemplateAsync(TestServer server, Func<string, Task> migrate)
    {
        var name = NewName();
        // A template may have no connections while it is copied: the owner's are not pooled.
        await migrate((await server.CreateAsync(name)).Owner);
        return name;
    }

    private string UnlessNone(string connectionString)
    {
        Assert.SkipWhen(server is null, whyNone);
        return connectionString;
    }

    /// <summary>Random, because several test programs may share a server.</summary>
    private static string NewName() => $"clubcycle_test_{RandomNumberGenerator.GetHexString(8, lowercase: true)}_{Interlocked.Increment(ref made)}";
}
