using ClubCycle.Data.Clubs;
using ClubCycle.Data.Fixtures;
using ClubCycle.Data.Plans;
using ClubCycle.Data.Players;
using ClubCycle.Data.Seasons;
using ClubCycle.Data.Squads;
using ClubCycle.Planning;
using ClubCycle.Planning.Players;
using ClubCycle.Planning.Seasons;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Text;

namespace ClubCycle.Data.Demo;

/// <summary>
/// An invented club in the middle of its year, made through the same stores as any other. Safe to run again: it adds only what is missing.
/// </summary>
public sealed class DemoClub(IDbContextFactory<ClubCycleDb> everywhere, IClock clock)
{
    public const string Name = "Larkmere Hockey Club";
    public const string TimeZone = "Europe/London";

    /// <summary>Its closed days are what one squad's draft changes and nobody has published yet.</summary>
    internal const string UnpublishedWhy = "Pitch being relaid";

    private static readonly DateTimeZone Zone = DateTimeZoneProviders.Tzdb[TimeZone];

    public static Guid ClubId { get; } = NamedId.From("demo", "club");

    /// <summary>The club with its template library. Its people come next, then <see cref="FillAsync"/>.</summary>
    public async Task CreateAsync(CancellationToken cancel = default)
    {
        await using (var db = await everywhere.OpenAsync(ClubScope.Of(ClubId), cancel))
        {
            if (await db.Clubs.AnyAsync(cancel))
            {
                return;
            }
        }

        // No second factor is asked for, so that it can be tried without a phone at hand.
        (await new ClubStore(everywhere, Contexts(), clock).CreateAsync(ClubId, Name, TimeZone, IsoDayOfWeek.Monday, asksSecondFactor: false, cancel)).OrThrow();
    }

    /// <summary>Squads, seasons around today, matches, players, published plans, and one squad with a change that is not published.</summary>
    /// <param name="squadCoach">Coaches the under-12s and under-14s; null for nobody.</param>
    public async Task FillAsync(Guid headCoach, Guid? squadCoach, CancellationToken cancel = default)
    {
        var contexts = Contexts();
        var today = clock.GetCurrentInstant().InZone(Zone).Date;
        await AddSquadsAsync(contexts, headCoach, squadCoach, cancel);
        await AddSeasonsAsync(contexts, today, headCoach, cancel);
        await AddClosedDaysAsync(contexts, today, headCoach, cancel);
        foreach (var squad in DemoSquads.All)
        {
            var season = (await new SeasonStore(contexts, clock).EffectiveAsync(squad.Squad.Key, today, cancel)).OrThrow().Season;
            await AddFixturesAsync(contexts, squad, season, headCoach, cancel);
            await AddPlayersAsync(contexts, squad, headCoach, cancel);
            await PublishAsync(contexts, squad, season, headCoach, cancel);
        }

        await ChangeOneDraftAsync(contexts, today, headCoach, cancel);

        // Nobody made these by hand, so nobody is offered to take them back.
        await using var db = await contexts.OpenAsync(cancel);
        await db.Edits.ExecuteDeleteAsync(cancel);
    }

    /// <summary>The season of such stints whose cycle holds the day.</summary>
    internal static IReadOnlyList<Stint> StintsAround(IReadOnlyList<YearlyStint> stints, LocalDate today)
    {
        var year = today.Year - 2;
        while (stints[^1].In(year).Last < today)
        {
            year++;
        }

        return [.. stints.Select(s => s.In(year))];
    }

    private ClubDbFactory Contexts()
    {
        var club = new CurrentClub();
        club.Use(ClubId);
        return new ClubDbFactory(everywhere, club);
    }

    private async Task AddSquadsAsync(ClubDbFactory contexts, Guid headCoach, Guid? squadCoach, CancellationToken cancel)
    {
        var store = new SquadStore(contexts, clock);
        var known = (await store.ListAsync(cancel)).Select(s => s.Squad.Key).ToHashSet();
        foreach (var squad in DemoSquads.All.Where(s => !known.Contains(s.Squad.Key)))
        {
            (await store.AddAsync(squad.Squad, null, headCoach, cancel)).OrThrow();
            if (squadCoach is { } coach && squad.Squad.AgeGroup.Under is 12 or 14)
            {
                (await store.SetCoachesAsync(squad.Squad.Key, [coach], headCoach, cancel)).OrThrow();
            }
        }
    }

    private async Task AddSeasonsAsync(ClubDbFactory contexts, LocalDate today, Guid by, CancellationToken cancel)
    {
        var store = new SeasonStore(contexts, clock);
        var known = await store.ListAsync(cancel);
        IEnumerable<(Guid? SquadId, IReadOnlyList<YearlyStint> Stints)> wanted =
            [(null, DemoSquads.ClubStints), .. DemoSquads.All.Where(s => s.Stints is not null).Select(s => ((Guid?)s.Squad.Key, s.Stints!))];
        foreach (var (squadId, stints) in wanted.Where(w => !known.Any(k => k.SquadId == w.SquadId && k.Season.Cycle.Contains(today))))
        {
            (await store.AddAsync(squadId, null, StintsAround(stints, today), by, cancel)).OrThrow();
        }
    }

