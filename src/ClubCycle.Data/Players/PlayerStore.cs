using ClubCycle.Data.Audit;
using ClubCycle.Planning;
using ClubCycle.Planning.Players;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Players;

/// <summary>A player as the squad's coaches see one.</summary>
/// <param name="LiveLinks">Links that open the feed now.</param>
/// <param name="LastPollDay">Latest day on which one of the live links was polled.</param>
public sealed record StoredPlayer(Guid Id, Guid SquadId, string Name, int LiveLinks, LocalDate? LastPollDay, PlayerLimits Limits, int Version)
{
    /// <summary>Where a guardian's confirmation stands.</summary>
    public GuardianStanding Guardian { get; init; } = GuardianStanding.NotNeeded;
}

/// <summary>What limits a player's training.</summary>
/// <param name="BirthYear">Null when not given.</param>
/// <param name="AsksHealthQuestions">A coach wants the health questions answered before the plan starts.</param>
/// <param name="HealthSettledOn">When every answer was no, or a licensed professional cleared the player.</param>
/// <param name="GrowingFastSince">Jumps and sprints are fewer meanwhile.</param>
public sealed record PlayerLimits(int? BirthYear, bool AsksHealthQuestions, LocalDate? HealthSettledOn, LocalDate? GrowingFastSince);

/// <summary>The squads' players.</summary>
public sealed class PlayerStore(IClubDbFactory contexts, IClock clock)
{
    public const int LongestName = 60;

    /// <summary>Years that a player's age can have.</summary>
    private const int YoungestAge = 5;
    private const int OldestAge = 100;

    public async Task<IReadOnlyList<StoredPlayer>> ListAsync(Guid squadId, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        var players = await db.Players.Where(p => p.SquadId == squadId).OrderBy(p => p.Name).ThenBy(p => p.Id)
            .Select(p => new StoredPlayer(
                p.Id, p.SquadId, p.Name,
                db.Links.Count(l => l.PlayerId == p.Id && l.RevokedAt == null),
                db.Links.Where(l => l.PlayerId == p.Id && l.RevokedAt == null).Max(l => l.LastPollDay),
                new PlayerLimits(p.BirthYear, p.AsksHealthQuestions, p.HealthSettledOn, p.GrowingFastSince), p.Version))
            .ToListAsync(cancel);
        var guardians = await db.GuardiansAsync(squadId, clock, cancel);
        return players.ConvertAll(p => guardians.TryGetValue(p.Id, out var standing) ? p with { Guardian = standing } : p);
    }

    /// <summary>Adds players, or none when a name cannot be taken.</summary>
    public async Task<Result<IReadOnlyList<Guid>>> AddAsync(Guid squadId, IReadOnlyList<string> names, Guid by, CancellationToken cancel = default)
    {
        if (names.Select((name, i) => NameProblem(name, $"players[{i}].name")).OfType<Problem>().ToList() is { Count: > 0 } problems)
        {
            return new Result<IReadOnlyList<Guid>>.Failed(problems);
        }

        await using var db = await contexts.OpenAsync(cancel);
        if (!await db.Squads.AnyAsync(s => s.Id == squadId, cancel))
        {
            return Refusal.NotFound("squad");
        }

        var now = clock.GetCurrentInstant();
        var today = now.InUtc().Date;
        var rows = names.Select(name => new PlayerRow { ClubId = db.ClubId, Id = NewId.Create(), SquadId = squadId, Name = TypedText.Tidy(name), AddedOn = today }).ToList();
        db.Players.AddRange(rows);
        db.Note(now, by, "players.added", squadId, $"{rows.Count}");
        await db.SaveChangesAsync(cancel);
        return new Result<IReadOnlyList<Guid>>.Ok([.. rows.Select(r => r.Id)]);
    }

