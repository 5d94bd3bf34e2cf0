using ClubCycle.Data;
using ClubCycle.Data.Embedded;
using ClubCycle.Planning;
using ClubCycle.Web.Hosting;
using NodaTime;

namespace ClubCycle.Web.Commands;

/// <summary>Starts the web app and, when it was given none, its own PostgreSQL, which stops with it.</summary>
internal static class ServeCommand
{
    private const string DefaultAddress = "http://localhost:5080";

    public static async Task<int> RunAsync(string[] arguments, IClock clock, TextWriter output, TextWriter errors)
    {
        switch (ServeOptions.Read(arguments))
        {
            case Result<ServeOptions>.Failed failed:
                await errors.WriteLineAsync(failed.First.Message);
                return ExitCode.Problems;
            case Result<ServeOptions>.Ok(var options):
                try
                {
                    await RunAsync(options, clock, output);
                    return ExitCode.Done;
                }
                catch (Exception failure) when (StartFailure.MessageOf(failure) is { } message)
                {
                    await errors.WriteLineAsync(message);
                    return ExitCode.Failed;
                }

            case var other:
                throw new InvalidOperationException($"Unknown result {other.GetType()}");
        }
    }

    private static async Task RunAsync(ServeOptions options, IClock clock, TextWriter output)
    {
        var builder = WebApplication.CreateBuilder(options.Settings);
        if (string.IsNullOrEmpty(builder.Configuration[WebHostDefaults.ServerUrlsKey]))
        {
            builder.WebHost.UseUrls(DefaultAddress);
        }

        var given = builder.Configuration.GetConnectionString(DatabaseChoice.ConnectionName);
        await using var database = await DatabaseChoice.OpenAsync(given);
        builder.AddClubCycle(database.ConnectionString, clock);
        await using var app = builder.Build();
        app.UseClubCycle();
        if (options.Migrate || string.IsNullOrWhiteSpace(given))
        {
            await DataSetup.MigrateAsync(app.Services, app.Lifetime.ApplicationStopping);
        }

        await app.StartAsync();
        await Welcome.PrintAsync(app, options, database.Description, output);
        await app.WaitForShutdownAsync();
    }
}
