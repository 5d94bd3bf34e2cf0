using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Backups;

/// <summary>When the database was last backed up, as its audit trail tells. Each backup is noted in every club.</summary>
public sealed class LastBackup(IDbContextFactory<ClubCycleDb> everywhere)
{
    /// <summary>Null for never, or for longer ago than the audit trail reaches.</summary>
    public async Task<Instant?> AtAsync(CancellationToken cancel = default)
    {
        await using var db = await everywhere.OpenAsync(ClubScope.Everywhere, cancel);
        return await db.Audit.Where(a => a.What == BackupStore.Made).MaxAsync(a => (Instant?)a.At, cancel);
    }

    /// <summary>Whether one is due: a database with a club whose last backup is older than <see cref="BackupStore.Late"/>. A club that is younger is not late yet.</summary>
    public async Task<bool> IsLateAsync(Instant now, CancellationToken cancel = default)
    {
        await using var db = await everywhere.OpenAsync(ClubScope.Everywhere, cancel);
        return await db.Clubs.AnyAsync(c => c.CreatedAt < now - BackupStore.Late, cancel) && !(await AtAsync(cancel) >= now - BackupStore.Late);
    }
}
