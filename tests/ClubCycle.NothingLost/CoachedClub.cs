using System.Diagnostics;
using System.IO.Compression;
using System.Text;
using ClubCycle.Data;
using ClubCycle.Data.Clubs;
using ClubCycle.Data.Feeds;
using ClubCycle.Data.Fixtures;
using ClubCycle.Data.Links;
using ClubCycle.Data.Plans;
using ClubCycle.Data.Players;
using ClubCycle.Data.Seasons;
using ClubCycle.Data.Squads;
using ClubCycle.NothingLost.Kills;
using ClubCycle.Planning;
using ClubCycle.Planning.Seasons;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace ClubCycle.NothingLost;

/// <param name="Tokens">Of its players' links.</param>
internal sealed record CoachedSquad(Guid Id, IReadOnlyList<string> Tokens);

/// <summary>A club whose squads an <see cref="Editor"/> changes, and what of it must be found again.</summary>
internal sealed record CoachedClub(Guid Id, IReadOnlyList<CoachedSquad> Squads)
{
    private static readonly TimeSpan LongestWait = TimeSpan.FromMinutes(3);

    public IReadOnlyList<Guid> SquadIds => [.. Squads.Select(s => s.Id)];

    /// <param name="players">Of each squad, each with a link.</param>
    public static async Task<CoachedClub> MakeAsync(IServiceProvider services, int squads, int players)
    {
        using var scope = services.CreateScope();
        var stores = scope.ServiceProvider;
        var by = NewId.Create();
        var club = (await stores.GetRequiredService<ClubStore>().CreateAsync("Coached club", "Europe/Lisbon", IsoDayOfWeek.Monday)).OrThrow();
        stores.GetRequiredService<CurrentClub>().Use(club);
        List<CoachedSquad> made = [];
        for (var i = 0; i < squads; i++)
        {
            var squad = (await stores.GetRequiredService<SquadStore>().AddAsync(APlan.Squad($"Squad {i}"), null, by)).OrThrow();
            (await stores.GetRequiredService<SeasonStore>().AddAsync(squad, APlan.Before, APlan.Stints(0), by)).OrThrow();
            (await stores.GetRequiredService<FixtureStore>().ImportAsync(squad, [new Fixture(new LocalDate(2026, 5, 16))], by)).OrThrow();
            (await stores.GetRequiredService<PinStore>().AddAsync(squad, Editor.Week, new LocalTime(18, 0), "easy-run", 40, "first", by)).OrThrow();
            List<string> tokens = [];
            foreach (var player in (await stores.GetRequiredService<PlayerStore>().AddAsync(squad, [.. Enumerable.Range(1, players).Select(n => $"Ana P. {n}")], by)).OrThrow())
            {
                tokens.Add((await stores.GetRequiredService<LinkStore>().CreateAsync(squad, player, "phone", by)).OrThrow().Token);
            }

            made.Add(new CoachedSquad(squad, tokens));
        }

        return new CoachedClub(club, made);
    }

    /// <summary>A line for the club and one for each squad, for another process.</summary>
    public string Lines => string.Join('\n', [Id.ToString(), .. Squads.Select(s => string.Join(' ', [s.Id.ToString(), .. s.Tokens]))]);

    public static CoachedClub OfLines(string lines)
    {
        var all = lines.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        return new CoachedClub(Guid.Parse(all[0]), [.. all.Skip(1).Select(line => line.Split(' ')).Select(parts => new CoachedSquad(Guid.Parse(parts[0]), parts[1..]))]);
    }

    /// <summary>What was acknowledged and is not there, and what was published by halves. Nobody may be editing.</summary>
    public async Task<IReadOnlyList<string>> LostAsync(IServiceProvider services, Journal journal)
    {
        List<string> wrong = [];
        using var scope = Scope(services);
        await using var db = await scope.ServiceProvider.GetRequiredService<IClubDbFactory>().OpenAsync();
        foreach (var squad in SquadIds)
        {
            var note = await db.Pins.Where(p => p.SquadId == squad && p.Slot == Editor.AddedSlot).Select(p => p.Note).SingleOrDefaultAsync();
            var opponent = await db.Fixtures.Where(f => f.SquadId == squad).Select(f => f.Opponent).SingleOrDefaultAsync();
            var season = (await scope.ServiceProvider.GetRequiredService<SeasonStore>().ListAsync()).Single(s => s.SquadId == squad);
            var latest = await db.Revisions.CountAsync(r => r.SquadId == squad);
            string?[] found =
            [
                journal.Lost($"session/{squad}", note ?? ""),
                journal.Lost($"match/{squad}", opponent ?? ""),
                journal.Lost($"season/{squad}", Editor.Season(season.Version, season.Season.Stints[0].First)),
                journal.Lost($"revision/{squad}", $"{latest}"),
                await PublishedWhole.WrongAsync(db, squad, plan => IsInFeedAsync(db, squad, plan)),
            ];
            wrong.AddRange(found.OfType<string>().Select(w => $"squad {squad}: {w}"));
        }

        return wrong;
    }

    /// <summary>Feeds that do not get to what was published last, once nobody has feeds to render.</summary>
    /// <param name="address">Of a link's calendar.</param>
    public async Task<IReadOnlyList<string>> BehindAsync(IServiceProvider services, HttpClient http, Func<string, string> address)
    {
        List<string> wrong = [];
        using var scope = Scope(services);
        await using var db = await scope.ServiceProvider.GetRequiredService<IClubDbFactory>().OpenAsync();
        for (var waited = Stopwatch.StartNew(); await db.Outbox.AnyAsync() && waited.Elapsed < LongestWait; await Task.Delay(200))
        {
        }

        foreach (var squad in Squads)
        {
            var published = (await scope.ServiceProvider.GetRequiredService<PlanStore>().PublishedAsync(squad.Id)).OrThrow();
            var note = published.Sessions.Single(s => s.Slot == Editor.AddedSlot).Note!;
            if (!TextOf(await http.GetStreamAsync(address(squad.Tokens[0]))).Contains(note, StringComparison.Ordinal))
            {
                wrong.Add($"squad {squad.Id}: the feed never got to revision {published.Revision}");
            }
        }

        return wrong;
    }

    /// <summary>Every text of the squad's feed that tells what to do has the note that the plan has.</summary>
    private static async Task<bool> IsInFeedAsync(ClubCycleDb db, Guid squad, SquadPlan plan)
    {
        var note = plan.Sessions.Single(s => s.Slot == Editor.AddedSlot).Note!;
        var feeds = await db.FeedBodies.Where(f => f.SquadId == squad && !f.Variant.EndsWith(FeedVariant.Waiting)).Select(f => f.Gzip).ToListAsync();
        return feeds.Count > 0 && feeds.TrueForAll(f => TextOf(new GZipStream(new MemoryStream(f), CompressionMode.Decompress)).Contains(note, StringComparison.Ordinal));
    }

    private static string TextOf(Stream packed)
    {
        using var reader = new StreamReader(packed, Encoding.UTF8);
        return reader.ReadToEnd().Replace("\r\n ", "", StringComparison.Ordinal);
    }

    private IServiceScope Scope(IServiceProvider services)
    {
        var scope = services.CreateScope();
        scope.ServiceProvider.GetRequiredService<CurrentClub>().Use(Id);
        return scope;
    }
}
