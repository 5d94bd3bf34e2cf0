using ClubCycle.Data.Backups;
using ClubCycle.Data.Links;
using ClubCycle.Data.Players;
using ClubCycle.Data.Squads;
using ClubCycle.Planning.Players;
using ClubCycle.TestKit;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace ClubCycle.Data.Tests.Schema;

/// <summary>A backup of a small club from every released version, in <c>Schema/Released</c>.</summary>
public sealed class ReleasedSchemaTests
{
    private static readonly string Released = Path.Combine(RootOf(AppContext.BaseDirectory), "tests", "ClubCycle.Data.Tests", "Schema", "Released");

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public static TheoryData<string> Versions() => [.. Directory.GetDirectories(Released).Select(path => Path.GetFileName(path)!)];

    [Theory]
    [MemberData(nameof(Versions))]
    public async Task A_club_of_a_released_version_is_brought_up_to_date_and_goes_on_planning(string version)
    {
        await using var database = await TestDatabase.CreateAsync(_ => Task.CompletedTask, "empty");
        var clock = new SetClock(ClubData.Start);

        var restored = (await new RestoreStore(clock).RestoreAsync(database.OwnerConnectionString, Path.Combine(Released, version), replace: false, Cancel)).OrThrow();

        Assert.Equal(version, restored.Manifest.App);
        Assert.Equal(1, restored.Plans);
        await using var services = new ServiceCollection().AddSingleton<IClock>(clock).AddLogging().AddClubCycleData(database.ConnectionString).BuildServiceProvider();
        await using var scope = services.CreateAsyncScope();
        await using (var everywhere = await services.GetRequiredService<IDbContextFactory<ClubCycleDb>>().CreateDbContextAsync(Cancel))
        {
            Assert.Empty(await everywhere.Database.GetPendingMigrationsAsync(Cancel));
            Assert.False(everywhere.Database.HasPendingModelChanges());
        }

        scope.ServiceProvider.GetRequiredService<CurrentClub>().Use(restored.Manifest.Ended.Clubs.Single());
        var club = new TestClub(restored.Manifest.Ended.Clubs.Single(), scope.ServiceProvider);
        var squad = Assert.Single(await club.Store<SquadStore>().ListAsync(Cancel)).Squad.Key;
        var draft = await club.DraftAsync(squad);
        Assert.NotEmpty(draft.Plan.Sessions);
        Assert.Equal(2, (await club.PublishAsync(squad, draft.Revision)).Number);
    }

    [Fact]
    public void This_version_is_kept_too() => Assert.True(
        Directory.Exists(Path.Combine(Released, BackupManifest.AppVersion)), $"Run this class's explicit test once the schema of {BackupManifest.AppVersion} is final: it writes the backup to keep.");

    /// <summary>Run by name at a release: <c>-method "*A_backup_of_this_version_is_written*" -explicit only</c>.</summary>
    [Fact(Explicit = true)]
    public async Task A_backup_of_this_version_is_written()
    {
        var data = new ClubData();
        await data.InitializeAsync();
        var club = await data.NewClubAsync();
        var squad = await club.PlannedSquadAsync();
        var player = await club.PlayerAsync(squad, "Player One");
        (await club.Store<LinkStore>().CreateAsync(squad, player, "phone", ClubData.By, Cancel)).OrThrow();
        (await club.Store<TestResultStore>().AddAsync(squad, player, new FieldTestResult(TestKind.ShuttleRun, new LocalDate(2026, 2, 20), 9), ClubData.By, Cancel)).OrThrow();
        await club.PublishAsync(squad);
        using var folder = TemporaryFolder.ReachableByAll();
        var made = (await new BackupStore(data.Clock).MakeAsync(data.BackupConnectionString, folder.Path, null, Cancel)).OrThrow();
        var kept = Directory.CreateDirectory(Path.Combine(Released, BackupManifest.AppVersion)).FullName;
        foreach (var file in Directory.GetFiles(made.Path))
        {
            File.Copy(file, Path.Combine(kept, Path.GetFileName(file)), overwrite: true);
        }

        await data.DisposeAsync();
    }

    private static string RootOf(string folder) =>
        File.Exists(Path.Combine(folder, "ClubCycle.sln")) ? folder : RootOf(Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("The tests do not run below ClubCycle.sln"));
}
