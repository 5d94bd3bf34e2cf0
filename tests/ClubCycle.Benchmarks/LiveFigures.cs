using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using ClubCycle.Data;
using ClubCycle.Data.Accounts;
using ClubCycle.Data.Clubs;
using ClubCycle.Data.Seasons;
using ClubCycle.Data.Squads;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using ClubCycle.TestKit.Live;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace ClubCycle.Benchmarks;

/// <summary>
/// Coaches who each have a squad's week open and take an edit back or do it again every ten seconds: from the press until the page shows it, the squad planned anew.
/// Twenty pages belong to one person, as many as one may have, so that signing in does not take the time. What leads to nothing within 40 s is pressed again.
/// </summary>
internal static class LiveFigures
{
    private const int PagesEach = 20;
    private static readonly TimeSpan BetweenEdits = TimeSpan.FromSeconds(10);

    /// <summary>By then the runtime has compiled what is used.</summary>
    private static readonly TimeSpan WarmAfter = TimeSpan.FromMinutes(1);

    /// <param name="pages">In whole clubs of twenty.</param>
    public static async Task PrintAsync(int minutes, int pages)
    {
        await using var server = await OwnServer.StartAsync();
        var clock = new WallClock();
        await using var services = new ServiceCollection().AddLogging().AddSingleton<IClock>(clock).AddClubCycleData(server.ConnectionString).BuildServiceProvider();
        var monday = clock.GetCurrentInstant().InUtc().Date.With(DateAdjusters.PreviousOrSame(IsoDayOfWeek.Monday));
        List<(string Email, IReadOnlyList<Guid> Squads)> people = [];
        for (var i = 0; i < pages / PagesEach; i++)
        {
            people.Add(await NewClubAsync(services, $"coach{i}@example.org", monday));
        }

        await using var app = await server.WebAsync("--SignIn:TriesPerMinute=1000");
        using var web = Process.GetProcessById(app.Id);
        List<(HttpClient Browser, string Path)> toOpen = [];
        foreach (var (email, squads) in people)
        {
            var browser = OwnServer.Browser(app.Address);
            (await OwnServer.SendAsync(browser, "/account/sign-in", ("email", email), ("password", OwnServer.Password))).Dispose();
            toOpen.AddRange(squads.Select(s => (browser, $"/squads/{s}/week/{monday.PlusWeeks(1):uuuu-MM-dd}")));
        }

        // What the first page loads belongs to all.
        await using var first = await OpenAsync(toOpen[0]);
        web.Refresh();
        var (load, before) = (await OwnServer.LoadAsync(), web.WorkingSet64);
        ConcurrentBag<LivePage> live = [first];
        await Parallel.ForEachAsync(toOpen.Skip(1), new ParallelOptions { MaxDegreeOfParallelism = 4 }, async (page, _) => live.Add(await OpenAsync(page)));
        web.Refresh();
        var open = web.WorkingSet64;
        var (work, ownWork) = (web.TotalProcessorTime, Environment.CpuUsage.TotalTime);

        ConcurrentBag<(TimeSpan Begun, double Milliseconds)> shown = [];
        var memory = MemoryWatch.TenthsAsync(app.Id, TimeSpan.FromMinutes(minutes));
        var watch = Stopwatch.StartNew();
        using var over = new CancellationTokenSource(TimeSpan.FromMinutes(minutes));
        var again = await Task.WhenAll(live.Select(p => EditAsync(p, watch, shown, over.Token)));
        web.Refresh();
        List<double> edits = [.. shown.Select(e => e.Milliseconds)];
        List<double> warm = [.. shown.Where(e => e.Begun > WarmAfter).Select(e => e.Milliseconds)];

        Say("live pages", live.Count);
        Say("pages that ended by themselves", live.Count(p => p.Ended.IsCompleted));
        foreach (var end in live.Where(p => p.Ended.IsCompleted).CountBy(p => p.Ended.Result))
        {
            Console.WriteLine($"ended {end.Value}: {end.Key}");
        }

        Say("minutes", minutes);
        Say("edits", edits.Count);
        Say("edits a second", edits.Count / 60.0 / minutes);
        Say("edit ms, median", Percentile.Of(edits, 0.5));
        Say("edit ms, p95", Percentile.Of(edits, 0.95));
        Say("edit ms, median, after the first minute", Percentile.Of(warm, 0.5));
        Say("edit ms, p95, after the first minute", Percentile.Of(warm, 0.95));
        Say("presses made again after 40 s", again.Sum());
        Say("web node's processor ms an edit", (web.TotalProcessorTime - work).TotalMilliseconds / edits.Count);
        Say("the pages' own processor ms an edit", (Environment.CpuUsage.TotalTime - ownWork).TotalMilliseconds / edits.Count);
        Say("KB of memory a page", (open - before) / 1e3 / (live.Count - 1));
        Say("web node MB, all pages open", open / 1e6);
        Say("web node MB, at the end", web.WorkingSet64 / 1e6);
        Console.WriteLine(await memory);
        Console.WriteLine($"load average at the start: {load}");
        Console.WriteLine($"load average at the end: {await OwnServer.LoadAsync()}");
        foreach (var page in live)
        {
            await page.DisposeAsync();
        }
    }

