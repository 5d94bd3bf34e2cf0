using ClubCycle.Planning;
using ClubCycle.Planning.Players;
using ClubCycle.Planning.Squads;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Players;

/// <summary>Where guardians' confirmations stand: asked in one place by all that makes links, keeps results or shows players.</summary>
internal static class GuardianStandings
{
    /// <summary>An address that nobody answers through stops working after this.</summary>
    public static readonly Duration LinkLives = Duration.FromDays(7);

    /// <summary>Of each player of the squad.</summary>
    public static async Task<IReadOnlyDictionary<Guid, GuardianStanding>> GuardiansAsync(this ClubCycleDb db, Guid squadId, IClock clock, CancellationToken cancel)
    {
        var club = await db.Clubs.AsNoTracking().SingleAsync(cancel);
        var players = await (
            from player in db.Players
            join squad in db.Squads on player.SquadId equals squad.Id
            join consent in db.GuardianConsents on player.Id equals consent.PlayerId into consents
            from consent in consents.DefaultIfEmpty()
            where player.SquadId == squadId
            select new { player.Id, player.BirthYear, squad.AgeGroup, Consent = consent }).AsNoTracking().ToListAsync(cancel);
        var (now, zone) = (clock.GetCurrentInstant(), DateTimeZoneProviders.Tzdb[club.TimeZone]);
        return players.ToDictionary(p => p.Id, p => Of(GuardianAge.Asks(club.GuardianAge, AgesOf(p.AgeGroup), p.BirthYear, now.InZone(zone).Date), p.Consent, now, zone));
    }

    /// <summary>Why this player can have no new link and no result; null when nothing stands in the way.</summary>
    public static async Task<Problem?> GuardianProblemAsync(this ClubCycleDb db, Guid squadId, Guid playerId, IClock clock, CancellationToken cancel) =>
        (await db.GuardiansAsync(squadId, clock, cancel)).TryGetValue(playerId, out var standing) && standing.IsMissing ? Missing : null;

    public static GuardianStanding Of(bool isNeeded, GuardianConsentRow? row, Instant now, DateTimeZone zone) =>
        row is null ? new GuardianStanding(isNeeded) : new GuardianStanding(isNeeded, row.Answer, row.AnsweredOn, Lives(row, now) ? row.AskedAt?.InZone(zone).Date : null);

    public static bool Lives(GuardianConsentRow row, Instant now) => row.TokenHash is not null && (row.LinkUsed || now < row.AskedAt + LinkLives);

    public static AgeGroup AgesOf(string name) => AgeGroup.Find(name) ?? throw new InvalidOperationException($"A squad has the age group '{name}', which there is not.");

    public static Problem Missing => new(
        "guardian.missing", "A guardian has not confirmed yet that this player may have a page and test results. Ask one on the player's own page, or note there that they agreed on paper.", "guardian");
}
