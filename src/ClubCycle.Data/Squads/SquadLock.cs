using Microsoft.EntityFrameworkCore;

namespace ClubCycle.Data.Squads;

internal static class SquadLock
{
    /// <summary>
    /// Makes others who lock any of these squads wait until the transaction ends; answers which of them there are. Always in the order of their
    /// ids, so that two who want the same squads never wait for each other.
    /// </summary>
    public static async Task<IReadOnlySet<Guid>> LockSquadsAsync(this ClubCycleDb db, IEnumerable<Guid> squads, CancellationToken cancel)
    {
        var ids = squads.ToArray();
        var there = await db.Database.SqlQuery<Guid>($"select id as \"Value\" from club.squads where club_id = {db.ClubId} and id = any({ids}) order by id for update").ToListAsync(cancel);
        return there.ToHashSet();
    }
}