    public async Task<Result<int>> RenameAsync(Guid squadId, Guid id, string name, int expectedVersion, Guid by, CancellationToken cancel = default)
    {
        if (NameProblem(name, "player.name") is { } invalid)
        {
            return invalid;
        }

        await using var db = await contexts.OpenAsync(cancel);
        if (await db.Players.SingleOrDefaultAsync(p => p.Id == id && p.SquadId == squadId, cancel) is not { } row)
        {
            return Refusal.NotFound("player");
        }

        if (row.Version != expectedVersion)
        {
            return Refusal.Meanwhile("player");
        }

        row.Name = TypedText.Tidy(name);
        db.Note(clock.GetCurrentInstant(), by, "player.renamed", row.SquadId);
        return await db.TrySaveAsync(Refusal.Meanwhile("player"), cancel) is { } problem ? problem : row.Version;
    }

    /// <summary>Saves what limits a player's training.</summary>
    public async Task<Result<int>> LimitAsync(Guid squadId, Guid id, PlayerLimits limits, int expectedVersion, Guid by, CancellationToken cancel = default)
    {
        var today = clock.GetCurrentInstant().InUtc().Date;
        if (limits.BirthYear is { } year && (year < today.Year - OldestAge || year > today.Year - YoungestAge))
        {
            return new Problem("player.birth-year", $"The year of birth lies between {today.Year - OldestAge} and {today.Year - YoungestAge}. Correct it, or leave it empty.", "player.birthYear");
        }

        if (limits.HealthSettledOn > today.PlusDays(1) || limits.GrowingFastSince > today.PlusDays(1))
        {
            return new Problem("player.date-ahead", "This day has not come yet. Give the day on which it was so.", "player");
        }

        await using var db = await contexts.OpenAsync(cancel);
        if (await db.Players.SingleOrDefaultAsync(p => p.Id == id && p.SquadId == squadId, cancel) is not { } row)
        {
            return Refusal.NotFound("player");
        }

        if (row.Version != expectedVersion)
        {
            return Refusal.Meanwhile("player");
        }

        (row.BirthYear, row.AsksHealthQuestions, row.HealthSettledOn, row.GrowingFastSince) = ((short?)limits.BirthYear, limits.AsksHealthQuestions, limits.HealthSettledOn, limits.GrowingFastSince);
        db.Note(clock.GetCurrentInstant(), by, "player.limits", row.SquadId);
        return await db.TrySaveAsync(Refusal.Meanwhile("player"), cancel) is { } problem ? problem : row.Version;
    }

    /// <summary>A player answered every health question with no.</summary>
    /// <param name="on">Today at the club.</param>
    public async Task<Result<Guid>> SettleHealthQuestionsAsync(Guid squadId, Guid id, LocalDate on, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        if (await db.Players.SingleOrDefaultAsync(p => p.Id == id && p.SquadId == squadId, cancel) is not { } row)
        {
            return Refusal.NotFound("player");
        }

        row.HealthSettledOn = on;
        db.Note(clock.GetCurrentInstant(), null, "player.health-questions-answered", row.SquadId);
        return await db.TrySaveAsync(Refusal.Meanwhile("player"), cancel) is { } problem ? problem : id;
    }

    /// <summary>Erases a player with all links: their addresses stop working at once.</summary>
    public async Task<Result<Guid>> RemoveAsync(Guid squadId, Guid id, Guid by, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        if (await db.Players.SingleOrDefaultAsync(p => p.Id == id && p.SquadId == squadId, cancel) is not { } row)
        {
            return Refusal.NotFound("player");
        }

        db.Erase(row, clock.GetCurrentInstant(), by);
        return await db.TrySaveAsync(Refusal.Meanwhile("player"), cancel) is { } problem ? problem : id;
    }

    private static Problem? NameProblem(string name, string at) =>
        TypedText.NameProblem(name, LongestName, "player.name", "player's name", at) is { } problem
            ? problem with { Message = $"{problem.Message} A first name and an initial are enough." }
            : null;
}
