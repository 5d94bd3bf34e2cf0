using System.Diagnostics;
using System.Globalization;
using ClubCycle.Data;
using ClubCycle.Data.Clubs;
using ClubCycle.Data.Plans;
using ClubCycle.Data.Seasons;
using ClubCycle.Data.Squads;
using ClubCycle.Planning;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace ClubCycle.Benchmarks;

/// <summary>
/// A head coach changes the season dates and publishes every squad, against a raw binary COPY of the same rows into tables with the same columns,
/// keys and indexes and without row security. The two alternate, on one durable server, and the medians count.
/// </summary>
internal static class PublishingFigures
{
    private const int Squads = 24;
    private const int WarmUps = 3;
    private const int Rounds = 11;
    private static readonly Guid By = NamedId.From("benchmark", "coach");

    public static async Task PrintAsync()
    {
        await using var server = await OwnServer.StartAsync();
        var clock = new SetClock();
        await using var services = new ServiceCollection().AddSingleton<IClock>(clock).AddClubCycleData(server.ConnectionString).BuildServiceProvider();
        using var scope = services.CreateScope();
        var club = await NewClubAsync(scope.ServiceProvider);
        var plans = scope.ServiceProvider.GetRequiredService<PlanStore>();
        await using var raw = await RawCopy.OpenAsync(server.OwnerConnectionString, club.Id);

        List<double> publishing = [], copying = [];
        for (var round = 0; round < WarmUps + Rounds; round++)
        {
            clock.Now += Duration.FromMinutes(1);
            await club.ChangeSeasonAsync(round);
            List<SquadToPublish> asked = [.. club.SquadIds.Select(id => new SquadToPublish(id, round, NewId.Create()))];
            var took = await MillisecondsAsync(async () => Array.ForEach([.. await plans.PublishManyAsync(asked, By, "New season dates")], o => o.Result.OrThrow()));
            await raw.TakeAsync(clock.Now);
            var copied = await MillisecondsAsync(raw.CopyAsync);
            if (round >= WarmUps)
            {
                publishing.Add(took);
                copying.Add(copied);
            }
        }

        Say($"publish {Squads} squads after new season dates, plan text MB", raw.Megabytes, "0.0");
        Say($"publish {Squads} squads after new season dates, session rows written", raw.Sessions, "0");
        Say($"publish {Squads} squads after new season dates ms", Median(publishing), "0");
        Say("raw binary COPY of the same rows ms", Median(copying), "0");
        Say("publishing against raw COPY, times", Median(publishing) / Median(copying), "0.00");
    }

    private static async Task<BenchmarkClub> NewClubAsync(IServiceProvider services)
    {
        var id = (await services.GetRequiredService<ClubStore>().CreateAsync("Benchmark club", "Europe/Lisbon", IsoDayOfWeek.Monday)).OrThrow();
        services.GetRequiredService<CurrentClub>().Use(id);
        var seasons = services.GetRequiredService<SeasonStore>();
        var season = (await seasons.AddAsync(null, BenchmarkClub.Before, BenchmarkClub.Stints(0), By)).OrThrow();
        List<Guid> squads = [];
        for (var i = 0; i < Squads; i++)
        {
            squads.Add((await services.GetRequiredService<SquadStore>().AddAsync(SquadOf(i), null, By)).OrThrow());
        }

        return new BenchmarkClub(id, season, squads, seasons);
    }

    private static Squad SquadOf(int i) => new(
        Guid.Empty, $"Squad {i + 1}", AgeGroup.All[i % AgeGroup.All.Count], TrainingAge.Some,
        [new Practice(IsoDayOfWeek.Tuesday, new LocalTime(18, 0), 75, Practice.UsualPhases), new Practice(IsoDayOfWeek.Thursday, new LocalTime(18, 0), 75, Practice.UsualPhases)],
        IsoDayOfWeek.Saturday, new LocalTime(12, 0), []);

    private static async Task<double> MillisecondsAsync(Func<Task> work)
    {
        var from = Stopwatch.GetTimestamp();
        await work();
        return Stopwatch.GetElapsedTime(from).TotalMilliseconds;
    }

    private static double Median(List<double> times) => times.Order().ElementAt(times.Count / 2);

    private static void Say(string name, double value, string format) => Console.WriteLine($"{name}: {value.ToString(format, CultureInfo.InvariantCulture)}");

    private sealed class SetClock : IClock
    {
        /// <summary>The first day of the cycle, so that every session is still to come.</summary>
        public Instant Now { get; set; } = Instant.FromUtc(2026, 3, 1, 12, 0);

        public Instant GetCurrentInstant() => Now;
    }

    private sealed record BenchmarkClub(Guid Id, Guid Season, IReadOnlyList<Guid> SquadIds, SeasonStore Seasons)
    {
        public static readonly LocalDate Before = new(2026, 2, 28);

        private int _version = 1;

        /// <summary>Two weeks later every other round.</summary>
        public static IReadOnlyList<Stint> Stints(int round)
        {
            var later = round % 2 * 14;
            return [new(new LocalDate(2026, 10, 1).PlusDays(later), new LocalDate(2026, 11, 30).PlusDays(later)), new(new LocalDate(2027, 1, 1).PlusDays(later), new LocalDate(2027, 2, 28).PlusDays(later))];
        }

        public async Task ChangeSeasonAsync(int round) => _version = (await Seasons.SaveAsync(Season, Before, Stints(round), _version, By)).OrThrow();
    }
}
