using ClubCycle.Data;
using ClubCycle.Data.Embedded;
using ClubCycle.Web.Hosting;

namespace ClubCycle.Web.Commands;

/// <summary>Brings the schema up to date: once a release, before the app starts.</summary>
internal static class MigrateCommand
{
    public static async Task<int> RunAsync(string[] arguments, TextWriter output, TextWriter errors)
    {
        try
        {
            var settings = CommandSettings.Read(arguments);
            await using var database = await DatabaseChoice.OpenAsync(settings.DatabaseAddress(), settings.OwnerAddress(), settings[BackupRole.Setting]);
            await HalfDoneRestore.RefuseAsync(database.OwnerConnectionString);
            await DataSetup.MigrateAsync(database.OwnerConnectionString);
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
