using System.Diagnostics;
using System.Globalization;
using ClubCycle.PlacementModel;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Weeks;
using ClubCycle.Planning.Weeks.Placement;

namespace ClubCycle.Benchmarks;

/// <summary>The engine's speed as <c>name: value</c> lines. Ratios are taken in one run, because machines differ.</summary>
internal static class Figures
{
    private const int WarmUps = 500;
    private const int Rounds = 501;
    private const int ManySquads = 1_000;
    private const int FewSquads = 250;

    public static void Print()
    {
        var year = new SquadYear();
        Repeat(WarmUps, () => year.Plan());
        Say("squad-year median ms", Median(Rounds, () => year.Plan()), "0.000");
        Say("squad-year allocated MB", AllocatedMegabytes(() => year.Plan()), "0.000");

        var few = Milliseconds(() => Repeat(FewSquads, () => year.Plan()));
        var many = Milliseconds(() => Repeat(ManySquads, () => year.Plan()));
        Say($"{ManySquads} squad-years s", many / 1_000, "0.00");
        Say($"{ManySquads} squad-years against {FewSquads}, per squad-year (1 is linear)", many / ManySquads / (few / FewSquads), "0.00");

        // Placement alone, the engine and the constraint solver on the same weeks.
        var phases = CyclePhases.Of(year.Request.Season, year.Request.Template, year.Request.FirstWeekday).OrThrow();
        List<WeekToPlace> weeks = [.. WeekFrames.Of(year.Request, phases.Weeks).Select(f => f.ToPlace)];
        Repeat(WarmUps, () => CyclePlacement.Place(weeks));
        var engine = Median(Rounds, () => CyclePlacement.Place(weeks));
        var solver = Median(3, () => ConstraintModel.Cheapest(weeks));
        Say("placement of the year, engine ms", engine, "0.000");
        Say("placement of the year, constraint solver ms", solver, "0");
        Say("constraint solver against engine, times", solver / engine, "0");
        Say("same cost (1 is yes)", CyclePlacement.Place(weeks).Cost == ConstraintModel.Cheapest(weeks).Cost ? 1 : 0, "0");
    }

    private static void Repeat(int times, Action work)
    {
        for (var i = 0; i < times; i++)
        {
            work();
        }
    }

    private static double Median(int rounds, Action work)
    {
        var times = new double[rounds];
        for (var i = 0; i < rounds; i++)
        {
            times[i] = Milliseconds(work);
        }

        Array.Sort(times);
        return times[rounds / 2];
    }

    private static double Milliseconds(Action work)
    {
        var from = Stopwatch.GetTimestamp();
        work();
        return Stopwatch.GetElapsedTime(from).TotalMilliseconds;
    }

    private static double AllocatedMegabytes(Action work)
    {
        var from = GC.GetAllocatedBytesForCurrentThread();
        work();
        return (GC.GetAllocatedBytesForCurrentThread() - from) / 1e6;
    }

    private static void Say(string name, double value, string format) => Console.WriteLine($"{name}: {value.ToString(format, CultureInfo.InvariantCulture)}");
}
