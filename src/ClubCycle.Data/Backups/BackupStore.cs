using System.Data;
using ClubCycle.Data.Embedded;
using ClubCycle.Planning;
using NodaTime;

namespace ClubCycle.Data.Backups;

/// <summary>A backup that was made.</summary>
/// <param name="Gone">Older ones that were deleted for it.</param>
public sealed record MadeBackup(string Path, BackupManifest Manifest, long Bytes, int Gone);

/// <summary>Makes backups: everything that one moment of the database holds, key ring included.</summary>
public sealed class BackupStore(IClock clock)
{
    /// <summary>The audit trail's word, by which the age of the last backup is known.</summary>
    public const string Made = "backup.made";

    /// <summary>In every club that the connection sees: when, and the backup's name.</summary>
    internal const string Note = $"insert into club.audit (club_id, id, at, what, details) select club_id, gen_random_uuid(), $1, '{Made}', $2 from club.clubs";

    /// <summary>A nightly backup that failed once is late by then.</summary>
    public static readonly Duration Late = Duration.FromHours(26);

    /// <summary>When the newest backup in a folder was made; null when there is none.</summary>
    public static async Task<Instant?> NewestAsync(string folder, CancellationToken cancel = default) => await BackupFolder.AllAsync(folder, cancel) is [var newest, ..] ? newest.Manifest.MadeAt : null;

    /// <param name="folder">Made when missing; each backup is a folder in it.</param>
    /// <param name="keep">How many to keep in the folder; null for all.</param>
    public async Task<Result<MadeBackup>> MakeAsync(string connectionString, string folder, int? keep = null, CancellationToken cancel = default)
    {
        await using var connection = await PlainSql.OpenEverywhereAsync(connectionString, cancel);
        if (await connection.SchemaAsync(cancel) is null)
        {
            return new Problem("backup.nothing-there", "This database holds no ClubCycle: there is nothing to back up. Check the connection string.");
        }

        var programs = await DumpPrograms.ChooseAsync(connection.PostgreSqlVersion.Major, cancel);
        var now = clock.GetCurrentInstant();
        now = Instant.FromUnixTimeSeconds(now.ToUnixTimeSeconds());
        var growing = BackupFolder.Begin(folder, now);
        BackupFolder whole;
        try
        {
            // The counts and the dump see the same moment, whatever coaches save meanwhile.
            await using var moment = await connection.BeginTransactionAsync(IsolationLevel.RepeatableRead, cancel);
            var snapshot = (await connection.OneAsync<string>("select pg_export_snapshot()", cancel))!;
            var schema = (await connection.SchemaAsync(cancel))!;
            BackupManifest manifest = new(
                BackupManifest.ThisForm, now, BackupManifest.AppVersion, schema, connection.PostgreSqlVersion.Major, await connection.CountsAsync(cancel), await Endings.ReadAsync(connection, schema, cancel));
            await programs.DumpAsync(connectionString, snapshot, Path.Combine(growing, BackupFolder.Dump), cancel);
            await moment.CommitAsync(cancel);
            whole = await BackupFolder.FinishAsync(growing, manifest, cancel);
        }
        catch
        {
            Directory.Delete(growing, recursive: true);
            throw;
        }

        var bytes = new FileInfo(whole.DumpFile).Length;

        // The role that only reads has a function for this one note.
        var mayWrite = await connection.OneAsync<bool>("select has_table_privilege('club.audit', 'insert')", cancel);
        await connection.RunAsync(mayWrite ? Note : $"select {BackupRole.Schema}.note($1, $2)", cancel, now.ToDateTimeUtc(), Path.GetFileName(whole.Path));
        return new MadeBackup(whole.Path, whole.Manifest, bytes, keep is { } most ? await BackupFolder.KeepAsync(folder, most, now, cancel) : 0);
    }
}
