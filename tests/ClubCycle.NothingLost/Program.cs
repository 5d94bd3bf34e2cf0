using System.Globalization;
using ClubCycle.NothingLost.Editing;
using ClubCycle.NothingLost.Kills;
using NodaTime;

namespace ClubCycle.NothingLost;

/// <summary><c>editing [HISTORIES]</c>, <c>kills [ROUNDS]</c>; ends with 1 when something was lost.</summary>
internal static class Program
{
    private static async Task<int> Main(string[] args)
    {
        switch (args)
        {
            case ["editing", .. var many]:
                return await EditingRun.PrintAsync(NumberOf(many, 10_000)) ? 0 : 1;
            case ["kills", .. var many]:
                return await KillsAsync(NumberOf(many, 200)) ? 0 : 1;
            case ["editor", var connection, var club, var now, var seed, .. var squads]:
                await Editor.RunAsync(
                    connection, Guid.Parse(club), Instant.FromUnixTimeMilliseconds(long.Parse(now, CultureInfo.InvariantCulture)), int.Parse(seed, CultureInfo.InvariantCulture), [.. squads.Select(Guid.Parse)]);
                return 0;
            default:
                await Console.Error.WriteLineAsync("Say editing [HISTORIES] or kills [ROUNDS].");
                return 2;
        }
    }

    private static int NumberOf(string[] many, int usual) => many is [var n] ? int.Parse(n, CultureInfo.InvariantCulture) : usual;

    private static async Task<bool> KillsAsync(int rounds)
    {
        var here = new DirectoryInfo(AppContext.BaseDirectory);
        var web = Path.Combine(here.Parent!.Parent!.FullName, "ClubCycle.Web", here.Name, "ClubCycle.Web.dll");
        var seed = Environment.TickCount & 0xFFFF;
        Console.WriteLine($"seed: {seed}");
        var figures = await KillRounds.RunAsync(web, rounds, seed, Console.WriteLine);
        foreach (var wrong in figures.Wrong)
        {
            Console.WriteLine($"WRONG: {wrong}");
        }

        Say("kills of PostgreSQL", figures.DatabaseReady.Count);
        Say("kills of the web node", figures.WebReady.Count);
        Say("kills of the editing process", figures.Editors);
        Say("acknowledged saves", figures.Saved);
        Say("acknowledged publishings", figures.Published);
        Say("lost or half-published", figures.Wrong.Count);
        Say("database ready again after s, median", Seconds(figures.DatabaseReady, 0.5));
        Say("database ready again after s, worst", Seconds(figures.DatabaseReady, 1));
        Say("web node ready again after s, median", Seconds(figures.WebReady, 0.5));
        Say("web node ready again after s, worst", Seconds(figures.WebReady, 1));
        Console.WriteLine($"load average: {(await File.ReadAllTextAsync("/proc/loadavg")).Split(' ')[0]}");
        return figures.Wrong.Count == 0;
    }

    private static double Seconds(IReadOnlyList<TimeSpan> times, double part) => times.Count == 0 ? 0 : times.Order().ElementAt((int)((times.Count - 1) * part)).TotalSeconds;

    private static void Say(string name, double value) => Console.WriteLine($"{name}: {value.ToString("0.#", CultureInfo.InvariantCulture)}");
}
