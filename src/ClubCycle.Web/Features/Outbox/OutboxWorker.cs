using ClubCycle.Data.Outbox;

namespace ClubCycle.Web.Features.Outbox;

/// <summary>Does what committed changes ask for, each kind by itself, so that a slow mail server holds up no feed. Work left over from a stop or a crash is done at the start.</summary>
internal sealed partial class OutboxWorker(OutboxStore outbox, IEnumerable<IOutboxWork> works, ILogger<OutboxWorker> log) : BackgroundService
{
    private static readonly TimeSpan LookAgain = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan AfterTrouble = TimeSpan.FromSeconds(10);
    private static readonly TimeSpan LongestFarewell = TimeSpan.FromSeconds(5);

    protected override Task ExecuteAsync(CancellationToken stoppingToken) => Task.WhenAll(works.Select(work => WatchAsync(work, stoppingToken)));

    private async Task WatchAsync(IOutboxWork work, CancellationToken cancel)
    {
        while (!cancel.IsCancellationRequested)
        {
            var wait = LookAgain;
            try
            {
                while (await outbox.TakeAsync(work.Kind, cancel) is { } message)
                {
                    await DoAsync(work, message, cancel);
                }
            }
            catch (OperationCanceledException) when (cancel.IsCancellationRequested)
            {
                return;
            }
            catch (Exception trouble)
            {
                // The database is away for a while: the work stays in the outbox.
                Waiting(work.Kind, trouble.Message);
                wait = AfterTrouble;
            }

            await Task.Delay(wait, cancel).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    private async Task DoAsync(IOutboxWork work, OutboxMessage message, CancellationToken cancel)
    {
        // Work that hangs is given up before another worker may take it.
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        patience.CancelAfter(OutboxStore.PatienceFor(message.Kind).ToTimeSpan());
        try
        {
            await work.DoAsync(message, patience.Token);

            // Done is done, also when this node is being stopped.
            await outbox.CompleteAsync(message, CancellationToken.None);
        }
        catch (Exception failed) when (!cancel.IsCancellationRequested)
        {
            Failed(failed, message.Kind, message.SquadId, message.Attempts);
            await outbox.PutBackAsync(message, cancel);
        }
        catch (Exception) when (cancel.IsCancellationRequested)
        {
            // This node is being stopped: another need not wait until it is taken for dead.
            using var soon = new CancellationTokenSource(LongestFarewell);
            await outbox.GiveBackAsync(message, soon.Token);
            throw;
        }
    }

    [LoggerMessage(LogLevel.Warning, "Work '{Kind}' waits for the database: {Reason}")]
    private partial void Waiting(string kind, string reason);

    [LoggerMessage(LogLevel.Error, "Work '{Kind}' for squad {Squad} failed at try {Try}; it will be tried again")]
    private partial void Failed(Exception failed, string kind, Guid squad, int @try);
}
