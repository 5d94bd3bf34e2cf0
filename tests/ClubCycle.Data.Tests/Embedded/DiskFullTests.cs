using System.Diagnostics;
using ClubCycle.Data.Clubs;
using ClubCycle.Data.Embedded;
using ClubCycle.Data.Plans;
using ClubCycle.Data.Seasons;
using ClubCycle.Data.Squads;
using ClubCycle.TestKit;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace ClubCycle.Data.Tests.Embedded;

/// <summary>A private database on a small file system that another program fills. Needs the right to mount one.</summary>
public sealed class DiskFullTests
{
    private const string Size = "220m";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_full_disk_refuses_saves_loses_none_and_is_forgotten_when_there_is_room_again()
    {
        using var folder = TemporaryFolder.ReachableByAll();
        Assert.SkipUnless(OperatingSystem.IsLinux() && await RunsAsync("mount", "-t", "tmpfs", "-o", $"size={Size},mode=755", "tmpfs", folder.Path), "This user may not mount a small file system.");
        try
        {
            await FillAndFreeAsync(folder.Path);
        }
        finally
        {
            Assert.True(await RunsAsync("umount", folder.Path), $"{folder.Path} could not be unmounted.");
        }
    }

    private static async Task FillAndFreeAsync(string folder)
    {
        await using var server = await PrivatePostgres.StartAsync(new PrivatePostgresSettings { DataFolder = folder }, Cancel);
        await using var services = new ServiceCollection().AddSingleton<IClock>(new SetClock(ClubData.Start)).AddClubCycleData(server.ConnectionString).BuildServiceProvider();
        await DataSetup.MigrateAsync(server.OwnerConnectionString, Cancel);
        using var scope = services.CreateScope();
        var stores = scope.ServiceProvider;
        stores.GetRequiredService<CurrentClub>().Use((await stores.GetRequiredService<ClubStore>().CreateAsync("Full club", "Europe/Lisbon", IsoDayOfWeek.Monday, Cancel)).OrThrow());
        var plans = stores.GetRequiredService<PlanStore>();
        var squad = (await stores.GetRequiredService<SquadStore>().AddAsync(ClubData.Squad(), null, ClubData.By, Cancel)).OrThrow();
        (await stores.GetRequiredService<SeasonStore>().AddAsync(squad, null, ClubData.Stints, ClubData.By, Cancel)).OrThrow();
        var published = 0;
        Assert.True(await PublishesAsync());

        var filler = Path.Combine(folder, "somebody-elses");
        await FillAsync(filler);
        var refused = false;
        for (var tries = 0; !refused && tries < 400; tries++)
        {
            refused = !await PublishesAsync();
        }

        Assert.True(refused, "The disk never filled up.");
        File.Delete(filler);
        for (var watch = Stopwatch.StartNew(); !await PublishesAsync(); await Task.Delay(200, Cancel))
        {
            Assert.True(watch.Elapsed < TimeSpan.FromSeconds(30), "Nothing is saved although there is room again.");
        }

        // What had no answer may have been stored or not; nothing between the acknowledged ones is missing.
        var numbers = (await stores.GetRequiredService<RevisionStore>().ListAsync(squad, Cancel)).Select(r => r.Number).ToList();
        Assert.Equal(Enumerable.Range(1, numbers.Count).Reverse(), numbers);
        Assert.True(numbers.Count >= published, $"{published} publishings were acknowledged and {numbers.Count} are stored.");

        async Task<bool> PublishesAsync()
        {
            try
            {
                var expected = (await stores.GetRequiredService<RevisionStore>().ListAsync(squad, Cancel)).Count;
                (await plans.PublishAsync(squad, expected, NewId.Create(), ClubData.By, "", Cancel)).OrThrow();
                published++;
                return true;
            }
            catch (Exception full) when (full is not InvalidOperationException { InnerException: null })
            {
                return false;
            }
        }
    }

    /// <summary>Takes what is left.</summary>
    private static async Task FillAsync(string file)
    {
        await using var filler = File.Create(file);
        var block = new byte[1 << 20];
        try
        {
            while (true)
            {
                await filler.WriteAsync(block, Cancel);
                await filler.FlushAsync(Cancel);
            }
        }
        catch (IOException)
        {
            // Full: that was wanted.
        }
    }

    private static async Task<bool> RunsAsync(string program, params string[] arguments)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardError = true })!;
            await process.WaitForExitAsync(Cancel);
            return process.ExitCode == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }
}
