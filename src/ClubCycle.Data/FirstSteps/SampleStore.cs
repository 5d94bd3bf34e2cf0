using ClubCycle.Data.Demo;
using ClubCycle.Data.Fixtures;
using ClubCycle.Data.Players;
using ClubCycle.Data.Seasons;
using ClubCycle.Data.Squads;
using ClubCycle.Planning;
using ClubCycle.Planning.Seasons;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.FirstSteps;

/// <summary>Three invented squads to try things on, in a club that has none yet. They go away without a trace in the club's own squads.</summary>
public sealed class SampleStore(IClubDbFactory contexts, IClock clock)
{
    private static readonly IReadOnlyList<DemoSquad> Squads = [.. DemoSquads.All.Where(s => s.Squad.Name is "Under 12" or "Under 16" or "Women 1").Select(AsSample)];

    private static readonly IReadOnlyList<Guid> Ids = [.. Squads.Select(s => s.Squad.Key)];

    public async Task<bool> IsThereAsync(CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return await db.Squads.AnyAsync(s => Ids.Contains(s.Id), cancel);
    }

    /// <summary>Adds the squads with players and matches, and season dates around today when the club has none.</summary>
    /// <returns>How many squads; a failure when the club has squads already.</returns>
    public async Task<Result<int>> AddAsync(Guid by, CancellationToken cancel = default)
    {
        var store = new SquadStore(contexts, clock);
        if ((await store.ListAsync(cancel)).Count > 0)
        {
            return new Problem("sample.squads-there", "The club has squads already. The sample is for an empty club; add a squad of your own to try things.");
        }

        var today = await TodayAsync(cancel);
        var seasons = new SeasonStore(contexts, clock);
        if ((await seasons.ListAsync(cancel)).Count == 0)
        {
            (await seasons.AddAsync(null, null, Stints(today), by, cancel)).OrThrow();
        }

        foreach (var squad in Squads)
        {
            (await store.AddAsync(squad.Squad, null, by, cancel)).OrThrow();
            (await new PlayerStore(contexts, clock).AddAsync(squad.Squad.Key, squad.Players, by, cancel)).OrThrow();
            if (squad.HasFixtures && (await seasons.EffectiveAsync(squad.Squad.Key, today, cancel)).TryGet(out var season, out _))
            {
                (await new FixtureStore(contexts, clock).ImportAsync(squad.Squad.Key, squad.MatchesOf(season.Season), by, cancel)).OrThrow();
            }
        }

        await using var db = await contexts.OpenAsync(cancel);
        await db.Edits.Where(e => e.SquadId != null && Ids.Contains(e.SquadId.Value)).ExecuteDeleteAsync(cancel);
        return Squads.Count;
    }

    /// <summary>Removes the sample's squads with all that was tried on them, and the sample's season dates unless somebody changed them.</summary>
    /// <returns>How many squads.</returns>
    public async Task<Result<int>> ClearAsync(Guid by, CancellationToken cancel = default)
    {
        var store = new SquadStore(contexts, clock);
        var squads = await store.ListAsync(cancel);
        var removed = 0;
        foreach (var squad in squads.Where(s => Ids.Contains(s.Squad.Key)))
        {
            removed += (await store.RemoveAsync(squad.Squad.Key, by, cancel)).TryGet(out _, out _) ? 1 : 0;
        }

        if (removed > 0 && removed == squads.Count)
        {
            var seasons = new SeasonStore(contexts, clock);
            var stints = Stints(await TodayAsync(cancel));
            foreach (var season in (await seasons.ListAsync(cancel)).Where(s => s.SquadId is null && s.Season.Stints.SequenceEqual(stints)))
            {
                (await seasons.RemoveAsync(season.Id, season.Version, by, cancel)).OrThrow();
            }
        }

        return removed;
    }

    private static IReadOnlyList<Stint> Stints(LocalDate today) => DemoClub.StintsAround(DemoSquads.ClubStints, today);

    private static DemoSquad AsSample(DemoSquad squad) =>
        squad with { Squad = squad.Squad with { Key = NamedId.From("sample", "squad", squad.Squad.Name), Name = $"{squad.Squad.Name} (sample)" }, Stints = null };

    private async Task<LocalDate> TodayAsync(CancellationToken cancel)
    {
        await using var db = await contexts.OpenAsync(cancel);
        var zone = await db.Clubs.Select(c => c.TimeZone).SingleAsync(cancel);
        return clock.GetCurrentInstant().InZone(DateTimeZoneProviders.Tzdb[zone]).Date;
    }
}
