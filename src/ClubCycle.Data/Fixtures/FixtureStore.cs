using ClubCycle.Data.Audit;
using ClubCycle.Data.Edits;
using ClubCycle.Data.Plans;
using ClubCycle.Planning;
using ClubCycle.Planning.Seasons;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Fixtures;

/// <summary>A match as stored.</summary>
/// <param name="Fixture">Its key is the id.</param>
/// <param name="Version">0 for a usual match that nobody has entered.</param>
public sealed record StoredFixture(Guid SquadId, Fixture Fixture, int Version)
{
    public Guid Id => Fixture.Key!.Value;

    /// <summary>The matches of a request that was made from a squad's own rows.</summary>
    internal static IReadOnlyList<StoredFixture> ListOf(PlanRequest request, IEnumerable<IUndoableRow> own)
    {
        var versions = own.OfType<FixtureRow>().ToDictionary(f => f.Id, f => f.Version);
        return [.. request.Fixtures!.Select(f => new StoredFixture(request.Squad.Key, f, versions.GetValueOrDefault(f.Key!.Value)))];
    }
}

/// <summary>A match that a file brings or changes.</summary>
/// <param name="Known">The stored match and the version that was seen; null for a new one.</param>
/// <param name="SourceKey">What the file calls it; null when it does not.</param>
public sealed record FixtureFromFile((Guid Id, int Version)? Known, LocalDate Date, LocalTime? Start, string? Opponent, string? Place, string? SourceKey);

/// <summary>The squads' matches. A squad without any in its cycle plays on every match day of its stints.</summary>
public sealed class FixtureStore(IClubDbFactory contexts, IClock clock)
{
    public const int LongestOpponent = 100;
    public const int LongestSourceKey = 300;

    /// <summary>The matches of the squad's current cycle in date order: those entered, else the usual ones.</summary>
    public async Task<Result<IReadOnlyList<StoredFixture>>> ListAsync(Guid squadId, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return (await PlanInputs.LoadOneAsync(db, squadId, clock.GetCurrentInstant(), null, cancel)).TryGet(out var input, out var problems)
            ? new Result<IReadOnlyList<StoredFixture>>.Ok(StoredFixture.ListOf(input.Request, input.Own))
            : new Result<IReadOnlyList<StoredFixture>>.Failed(problems);
    }

    /// <summary>Adds a match; the usual ones stay, and are entered with it.</summary>
    public async Task<Result<Guid>> AddAsync(Guid squadId, LocalDate date, LocalTime? start, string? opponent, string? place, Guid by, CancellationToken cancel = default)
    {
        if (Check(date, opponent, place) is { } unreadable)
        {
            return unreadable;
        }

        await using var db = await contexts.OpenAsync(cancel);
        if (!(await EnterUsualAsync(db, squadId, cancel)).TryGet(out _, out var problems))
        {
            return new Result<Guid>.Failed(problems);
        }

        var row = new FixtureRow { ClubId = db.ClubId, Id = NewId.Create(), SquadId = squadId, Date = date, Start = start, Opponent = Tidy(opponent), Place = Tidy(place) };
        db.Fixtures.Add(row);
        return await SaveAsync(db, squadId, by, "fixtures.added", $"Add match on {EditWords.Day(date)}", cancel) is { } problem ? problem : row.Id;
    }

    /// <summary>Adds many matches at once, or none.</summary>
    public async Task<Result<IReadOnlyList<Guid>>> ImportAsync(Guid squadId, IReadOnlyList<Fixture> fixtures, Guid by, CancellationToken cancel = default)
    {
        if (fixtures.Select(f => Check(f.Date, f.Opponent, f.Place)).FirstOrDefault(p => p is not null) is { } unreadable)
        {
            return unreadable;
        }

        await using var db = await contexts.OpenAsync(cancel);
        if (!await db.Squads.AnyAsync(s => s.Id == squadId, cancel))
        {
            return Refusal.NotFound("squad");
        }

        var rows = fixtures.Select(f => new FixtureRow
        {
            ClubId = db.ClubId, Id = NewId.Create(), SquadId = squadId, Date = f.Date, Start = f.Start, Opponent = Tidy(f.Opponent), Place = Tidy(f.Place),
        }).ToList();
        db.Fixtures.AddRange(rows);
        return await SaveAsync(db, squadId, by, "fixtures.added", $"Add {rows.Count} matches", cancel) is { } problem ? problem : new Result<IReadOnlyList<Guid>>.Ok([.. rows.Select(r => r.Id)]);
    }

