using ClubCycle.Data.Audit;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Players;

/// <summary>What one sweep took away.</summary>
public sealed record Swept(int Players, int Tests, int Links, int AuditRows)
{
    public bool IsNothing => this == new Swept(0, 0, 0, 0);
}

/// <summary>Lets go of what a club no longer needs to know of people. The times are ours; docs/operations.md lists them.</summary>
public sealed class RetentionStore(IClubDbFactory contexts, IClock clock)
{
    /// <summary>A player of whom nothing was added or used for so long is erased.</summary>
    public const int InactiveMonths = 13;
    public const int TestMonths = 24;
    public const int AuditMonths = 24;
    public const int RevokedLinkDays = 90;

    /// <summary>One club's rows, in one transaction.</summary>
    public async Task<Swept> SweepAsync(CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        var now = clock.GetCurrentInstant();
        var today = now.InUtc().Date;
        var quiet = today.PlusMonths(-InactiveMonths);
        var quietSince = quiet.AtStartOfDayInZone(DateTimeZone.Utc).ToInstant();

        var gone = await db.EveryPlayer()
            .Where(p => p.AddedOn < quiet && !(p.HealthSettledOn >= quiet) && !(p.GrowingFastSince >= quiet)
                && !db.Links.Any(l => l.PlayerId == p.Id && (l.CreatedAt >= quietSince || l.LastPollDay >= quiet))
                && !db.TestResults.Any(t => t.PlayerId == p.Id && t.TakenOn >= quiet))
            .ToListAsync(cancel);
        foreach (var player in gone)
        {
            db.Erase(player, now, null);
        }

        await db.SaveChangesAsync(cancel);
        await EndGuardiansAsync(db, now, cancel);
        var oldTests = today.PlusMonths(-TestMonths);
        var tests = await db.TestResults.Where(t => t.TakenOn < oldTests).ExecuteDeleteAsync(cancel);
        var oldLinks = now - Duration.FromDays(RevokedLinkDays);
        var links = await db.Links.Where(l => l.RevokedAt < oldLinks).ExecuteDeleteAsync(cancel);
        var oldAudit = today.PlusMonths(-AuditMonths).AtStartOfDayInZone(DateTimeZone.Utc).ToInstant();
        await db.Database.ExecuteSqlAsync($"select set_config('app.audit_until', {oldAudit.ToString()}, true)", cancel);
        var audit = await db.Audit.Where(a => a.At < oldAudit).ExecuteDeleteAsync(cancel);
        var swept = new Swept(gone.Count, tests, links, audit);
        if (!swept.IsNothing)
        {
            db.Note(now, null, "retention.swept", null, $"{swept.Players} players, {swept.Tests} tests, {swept.Links} revoked links, {swept.AuditRows} audit rows");
            await db.SaveChangesAsync(cancel);
        }

        await transaction.CommitAsync(cancel);
        return swept;
    }

    /// <summary>Ends the guardian's say over players who are old enough now, and forgets addresses that nobody used in time.</summary>
    private async Task EndGuardiansAsync(ClubCycleDb db, Instant now, CancellationToken cancel)
    {
        foreach (var squad in await db.Squads.Select(s => s.Id).ToListAsync(cancel))
        {
            var standings = await db.GuardiansAsync(squad, clock, cancel);
            foreach (var row in await db.GuardianConsents.Where(c => c.EndedOn == null && db.Players.Any(p => p.Id == c.PlayerId && p.SquadId == squad)).ToListAsync(cancel))
            {
                row.TokenHash = GuardianStandings.Lives(row, now) ? row.TokenHash : null;
                if (standings[row.PlayerId].IsNeeded ? row is { Answer: null, TokenHash: null } : row.Answer is null)
                {
                    db.GuardianConsents.Remove(row);
                }
                else if (!standings[row.PlayerId].IsNeeded)
                {
                    (row.TokenHash, row.EndedOn) = (null, now.InUtc().Date);
                    db.Note(now, null, "guardian.ended", squad, row.PlayerId.ToString("D"));
                }
            }
        }

        await db.SaveChangesAsync(cancel);
    }

    /// <summary>Erases again whom a restored backup brought back; says how many.</summary>
    public async Task<int> EraseAgainAsync(CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return await db.EveryPlayer().Where(p => db.Erasures.Any(e => e.Id == p.Id)).ExecuteDeleteAsync(cancel);
    }
}
