using System.Diagnostics;
using System.Globalization;

namespace ClubCycle.Benchmarks;

/// <summary>The engine's speed as <c>name: value</c> lines; ratios are taken in one run because machines differ.</summary>
internal static class Figures
{
    private const int WarmUps = 200;
    private const int Rounds = 301;

    public static void Print()
    {
        var year = new SquadYear();
        for (var i = 0; i < WarmUps; i++)
        {
            year.Plan();
        }

        Say("squad-year median ms", Median(Rounds, () => year.Plan()));
        Profile.Run(year.Request, a => Median(Rounds, a), Allocated);
        Say("squad-year allocated MB", Allocated(() => year.Plan()));
    }

    private static double Median(int rounds, Action work)
    {
        var times = new double[rounds];
        for (var i = 0; i < rounds; i++)
        {
            var from = Stopwatch.GetTimestamp();
            work();
            times[i] = Stopwatch.GetElapsedTime(from).TotalMilliseconds;
        }

        Array.Sort(times);
        return times[rounds / 2];
    }

    private static double Allocated(Action work)
    {
        var from = GC.GetAllocatedBytesForCurrentThread();
        work();
        return (GC.GetAllocatedBytesForCurrentThread() - from) / 1e6;
    }

    private static void Say(string name, double value) => Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name}: {value:0.###}"));
}