    /// <summary>Entered matches with what their file calls them; empty while the squad plays on its usual days.</summary>
    public async Task<IReadOnlyList<(StoredFixture Match, string? SourceKey)>> EnteredAsync(Guid squadId, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        var rows = await db.Fixtures.AsNoTracking().Where(f => f.SquadId == squadId).OrderBy(f => f.Date).ThenBy(f => f.Id).ToListAsync(cancel);
        return rows.ConvertAll(r => (new StoredFixture(squadId, r.ToFixture(), r.Version), r.SourceKey));
    }

    /// <summary>Takes what a file brings, changes and calls off, or nothing of it.</summary>
    /// <param name="calledOff">Stored matches that go, with the version that was seen.</param>
    public async Task<Result<int>> TakeFileAsync(Guid squadId, IReadOnlyList<FixtureFromFile> matches, IReadOnlyList<(Guid Id, int Version)> calledOff, Guid by, CancellationToken cancel = default)
    {
        if (matches.Select(m => Check(m.Date, m.Opponent, m.Place) ?? TypedText.LineProblem(m.SourceKey, LongestSourceKey, "fixture.source-key", "match's name in the file", "fixtures.sourceKey")).FirstOrDefault(p => p is not null) is { } unreadable)
        {
            return unreadable;
        }

        await using var db = await contexts.OpenAsync(cancel);
        if (!await db.Squads.AnyAsync(s => s.Id == squadId, cancel))
        {
            return Refusal.NotFound("squad");
        }

        var rows = await db.Fixtures.Where(f => f.SquadId == squadId).ToDictionaryAsync(f => f.Id, cancel);
        foreach (var match in matches)
        {
            if (match.Known is not { } known)
            {
                db.Fixtures.Add(new FixtureRow
                {
                    ClubId = db.ClubId, Id = NewId.Create(), SquadId = squadId, Date = match.Date, Start = match.Start, Opponent = Tidy(match.Opponent), Place = Tidy(match.Place), SourceKey = match.SourceKey,
                });
            }
            else if (rows.TryGetValue(known.Id, out var row) && row.Version == known.Version)
            {
                (row.Date, row.Start, row.Opponent, row.Place, row.SourceKey) = (match.Date, match.Start, Tidy(match.Opponent), Tidy(match.Place), match.SourceKey ?? row.SourceKey);
            }
            else
            {
                return Refusal.Meanwhile("fixture");
            }
        }

        foreach (var (id, version) in calledOff)
        {
            if (!rows.TryGetValue(id, out var row) || row.Version != version)
            {
                return Refusal.Meanwhile("fixture");
            }

            db.Fixtures.Remove(row);
        }

        return await SaveAsync(db, squadId, by, "fixtures.taken-from-file", $"Take {matches.Count + calledOff.Count} matches from a file", cancel) is { } problem ? problem : matches.Count + calledOff.Count;
    }

    /// <summary>Changes a match, entered or usual.</summary>
    /// <param name="expectedVersion">As read; 0 for a usual match.</param>
    public async Task<Result<int>> SaveAsync(Guid squadId, Guid id, LocalDate date, LocalTime? start, string? opponent, string? place, int expectedVersion, Guid by, CancellationToken cancel = default)
    {
        if (Check(date, opponent, place) is { } unreadable)
        {
            return unreadable;
        }

        await using var db = await contexts.OpenAsync(cancel);
        if (!(await FindAsync(db, squadId, id, cancel)).TryGet(out var row, out var problems))
        {
            return new Result<int>.Failed(problems);
        }

        // Somebody may have entered the usual matches meanwhile; as long as this one is as it was, nothing is lost.
        if (row.Version != Math.Max(1, expectedVersion))
        {
            return Refusal.Meanwhile("fixture");
        }

        var words = row.Date == date ? $"Change match of {EditWords.Day(date)}" : $"Move match of {EditWords.Day(row.Date)} to {EditWords.Day(date)}";
        (row.Date, row.Start, row.Opponent, row.Place) = (date, start, Tidy(opponent), Tidy(place));
        return await SaveAsync(db, squadId, by, "fixture.changed", words, cancel) is { } problem ? problem : row.Version;
    }

