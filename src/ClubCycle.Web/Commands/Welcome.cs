using ClubCycle.Web.Account;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;

namespace ClubCycle.Web.Commands;

/// <summary>What the app says once it is ready: where it is, and how to get in.</summary>
internal static class Welcome
{
    public static async Task PrintAsync(WebApplication app, ServeOptions options, string database, TextWriter output)
    {
        if (app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()?.Addresses.FirstOrDefault() is not { } bound)
        {
            // A test host has no address.
            return;
        }

        var address = Reachable(bound);
        await output.WriteLineAsync($"Database: {database}");
        await output.WriteLineAsync($"ClubCycle: {address}");
        await using var scope = app.Services.CreateAsyncScope();
        if (!await scope.ServiceProvider.GetRequiredService<Setup>().IsDoneAsync(CancellationToken.None))
        {
            await output.WriteLineAsync($"Set up your club: {address}{AccountEndpoints.SetupPath}");
        }

        await output.WriteLineAsync("Stop with Ctrl-C.");
        await output.FlushAsync();
    }

    /// <summary>An address to click: "every interface" is no place to go to.</summary>
    private static string Reachable(string bound) =>
        bound.Replace("://0.0.0.0", "://localhost", StringComparison.Ordinal).Replace("://[::]", "://localhost", StringComparison.Ordinal).Replace("://+", "://localhost", StringComparison.Ordinal).Replace("://*", "://localhost", StringComparison.Ordinal).TrimEnd('/');
}
