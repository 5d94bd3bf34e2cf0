using ClubCycle.Data.Backups;
using ClubCycle.Data.Telemetry;
using NodaTime;

namespace ClubCycle.Web.Hosting;

/// <summary>Looks now and then when the last backup was made: for the metrics, and for a line in the log once a day while it is late.</summary>
internal sealed partial class BackupWatch(LastBackup backup, IClock clock, ILogger<BackupWatch> log) : BackgroundService
{
    private static readonly TimeSpan Rest = TimeSpan.FromMinutes(10);

    private Instant? _last;
    private LocalDate? _told;

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        ClubMeter.TellBackupAge(() => _last is { } last ? (clock.GetCurrentInstant() - last).TotalSeconds : null);
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                await LookAsync(stoppingToken);
            }
            catch (Exception failed) when (failed is not OperationCanceledException)
            {
                NotKnown(failed.Message);
            }

            await Task.Delay(Rest, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    internal async Task LookAsync(CancellationToken cancel)
    {
        _last = await backup.AtAsync(cancel);
        var now = clock.GetCurrentInstant();
        if (_told != now.InUtc().Date && await backup.IsLateAsync(now, cancel))
        {
            _told = now.InUtc().Date;
            Late(_last?.ToString() ?? "never");
        }
    }

    [LoggerMessage(LogLevel.Warning, "The last backup is older than 26 hours: {Last}. Run the backup command every day")]
    private partial void Late(string last);

    [LoggerMessage(LogLevel.Warning, "The age of the last backup is not known: {Reason}")]
    private partial void NotKnown(string reason);
}
