using ClubCycle.Data;
using ClubCycle.Data.Embedded;
using ClubCycle.Planning;
using ClubCycle.Planning.Workouts;
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
                catch (OperationCanceledException stopped) when (stopped.CancellationToken.IsCancellationRequested)
                {
                    // Stopped before it was up.
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
        // Read and checked now: a wrong entry stops the start, not a coach at work.
        _ = ExerciseLibrary.All;
        var builder = WebApplication.CreateBuilder(options.Settings);
        if (string.IsNullOrEmpty(builder.Configuration[WebHostDefaults.ServerUrlsKey]))
        {
            builder.WebHost.UseUrls(DefaultAddress);
        }

        builder.Configuration.AddSecretFiles();
        var given = builder.Configuration.DatabaseAddress();
        using var early = new EarlyStop();
        await using var database = await DatabaseChoice.OpenAsync(
            given, options.Migrate ? builder.Configuration.OwnerAddress() : null, options.Migrate ? builder.Configuration[BackupRole.Setting] : null, cancel: early.Token);
        await HalfDoneRestore.RefuseAsync(database.ConnectionString, early.Token);
        builder.AddClubCycle(database.ConnectionString, clock);
        await using var app = builder.Build();
        app.UseClubCycle();
        if (options.Migrate || string.IsNullOrWhiteSpace(given))
        {
            await DataSetup.MigrateAsync(database.OwnerConnectionString, early.Token);
        }

        var demo = options.Demo && await DemoStart.FillAsync(app.Services, early.Token);
        if (options.Demo && !demo)
        {
            await output.WriteLineAsync("This database holds a club of its own, so the demo club was not added. Name another folder with CLUBCYCLE_DATA to see it.");
        }

        early.Dispose();
        await app.StartAsync();
        await Welcome.PrintAsync(app, database.Description, demo, output);
        await app.WaitForShutdownAsync();
    }
}
