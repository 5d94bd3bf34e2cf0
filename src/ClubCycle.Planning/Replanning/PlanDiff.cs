namespace ClubCycle.Planning.Replanning;

/// <summary>Compares two states of a squad's year by the identity of their sessions.</summary>
public static class PlanDiff
{
    /// <param name="before">What is published; null means nothing is.</param>
    /// <param name="why">A sentence for a session that moved or went, by its id; null where the planner has none.</param>
    public static PlanChanges Between(IReadOnlyList<PlannedSession>? before, IReadOnlyList<PlannedSession> after, Func<Guid, string?>? why = null)
    {
        if (before is null)
        {
            return PlanChanges.None;
        }

        var old = before.Where(Counts).ToDictionary(s => s.Uid);
        var kept = 0;
        List<Moved> moved = [];
        List<Added> added = [];
        foreach (var session in after.Where(Counts))
        {
            if (!old.Remove(session.Uid, out var was))
            {
                added.Add(new Added(session.Uid, session.Title, session.StartsAt));
            }
            else if (was.StartsAt != session.StartsAt || was.Minutes != session.Minutes || was.Title != session.Title || was.Note != session.Note || was.Place != session.Place)
            {
                moved.Add(new Moved(session.Uid, session.Title, was.StartsAt, session.StartsAt, why?.Invoke(session.Uid) ?? Reason(was, session)));
            }
            else
            {
                kept++;
            }
        }

        return new PlanChanges(kept, moved, added,
            [.. old.Values.OrderBy(s => s.StartsAt).ThenBy(s => s.Slot, StringComparer.Ordinal).Select(s => new Dropped(s.Uid, s.Title, s.StartsAt, why?.Invoke(s.Uid) ?? (s.Slot.StartsWith(Pin.AddedSlot, StringComparison.Ordinal) ? "A coach took it out again." : "It is no longer part of the plan.")))]);
    }

    private static bool Counts(PlannedSession session) => session.Kind != SessionKind.ActiveRecovery;

    private static string Reason(PlannedSession was, PlannedSession now) =>
        was.Title != now.Title && now.Kind == SessionKind.Session ? $"It is now '{now.Title}' instead of '{was.Title}'."
        : was.StartsAt == now.StartsAt && was.Minutes == now.Minutes && was.Title == now.Title && was.Place != now.Place ? now.Place is { } place ? $"It is at {place} now." : "Its place is open."
        : was.StartsAt == now.StartsAt && was.Minutes == now.Minutes ? now.Note is null ? "The coach's note is gone." : "The coach's note is new."
        : now.Pinned && was.StartsAt != now.StartsAt ? "A coach fixed the new time."
        : now.Kind == SessionKind.Match ? "The match moved."
        : was.Date != now.Date ? "Its day no longer fits the matches, closed days or spacing of the week."
        : was.Start != now.Start ? "Its time changed with the squad's times."
        : was.Minutes != now.Minutes ? $"It lasts {now.Minutes} minutes instead of {was.Minutes}."
        : "Its content changed.";
}
