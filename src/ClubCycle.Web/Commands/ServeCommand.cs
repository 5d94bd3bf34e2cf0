namespace ClubCycle.Web.Commands;

/// <summary>Starts the web app.</summary>
internal static class ServeCommand
{
    public static async Task<int> RunAsync(string[] arguments)
    {
        var app = WebApplication.CreateBuilder(arguments).Build();
        app.MapGet("/healthz", () => "ok");
        await app.RunAsync();
        return ExitCode.Done;
    }
}
