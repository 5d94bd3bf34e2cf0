using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Audit;

/// <summary>Reads what was changed, newest first.</summary>
public sealed class AuditStore(IClubDbFactory contexts)
{
    public async Task<IReadOnlyList<AuditRow>> LatestAsync(int count, CancellationToken cancel = default)
    {
        await using var db = await contexts.OpenAsync(cancel);
        return await db.Audit.AsNoTracking().OrderByDescending(a => a.At).ThenByDescending(a => a.Id).Take(count).ToListAsync(cancel);
    }
}

internal static class AuditTrail
{
    public const int LongestDetails = 500;

    /// <summary>Notes a change; it is saved, or not, together with the change.</summary>
    public static void Note(this ClubCycleDb db, Instant now, Guid? by, string what, Guid? squadId = null, string details = "") => db.Audit.Add(new AuditRow
    {
        ClubId = db.ClubId, Id = NewId.Create(), At = now, By = by, What = what, SquadId = squadId, Details = Planning.TypedText.Start(details, LongestDetails),
    });
}