    private async Task AddClosedDaysAsync(ClubDbFactory contexts, LocalDate today, Guid by, CancellationToken cancel)
    {
        var store = new ClosedDayStore(contexts, clock);
        var known = (await store.ListAsync(cancel)).Where(c => c.SquadId is null).Select(c => c.Days).ToHashSet();
        foreach (var year in Enumerable.Range(today.Year - 1, 3))
        {
            ClosedDays[] wanted =
            [
                new(new LocalDate(year, 7, 20), new LocalDate(year, 8, 2), "Club closed for the summer"),
                new(new LocalDate(year, 12, 24), new LocalDate(year, 12, 26), "Club closed"),
            ];
            foreach (var days in wanted.Where(d => !known.Contains(d)))
            {
                (await store.AddAsync(null, days, by, cancel)).OrThrow();
            }
        }
    }

    private async Task AddFixturesAsync(ClubDbFactory contexts, DemoSquad squad, Season season, Guid by, CancellationToken cancel)
    {
        await using (var db = await contexts.OpenAsync(cancel))
        {
            if (!squad.HasFixtures || await db.Fixtures.AnyAsync(f => f.SquadId == squad.Squad.Key && f.Date >= season.Cycle.Start && f.Date <= season.Cycle.End, cancel))
            {
                return;
            }
        }

        (await new FixtureStore(contexts, clock).ImportAsync(squad.Squad.Key, squad.MatchesOf(season), by, cancel)).OrThrow();
    }

    private async Task AddPlayersAsync(ClubDbFactory contexts, DemoSquad squad, Guid by, CancellationToken cancel)
    {
        var store = new PlayerStore(contexts, clock);
        if ((await store.ListAsync(squad.Squad.Key, cancel)).Count == 0)
        {
            var players = (await store.AddAsync(squad.Squad.Key, squad.Players, by, cancel)).OrThrow();
            // One guardian of each young squad has not been asked yet.
            if (squad.Squad.AgeGroup.YoungestAge < GuardianAge.Usual)
            {
                (await new GuardianStore(everywhere, contexts, clock).AgreedOnPaperAsync(squad.Squad.Key, [.. players.SkipLast(1)], clock.GetCurrentInstant().InZone(Zone).Date.PlusWeeks(-2), by, cancel)).OrThrow();
            }

            if (squad.Squad.AgeGroup.YoungestAge >= DemoSquads.YoungestTested)
            {
                await AddTestsAsync(contexts, squad.Squad.Key, players[0], by, cancel);
            }
        }
    }

    private async Task AddTestsAsync(ClubDbFactory contexts, Guid squad, Guid player, Guid by, CancellationToken cancel)
    {
        var store = new TestResultStore(contexts, clock);
        foreach (var (weeksAgo, result) in DemoSquads.Tests)
        {
            (await store.AddAsync(squad, player, result with { On = clock.GetCurrentInstant().InZone(Zone).Date.PlusWeeks(-weeksAgo) }, by, cancel)).OrThrow();
        }
    }

    /// <summary>Publishes as on the first day of the cycle, as a club does that plans in time.</summary>
    private static async Task PublishAsync(ClubDbFactory contexts, DemoSquad squad, Season season, Guid by, CancellationToken cancel)
    {
        var start = season.Cycle.Start;
        var plans = new PlanStore(contexts, new PublishedPlans(), new On(start.At(LocalTime.Noon).InZoneLeniently(Zone).ToInstant()));
        var command = NamedId.From("demo", "publish", squad.Squad.Name, LocalDatePattern.Iso.Format(start));
        await using var db = await contexts.OpenAsync(cancel);
        var last = await db.Revisions.Where(r => r.SquadId == squad.Squad.Key).MaxAsync(r => (int?)r.Number, cancel) ?? 0;
        (await plans.PublishAsync(squad.Squad.Key, last, command, by, "The year's plan", cancel)).OrThrow();
    }

    private async Task ChangeOneDraftAsync(ClubDbFactory contexts, LocalDate today, Guid by, CancellationToken cancel)
    {
        var store = new ClosedDayStore(contexts, clock);
        if ((await store.ListAsync(cancel)).Any(c => c.Days.Why == UnpublishedWhy))
        {
            return;
        }

        // A week with something in it, near enough to be seen on the first screen.
        var plans = new PlanStore(contexts, new PublishedPlans(), clock);
        foreach (var squad in DemoSquads.All.Where(s => s.Squad.AgeGroup == Planning.Squads.AgeGroup.Senior))
        {
            var plan = (await plans.PublishedAsync(squad.Squad.Key, cancel)).OrThrow().Plan;
            if (plan.Sessions.FirstOrDefault(s => s.Kind == SessionKind.Session && s.Date >= today.PlusDays(8) && s.Date < today.PlusWeeks(5)) is { } session)
            {
                (await store.AddAsync(squad.Squad.Key, new ClosedDays(session.Date, session.Date, UnpublishedWhy), by, cancel)).OrThrow();
                return;
            }
        }
    }

    private sealed class On(Instant now) : IClock
    {
        public Instant GetCurrentInstant() => now;
    }
}