    private static async Task<LivePage> OpenAsync((HttpClient Browser, string Path) page)
    {
        var live = await LivePage.OpenAsync(page.Browser, page.Path);
        await live.DrawnAsync("data-undo");
        return live;
    }

    /// <returns>How often a press led to nothing and was made again.</returns>
    private static async Task<int> EditAsync(LivePage page, Stopwatch watch, ConcurrentBag<(TimeSpan Begun, double Milliseconds)> shown, CancellationToken over)
    {
        var again = 0;
        var (pressed, awaited) = ("data-undo", "data-redo");
        try
        {
            await Task.Delay(BetweenEdits * Random.Shared.NextDouble(), over);
            while (true)
            {
                var (at, from) = (page.Updates, watch.Elapsed);
                await page.PressAsync(pressed);
                while (!await IsShownAsync(page, awaited, at))
                {
                    over.ThrowIfCancellationRequested();
                    await page.PressAsync(pressed);
                    again++;
                }

                shown.Add((from, (watch.Elapsed - from).TotalMilliseconds));
                (pressed, awaited) = (awaited, pressed);
                await Task.Delay(BetweenEdits, over);
            }
        }
        catch (Exception end) when (end is OperationCanceledException ? over.IsCancellationRequested : end is InvalidOperationException && page.Ended.IsCompleted)
        {
            // The time is over, or the page ended, which is counted at the end.
            return again;
        }
    }

    /// <returns>False when it is not within 40 s.</returns>
    private static async Task<bool> IsShownAsync(LivePage page, string button, int after)
    {
        try
        {
            await page.DrawnAsync(button, after);
            return true;
        }
        catch (OperationCanceledException)
        {
            return false;
        }
    }

    /// <summary>A club whose head coach has closed a day in the coming week of each squad.</summary>
    private static async Task<(string Email, IReadOnlyList<Guid> Squads)> NewClubAsync(IServiceProvider services, string email, LocalDate monday)
    {
        using var scope = services.CreateScope();
        var stores = scope.ServiceProvider;
        var club = (await stores.GetRequiredService<ClubStore>().CreateAsync($"Club of {email}", "Europe/Lisbon", IsoDayOfWeek.Monday)).OrThrow();
        stores.GetRequiredService<CurrentClub>().Use(club);
        var coach = new ClubUser
        {
            Id = NewId.Create(), ClubId = club, DisplayName = "Robin", Role = ClubRole.HeadCoach, SecurityStamp = NewId.Create().ToString("N"),
            Email = email, NormalizedEmail = email.ToUpperInvariant(), UserName = email, NormalizedUserName = email.ToUpperInvariant(), LockoutEnabled = true,
        };
        coach.PasswordHash = new PasswordHasher<ClubUser>().HashPassword(coach, OwnServer.Password);
        await using (var db = await stores.GetRequiredService<IClubDbFactory>().OpenAsync())
        {
            db.Users.Add(coach);
            await db.SaveChangesAsync();
        }

        Stint[] stints = [new(monday.PlusWeeks(20), monday.PlusWeeks(30)), new(monday.PlusWeeks(34), monday.PlusWeeks(46))];
        (await stores.GetRequiredService<SeasonStore>().AddAsync(null, monday.PlusWeeks(-4).PlusDays(-1), stints, coach.Id)).OrThrow();
        List<Guid> squads = [];
        for (var i = 0; i < PagesEach; i++)
        {
            Practice[] practices = [new(IsoDayOfWeek.Tuesday, new LocalTime(18, 0), 75, Practice.UsualPhases), new(IsoDayOfWeek.Thursday, new LocalTime(18, 0), 75, Practice.UsualPhases)];
            var squad = (await stores.GetRequiredService<SquadStore>().AddAsync(
                new Squad(Guid.Empty, $"Squad {i + 1}", AgeGroup.All[i % AgeGroup.All.Count], TrainingAge.Some, practices, IsoDayOfWeek.Saturday, new LocalTime(12, 0), []), null, coach.Id)).OrThrow();
            var day = monday.PlusDays(9);
            (await stores.GetRequiredService<ClosedDayStore>().AddAsync(squad, new ClosedDays(day, day, "Flooded"), coach.Id)).OrThrow();
            squads.Add(squad);
        }

        return (email, squads);
    }

    private static void Say(string name, double value) => Console.WriteLine($"{name}: {value.ToString("0.#", CultureInfo.InvariantCulture)}");
}
