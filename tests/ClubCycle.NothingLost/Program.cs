using System.Globalization;
using ClubCycle.Data;
using ClubCycle.NothingLost.Editing;
using ClubCycle.NothingLost.Kills;
using ClubCycle.NothingLost.Upgrades;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace ClubCycle.NothingLost;

/// <summary><c>editing [HISTORIES]</c>, <c>kills [ROUNDS]</c>, <c>upgrade FOLDER</c> (the programs of the older version); ends with 1 when something was lost or refused.</summary>
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
            case ["upgrade", var older]:
                return await UpgradeAsync(older) ? 0 : 1;
            case ["club", var connection, var now, var squads, var players]:
                await using (var services = new ServiceCollection().AddSingleton<IClock>(new RunningClock(InstantOf(now))).AddClubCycleData(connection).BuildServiceProvider())
                {
                    Console.WriteLine((await CoachedClub.MakeAsync(services, NumberOf([squads], 1), NumberOf([players], 1))).Lines);
                }

                return 0;
            case ["editor", var connection, var club, var now, var seed, .. var squads]:
                await Editor.RunAsync(connection, Guid.Parse(club), InstantOf(now), NumberOf([seed], 0), [.. squads.Select(Guid.Parse)]);
                return 0;
            default:
                await Console.Error.WriteLineAsync("Say editing [HISTORIES], kills [ROUNDS] or upgrade FOLDER.");
                return 2;
        }
    }

    private static int NumberOf(string[] many, int usual) => many is [var n] ? int.Parse(n, CultureInfo.InvariantCulture) : usual;

    private static Instant InstantOf(string milliseconds) => Instant.FromUnixTimeMilliseconds(long.Parse(milliseconds, CultureInfo.InvariantCulture));

    private static Build ThisBuild => Build.In(new DirectoryInfo(AppContext.BaseDirectory).Parent!.Parent!.FullName);

    private static async Task<bool> UpgradeAsync(string older)
    {
        var load = await LoadAsync();
        var figures = await UpgradeRun.RunAsync(Build.In(older), ThisBuild, step => Console.WriteLine($"step: {step}"));
        var refused = figures.Answers.Where(a => a.Status is not (200 or 304)).GroupBy(a => (a.Step, a.Status, a.RetryAfter))
            .Select(g => $"{g.Count()} feed requests answered {g.Key.Status} during \"{g.Key.Step}\", to come again after {g.Key.RetryAfter?.ToString(CultureInfo.InvariantCulture) ?? "no"} s");
        foreach (var wrong in figures.Lost.Concat(figures.Journal.Failed).Concat(refused))
        {
            Console.WriteLine($"WRONG: {wrong}");
        }

        Say("acknowledged saves", figures.Journal.Saved);
        Say("acknowledged publishings", figures.Journal.Published);
        Say("refused because somebody else saved first", figures.Journal.Conflicts);
        Say("failed saves", figures.Journal.Failed.Count);
        Say("lost or half-published", figures.Lost.Count);
        Say("feed requests", figures.Answers.Count);
        Say("feed requests left out, as the machine did not keep up", figures.LeftOut);
        foreach (var status in figures.Answers.GroupBy(a => a.Status).OrderBy(g => g.Key))
        {
            Say(status.Key == 0 ? "feed requests without an answer" : $"feed requests answered {status.Key}", status.Count());
        }

        Say("feed answers with 5xx", figures.ServerErrors);
        Say("feed ms, p50", Milliseconds(figures.Answers, 0.5));
        Say("feed ms, p99", Milliseconds(figures.Answers, 0.99));
        Say("feed ms, worst", Milliseconds(figures.Answers, 1));
        foreach (var step in figures.Answers.GroupBy(a => a.Step))
        {
            Say($"feed ms, p99, {step.Key}", Milliseconds([.. step], 0.99));
        }

        foreach (var (step, took) in figures.Steps)
        {
            Say($"s to {step}", took.TotalSeconds);
        }

        Say("s without a ready node", figures.NoneReady.TotalSeconds);
        Console.WriteLine($"load average at the start: {load}");
        Console.WriteLine($"load average at the end: {await LoadAsync()}");
        return figures.AllIsWell;
    }

    private static double Milliseconds(IReadOnlyCollection<FeedAnswer> answers, double part) => answers.Select(a => a.Milliseconds).Order().ElementAt((int)((answers.Count - 1) * part));

    private static async Task<string> LoadAsync() => (await File.ReadAllTextAsync("/proc/loadavg")).Split(' ')[0];

    private static async Task<bool> KillsAsync(int rounds)
    {
        var seed = Environment.TickCount & 0xFFFF;
        Console.WriteLine($"seed: {seed}");
        var figures = await KillRounds.RunAsync(ThisBuild.Web, rounds, seed, Console.WriteLine);
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
        Console.WriteLine($"load average: {await LoadAsync()}");
        return figures.Wrong.Count == 0;
    }

    private static double Seconds(IReadOnlyList<TimeSpan> times, double part) => times.Count == 0 ? 0 : times.Order().ElementAt((int)((times.Count - 1) * part)).TotalSeconds;

    private static void Say(string name, double value) => Console.WriteLine($"{name}: {value.ToString("0.#", CultureInfo.InvariantCulture)}");
}
