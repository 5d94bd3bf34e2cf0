using ClubCycle.Data;
using ClubCycle.Data.Plans;
using ClubCycle.Data.Seasons;
using ClubCycle.Data.Squads;
using ClubCycle.Planning;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Npgsql;

namespace ClubCycle.TestKit;

/// <summary>As many squads and weeks as the year board must hold: every age, seasons of several shapes, years of 52 to 60 weeks around today.</summary>
public static class FullClub
{
    public const int Squads = 24;

    private static readonly Guid By = NamedId.From("full club", "coach");

    /// <summary>First and last weeks of the stints, counted from the year's first; the last one ends the year.</summary>
    private static readonly (int First, int Last)[][] Shapes =
    [
        [(30, 40), (44, 58)],
        [(36, 52)],
        [(6, 14), (22, 34), (42, 60)],
        [(38, 46), (50, 56)],
    ];

    /// <summary>Fills the only club of a database, which has no squads yet. All but every sixth squad are published.</summary>
    public static async Task FillAsync(string connectionString, IClock clock)
    {
        await using var services = new ServiceCollection().AddLogging().AddSingleton(clock).AddClubCycleData(connectionString).BuildServiceProvider();
        using var scope = services.CreateScope();
        scope.ServiceProvider.GetRequiredService<CurrentClub>().Use(await ClubAsync(connectionString));
        var squads = scope.ServiceProvider.GetRequiredService<SquadStore>();
        var seasons = scope.ServiceProvider.GetRequiredService<SeasonStore>();
        var first = clock.GetCurrentInstant().InUtc().Date.With(DateAdjusters.PreviousOrSame(IsoDayOfWeek.Monday)).PlusWeeks(-21);
        List<Guid> published = [];
        for (var i = 0; i < Squads; i++)
        {
            var squad = (await squads.AddAsync(SquadOf(i), null, By)).OrThrow();
            (await seasons.AddAsync(squad, first.PlusDays(-1), [.. Shapes[i % Shapes.Length].Select(s => new Stint(first.PlusWeeks(s.First), first.PlusWeeks(s.Last).PlusDays(-1)))], By)).OrThrow();
            if (i % 6 != 0)
            {
                published.Add(squad);
            }
        }

        foreach (var outcome in await scope.ServiceProvider.GetRequiredService<PlanStore>().PublishManyAsync([.. published.Select(id => new SquadToPublish(id, 0, NewId.Create()))], By, ""))
        {
            outcome.Result.OrThrow();
        }
    }

    private static async Task<Guid> ClubAsync(string connectionString)
    {
        await using var connection = new NpgsqlConnection(connectionString);
        await connection.OpenAsync();
        await using var find = new NpgsqlCommand("set app.club = '*'; select club_id from club.clubs", connection);
        return (Guid)(await find.ExecuteScalarAsync())!;
    }

    private static Squad SquadOf(int i) => new(
        Guid.Empty, $"{(i % 2 == 0 ? "Girls and women" : "Boys and men")} {i + 1}", AgeGroup.All[i % AgeGroup.All.Count], TrainingAge.Some,
        [new Practice(IsoDayOfWeek.Tuesday, new LocalTime(18, 0), 75, Practice.UsualPhases), new Practice(IsoDayOfWeek.Thursday, new LocalTime(18, 0), 75, Practice.UsualPhases)],
        i % 3 == 0 ? IsoDayOfWeek.Sunday : IsoDayOfWeek.Saturday, new LocalTime(12, 0), []);
}
