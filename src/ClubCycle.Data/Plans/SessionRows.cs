using ClubCycle.Planning;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Plans;

/// <summary>What phones are told about the sessions of many squads: read once, compared in memory, and only what differs written.</summary>
internal static class SessionRows
{
    /// <summary>Brings the stamps in line with the plans. What lies in the past stays as it was.</summary>
    /// <param name="at">When phones are told that it changed.</param>
    public static async Task TellAsync(ClubCycleDb db, IReadOnlyList<(Guid Squad, SquadDraft Draft)> squads, Instant now, Instant at, CancellationToken cancel)
    {
        if (squads.Count == 0)
        {
            return;
        }

        var ids = squads.Select(s => s.Squad).ToList();
        var uids = squads.SelectMany(s => s.Draft.Plan.Sessions.Select(p => p.Uid)).ToList();
        var today = now.InZone(squads[0].Draft.Request.Zone).Date;
        var rows = (await db.Sessions.AsNoTracking().Where(s => ids.Contains(s.SquadId) && (s.Date >= today || uids.Contains(s.Uid))).ToListAsync(cancel)).ToLookup(s => s.SquadId);
        await WriteAsync(db, [.. squads.SelectMany(s => Changed(db.ClubId, s.Squad, s.Draft.Plan.Sessions, rows[s.Squad], at))], cancel);
    }

    /// <summary>The rows that must be written.</summary>
    /// <param name="stored">Those from today on and those of the sessions.</param>
    internal static IEnumerable<SessionRow> Changed(Guid club, Guid squad, IReadOnlyList<PlannedSession> sessions, IEnumerable<SessionRow> stored, Instant now)
    {
        var rows = stored.ToDictionary(s => s.Uid);
        foreach (var session in sessions)
        {
            if (!rows.Remove(session.Uid, out var row))
            {
                yield return SessionStamps.New(club, squad, session, now);
            }
            else if (SessionStamps.Update(row, session, now))
            {
                yield return row;
            }
        }

        foreach (var gone in rows.Values.Where(r => SessionStamps.Cancel(r, now)))
        {
            yield return gone;
        }
    }

    /// <summary>One statement however many rows there are; EF Core would send one a row. COPY is refused on tables with row-level security.</summary>
    private static Task WriteAsync(ClubCycleDb db, SessionRow[] rows, CancellationToken cancel) => rows.Length == 0 ? Task.CompletedTask : db.Database.ExecuteSqlAsync(
        $"""
        insert into club.sessions (club_id, squad_id, uid, date, start, minutes, title, place, kind, sequence, changed_at, cancelled_at)
        select {db.ClubId}, * from unnest(
            {Column(rows, r => r.SquadId)}, {Column(rows, r => r.Uid)}, {Column(rows, r => r.Date)}, {Column(rows, r => r.Start)}, {Column(rows, r => r.Minutes)},
            {Column(rows, r => r.Title)}, {Column(rows, r => r.Place)}, {Column(rows, r => r.Kind.ToString())}, {Column(rows, r => r.Sequence)}, {Column(rows, r => r.ChangedAt)}, {Column(rows, r => r.CancelledAt)})
        on conflict (club_id, squad_id, uid) do update set
            date = excluded.date, start = excluded.start, minutes = excluded.minutes, title = excluded.title, place = excluded.place, kind = excluded.kind,
            sequence = excluded.sequence, changed_at = excluded.changed_at, cancelled_at = excluded.cancelled_at
        """,
        cancel);

    private static T[] Column<T>(SessionRow[] rows, Func<SessionRow, T> value) => Array.ConvertAll(rows, r => value(r));
}
