using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using Npgsql;

namespace ClubCycle.Data.Embedded;

/// <summary>
/// A PostgreSQL of our own: made on the first start, listening on the loopback address only, stopped when disposed.
/// After a crash of the app or of the server the next start recovers.
/// </summary>
public sealed class PrivatePostgres : IAsyncDisposable
{
    /// <summary>Owns the database and what migrations make in it. Neither superuser nor exempt from row-level security.</summary>
    public const string Owner = "clubcycle";

    /// <summary>As the owner, but owns nothing: see <see cref="AppRole"/>.</summary>
    public const string App = "clubcycle_app";

    /// <summary>Reads: see <see cref="BackupRole"/>.</summary>
    public const string Backup = "clubcycle_backup";

    public const string Database = "clubcycle";

    private const int StartAttempts = 20;
    private static readonly TimeSpan BetweenAttempts = TimeSpan.FromMilliseconds(500);

    private readonly ClusterFolder folder;
    private readonly PostgresPrograms programs;
    private readonly PostgresAccount account;
    private readonly PrivatePostgresSettings settings;
    private readonly ClusterPasswords passwords;
    private int port;
    private bool disposed;

    private PrivatePostgres(ClusterFolder folder, PostgresPrograms programs, PostgresAccount account, ClusterPasswords passwords, PrivatePostgresSettings settings)
    {
        this.folder = folder;
        this.programs = programs;
        this.account = account;
        this.passwords = passwords;
        this.settings = settings;
    }

    /// <summary>For the app's own role and database.</summary>
    public string ConnectionString => Address(App, passwords.App, Database).ConnectionString;

    /// <summary>For backups.</summary>
    public string BackupConnectionString => Address(Backup, passwords.Backup, Database).ConnectionString;

    /// <summary>For migrations and restores.</summary>
    public string OwnerConnectionString => Address(Owner, passwords.Owner, Database).ConnectionString;

    /// <summary>For making other databases and roles; the app never uses it.</summary>
    public string SuperuserConnectionString => Address(ClusterPasswords.SuperuserName, passwords.Superuser, "postgres").ConnectionString;

    public int Major => programs.Major;

    /// <exception cref="DatabaseUnavailableException">It cannot start; the message says why and what to do.</exception>
    public static async Task<PrivatePostgres> StartAsync(PrivatePostgresSettings settings, CancellationToken cancel = default)
    {
        var folder = ClusterFolder.Take(settings.DataFolder);
        try
        {
            var programs = await PostgresPrograms.ChooseAsync(settings.ProgramFolders ?? PostgresPrograms.UsualFolders(), folder.Major, cancel);
            var passwords = ClusterPasswords.ReadOrMake(folder);
            var account = await PostgresAccount.ForAsync(folder, programs, cancel);
            var server = new PrivatePostgres(folder, programs, account, passwords, settings);
            try
            {
                await server.MakeClusterAsync(cancel);
                await server.EndForgottenServerAsync(cancel);
                await server.StartServerAsync(cancel);
                await server.MakeDatabaseAsync(cancel);
                return server;
            }
            catch
            {
                await server.StopServerAsync();
                throw;
            }
        }
        catch (UnauthorizedAccessException refused)
        {
            folder.Dispose();
            throw ClusterFolder.NotWritable(settings.DataFolder, refused);
        }
        catch
        {
            folder.Dispose();
            throw;
        }
    }

    /// <summary>For the app's own database on the server that another ClubCycle keeps running on this folder; null when none does.</summary>
    /// <param name="role"><see cref="App"/> or <see cref="Backup"/>.</param>
    public static string? RunningIn(string dataFolder, string role = App)
    {
        var root = Path.Combine(Path.GetFullPath(dataFolder), "postgres");
        var (note, passwords) = (Path.Combine(root, "cluster", "postmaster.pid"), Path.Combine(root, "pgpass"));
        return File.Exists(note) && File.Exists(passwords)
            && File.ReadLines(note).ElementAtOrDefault(3) is { } line && int.TryParse(line, CultureInfo.InvariantCulture, out var port)
            // Owner, app and backup follow each other; while an older version keeps it running the last are missing, and the one before does their work.
            && File.ReadLines(passwords).Select(l => l.Split(':')).LastOrDefault(parts => parts.Length == 5 && (parts[3] is Owner or App || parts[3] == role)) is { } known
            ? new NpgsqlConnectionStringBuilder { Host = "127.0.0.1", Port = port, Username = known[3], Password = known[4], Database = Database }.ConnectionString
            : null;
    }

