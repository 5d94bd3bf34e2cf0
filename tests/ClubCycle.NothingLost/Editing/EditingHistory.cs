using System.Text.RegularExpressions;
using ClubCycle.Data;
using ClubCycle.Data.Clubs;
using ClubCycle.Data.Fixtures;
using ClubCycle.Data.Plans;
using ClubCycle.Data.Seasons;
using ClubCycle.Data.Squads;
using ClubCycle.Planning.Seasons;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace ClubCycle.NothingLost.Editing;

/// <param name="Acknowledged">Writes that were saved.</param>
/// <param name="Refused">Writes whose author was told that somebody else was first, or that it does not go so.</param>
public sealed record HistoryResult(int Acknowledged, int Refused);

/// <summary>
/// Eight coaches of two clubs edit, publish and undo at the same time, on four squads and by two nodes. What is stored in the end must be what the acknowledged writes
/// leave one after the other, and hold no text of another squad.
/// </summary>
public sealed partial class EditingHistory
{
    private const int Coaches = 8;
    private const int Acts = 3;

    private readonly IReadOnlyList<IServiceProvider> _nodes;
    private readonly int _seed;

    private EditingHistory(IReadOnlyList<IServiceProvider> nodes, int seed) => (_nodes, _seed) = (nodes, seed);

    /// <summary>Plays one history. The seed fixes what each coach does, not who comes first.</summary>
    /// <param name="nodes">Each with its own caches, over the same database.</param>
    /// <exception cref="InvalidOperationException">Something was lost; the message says what and begins with the seed.</exception>
    public static async Task<HistoryResult> PlayAsync(IReadOnlyList<IServiceProvider> nodes, int seed)
    {
        try
        {
            return await new EditingHistory(nodes, seed).PlayAsync();
        }
        catch (Exception wrong)
        {
            throw new InvalidOperationException($"Seed {seed}: {wrong.Message}", wrong);
        }
    }

    /// <summary>A node over a database: stores with caches of their own.</summary>
    public static ServiceProvider Node(string connectionString) =>
        new ServiceCollection().AddSingleton<IClock>(new RunningClock(RunningClock.Start)).AddClubCycleData(connectionString).BuildServiceProvider();

    private async Task<HistoryResult> PlayAsync()
    {
        List<EditedSquad> squads = [.. await NewClubAsync("A"), .. await NewClubAsync("B")];
        Dictionary<string, string> first = [];
        await LookAsync(squads, (thing, value) => first[thing] = value);

        var ledger = new Ledger();
        var coaches = Enumerable.Range(0, Coaches).Select(i =>
        {
            // Five of one club and three of the other.
            List<EditedSquad> own = i < 5 ? squads[..2] : squads[2..];
            var scope = ScopeOf(own[0].Club.Id, _nodes[i % _nodes.Count]);
            return (Scope: scope, Coach: new EditingCoach(scope.ServiceProvider, NewId.Create(), new Random(unchecked((_seed * Coaches) + i)), ledger, own));
        }).ToList();
        await Task.WhenAll(coaches.Select(c => Task.Run(() => c.Coach.ActAsync(Acts))));
        coaches.ForEach(c => c.Scope.Dispose());

        List<string> wrong = [];
        await LookAsync(squads, (thing, value) =>
        {
            if (ledger.Unexplained(thing, first[thing], value) is { } lost)
            {
                wrong.Add(lost);
            }
        });
        foreach (var squad in squads)
        {
            await CheckAsync(squad, wrong);
        }

        return wrong.Count == 0 ? new HistoryResult(ledger.Count, coaches.Sum(c => c.Coach.Refused)) : throw new InvalidOperationException(string.Join('\n', wrong));
    }

    private static IServiceScope ScopeOf(Guid club, IServiceProvider node)
    {
        var scope = node.CreateScope();
        scope.ServiceProvider.GetRequiredService<CurrentClub>().Use(club);
        return scope;
    }

