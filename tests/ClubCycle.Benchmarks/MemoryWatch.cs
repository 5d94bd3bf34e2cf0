using System.Diagnostics;
using System.Globalization;

namespace ClubCycle.Benchmarks;

/// <summary>How much memory a program holds, looked at every ten seconds, so that growth shows.</summary>
internal static class MemoryWatch
{
    private static readonly TimeSpan Between = TimeSpan.FromSeconds(10);

    /// <returns>Once the time is over: a line with the mean of each tenth of it.</returns>
    public static async Task<string> TenthsAsync(int program, TimeSpan time)
    {
        using var looked = Process.GetProcessById(program);
        List<double> megabytes = [];
        using var timer = new PeriodicTimer(Between);
        for (var watch = Stopwatch.StartNew(); watch.Elapsed < time; await timer.WaitForNextTickAsync())
        {
            looked.Refresh();
            megabytes.Add(looked.WorkingSet64 / 1e6);
        }

        var tenths = megabytes.Chunk((megabytes.Count + 9) / 10).Select(tenth => tenth.Average().ToString("0", CultureInfo.InvariantCulture));
        return $"web node MB, by tenths of the time: {string.Join(' ', tenths)}";
    }
}
