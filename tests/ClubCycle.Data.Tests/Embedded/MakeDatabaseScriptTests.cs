using ClubCycle.Data.Backups;
using ClubCycle.Data.Embedded;
using ClubCycle.TestKit;
using Npgsql;

namespace ClubCycle.Data.Tests.Embedded;

/// <summary>deploy/make-database.sh on a real server, as the database's image runs it.</summary>
public sealed class MakeDatabaseScriptTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task It_makes_an_owner_an_app_and_a_backup_and_adds_those_that_were_not_there()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows() || (await PostgresPrograms.FindAsync(PostgresPrograms.UsualFolders(), Cancel)).Count == 0, "No shell or no PostgreSQL programs here");
        using var folder = TemporaryFolder.ReachableByAll();
        await using var server = await PrivatePostgres.StartAsync(new PrivatePostgresSettings { DataFolder = folder.Path, Durable = false }, Cancel);
        await File.WriteAllTextAsync(Path.Combine(folder.Path, "clubcycle_password"), "owner's word", Cancel);
        await File.WriteAllTextAsync(Path.Combine(folder.Path, "clubcycle_app_password"), "app's word", Cancel);
        await File.WriteAllTextAsync(Path.Combine(folder.Path, "clubcycle_backup_password"), "backup's word", Cancel);
        await using var superuser = await PlainSql.OpenEverywhereAsync(server.SuperuserConnectionString, Cancel);
        await superuser.RunAsync("drop database clubcycle with (force)", Cancel);
        await superuser.RunAsync("drop role clubcycle, clubcycle_app, clubcycle_backup", Cancel);

        await MakeAsync();
        await superuser.RunAsync("drop role clubcycle_app, clubcycle_backup", Cancel);
        await MakeAsync();

        await using var choice = await DatabaseChoice.OpenAsync(
            new NpgsqlConnectionStringBuilder(server.ConnectionString) { Password = "app's word", Pooling = false }.ConnectionString,
            new NpgsqlConnectionStringBuilder(server.OwnerConnectionString) { Password = "owner's word" }.ConnectionString, PrivatePostgres.Backup, cancel: Cancel);
        await DataSetup.MigrateAsync(choice.OwnerConnectionString, Cancel);
        foreach (var signsIn in new[] { choice.ConnectionString, new NpgsqlConnectionStringBuilder(server.BackupConnectionString) { Password = "backup's word" }.ConnectionString })
        {
            await using var role = await PlainSql.OpenEverywhereAsync(signsIn, Cancel);
            Assert.Equal(0, await role.OneAsync<long>("select count(*) from club.clubs", Cancel));
        }

        async Task MakeAsync()
        {
            var admin = new NpgsqlConnectionStringBuilder(server.SuperuserConnectionString);
            var run = await ProgramRun.OfAsync("bash", [Path.Combine(RootOf(AppContext.BaseDirectory), "deploy", "make-database.sh")], "/", Cancel, new Dictionary<string, string>
            {
                ["SECRETS"] = folder.Path, ["PGHOST"] = admin.Host!, ["PGPORT"] = $"{admin.Port}", ["PGPASSWORD"] = admin.Password!,
            });
            Assert.True(run.Succeeded, run.Output);
        }
    }

    private static string RootOf(string folder) =>
        File.Exists(Path.Combine(folder, "ClubCycle.sln")) ? folder : RootOf(Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("The tests do not run below ClubCycle.sln"));
}
