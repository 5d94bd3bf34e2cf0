using ClubCycle.Data;
using ClubCycle.Data.Feeds;
using ClubCycle.Data.Outbox;
using ClubCycle.Data.Plans;

namespace ClubCycle.Web.Features.Feeds;

/// <summary>Renders the feeds of squads whose plan was published. Work left over from before a stop or a crash is done at the start.</summary>
internal sealed class FeedWorker(OutboxStore outbox, IServiceScopeFactory scopes, ILogger<FeedWorker> log) : BackgroundService
{
    private static readonly TimeSpan LookAgain = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan AfterTrouble = TimeSpan.FromSeconds(10);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            var wait = LookAgain;
            try
            {
                while (await outbox.TakeAsync(stoppingToken) is { } message)
                {
                    await DoAsync(message, stoppingToken);
                }
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
            catch (Exception trouble)
            {
                // The database is away for a while: the work stays in the outbox.
                log.LogWarning("Feeds wait for the database: {Reason}", trouble.Message);
                wait = AfterTrouble;
            }

            await Task.Delay(wait, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    private async Task DoAsync(OutboxMessage message, CancellationToken cancel)
    {
        try
        {
            await RenderAsync(message, cancel);
            await outbox.CompleteAsync(message, cancel);
        }
        catch (Exception failed) when (!cancel.IsCancellationRequested)
        {
            log.LogError(failed, "The feed of squad {Squad} could not be rendered at try {Try}; it will be tried again", message.SquadId, message.Attempts);
            await outbox.PutBackAsync(message, cancel);
        }
    }

    private async Task RenderAsync(OutboxMessage message, CancellationToken cancel)
    {
        if (message.Kind != OutboxKinds.RenderFeeds)
        {
            throw new InvalidOperationException($"Unknown work '{message.Kind}' in the outbox.");
        }

        await using var scope = scopes.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<CurrentClub>().Use(message.ClubId);
        var published = (await scope.ServiceProvider.GetRequiredService<PlanStore>().PublishedAsync(message.SquadId, cancel)).OrThrow();
        var feeds = scope.ServiceProvider.GetRequiredService<FeedStore>();
        foreach (var variant in FeedRendering.Variants)
        {
            await feeds.SaveAsync(message.SquadId, variant, FeedRendering.Render(published, variant), cancel);
        }
    }
}