    /// <summary>Stops a server whose app was killed. False when the app is alive and holds the folder, or it is another user's.</summary>
    public static async Task<bool> EndAbandonedAsync(string dataFolder, CancellationToken cancel = default)
    {
        try
        {
            using var folder = ClusterFolder.Take(dataFolder);
            if (!folder.HasCluster)
                return true;
            var settings = new PrivatePostgresSettings { DataFolder = dataFolder };
            var programs = await PostgresPrograms.ChooseAsync(PostgresPrograms.UsualFolders(), folder.Major, cancel);
            var account = await PostgresAccount.ForAsync(folder, programs, cancel);
            await new PrivatePostgres(folder, programs, account, ClusterPasswords.ReadOrMake(folder), settings).StopServerAsync();
            return true;
        }
        catch (DatabaseUnavailableException notOurs) when (notOurs.Problem.Code is "database.folder-in-use" or "database.folder-not-writable")
        {
            return false;
        }
    }

    /// <summary>Stops the server: running statements are cancelled, everything committed is on disk.</summary>
    public async ValueTask DisposeAsync()
    {
        if (disposed)
            return;
        disposed = true;
        try
        {
            await StopServerAsync();
        }
        finally
        {
            folder.Dispose();
        }
    }

    private async Task MakeClusterAsync(CancellationToken cancel)
    {
        if (folder.HasCluster)
            return;
        if (Directory.Exists(folder.Unfinished))
            Directory.Delete(folder.Unfinished, recursive: true);
        if (Directory.Exists(folder.Cluster))
        {
            throw DatabaseUnavailableException.Because(
                "database.folder-not-a-cluster", $"The folder {folder.Cluster} holds something that is not a PostgreSQL cluster. Move it away, or name another folder with CLUBCYCLE_DATA.");
        }

        var passwordFile = Path.Combine(folder.Root, "initdb.password");
        ClusterPasswords.WriteForOwner(passwordFile, passwords.Superuser + "\n");
        try
        {
            await account.GiveAsync(passwordFile, cancel);
            string[] arguments =
            [
                "--pgdata", folder.Unfinished, "--username", ClusterPasswords.SuperuserName, "--pwfile", passwordFile,
                "--auth", "scram-sha-256", "--encoding", "UTF8", "--data-checksums", "--no-instructions",
                .. settings.Durable ? Array.Empty<string>() : ["--no-sync"],
            ];
            // From 17 on the server brings C.UTF-8 itself; before, the operating system has it or not.
            var made = await InitDbAsync(programs.Major >= 17 ? ["--locale=C", "--locale-provider=builtin", "--builtin-locale=C.UTF-8"] : ["--locale=C.UTF-8"]);
            if (!made.Succeeded && programs.Major < 17)
                made = await InitDbAsync(["--locale=C"]);
            if (!made.Succeeded)
                throw DatabaseUnavailableException.Because("database.not-made", $"PostgreSQL could not make a database in {folder.Root}: {Cause(made.Output)} {HowToGoOn}");

            Task<ProgramRun> InitDbAsync(string[] locale) => account.RunAsync(programs.InitDb, [.. arguments, .. locale], folder.Root, cancel);
        }
        finally
        {
            File.Delete(passwordFile);
        }

        Directory.Move(folder.Unfinished, folder.Cluster);
    }

    /// <summary>A server that outlived its killed app is stopped; a dead one's note is left to PostgreSQL, unless its number now belongs to another program.</summary>
    private async Task EndForgottenServerAsync(CancellationToken cancel)
    {
        if (folder.NamedServer is not { } id)
            return;
        if (await IsOurServerAsync(id))
            await StopServerAsync();
        else if (IsAlive(id, _ => true))
            File.Delete(Path.Combine(folder.Cluster, "postmaster.pid"));
        cancel.ThrowIfCancellationRequested();
    }

    private async Task StartServerAsync(CancellationToken cancel)
    {
        var run = new ProgramRun(-1, "");
        for (var attempt = 0; attempt < StartAttempts; attempt++)
        {
            port = settings.Port ?? FreePort();
            File.Delete(folder.Log);
            run = await account.RunAsync(
                programs.PgCtl, ["start", "--pgdata", folder.Cluster, "--log", folder.Log, "--wait", "--timeout", "300", "--silent", "--options", Options()], folder.Root, cancel);
            if (run.Succeeded)
                return;
            var log = folder.LastLogLines();
            // Another program took the port between our asking and using it: ask again.
            if (log.Contains("could not bind", StringComparison.Ordinal))
                continue;
            // Children of a killed server need a moment to notice that it is gone.
            if (!log.Contains("shared memory block", StringComparison.Ordinal))
                break;
            await Task.Delay(BetweenAttempts, cancel);
        }

        throw DatabaseUnavailableException.Because("database.not-started", $"PostgreSQL did not start in {folder.Root}: {Cause(folder.LastLogLines() + run.Output)} {HowToGoOn}");
    }

