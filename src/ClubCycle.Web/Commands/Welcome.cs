using ClubCycle.Web.Account;
using ClubCycle.Web.Features.Feeds;
using ClubCycle.Web.Features.Player;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;

namespace ClubCycle.Web.Commands;

/// <summary>What the app says once it is ready: where it is, and how to get in.</summary>
internal static class Welcome
{
    public static async Task PrintAsync(WebApplication app, string database, bool demo, TextWriter output)
    {
        if (app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()?.Addresses.FirstOrDefault() is not { } bound)
        {
            // A test host has no address.
            return;
        }

        var address = Reachable(bound);
        await output.WriteLineAsync($"Database: {database}");
        await output.WriteLineAsync($"Address: {address}");
        if (demo)
        {
            var links = await DemoStart.LinksAsync(app.Services, app.Lifetime.ApplicationStopping);
            await output.WriteLineAsync($"Head coach sign-in: {address}{AccountEndpoints.LinkPath}/{links.HeadCoach}");
            await output.WriteLineAsync($"Squad coach sign-in: {address}{AccountEndpoints.LinkPath}/{links.SquadCoach}");
            await output.WriteLineAsync($"Player page: {address}{PlayerEndpoints.Path}/{links.Player}");
            await output.WriteLineAsync($"Player feed: {address}{FeedEndpoints.Path}/{links.Player}.ics");
        }

        await using var scope = app.Services.CreateAsyncScope();
        if (!await scope.ServiceProvider.GetRequiredService<Setup>().IsDoneAsync(app.Lifetime.ApplicationStopping))
        {
            await output.WriteLineAsync($"Set up your club: {address}{AccountEndpoints.SetupPath}");
        }

        await output.WriteLineAsync("Stop with Ctrl-C.");
        await output.FlushAsync();
    }

    /// <summary>An address to click: "every interface" is no place to go to.</summary>
    private static string Reachable(string bound)
    {
        foreach (var every in new[] { "://0.0.0.0", "://[::]", "://+", "://*" })
        {
            bound = bound.Replace(every, "://localhost", StringComparison.Ordinal);
        }

        return bound.TrimEnd('/');
    }
}
