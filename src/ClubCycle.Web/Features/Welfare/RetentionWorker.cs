using ClubCycle.Data;
using ClubCycle.Data.Clubs;
using ClubCycle.Data.Players;
using NodaTime;

namespace ClubCycle.Web.Features.Welfare;

/// <summary>Lets go of old data once a day, club by club. What fails is tried again an hour later.</summary>
internal sealed partial class RetentionWorker(IServiceScopeFactory scopes, IClock clock, ILogger<RetentionWorker> log) : BackgroundService
{
    private static readonly TimeSpan Rest = TimeSpan.FromHours(1);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        LocalDate? done = null;
        while (!stoppingToken.IsCancellationRequested)
        {
            await Task.Delay(Rest, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            var today = clock.GetCurrentInstant().InUtc().Date;
            if (stoppingToken.IsCancellationRequested || done == today)
            {
                continue;
            }

            try
            {
                await SweepAsync(scopes, stoppingToken);
                done = today;
            }
            catch (Exception failed) when (failed is not OperationCanceledException)
            {
                Failed(failed);
            }
        }
    }

    internal static async Task SweepAsync(IServiceScopeFactory scopes, CancellationToken cancel)
    {
        await using var all = scopes.CreateAsyncScope();
        foreach (var club in await all.ServiceProvider.GetRequiredService<ClubStore>().AllIdsAsync(cancel))
        {
            await using var scope = scopes.CreateAsyncScope();
            scope.ServiceProvider.GetRequiredService<CurrentClub>().Use(club);
            await scope.ServiceProvider.GetRequiredService<RetentionStore>().SweepAsync(cancel);
        }
    }

    [LoggerMessage(LogLevel.Error, "Old data was not let go of; it will be tried again in an hour")]
    private partial void Failed(Exception failed);
}
