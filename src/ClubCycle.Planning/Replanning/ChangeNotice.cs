using System.Globalization;
using NodaTime;

namespace ClubCycle.Planning.Replanning;

/// <summary>What players must know of a new plan: what changed in the next seven days, in plain words. It names no person.</summary>
public static class ChangeNotice
{
    /// <summary>How far ahead it looks, from now on.</summary>
    public static readonly Duration Ahead = Duration.FromDays(7);

    /// <summary>Empty when nothing changed for players within the time ahead, by either plan.</summary>
    /// <param name="before">What was published; null when nothing was.</param>
    /// <param name="culture">How weekdays and months are written.</param>
    public static string Text(string squad, SquadPlan? before, SquadPlan after, Instant now, DateTimeZone zone, CultureInfo culture)
    {
        var old = Of(before);
        var planned = Of(after);
        var lines = old.Keys.Union(planned.Keys)
            .Select(uid => (Was: old.GetValueOrDefault(uid), Is: planned.GetValueOrDefault(uid)))
            .Where(s => IsAhead(s.Was) || IsAhead(s.Is))
            .OrderBy(s => (s.Is ?? s.Was)!.StartsAt).ThenBy(s => (s.Is ?? s.Was)!.Slot, StringComparer.Ordinal)
            .SelectMany(s => Lines(s.Was, s.Is, culture))
            .ToList();
        return lines.Count == 0 ? "" : string.Join('\n', lines.Prepend($"{squad}: what changed in the next seven days"));

        bool IsAhead(PlannedSession? session) =>
            session?.StartsAt.InZoneLeniently(zone).ToInstant() is { } start && start >= now && start < now + Ahead;
    }

    private static Dictionary<Guid, PlannedSession> Of(SquadPlan? plan) =>
        (plan?.Sessions ?? []).Where(s => s.Kind != SessionKind.ActiveRecovery).ToDictionary(s => s.Uid);

    private static IEnumerable<string> Lines(PlannedSession? was, PlannedSession? now, CultureInfo culture)
    {
        if (was is null)
        {
            yield return $"New: {now!.Title} on {At(now, culture)}, {now.Minutes} minutes.";
            yield break;
        }

        if (now is null)
        {
            yield return $"Called off: {was.Title} on {At(was, culture)}.";
            yield break;
        }

        if (was.StartsAt != now.StartsAt)
        {
            yield return $"Moved: {was.Title} from {At(was, culture)} to {At(now, culture)}.";
        }

        if (was.Title != now.Title)
        {
            yield return $"Changed: {now.Title} instead of {was.Title} on {At(now, culture)}.";
        }

        if (was.Minutes != now.Minutes)
        {
            yield return $"Changed: {now.Title} on {At(now, culture)} takes {now.Minutes} minutes instead of {was.Minutes}.";
        }

        if (was.Place != now.Place)
        {
            yield return now.Place is { } place ? $"Changed: {now.Title} on {At(now, culture)} is at {place}." : $"Changed: the place of {now.Title} on {At(now, culture)} is open.";
        }
    }

    private static string At(PlannedSession session, CultureInfo culture) =>
        $"{session.Date.ToString("dddd d MMMM", culture)} at {session.Start.ToString("HH:mm", CultureInfo.InvariantCulture)}";
}
