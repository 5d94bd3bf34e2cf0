using ClubCycle.Data.Audit;
using ClubCycle.Data.Clubs;
using ClubCycle.Data.Links;
using ClubCycle.Data.Squads;
using ClubCycle.Planning;
using ClubCycle.Planning.Languages;
using ClubCycle.Planning.Players;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Text;

namespace ClubCycle.Data.Players;

/// <summary>What a guardian's address opens.</summary>
/// <param name="Player">As stored.</param>
/// <param name="Age">Below which the club asks.</param>
public sealed record GuardianQuestion(Guid ClubId, Guid SquadId, Guid PlayerId, Language Language, string Player, string Squad, string Club, int Age, GuardianStanding Standing);

/// <summary>Guardians' confirmations: a coach asks by a secret address, the guardian answers there and takes the answer back there.</summary>
public sealed class GuardianStore(IDbContextFactory<ClubCycleDb> everywhere, IClubDbFactory contexts, IClock clock)
{
    /// <summary>For so long the player's page says that a guardian no longer decides.</summary>
    public const int NoticeDays = 90;

    /// <summary>A new address for a guardian of this player, in place of an earlier one; an answer that was given stays.</summary>
    public async Task<Result<string>> AskAsync(Guid squadId, Guid playerId, Language language, Guid by, CancellationToken cancel = default)
    {
        if (!Enum.IsDefined(language))
        {
            return new Problem("guardian.language", "Choose one of the languages in the list.", "guardian.language");
        }

        await using var db = await contexts.OpenAsync(cancel);
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        await db.LockSquadsAsync([squadId], cancel);
        if (!(await db.GuardiansAsync(squadId, clock, cancel)).TryGetValue(playerId, out var standing))
        {
            return Refusal.NotFound("player");
        }

        if (!standing.IsNeeded)
        {
            return NotNeeded;
        }

        var (row, token, now) = (await RowAsync(db, playerId, cancel), LinkToken.Create(), clock.GetCurrentInstant());
        (row.TokenHash, row.Language, row.AskedAt, row.LinkUsed) = (LinkToken.HashOf(token), language, now, false);
        db.Note(now, by, "guardian.asked", squadId, playerId.ToString("D"));
        await db.SaveChangesAsync(cancel);
        await transaction.CommitAsync(cancel);
        return token;
    }

    /// <summary>The guardian's address stops working; an answer that was given stays.</summary>
    public async Task<Result<Guid>> EndLinkAsync(Guid squadId, Guid playerId, Guid by, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        await db.LockSquadsAsync([squadId], cancel);
        if (!await db.Players.AnyAsync(p => p.Id == playerId && p.SquadId == squadId, cancel))
        {
            return Refusal.NotFound("player");
        }

        if (await db.GuardianConsents.SingleOrDefaultAsync(c => c.PlayerId == playerId && c.TokenHash != null, cancel) is { } row)
        {
            row.TokenHash = null;
            db.Note(clock.GetCurrentInstant(), by, "guardian.link-ended", squadId, playerId.ToString("D"));
            await db.SaveChangesAsync(cancel);
        }

        await transaction.CommitAsync(cancel);
        return playerId;
    }

    /// <summary>A coach states that a guardian of each of these players agreed on paper. Says of how many that is news: who needs nobody, or has agreed before, is left as it is.</summary>
    /// <param name="on">The day on the paper.</param>
    public async Task<Result<int>> AgreedOnPaperAsync(Guid squadId, IReadOnlyCollection<Guid> players, LocalDate on, Guid by, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        await db.LockSquadsAsync([squadId], cancel);
        var today = await ClubStore.TodayAsync(db, clock, cancel);
        if (on > today || on < today.PlusYears(-GuardianAge.Oldest))
        {
            return new Problem("guardian.paper-day", "Give the day that stands on the paper, today at the latest.", "guardian.paper");
        }

        var standings = await db.GuardiansAsync(squadId, clock, cancel);
        if (players.Any(p => !standings.ContainsKey(p)))
        {
            return Refusal.NotFound("player");
        }

        if (players.Any(p => standings[p].IsRefused))
        {
            return new Problem("guardian.refused", "A guardian said no through the link. Only the guardian can change that: give them a new link.", "guardian.paper");
        }

        var missing = players.Where(p => standings[p].IsMissing).Distinct().ToList();
        foreach (var player in missing)
        {
            var row = await RowAsync(db, player, cancel);
            (row.Answer, row.AnsweredOn, row.EndedOn) = (GuardianAnswer.OnPaper, on, null);
            db.Note(clock.GetCurrentInstant(), by, "guardian.agreed-on-paper", squadId, $"{player:D} {LocalDatePattern.Iso.Format(on)}");
        }

        await db.SaveChangesAsync(cancel);
        await transaction.CommitAsync(cancel);
        return missing.Count;
    }

