using NodaTime;

namespace ClubCycle.Planning.Replanning;

/// <summary>A session that a new plan adds, calls off or keeps otherwise than before.</summary>
/// <param name="Was">Null when it is new.</param>
/// <param name="Is">Null when it is called off.</param>
public sealed record ChangedSession(PlannedSession? Was, PlannedSession? Is);

/// <summary>What players must know of a new plan: what changed for them in the next seven days.</summary>
public static class ChangeNotice
{
    /// <summary>How far ahead it looks, from now on.</summary>
    public static readonly Duration Ahead = Duration.FromDays(7);

    /// <summary>In the order of the days, by either plan. Sessions that differ in nothing that players see are not among them.</summary>
    /// <param name="before">What was published; null when nothing was.</param>
    public static IReadOnlyList<ChangedSession> Of(SquadPlan? before, SquadPlan after, Instant now, DateTimeZone zone)
    {
        var old = ByUid(before);
        var planned = ByUid(after);
        return
        [
            .. old.Keys.Union(planned.Keys)
                .Select(uid => new ChangedSession(old.GetValueOrDefault(uid), planned.GetValueOrDefault(uid)))
                .Where(s => (IsAhead(s.Was) || IsAhead(s.Is)) && Seen(s.Was) != Seen(s.Is))
                .OrderBy(s => (s.Is ?? s.Was)!.StartsAt).ThenBy(s => (s.Is ?? s.Was)!.Slot, StringComparer.Ordinal),
        ];

        bool IsAhead(PlannedSession? session) =>
            session?.StartsAt.InZoneLeniently(zone).ToInstant() is { } start && start >= now && start < now + Ahead;
    }

    /// <summary>Optional active recovery is no news.</summary>
    private static Dictionary<Guid, PlannedSession> ByUid(SquadPlan? plan) =>
        (plan?.Sessions ?? []).Where(s => s.Kind != SessionKind.ActiveRecovery).ToDictionary(s => s.Uid);

    private static (LocalDateTime Start, string Title, int Minutes, string? Place)? Seen(PlannedSession? session) =>
        session is null ? null : (session.StartsAt, session.Title, session.Minutes, session.Place);
}
