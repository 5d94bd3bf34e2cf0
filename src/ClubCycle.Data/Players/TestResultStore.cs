using ClubCycle.Data.Audit;
using ClubCycle.Planning;
using ClubCycle.Planning.Players;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Players;

/// <summary>A stored result of a field test.</summary>
public sealed record StoredTestResult(Guid Id, FieldTestResult Result);

/// <summary>Field tests of players, latest first.</summary>
public sealed class TestResultStore(IClubDbFactory contexts, IClock clock)
{
    /// <summary>More than a lifetime of testing.</summary>
    public const int MostPerPlayer = 500;

    /// <param name="squadId">Whose player it is; a player of anybody else has no results here.</param>
    public async Task<IReadOnlyList<StoredTestResult>> ListAsync(Guid squadId, Guid playerId, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        var rows = await Of(db, squadId, playerId).AsNoTracking().OrderByDescending(r => r.TakenOn).ThenByDescending(r => r.Id).ToListAsync(cancel);
        return rows.ConvertAll(r => new StoredTestResult(r.Id, r.ToResult()));
    }

    /// <summary>Keeps a result that is possible, taken today or earlier.</summary>
    public async Task<Result<Guid>> AddAsync(Guid squadId, Guid playerId, FieldTestResult result, Guid by, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        if (!await db.Players.AnyAsync(p => p.Id == playerId && p.SquadId == squadId, cancel))
        {
            return Refusal.NotFound("player");
        }

        if (await db.GuardianProblemAsync(squadId, playerId, clock, cancel) is { } missing)
        {
            return missing;
        }

        var now = clock.GetCurrentInstant();
        if (result.On > now.InUtc().Date.PlusDays(1) || result.On < now.InUtc().Date.PlusYears(-10))
        {
            return new Problem("test.date", "A test was taken in the last ten years, today at the latest. Check the date.", "test.on");
        }

        if (FieldTests.Check(result) is { } impossible)
        {
            return impossible;
        }

        if (await db.TestResults.CountAsync(r => r.PlayerId == playerId, cancel) >= MostPerPlayer)
        {
            return new Problem("test.too-many", $"A player has {MostPerPlayer} results at most. Remove old ones first.", "test");
        }

        var row = new TestResultRow
        {
            ClubId = db.ClubId, Id = NewId.Create(), PlayerId = playerId,
            Kind = result.Kind, TakenOn = result.On, Value = result.Value, Second = result.Second, Exercise = result.Exercise, EnteredBy = by,
        };
        db.TestResults.Add(row);
        db.Note(now, by, "test.entered", squadId);
        await db.SaveChangesAsync(cancel);
        return row.Id;
    }

    public async Task<Result<Guid>> RemoveAsync(Guid squadId, Guid playerId, Guid id, Guid by, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        if (await Of(db, squadId, playerId).SingleOrDefaultAsync(r => r.Id == id, cancel) is not { } row)
        {
            return Refusal.NotFound("test result");
        }

        db.TestResults.Remove(row);
        db.Note(clock.GetCurrentInstant(), by, "test.removed", squadId);
        return await db.TrySaveAsync(Refusal.Meanwhile("test result"), cancel) is { } problem ? problem : id;
    }

    private static IQueryable<TestResultRow> Of(ClubCycleDb db, Guid squadId, Guid playerId) =>
        db.TestResults.Where(r => r.PlayerId == playerId && db.Players.Any(p => p.Id == playerId && p.SquadId == squadId));
}