    /// <summary>Looks a guardian's secret up among all clubs. Null when nobody has it, or it expired unused.</summary>
    public async Task<GuardianQuestion?> FindAsync(string token, CancellationToken cancel = default)
    {
        if (LinkToken.HashOf(token) is not { } hash)
        {
            return null;
        }

        await using var db = await everywhere.OpenAsync(ClubScope.Everywhere, cancel);
        var found = await (
            from consent in db.GuardianConsents
            join player in db.Players on new { consent.ClubId, Id = consent.PlayerId } equals new { player.ClubId, player.Id }
            join squad in db.Squads on new { player.ClubId, Id = player.SquadId } equals new { squad.ClubId, squad.Id }
            join club in db.Clubs on player.ClubId equals club.ClubId
            where consent.TokenHash == hash
            select new { Consent = consent, Player = player, Squad = squad, Club = club }).AsNoTracking().SingleOrDefaultAsync(cancel);
        if (found is null)
        {
            return null;
        }

        var (now, zone) = (clock.GetCurrentInstant(), DateTimeZoneProviders.Tzdb[found.Club.TimeZone]);
        var needed = GuardianAge.Asks(found.Club.GuardianAge, GuardianStandings.AgesOf(found.Squad.AgeGroup), found.Player.BirthYear, now.InZone(zone).Date);
        return GuardianStandings.Lives(found.Consent, now)
            ? new GuardianQuestion(
                found.Club.ClubId, found.Squad.Id, found.Player.Id, found.Consent.Language, found.Player.Name, found.Squad.Name, found.Club.Name, found.Club.GuardianAge,
                GuardianStandings.Of(needed, found.Consent, now, zone))
            : null;
    }

    /// <summary>The guardian's answer, as often as they change their mind. A no ends all of the player's links at once.</summary>
    public async Task AnswerAsync(GuardianQuestion question, bool agrees, CancellationToken cancel = default)
    {
        await using var db = await everywhere.OpenAsync(ClubScope.Of(question.ClubId), cancel);
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        await db.LockSquadsAsync([question.SquadId], cancel);
        if (await db.GuardianConsents.SingleOrDefaultAsync(c => c.PlayerId == question.PlayerId && c.TokenHash != null, cancel) is not { } row
            || !(await db.GuardiansAsync(question.SquadId, clock, cancel)).TryGetValue(question.PlayerId, out var standing)
            || !standing.IsNeeded || (agrees && standing.Answer == GuardianAnswer.Confirmed) || (!agrees && standing.IsRefused))
        {
            return;
        }

        var now = clock.GetCurrentInstant();
        var answer = agrees ? GuardianAnswer.Confirmed : standing.IsAgreed ? GuardianAnswer.TakenBack : GuardianAnswer.Refused;
        (row.Answer, row.AnsweredOn, row.LinkUsed) = (answer, await ClubStore.TodayAsync(db, clock, cancel), true);
        db.Note(now, null, answer switch { GuardianAnswer.Confirmed => "guardian.confirmed", GuardianAnswer.TakenBack => "guardian.taken-back", _ => "guardian.refused" }, question.SquadId, question.PlayerId.ToString("D"));
        foreach (var link in agrees ? [] : await db.Links.Where(l => l.PlayerId == question.PlayerId && l.RevokedAt == null).ToListAsync(cancel))
        {
            link.RevokedAt = now;
            db.Note(now, null, "link.revoked", question.SquadId, link.Id.ToString("D"));
        }

        await db.SaveChangesAsync(cancel);
        await transaction.CommitAsync(cancel);
    }

    /// <summary>Whether the player is told that a guardian no longer decides: from the age on, for some months.</summary>
    public async Task<bool> IsToldAsync(Guid squadId, Guid playerId, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        if (await db.GuardianConsents.AsNoTracking().SingleOrDefaultAsync(c => c.PlayerId == playerId && c.Answer != null, cancel) is not { } row
            || !(await db.GuardiansAsync(squadId, clock, cancel)).TryGetValue(playerId, out var standing))
        {
            return false;
        }

        return !standing.IsNeeded && !(row.EndedOn < (await ClubStore.TodayAsync(db, clock, cancel)).PlusDays(-NoticeDays));
    }

    private static async Task<GuardianConsentRow> RowAsync(ClubCycleDb db, Guid playerId, CancellationToken cancel)
    {
        var row = await db.GuardianConsents.SingleOrDefaultAsync(c => c.PlayerId == playerId, cancel);
        if (row is null)
        {
            db.GuardianConsents.Add(row = new GuardianConsentRow { ClubId = db.ClubId, PlayerId = playerId });
        }

        return row;
    }

    private static Problem NotNeeded => new("guardian.not-needed", "This player is old enough by the club's age, so no guardian is asked.", "guardian");
}
