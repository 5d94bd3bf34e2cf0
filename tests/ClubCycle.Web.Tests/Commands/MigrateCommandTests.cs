using System.Net;
using ClubCycle.Data;
using ClubCycle.Data.Backups;
using ClubCycle.Data.Clubs;
using ClubCycle.Data.Embedded;
using ClubCycle.TestKit;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Npgsql;

namespace ClubCycle.Web.Tests.Commands;

/// <summary>A database of one's own, with a role that owns it, one for the app and one for backups, or with one for all.</summary>
public sealed class MigrateCommandTests : IAsyncLifetime
{
    private readonly TemporaryFolder _folder = TemporaryFolder.ReachableByAll();
    private PrivatePostgres _server = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    /// <summary>A database of the owner's of which the app knows nothing yet.</summary>
    public async ValueTask InitializeAsync()
    {
        try
        {
            _server = await PrivatePostgres.StartAsync(new PrivatePostgresSettings { DataFolder = _folder.Path, Durable = false }, Cancel);
        }
        catch (DatabaseUnavailableException missing) when (missing.Problem.Code is "database.no-programs" or "database.programs-too-old" && Environment.GetEnvironmentVariable("CI") is not "true")
        {
            Assert.Skip(missing.Message);
        }

        await RunAsync(_server.SuperuserConnectionString, $"create database ours owner {PrivatePostgres.Owner}");
        await RunAsync(Ours(_server.SuperuserConnectionString), "create extension btree_gist");
    }

    public async ValueTask DisposeAsync()
    {
        if (_server is not null)
        {
            await _server.DisposeAsync();
        }

        _folder.Dispose();
    }

    [Fact]
    public async Task What_the_owner_migrates_and_restores_the_app_serves_and_a_third_role_backs_up()
    {
        var migrated = await CommandAsync("migrate");
        Assert.True(migrated.ExitCode == 0, migrated.Errors);
        await MakeClubAsync();
        var backups = Path.Combine(_folder.Path, "backups");
        var made = await CommandRun.OfAsync(["backup", backups], environment: new Dictionary<string, string> { ["ConnectionStrings__ClubCycle"] = Backup });
        Assert.True(made.ExitCode == 0, made.Errors);
        var restored = await CommandAsync("restore", Assert.Single(Directory.GetDirectories(backups)), "--replace");
        Assert.True(restored.ExitCode == 0, restored.Errors);
        var again = await CommandRun.OfAsync(["backup", backups], environment: new Dictionary<string, string> { ["ConnectionStrings__ClubCycle"] = Backup });
        Assert.True(again.ExitCode == 0, again.Errors);

        await using var node = await RunningNode.StartAsync(App);
        using var http = new HttpClient { BaseAddress = node.Address };
        using var ready = await http.GetAsync("/health/ready", Cancel);

        Assert.Equal(HttpStatusCode.OK, ready.StatusCode);
    }

    [Fact]
    public async Task One_role_for_all_goes_on_working()
    {
        var migrated = await CommandRun.OfAsync(["migrate"], environment: new Dictionary<string, string> { ["ConnectionStrings__ClubCycle"] = Owner });
        Assert.True(migrated.ExitCode == 0, migrated.Errors);
        var made = await CommandRun.OfAsync(["backup", Path.Combine(_folder.Path, "backups")], environment: new Dictionary<string, string> { ["ConnectionStrings__ClubCycle"] = Owner });
        Assert.True(made.ExitCode == 0, made.Errors);

        await using var node = await RunningNode.StartAsync(Owner);
        using var http = new HttpClient { BaseAddress = node.Address };

        Assert.Equal("Healthy", await http.GetStringAsync("/health/ready", Cancel));
    }

    [Fact]
    public async Task The_app_cannot_migrate_and_is_told_who_can()
    {
        var run = await CommandRun.OfAsync(["migrate"], environment: new Dictionary<string, string> { ["ConnectionStrings__ClubCycle"] = App });

        AssertOneMessage(run, "ConnectionStrings__ClubCycleOwner");
    }

    [Theory]
    [InlineData("nobody_here", "clubcycle_backup")]
    [InlineData("clubcycle_app", "nobody_here")]
    public async Task A_role_that_nobody_made_is_one_message(string app, string backup)
    {
        var run = await CommandRun.OfAsync(["migrate"], environment: new Dictionary<string, string>
        {
            ["ConnectionStrings__ClubCycle"] = new NpgsqlConnectionStringBuilder(App) { Username = app }.ConnectionString, ["ConnectionStrings__ClubCycleOwner"] = Owner, ["Database__BackupRole"] = backup,
        });

        AssertOneMessage(run, "create role nobody_here");
    }

    [Fact]
    public async Task An_owner_alone_is_one_message()
    {
        var run = await CommandRun.OfAsync(["migrate"], environment: new Dictionary<string, string> { ["ConnectionStrings__ClubCycleOwner"] = Owner });

        AssertOneMessage(run, "Give both");
    }

    private string App => Ours(_server.ConnectionString);

    private string Backup => Ours(_server.BackupConnectionString);

    private string Owner => Ours(_server.OwnerConnectionString);

    private static string Ours(string connectionString) => new NpgsqlConnectionStringBuilder(connectionString) { Database = "ours", Pooling = false }.ConnectionString;

    /// <summary>With the owner's password in a file.</summary>
    private async Task<CommandRun> CommandAsync(params string[] arguments)
    {
        var owner = new NpgsqlConnectionStringBuilder(Owner);
        var secret = Path.Combine(_folder.Path, "secret");
        await File.WriteAllTextAsync(secret, owner.Password + "\n", Cancel);
        owner.Password = null;
        return await CommandRun.OfAsync(arguments, environment: new Dictionary<string, string>
        {
            ["ConnectionStrings__ClubCycle"] = App, ["ConnectionStrings__ClubCycleOwner"] = owner.ConnectionString, ["Database__OwnerPassword_FILE"] = secret, ["Database__BackupRole"] = PrivatePostgres.Backup,
        });
    }

    private async Task MakeClubAsync()
    {
        await using var services = new ServiceCollection().AddSingleton<IClock>(new TestClock(Instant.FromUtc(2026, 3, 3, 12, 0))).AddClubCycleData(App).BuildServiceProvider();
        using var scope = services.CreateScope();
        (await scope.ServiceProvider.GetRequiredService<ClubStore>().CreateAsync("Ours", "Europe/Lisbon", IsoDayOfWeek.Monday, Cancel)).OrThrow();
    }

    private static async Task RunAsync(string connectionString, string sql)
    {
        await using var connection = await PlainSql.OpenEverywhereAsync(connectionString, Cancel);
        await connection.RunAsync(sql, Cancel);
    }

    private static void AssertOneMessage(CommandRun run, string nextStep)
    {
        Assert.Equal(1, run.ExitCode);
        Assert.Contains(nextStep, Assert.Single(run.Errors.TrimEnd().Split('\n')), StringComparison.Ordinal);
    }
}
