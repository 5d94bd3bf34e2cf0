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
        foreach (var variant in FeedRendering.Variants)
        {
            await feeds.SaveAsync(message.SquadId, variant, FeedRendering.Render(published, variant), cancel);
        }
    }
}
