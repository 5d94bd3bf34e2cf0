using ClubCycle.Data;
using ClubCycle.Data.Feeds;
using ClubCycle.Data.Outbox;
using ClubCycle.Data.Plans;
using ClubCycle.Web.Features.Outbox;

namespace ClubCycle.Web.Features.Feeds;

/// <summary>Renders the feeds of a squad whose plan was published.</summary>
internal sealed class RenderFeeds(IServiceScopeFactory scopes) : IOutboxWork
{
    public string Kind => OutboxKinds.RenderFeeds;

    public async Task DoAsync(OutboxMessage message, CancellationToken cancel)
    {
        await using var scope = scopes.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<CurrentClub>().Use(message.ClubId);
        var published = (await scope.ServiceProvider.GetRequiredService<PlanStore>().PublishedAsync(message.SquadId, cancel)).OrThrow();
        var feeds = scope.ServiceProvider.GetRequiredService<FeedStore>();
        var variants = scope.ServiceProvider.GetRequiredService<FeedVariants>();
        List<string> rendered = [];
        foreach (var options in await variants.InUseAsync(message.SquadId, published.Ages, cancel))
        {
            foreach (var waiting in new[] { false, true })
            {
                var variant = FeedRendering.VariantOf(options, waiting);
                await feeds.SaveAsync(message.SquadId, variant, FeedRendering.Render(published, options, waiting), cancel);
                rendered.Add(variant);
            }
        }

        await variants.KeepOnlyAsync(message.SquadId, rendered, cancel);
    }
}
