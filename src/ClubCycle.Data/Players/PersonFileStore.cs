using ClubCycle.Data.Audit;
using ClubCycle.Planning;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Players;

/// <summary>All that is stored about one player, for the player or a guardian who asks to see it. Secrets of links are not stored, so not here.</summary>
public sealed record PersonFile(
    string Club, string Squad, string AgeGroup, string Name, int? BirthYear, bool AsksHealthQuestions, LocalDate? HealthSettledOn, LocalDate? GrowingFastSince, bool Protected, LocalDate AddedOn,
    IReadOnlyList<PersonLink> Links, IReadOnlyList<PersonTest> Tests, IReadOnlyList<PersonAccess> Access);

/// <param name="Options">As <see cref="ClubCycle.Planning.Feeds.FeedOptions.Code"/>.</param>
public sealed record PersonLink(string Name, string Options, Instant CreatedAt, Instant? RevokedAt, LocalDate? LastUsed);

public sealed record PersonTest(LocalDate On, string Test, double Value, int? Second, string? Exercise);

/// <param name="Role">Of who did it; the name stays with the club.</param>
public sealed record PersonAccess(Instant At, string What, string? Role);

public sealed class PersonFileStore(IClubDbFactory contexts, IClock clock)
{
    /// <summary>Gathers everything, and notes that and why it was asked for.</summary>
    public async Task<Result<PersonFile>> GatherAsync(Guid squadId, Guid playerId, string reason, Guid by, CancellationToken cancel = default)
    {
        if (string.IsNullOrWhiteSpace(reason))
        {
            return new Problem("export.reason-missing", "Say why the data is needed, such as \"the mother asked for it\". The welfare officer reads it.", "reason");
        }

        if (TypedText.LineProblem(reason, WelfareStore.LongestReason, "export.reason", "reason", "reason") is { } unreadable)
        {
            return unreadable;
        }

        await using var db = await contexts.OpenAsync(cancel);
        if (await db.Players.AsNoTracking().SingleOrDefaultAsync(p => p.Id == playerId && p.SquadId == squadId, cancel) is not { } player)
        {
            return Refusal.NotFound("player");
        }

        var squad = await db.Squads.AsNoTracking().SingleAsync(s => s.Id == squadId, cancel);
        var club = await db.Clubs.AsNoTracking().SingleAsync(cancel);
        var links = await db.Links.AsNoTracking().Where(l => l.PlayerId == playerId).OrderBy(l => l.CreatedAt).ToListAsync(cancel);
        var tests = await db.TestResults.AsNoTracking().Where(t => t.PlayerId == playerId).OrderBy(t => t.TakenOn).ToListAsync(cancel);
        var roles = await db.Users.Where(u => u.ClubId == db.ClubId).ToDictionaryAsync(u => u.Id, u => u.Role.ToString(), cancel);
        var id = playerId.ToString("D");
        var access = await db.Audit.AsNoTracking().Where(a => a.Details.StartsWith(id)).OrderBy(a => a.At).ToListAsync(cancel);
        db.Note(clock.GetCurrentInstant(), by, WelfareStore.Exported, squadId, $"{id} {TypedText.Tidy(reason)}");
        await db.SaveChangesAsync(cancel);
        return new PersonFile(
            club.Name, squad.Name, squad.AgeGroup, player.Name, player.BirthYear, player.AsksHealthQuestions, player.HealthSettledOn, player.GrowingFastSince, player.Protected, player.AddedOn,
            links.ConvertAll(l => new PersonLink(l.Name, l.Options, l.CreatedAt, l.RevokedAt, l.LastPollDay)),
            tests.ConvertAll(t => new PersonTest(t.TakenOn, t.Kind.ToString(), t.Value, t.Second, t.Exercise)),
            access.ConvertAll(a => new PersonAccess(a.At, a.What, a.By is { } who ? roles.GetValueOrDefault(who, "left") : null)));
    }
}
