using ClubCycle.Calendars;
using ClubCycle.Planning;
using ClubCycle.Planning.Replanning;

namespace ClubCycle.Web.Features.Notices;

/// <summary>A change notice in plain words and in the language of whoever reads or sends it. It names no person.</summary>
internal static class NoticeText
{
    /// <summary>A heading and a line for each change; empty without changes.</summary>
    public static string Of(string squad, IReadOnlyList<ChangedSession> changes) =>
        changes.Count == 0 ? "" : string.Join('\n', changes.SelectMany(Lines).Prepend(Say($"{squad}: what changed in the next seven days")));

    private static IEnumerable<string> Lines(ChangedSession change)
    {
        if (change.Was is not { } was)
        {
            var added = change.Is!;
            yield return Say($"New: {Title(added)} on {Day(added)} at {Time(added)}, {added.Minutes} minutes.");
            yield break;
        }

        if (change.Is is not { } now)
        {
            yield return Say($"Called off: {Title(was)} on {Day(was)} at {Time(was)}.");
            yield break;
        }

        if (was.StartsAt != now.StartsAt)
        {
            yield return Say($"Moved: {Title(was)} from {Day(was)} at {Time(was)} to {Day(now)} at {Time(now)}.");
        }

        if (was.Title != now.Title)
        {
            yield return Say($"Changed: {Title(now)} instead of {Title(was)} on {Day(now)} at {Time(now)}.");
        }

        if (was.Minutes != now.Minutes)
        {
            yield return Say($"Changed: {Title(now)} on {Day(now)} at {Time(now)} takes {now.Minutes} minutes instead of {was.Minutes}.");
        }

        if (was.Place != now.Place)
        {
            yield return now.Place is { } place
                ? Say($"Changed: {Title(now)} on {Day(now)} at {Time(now)} is here: {place}.")
                : Say($"Changed: the place of {Title(now)} on {Day(now)} at {Time(now)} is open.");
        }
    }

    private static string Title(PlannedSession session) => SessionText.Title(session.Kind, session.Title, PlanBook);

    private static string Day(PlannedSession session) => Dates.WithMonth(session.Date);

    private static string Time(PlannedSession session) => Dates.Time(session.Start);
}
