using ClubCycle.Data;
using ClubCycle.Data.Embedded;
using ClubCycle.Web.Hosting;
using NodaTime;

namespace ClubCycle.Web.Commands;

/// <summary>Brings the schema up to date: once a release, before the app starts.</summary>
internal static class MigrateCommand
{
    public static async Task<int> RunAsync(string[] arguments, IClock clock, TextWriter output, TextWriter errors)
    {
        try
        {
            await using var database = await DatabaseChoice.OpenAsync(CommandSettings.Read(arguments).DatabaseAddress());
            await HalfDoneRestore.RefuseAsync(database.ConnectionString);
            await using var services = new ServiceCollection().AddSingleton(clock).AddLogging().AddClubCycleData(database.ConnectionString).BuildServiceProvider();
            await DataSetup.MigrateAsync(services);
            await output.WriteLineAsync($"Up to date: {database.Description}");
            return ExitCode.Done;
        }
        catch (Exception failure) when (StartFailure.MessageOf(failure) is { } message)
        {
            await errors.WriteLineAsync(message);
            return ExitCode.Failed;
        }
    }
}