    /// <summary>Removes a match, entered or usual. With the last one gone the usual matches return.</summary>
    /// <param name="expectedVersion">As read; 0 for a usual match.</param>
    public async Task<Result<Guid>> RemoveAsync(Guid squadId, Guid id, int expectedVersion, Guid by, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        if (!(await FindAsync(db, squadId, id, cancel)).TryGet(out var row, out var problems))
        {
            return new Result<Guid>.Failed(problems);
        }

        if (row.Version != Math.Max(1, expectedVersion))
        {
            return Refusal.Meanwhile("fixture");
        }

        db.Fixtures.Remove(row);
        return await SaveAsync(db, squadId, by, "fixture.removed", $"Remove match of {EditWords.Day(row.Date)}", cancel) is { } problem ? problem : id;
    }

    private async Task<Problem?> SaveAsync(ClubCycleDb db, Guid squadId, Guid by, string what, string words, CancellationToken cancel)
    {
        var now = clock.GetCurrentInstant();
        db.Note(now, by, what, squadId, words);
        await db.RememberAsync(now, by, squadId, words, cancel);
        return await db.TrySaveAsync(Refusal.Meanwhile("fixture"), cancel);
    }

    /// <summary>A match as stored. A usual one is entered with all the others, so that it can be changed alone.</summary>
    private async Task<Result<FixtureRow>> FindAsync(ClubCycleDb db, Guid squadId, Guid id, CancellationToken cancel)
    {
        if (await db.Fixtures.SingleOrDefaultAsync(f => f.Id == id && f.SquadId == squadId, cancel) is { } row)
        {
            return row;
        }

        if (!(await EnterUsualAsync(db, squadId, cancel)).TryGet(out var usual, out var problems))
        {
            return new Result<FixtureRow>.Failed(problems);
        }

        if (usual.FirstOrDefault(f => f.Id == id) is not { } entered)
        {
            return Refusal.NotFound("fixture");
        }

        // Entering it is one save and changing it another, so that nobody who saw the usual match changes it over this.
        entered.Version = 1;
        return entered;
    }

    /// <summary>Adds the squad's usual matches to what the next save writes; none when matches are entered already.</summary>
    private async Task<Result<IReadOnlyList<FixtureRow>>> EnterUsualAsync(ClubCycleDb db, Guid squadId, CancellationToken cancel)
    {
        if (!(await PlanInputs.LoadOneAsync(db, squadId, clock.GetCurrentInstant(), null, cancel)).TryGet(out var input, out var problems))
        {
            return new Result<IReadOnlyList<FixtureRow>>.Failed(problems);
        }

        IReadOnlyList<FixtureRow> usual = input.UsualMatches
            ? [.. input.Request.Fixtures!.Select(f => new FixtureRow { ClubId = db.ClubId, Id = f.Key!.Value, SquadId = squadId, Date = f.Date })]
            : [];
        db.Fixtures.AddRange(usual);
        return new Result<IReadOnlyList<FixtureRow>>.Ok(usual);
    }

    private static Problem? Check(LocalDate date, string? opponent, string? place) =>
        PlanDates.Problem(date, "fixture", "fixtures.date")
        ?? TypedText.LineProblem(opponent, LongestOpponent, "fixture.opponent", "opponent's name", "fixtures.opponent")
        ?? TypedText.LineProblem(place, Fixture.LongestPlace, "fixture.place", "place", "fixtures.place");

    private static string? Tidy(string? text) => string.IsNullOrWhiteSpace(text) ? null : TypedText.Tidy(text);
}
