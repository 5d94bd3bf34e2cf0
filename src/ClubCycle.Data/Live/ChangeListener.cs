using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Npgsql;

namespace ClubCycle.Data.Live;

/// <summary>Hears on a connection of its own what any node saved. One a node.</summary>
/// <remarks>The connection may not go through a pooler that hands it to others between statements: LISTEN belongs to a session.</remarks>
internal sealed partial class ChangeListener(string connectionString, ClubChanges changes, ILogger<ChangeListener> log) : BackgroundService
{
    /// <summary>How the database's list of connections shows it.</summary>
    public const string Name = "ClubCycle changes";

    private static readonly TimeSpan ShortestWait = TimeSpan.FromMilliseconds(250);
    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(15);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        var wait = ShortestWait;
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                await ListenAsync(() => wait = ShortestWait, stoppingToken);
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
            catch (Exception lost)
            {
                // The screens go on; they miss others' changes until the connection is back.
                Lost(lost.Message, wait.TotalSeconds);
            }

            await Task.Delay(wait, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            wait = wait * 2 < LongestWait ? wait * 2 : LongestWait;
        }
    }

    private async Task ListenAsync(Action connected, CancellationToken cancel)
    {
        // Without a sign of life now and then, a connection that a firewall dropped would look quiet for ever.
        await using var connection = new NpgsqlConnection(new NpgsqlConnectionStringBuilder(connectionString) { ApplicationName = Name, Pooling = false, KeepAlive = 30 }.ConnectionString);
        connection.Notification += (_, told) => changes.Tell(ClubChange.Read(told.Payload), feedsOnly: told.Channel == ClubChange.FeedChannel);
        await connection.OpenAsync(cancel);
        await using (var listen = new NpgsqlCommand($"listen {ClubChange.Channel}; listen {ClubChange.FeedChannel}", connection))
        {
            await listen.ExecuteNonQueryAsync(cancel);
        }

        connected();
        changes.TellAll();
        while (true)
        {
            await connection.WaitAsync(cancel);
        }
    }

    [LoggerMessage(LogLevel.Warning, "Others' changes are not heard until the database answers: {Reason} Next try in {Seconds} s")]
    private partial void Lost(string reason, double seconds);
}
