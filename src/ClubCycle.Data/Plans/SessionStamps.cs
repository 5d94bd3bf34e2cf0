using ClubCycle.Planning;
using NodaTime;

namespace ClubCycle.Data.Plans;

/// <summary>When a calendar must be told about a session again: when its time, length, place, title or cancellation change, and for nothing else.</summary>
internal static class SessionStamps
{
    public static SessionRow New(Guid clubId, Guid squadId, PlannedSession session, Instant now)
    {
        var row = new SessionRow { ClubId = clubId, SquadId = squadId, Uid = session.Uid, ChangedAt = now };
        Take(row, session);
        return row;
    }

    /// <summary>True when there is something to tell.</summary>
    public static bool Update(SessionRow row, PlannedSession session, Instant now)
    {
        if (row.CancelledAt is null && row.Date == session.Date && row.Start == session.Start && row.Minutes == session.Minutes && row.Place == session.Place && row.Title == session.Title)
        {
            return false;
        }

        Take(row, session);
        row.CancelledAt = null;
        Tell(row, now);
        return true;
    }

    /// <summary>True when there is something to tell.</summary>
    public static bool Cancel(SessionRow row, Instant now)
    {
        if (row.CancelledAt is not null)
        {
            return false;
        }

        row.CancelledAt = now;
        Tell(row, now);
        return true;
    }

    private static void Take(SessionRow row, PlannedSession session) =>
        (row.Date, row.Start, row.Minutes, row.Place, row.Title, row.Kind) = (session.Date, session.Start, session.Minutes, session.Place, session.Title, session.Kind);

    private static void Tell(SessionRow row, Instant now) => (row.Sequence, row.ChangedAt) = (row.Sequence + 1, now);
}
