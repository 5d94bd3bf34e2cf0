using ClubCycle.Data.Audit;
using ClubCycle.Planning;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Players;

/// <summary>All that is stored about one player, for the player or a guardian who asks to see it. Secrets of links are not stored, so not here.</summary>
/// <param name="ExportedBy">Who asked for the file, so that a copy that turns up says whose it is.</param>
public sealed record PersonFile(
    string ExportedBy, Instant ExportedAt,
    string Club, string Squad, string AgeGroup, string Name, int? BirthYear, bool AsksHealthQuestions, LocalDate? HealthSettledOn, LocalDate? GrowingFastSince, bool Protected, LocalDate AddedOn,
    IReadOnlyList<PersonLink> Links, IReadOnlyList<PersonTest> Tests, IReadOnlyList<PersonGuardian> Guardian, IReadOnlyList<PersonAccess> Access);

/// <param name="Options">As <see cref="ClubCycle.Planning.Feeds.FeedOptions.Code"/>.</param>
public sealed record PersonLink(string Name, string Options, Instant CreatedAt, Instant? RevokedAt, LocalDate? LastUsed);

public sealed record PersonTest(LocalDate On, string Test, double Value, int? Second, string? Exercise);

/// <param name="Language">Of the page that the guardian was given.</param>
/// <param name="EndedOn">When the player was old enough.</param>
public sealed record PersonGuardian(Instant? AskedAt, string Language, string? Answer, LocalDate? AnsweredOn, LocalDate? EndedOn);

/// <param name="Role">Of who did it; the name stays with the club.</param>
public sealed record PersonAccess(Instant At, string What, string? Role);

public sealed class PersonFileStore(IClubDbFactory contexts, IClock clock)
{
    /// <summary>Files that one person may have in a day at the club (editorial): enough for those who ask, too few to carry a squad away.</summary>
    public const int MostADay = 5;

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
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        await db.Database.ExecuteSqlAsync($"select pg_advisory_xact_lock(hashtextextended({by.ToString("D")}, 1))", cancel);
        if (await db.Players.AsNoTracking().SingleOrDefaultAsync(p => p.Id == playerId && p.SquadId == squadId, cancel) is not { } player)
        {
            return Refusal.NotFound("player");
        }

        var now = clock.GetCurrentInstant();
        var club = await db.Clubs.AsNoTracking().SingleAsync(cancel);
        var zone = DateTimeZoneProviders.Tzdb[club.TimeZone];
        var dayBegan = now.InZone(zone).Date.AtStartOfDayInZone(zone).ToInstant();
        if (await db.Audit.CountAsync(a => a.What == WelfareStore.Exported && a.By == by && a.At >= dayBegan, cancel) >= MostADay)
        {
            return new Problem("export.too-many", $"You have saved {MostADay} files of players' data today, which is the most for one person in a day. Go on tomorrow, or ask the welfare officer or a head coach.", "export");
        }

        var squad = await db.Squads.AsNoTracking().SingleAsync(s => s.Id == squadId, cancel);
        var links = await db.Links.AsNoTracking().Where(l => l.PlayerId == playerId).OrderBy(l => l.CreatedAt).ToListAsync(cancel);
        var tests = await db.TestResults.AsNoTracking().Where(t => t.PlayerId == playerId).OrderBy(t => t.TakenOn).ToListAsync(cancel);
        var guardian = await db.GuardianConsents.AsNoTracking().Where(c => c.PlayerId == playerId).ToListAsync(cancel);
        var roles = await db.Users.Where(u => u.ClubId == db.ClubId).ToDictionaryAsync(u => u.Id, u => u.Role.ToString(), cancel);
        var id = playerId.ToString("D");
        var access = await db.Audit.AsNoTracking().Where(a => a.Details.StartsWith(id)).OrderBy(a => a.At).ToListAsync(cancel);
        db.Note(now, by, WelfareStore.Exported, squadId, $"{id} {TypedText.Tidy(reason)}");
        await db.SaveChangesAsync(cancel);
        await transaction.CommitAsync(cancel);
        return new PersonFile(
            await db.Users.Where(u => u.Id == by).Select(u => u.DisplayName).SingleOrDefaultAsync(cancel) ?? "", now,
            club.Name, squad.Name, squad.AgeGroup, player.Name, player.BirthYear, player.AsksHealthQuestions, player.HealthSettledOn, player.GrowingFastSince, player.Protected, player.AddedOn,
            links.ConvertAll(l => new PersonLink(l.Name, l.Options, l.CreatedAt, l.RevokedAt, l.LastPollDay)),
            tests.ConvertAll(t => new PersonTest(t.TakenOn, t.Kind.ToString(), t.Value, t.Second, t.Exercise)),
            guardian.ConvertAll(g => new PersonGuardian(g.AskedAt, g.Language.ToString(), g.Answer?.ToString(), g.AnsweredOn, g.EndedOn)),
            access.ConvertAll(a => new PersonAccess(a.At, a.What, a.By is { } who ? roles.GetValueOrDefault(who, "left") : null)));
    }
}
