using System.Diagnostics;
using System.Globalization;
using ClubCycle.Data.Backups;
using ClubCycle.Data.Embedded;
using ClubCycle.Planning;
using ClubCycle.Web.Hosting;
using NodaTime;

namespace ClubCycle.Web.Commands;

/// <summary>Puts a backup in the database's place, or tries it on a PostgreSQL that is thrown away.</summary>
internal static class RestoreCommand
{
    public static async Task<int> RunAsync(string[] arguments, IClock clock, TextWriter output, TextWriter errors)
    {
        var path = arguments.FirstOrDefault(argument => !argument.StartsWith("--", StringComparison.Ordinal));
        var (replace, verify) = (arguments.Contains("--replace"), arguments.Contains("--verify"));
        if (path is null || (replace && verify) || arguments.Length > (replace || verify ? 2 : 1))
        {
            await errors.WriteLineAsync("Write: restore BACKUP [--replace | --verify], with the folder of one backup.");
            return ExitCode.Problems;
        }

        try
        {
            var took = Stopwatch.StartNew();
            switch (await (verify ? TryAsync(path, clock) : RestoreAsync(path, replace, clock)))
            {
                case Result<RestoredBackup>.Failed failed:
                    await errors.WriteLineAsync(failed.First.Message);
                    return ExitCode.Problems;
                case Result<RestoredBackup>.Ok(var restored):
                    await SayAsync(restored, verify, took.Elapsed, output);
                    return ExitCode.Done;
                case var other:
                    throw new InvalidOperationException($"Unknown result {other.GetType()}");
            }
        }
        catch (Exception failure) when (StartFailure.MessageOf(failure) is { } message)
        {
            await errors.WriteLineAsync(message);
            return ExitCode.Failed;
        }
    }

    private static async Task<Result<RestoredBackup>> RestoreAsync(string path, bool replace, IClock clock)
    {
        var settings = CommandSettings.Read();
        await using var database = await DatabaseChoice.OpenAsync(settings.DatabaseAddress(), settings.OwnerAddress(), settings[BackupRole.Setting]);
        return await new RestoreStore(clock).RestoreAsync(database.OwnerConnectionString, path, replace);
    }

    private static async Task<Result<RestoredBackup>> TryAsync(string path, IClock clock)
    {
        // Started by root, PostgreSQL runs as another user, who must be able to enter; the cluster inside is closed.
        var folder = Directory.CreateTempSubdirectory("clubcycle-verify-").FullName;
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(folder, (UnixFileMode)0b111_101_101);
        }

        try
        {
            await using var server = await PrivatePostgres.StartAsync(new PrivatePostgresSettings { DataFolder = folder, Durable = false });
            return await new RestoreStore(clock).RestoreAsync(server.OwnerConnectionString, path, replace: false);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task SayAsync(RestoredBackup restored, bool verify, TimeSpan took, TextWriter output)
    {
        await output.WriteLineAsync(string.Create(
            CultureInfo.InvariantCulture,
            $"{(verify ? "The backup can be restored" : "Restored")}: {restored.Manifest.Rows.Values.Sum()} rows of {restored.Manifest.Rows.Count} tables as of {restored.Manifest.MadeAt}, {restored.Plans} published plans read, {took.TotalSeconds:0.0} s."));
        await output.WriteLineAsync($"Ended again, because it was ended after the backup: {restored.Erased} players, {restored.Links} links, {restored.Accounts} accounts.");
        if (!verify)
        {
            await output.WriteLineAsync("Everybody has to sign in again. What was ended after the last backup that is still there is not known: look through people, players and links.");
        }
    }
}
