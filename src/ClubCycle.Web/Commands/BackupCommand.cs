using System.Diagnostics;
using System.Globalization;
using ClubCycle.Data.Backups;
using ClubCycle.Data.Embedded;
using ClubCycle.Planning;
using ClubCycle.Web.Hosting;
using NodaTime;

namespace ClubCycle.Web.Commands;

/// <summary>Makes a backup, once or every so many hours.</summary>
internal static class BackupCommand
{
    /// <summary>After a backup that failed, when there are more to come.</summary>
    private static readonly TimeSpan BeforeTryingAgain = TimeSpan.FromMinutes(10);

    public static async Task<int> RunAsync(string[] arguments, IClock clock, TextWriter output, TextWriter errors)
    {
        if (Read(arguments) is not { } asked)
        {
            await errors.WriteLineAsync("Write: backup [FOLDER] [--keep N] [--every HOURS], with whole numbers from 1 on.");
            return ExitCode.Problems;
        }

        using var stop = new EarlyStop();
        try
        {
            // Started again and again it would push the older ones out.
            if (asked.Every is { } rest && await BackupStore.NewestAsync(asked.Folder, stop.Token) + Duration.FromHours(rest) - clock.GetCurrentInstant() is { } early && early > Duration.Zero)
            {
                await Task.Delay(early.ToTimeSpan(), stop.Token);
            }

            var ended = await OnceAsync(asked, clock, output, errors, stop.Token);
            while (asked.Every is { } hours)
            {
                await Task.Delay(ended == ExitCode.Done ? TimeSpan.FromHours(hours) : BeforeTryingAgain, stop.Token);
                ended = await OnceAsync(asked, clock, output, errors, stop.Token);
            }

            return ended;
        }
        catch (OperationCanceledException) when (stop.Token.IsCancellationRequested)
        {
            return asked.Every is null ? ExitCode.Failed : ExitCode.Done;
        }
    }

    private static async Task<int> OnceAsync(Asked asked, IClock clock, TextWriter output, TextWriter errors, CancellationToken cancel)
    {
        try
        {
            var took = Stopwatch.StartNew();
            await using var database = await DatabaseChoice.OpenOrJoinAsync(CommandSettings.Read().DatabaseAddress(), cancel);
            switch (await new BackupStore(clock).MakeAsync(database.BackupConnectionString, asked.Folder, asked.Keep, cancel))
            {
                case Result<MadeBackup>.Failed failed:
                    await errors.WriteLineAsync(failed.First.Message);
                    return ExitCode.Problems;
                case Result<MadeBackup>.Ok(var made):
                    await output.WriteLineAsync(string.Create(
                        CultureInfo.InvariantCulture,
                        $"Backup: {made.Path} ({made.Bytes / 1e6:0.0} MB, {made.Manifest.Rows.Values.Sum()} rows of {made.Manifest.Rows.Count} tables, {took.Elapsed.TotalSeconds:0.0} s). Deleted: {made.Gone} older."));
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

    /// <summary>Null when it makes no sense.</summary>
    private static Asked? Read(string[] arguments)
    {
        Asked asked = new(Path.Combine(PrivatePostgresSettings.DefaultDataFolder(), "backups"), null, null);
        for (var i = 0; i < arguments.Length; i++)
        {
            var number = i + 1 < arguments.Length && int.TryParse(arguments[i + 1], NumberStyles.None, CultureInfo.InvariantCulture, out var n) && n > 0 ? n : (int?)null;
            switch (arguments[i])
            {
                case "--keep" when number is not null:
                    asked = asked with { Keep = number };
                    i++;
                    break;
                case "--every" when number <= 24 * 28:
                    asked = asked with { Every = number };
                    i++;
                    break;
                case var folder when i == 0 && !folder.StartsWith("--", StringComparison.Ordinal):
                    asked = asked with { Folder = Path.GetFullPath(folder) };
                    break;
                default:
                    return null;
            }
        }

        return asked;
    }

    private sealed record Asked(string Folder, int? Keep, int? Every);
}
