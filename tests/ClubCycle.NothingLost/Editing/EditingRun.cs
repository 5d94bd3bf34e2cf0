using System.Diagnostics;
using System.Globalization;
using ClubCycle.Data;
using ClubCycle.Data.Embedded;
using ClubCycle.TestKit;

namespace ClubCycle.NothingLost.Editing;

/// <summary>Many histories, as many at once as there are processors, on a server of their own that need not survive a power cut.</summary>
internal static class EditingRun
{
    /// <summary>False when something was lost.</summary>
    public static async Task<bool> PrintAsync(int histories)
    {
        using var folder = TemporaryFolder.ReachableByAll("clubcycle-editing-");
        using var after = AfterUs.EndServer(folder.Path);
        await using var server = await PrivatePostgres.StartAsync(new PrivatePostgresSettings { DataFolder = folder.Path, Durable = false });
        await using var first = EditingHistory.Node(server.ConnectionString);
        await using var second = EditingHistory.Node(server.ConnectionString);
        await DataSetup.MigrateAsync(server.OwnerConnectionString);

        var seed = Environment.TickCount & int.MaxValue / 2;
        Console.WriteLine($"seeds {seed} to {seed + histories - 1}");
        var (acknowledged, refused, done, wrong) = (0, 0, 0, 0);
        var watch = Stopwatch.StartNew();
        await Parallel.ForAsync(0, histories, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, async (i, _) =>
        {
            try
            {
                var result = await EditingHistory.PlayAsync([first, second], seed + i);
                Interlocked.Add(ref acknowledged, result.Acknowledged);
                Interlocked.Add(ref refused, result.Refused);
            }
            catch (InvalidOperationException lost)
            {
                Interlocked.Increment(ref wrong);
                Console.WriteLine(lost.Message);
            }

            if (Interlocked.Increment(ref done) % 500 == 0)
            {
                Console.WriteLine($"{done} histories after {watch.Elapsed.TotalSeconds:0} s");
            }
        });
        Say("histories of 8 coaches", histories);
        Say("histories a second", histories / watch.Elapsed.TotalSeconds);
        Say("acknowledged writes", acknowledged);
        Say("refused writes", refused);
        Say("histories that lost or crossed a write", wrong);
        return wrong == 0;
    }

    private static void Say(string name, double value) => Console.WriteLine($"{name}: {value.ToString("0.#", CultureInfo.InvariantCulture)}");
}
