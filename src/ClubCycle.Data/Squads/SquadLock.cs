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

    /// <summary>
    /// For a change that rests on what was read: makes others who change the same squad in this way, and publishers, wait until the transaction ends. Rows that belong to
    /// the squad can be added meanwhile, so whoever holds one of those never waits for this.
    /// </summary>
    /// <param name="squadId">Null for every squad of the club.</param>
    public static Task LockToChangeAsync(this ClubCycleDb db, Guid? squadId, CancellationToken cancel) =>
        db.Database.ExecuteSqlAsync($"select 1 from club.squads where club_id = {db.ClubId} and ({squadId}::uuid is null or id = {squadId}) order by id for no key update", cancel);
}