    private async Task<IReadOnlyList<EditedSquad>> NewClubAsync(string name)
    {
        using var scope = _nodes[0].CreateScope();
        var stores = scope.ServiceProvider;
        var by = NewId.Create();
        var id = (await stores.GetRequiredService<ClubStore>().CreateAsync(name, "Europe/Lisbon", IsoDayOfWeek.Monday)).OrThrow();
        stores.GetRequiredService<CurrentClub>().Use(id);
        var club = new EditedClub(id, (await stores.GetRequiredService<SeasonStore>().AddAsync(null, APlan.Before, APlan.Stints(0), by)).OrThrow());
        List<EditedSquad> squads = [];
        for (var i = 0; i < 2; i++)
        {
            var squad = (await stores.GetRequiredService<SquadStore>().AddAsync(APlan.Squad($"Squad {i}"), null, by)).OrThrow();
            var days = new[] { new LocalDate(2026, 5, 9), new LocalDate(2026, 5, 23) };
            var matches = (await stores.GetRequiredService<FixtureStore>().ImportAsync(squad, [.. days.Select(d => new Fixture(d))], by)).OrThrow();
            squads.Add(new EditedSquad(club, squad, $"Q{name}{i}x", matches));
        }

        return squads;
    }

    /// <summary>Everything that is edited, as it is now.</summary>
    private async Task LookAsync(IReadOnlyList<EditedSquad> squads, Action<string, string> see)
    {
        foreach (var squad in squads)
        {
            using var scope = ScopeOf(squad.Club.Id, _nodes[^1]);
            var pins = await scope.ServiceProvider.GetRequiredService<PinStore>().ListAsync(squad.Id);
            foreach (var slot in EditingCoach.Slots)
            {
                see(EditingCoach.Session(squad, slot), EditingCoach.Said(pins.FirstOrDefault(p => p.WeekFirst == EditingCoach.Week && p.Slot == slot)));
            }

            var matches = (await scope.ServiceProvider.GetRequiredService<FixtureStore>().EnteredAsync(squad.Id)).Select(e => e.Match).ToList();
            foreach (var id in squad.Matches)
            {
                see(EditingCoach.Match(id), EditingCoach.Said(matches.Find(m => m.Id == id)));
            }

            see(EditingCoach.Season(squad.Club), EditingCoach.Said((await scope.ServiceProvider.GetRequiredService<SeasonStore>().ListAsync()).Single(s => s.Id == squad.Club.Season)));
            see(EditingCoach.Revision(squad), $"{(await scope.ServiceProvider.GetRequiredService<RevisionStore>().ListAsync(squad.Id)).Count}");
        }
    }

    private async Task CheckAsync(EditedSquad squad, List<string> wrong)
    {
        using var scope = ScopeOf(squad.Club.Id, _nodes[0]);
        await using var db = await scope.ServiceProvider.GetRequiredService<IClubDbFactory>().OpenAsync();
        if (await PublishedWhole.WrongAsync(db, squad.Id, _ => Task.FromResult(false)) is { } half)
        {
            wrong.Add($"squad {squad.Id}: {half}");
        }

        List<string?> texts =
        [
            .. (await db.Revisions.AsNoTracking().Where(r => r.SquadId == squad.Id).ToListAsync()).Select(r => r.Plan + r.Inputs + r.Note),
            .. await db.Edits.Where(e => e.SquadId == squad.Id).Select(e => e.Changes).ToListAsync(),
            .. await db.Pins.Where(p => p.SquadId == squad.Id).Select(p => p.Note).ToListAsync(),
            .. await db.Fixtures.Where(f => f.SquadId == squad.Id).Select(f => f.Opponent).ToListAsync(),
            .. await db.ClosedDays.Where(c => c.SquadId == squad.Id).Select(c => c.Why).ToListAsync(),
        ];
        wrong.AddRange(texts.SelectMany(t => AnyMark().Matches(t ?? "").Select(m => m.Value)).Where(m => m != squad.Mark).Distinct().Select(m => $"squad {squad.Mark} holds a text of squad {m}"));
    }

    [GeneratedRegex("Q[AB][01]x")]
    private static partial Regex AnyMark();
}
