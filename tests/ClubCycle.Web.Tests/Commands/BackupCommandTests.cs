using ClubCycle.TestKit;
using Npgsql;

namespace ClubCycle.Web.Tests.Commands;

/// <summary>Backup and restore as a person runs them, over the database of a whole application.</summary>
public sealed class BackupCommandTests(TestApp app) : IClassFixture<TestApp>, IDisposable
{
    private readonly TemporaryFolder _folder = TemporaryFolder.ReachableByAll("clubcycle-backups-");

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task A_backup_that_was_made_can_be_tried_without_touching_the_database()
    {
        await app.NewClubAsync();
        var made = await RunAsync("backup", _folder.Path, "--keep", "3");
        Assert.True(made.ExitCode == 0, made.Errors);
        var backup = Assert.Single(Directory.GetDirectories(_folder.Path));
        Assert.Contains(backup, made.Output, StringComparison.Ordinal);

        var tried = await RunAsync("restore", backup, "--verify");

        Assert.True(tried.ExitCode == 0, tried.Errors);
        Assert.StartsWith("The backup can be restored", tried.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_database_that_an_app_works_with_is_not_replaced()
    {
        await app.NewClubAsync();
        await RunAsync("backup", _folder.Path);

        var refused = await RunAsync("restore", Assert.Single(Directory.GetDirectories(_folder.Path)), "--replace");

        Assert.Equal(2, refused.ExitCode);
        Assert.Contains("Stop it on every machine", Assert.Single(refused.Errors.TrimEnd().Split('\n')), StringComparison.Ordinal);
    }

    [Fact]
    [System.Runtime.Versioning.UnsupportedOSPlatform("windows")]
    public async Task The_password_is_on_no_command_line_in_no_environment_and_in_no_message()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The stand-in is a shell script.");
        await app.NewClubAsync();
        var (programs, seen) = (Directory.CreateDirectory(Path.Combine(_folder.Path, "programs")).FullName, Path.Combine(_folder.Path, "seen"));
        foreach (var program in new[] { "pg_dump", "pg_restore", "psql" })
        {
            var script = Path.Combine(programs, program);
            await File.WriteAllTextAsync(script, $"#!/bin/sh\n(echo \"{program} $@\"; env) >>{seen}\nPATH=${{PATH#*:}} exec {program} \"$@\"\n", Cancel);
            File.SetUnixFileMode(script, (UnixFileMode)0b111_101_101);
        }

        var made = await RunInAsync(new() { ["PATH"] = $"{programs}:{Environment.GetEnvironmentVariable("PATH")}" }, "backup", Path.Combine(_folder.Path, "backups"));

        Assert.True(made.ExitCode == 0, made.Errors);
        var heard = await File.ReadAllTextAsync(seen, Cancel);
        Assert.Contains("pg_dump --host=", heard, StringComparison.Ordinal);
        var password = new NpgsqlConnectionStringBuilder(app.ConnectionString).Password!;

        // The program that starts pg_dump got it in its own environment, which pg_dump inherits; nothing may be added to that.
        Assert.DoesNotContain(password, string.Join('\n', heard.Split('\n').Where(line => !line.StartsWith("ConnectionStrings__", StringComparison.Ordinal))), StringComparison.Ordinal);
        Assert.DoesNotContain(password, made.Output + made.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("backup", "--keep", "0")]
    [InlineData("backup", "--kep", "3")]
    [InlineData("restore")]
    [InlineData("restore", "here", "--replace", "--verify")]
    [InlineData("health", "nowhere")]
    public async Task Arguments_that_make_no_sense_are_one_message(params string[] arguments)
    {
        var run = await CommandRun.OfAsync(arguments);

        Assert.Equal(2, run.ExitCode);
        Assert.Single(run.Errors.TrimEnd().Split('\n'));
    }

    [Fact]
    public async Task Nothing_that_answers_is_one_message()
    {
        var run = await CommandRun.OfAsync(["health", "http://127.0.0.1:1/health/ready"]);

        Assert.Equal(1, run.ExitCode);
        Assert.Single(run.Errors.TrimEnd().Split('\n'));
    }

    [Fact]
    public async Task The_password_may_come_as_a_file()
    {
        await app.NewClubAsync();
        var address = new NpgsqlConnectionStringBuilder(app.ConnectionString);
        var secret = Path.Combine(_folder.Path, "secret");
        await File.WriteAllTextAsync(secret, address.Password + "\n", Cancel);
        address.Password = null;

        var made = await CommandRun.OfAsync(["backup", Path.Combine(_folder.Path, "backups")], environment: new Dictionary<string, string>
        {
            ["ConnectionStrings__ClubCycle"] = address.ConnectionString, ["Database__Password_FILE"] = secret,
        });

        Assert.True(made.ExitCode == 0, made.Errors);
    }

    private Task<CommandRun> RunAsync(params string[] arguments) => RunInAsync([], arguments);

    private Task<CommandRun> RunInAsync(Dictionary<string, string> environment, params string[] arguments)
    {
        environment["ConnectionStrings__ClubCycle"] = app.ConnectionString;
        return CommandRun.OfAsync(arguments, environment: environment);
    }
}