    private async Task MakeDatabaseAsync(CancellationToken cancel)
    {
        foreach (var (role, password) in new[] { (Owner, passwords.Owner), (App, passwords.App), (Backup, passwords.Backup) })
        {
            await ExecuteAsync(SuperuserConnectionString, cancel,
                $"do $$ begin if not exists (select from pg_roles where rolname = '{role}') then create role {role}; end if; end $$",
                $"alter role {role} with login nosuperuser nocreatedb nocreaterole noreplication nobypassrls password '{password}'");
        }

        if (!await ExistsAsync($"select 1 from pg_database where datname = '{Database}'"))
            await ExecuteAsync(SuperuserConnectionString, cancel, $"create database {Database} owner {Owner}");
        try
        {
            await ExecuteAsync(Address(ClusterPasswords.SuperuserName, passwords.Superuser, Database).ConnectionString, cancel, "create extension if not exists btree_gist");
        }
        catch (PostgresException missing) when (missing.SqlState is PostgresErrorCodes.UndefinedFile or PostgresErrorCodes.FeatureNotSupported)
        {
            throw DatabaseUnavailableException.Because(
                "database.no-btree-gist", $"This PostgreSQL {programs.Major} lacks the extension btree_gist. Install its contrib package with: {InstallLine.Here}", missing);
        }

        await AppRole.GrantAsync(OwnerConnectionString, App, cancel);
        await BackupRole.GrantAsync(OwnerConnectionString, Backup, cancel);

        async Task<bool> ExistsAsync(string sql)
        {
            await using var connection = new NpgsqlConnection(SuperuserConnectionString);
            await connection.OpenAsync(cancel);
            await using var command = new NpgsqlCommand(sql, connection);
            return await command.ExecuteScalarAsync(cancel) is not null;
        }
    }

    private static async Task ExecuteAsync(string connectionString, CancellationToken cancel, params string[] statements)
    {
        await using var connection = new NpgsqlConnection(connectionString);
        await connection.OpenAsync(cancel);
        foreach (var statement in statements)
        {
            await using var command = new NpgsqlCommand(statement, connection);
            await command.ExecuteNonQueryAsync(cancel);
        }
    }

    private async Task StopServerAsync()
    {
        if (folder.NamedServer is not { } id || !await IsOurServerAsync(id))
            return;
        var stopped = await StopAsync("fast");
        if (!stopped.Succeeded)
            stopped = await StopAsync("immediate");
        if (!stopped.Succeeded && await IsOurServerAsync(id))
            throw DatabaseUnavailableException.Because("database.not-stopped", $"PostgreSQL in {folder.Root} (process {id}) did not stop: {Cause(stopped.Output)} Stop that process and start again.");

        Task<ProgramRun> StopAsync(string mode) => account.RunAsync(
            programs.PgCtl, ["stop", "--pgdata", folder.Cluster, "--mode", mode, "--wait", "--timeout", "60", "--silent"], folder.Root, CancellationToken.None);
    }

    /// <summary>Numbers of dead processes come round again, soonest in containers. On Linux the server's working folder tells.</summary>
    private async Task<bool> IsOurServerAsync(int id)
    {
        if (!OperatingSystem.IsLinux())
            return IsAlive(id, process => process.ProcessName.StartsWith("postgres", StringComparison.Ordinal));
        // Read by the server's own account: that needs no special right.
        return (await account.RunAsync("test", [$"/proc/{id}/cwd", "-ef", folder.Cluster], "/", CancellationToken.None)).Succeeded;
    }

    private static bool IsAlive(int id, Func<Process, bool> and)
    {
        try
        {
            using var process = Process.GetProcessById(id);
            return !process.HasExited && and(process);
        }
        catch (ArgumentException)
        {
            return false;
        }
    }

    private string Options()
    {
        string[] always =
        [
            "-p", port.ToString(CultureInfo.InvariantCulture), "-c", "listen_addresses=127.0.0.1", "-c", "unix_socket_directories=",
            "-c", "timezone=UTC", "-c", "log_timezone=UTC", "-c", "lc_messages=C",
        ];
        string[] careless = ["-c", "fsync=off", "-c", "synchronous_commit=off", "-c", "full_page_writes=off", "-c", "max_connections=300"];
        return string.Join(' ', settings.Durable ? always : [.. always, .. careless]);
    }

    private NpgsqlConnectionStringBuilder Address(string role, string password, string database) => new()
    {
        Host = "127.0.0.1",
        Port = port,
        Username = role,
        Password = password,
        Database = database,
        Pooling = role == App,
    };

    internal static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    /// <summary>The last complaint in what a program said: that is the one that stopped it.</summary>
    private static string Cause(string output) =>
        output.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            .LastOrDefault(line => line.Contains("FATAL:", StringComparison.Ordinal) || line.Contains("PANIC:", StringComparison.Ordinal) || line.Contains("error:", StringComparison.Ordinal))
        ?? output.Trim();

    private string HowToGoOn => $"See {folder.Log}, free space and permissions there, then start again.";
}
