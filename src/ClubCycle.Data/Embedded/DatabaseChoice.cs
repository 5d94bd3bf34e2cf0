using Npgsql;

namespace ClubCycle.Data.Embedded;

/// <summary>The database the app works with: the server it was given, or a private one that stops with the app.</summary>
public sealed class DatabaseChoice : IAsyncDisposable
{
    /// <summary>In <c>ConnectionStrings</c>; as an environment variable <c>ConnectionStrings__ClubCycle</c>.</summary>
    public const string ConnectionName = "ClubCycle";

    /// <summary>Beside it: the role that owns the tables, where the app signs in with another.</summary>
    public const string OwnerConnectionName = "ClubCycleOwner";

    private const int SecondsToConnect = 5;

    private readonly PrivatePostgres? own;

    private DatabaseChoice(string connectionString, string ownerConnectionString, string description, PrivatePostgres? own)
    {
        ConnectionString = connectionString;
        BackupConnectionString = connectionString;
        OwnerConnectionString = ownerConnectionString;
        Description = description;
        this.own = own;
    }

    public string ConnectionString { get; }

    /// <summary>For migrations and restores; as the app where no other role was given.</summary>
    public string OwnerConnectionString { get; }

    /// <summary>For backups. A server that was given: whatever role it was given with.</summary>
    public string BackupConnectionString { get; private init; }

    /// <summary>For people: which database this is, without its password.</summary>
    public string Description { get; }

    /// <param name="connectionString">Given: that server or none. Null or empty: a private one.</param>
    /// <param name="ownerConnectionString">Of the role that owns the tables, when it is to be used: it lets the app's role at them.</param>
    /// <param name="backupRole">To be let at them too, for reading.</param>
    /// <param name="privateServer">Where the private one lives; null means the default data folder.</param>
    /// <exception cref="DatabaseUnavailableException">No database; the message says why and what to do.</exception>
    public static async Task<DatabaseChoice> OpenAsync(
        string? connectionString, string? ownerConnectionString = null, string? backupRole = null, PrivatePostgresSettings? privateServer = null, CancellationToken cancel = default)
    {
        if (!string.IsNullOrWhiteSpace(connectionString))
        {
            var owner = string.IsNullOrWhiteSpace(ownerConnectionString) ? connectionString : ownerConnectionString;
            if (owner != connectionString)
                await DescribeAsync(owner, OwnerConnectionName, cancel);
            if (Read(connectionString, ConnectionName).Username is { } app && app != Read(owner, OwnerConnectionName).Username)
                await AppRole.GrantAsync(owner, app, cancel);
            var description = await DescribeAsync(connectionString, ConnectionName, cancel);
            if (!string.IsNullOrWhiteSpace(backupRole))
                await BackupRole.GrantAsync(owner, backupRole, cancel);
            return new DatabaseChoice(connectionString, owner, description, own: null);
        }

        var settings = privateServer ?? new PrivatePostgresSettings { DataFolder = PrivatePostgresSettings.DefaultDataFolder() };
        var server = await PrivatePostgres.StartAsync(settings, cancel);
        return new DatabaseChoice(server.ConnectionString, server.OwnerConnectionString, $"private PostgreSQL {server.Major} in {settings.DataFolder}", server) { BackupConnectionString = server.BackupConnectionString };
    }

    /// <summary>As <see cref="OpenAsync"/>, or the private one that another ClubCycle keeps running.</summary>
    public static async Task<DatabaseChoice> OpenOrJoinAsync(string? connectionString, CancellationToken cancel = default)
    {
        try
        {
            return await OpenAsync(connectionString, cancel: cancel);
        }
        catch (DatabaseUnavailableException held) when (held.Problem.Code == "database.folder-in-use")
        {
            var folder = PrivatePostgresSettings.DefaultDataFolder();
            return PrivatePostgres.RunningIn(folder) is { } running && PrivatePostgres.RunningIn(folder, PrivatePostgres.Backup) is { } backup
                ? new DatabaseChoice(running, running, $"private PostgreSQL in {folder}, which is running", own: null) { BackupConnectionString = backup }
                : throw new DatabaseUnavailableException(held.Problem, held);
        }
    }

    public ValueTask DisposeAsync() => own?.DisposeAsync() ?? ValueTask.CompletedTask;

    /// <summary>Connects once, so that a wrong address or password is told at the start and in one line.</summary>
    private static async Task<string> DescribeAsync(string connectionString, string name, CancellationToken cancel)
    {
        var address = Read(connectionString, name);
        var where = $"database '{address.Database}' as '{address.Username}' on {address.Host}:{address.Port}";
        try
        {
            var probe = new NpgsqlConnectionStringBuilder(connectionString) { Timeout = SecondsToConnect, Pooling = false };
            await using var connection = new NpgsqlConnection(probe.ConnectionString);
            await connection.OpenAsync(cancel);
            if (connection.PostgreSqlVersion.Major < PostgresPrograms.OldestMajor)
            {
                throw DatabaseUnavailableException.Because(
                    "database.server-too-old",
                    $"The server for {where} is PostgreSQL {connection.PostgreSqlVersion.Major}, but ClubCycle needs {PostgresPrograms.OldestMajor} or newer. Upgrade it, or name another one in ConnectionStrings__{name}.");
            }

            return $"{where} (PostgreSQL {connection.PostgreSqlVersion.Major})";
        }
        catch (Exception failure) when (failure is NpgsqlException or TimeoutException or System.Net.Sockets.SocketException or ArgumentException or InvalidOperationException)
        {
            var reason = failure is PostgresException answer ? answer.MessageText : failure.InnerException?.Message ?? failure.Message;
            throw DatabaseUnavailableException.Because(
                "database.not-reachable",
                $"Could not connect to {where}: {reason}. Check ConnectionStrings__{name} and that the server runs{(name == ConnectionName ? ", or leave it out to use a private PostgreSQL" : "")}.",
                failure);
        }
    }

    private static NpgsqlConnectionStringBuilder Read(string connectionString, string name)
    {
        try
        {
            return new NpgsqlConnectionStringBuilder(connectionString);
        }
        catch (Exception malformed) when (malformed is ArgumentException or FormatException)
        {
            // The text may hold a password: it is not repeated.
            throw DatabaseUnavailableException.Because(
                "database.connection-string-malformed",
                $"The connection string ConnectionStrings__{name} cannot be read. Write it like: Host=localhost;Database=clubcycle;Username=clubcycle;Password=...",
                malformed);
        }
    }
}
