using NodaTime;

namespace ClubCycle.Planning.Weeks.Placement;

/// <summary>All that a week's placement depends on, without its date: equal keys, equal weeks.</summary>
internal static class WeekKey
{
    public static IEqualityComparer<int[]> Comparer { get; } = EqualityComparer<int[]>.Create((a, b) => a.AsSpan().SequenceEqual(b), Hash);

    public static int[] Of(WeekToPlace week)
    {
        List<int> key = new(64) { week.ActiveDaysAtMost, week.HoursBetweenHard, week.HardAtMost, week.SessionsPerContactDay, week.Wanted.Count, week.Contacts.Count, week.Around.Count };
        var free = 0;
        for (var day = 0; day < 7; day++)
        {
            free |= week.Free[day] ? 1 << day : 0;
        }

        key.Add(free);
        foreach (var wanted in week.Wanted)
        {
            key.Add(((int)Spacing.TraitsOf(wanted, week.Squad.AgeGroup.IsYouth) << 2) | (wanted.Workout.InsidePractice ? 2 : 0) | (wanted.Workout.OnlyInsidePractice ? 1 : 0));
            key.Add(wanted.Minutes);
            key.Add(wanted.KeepDate is { } kept ? Period.DaysBetween(week.First, kept) : int.MinValue);
            key.Add(wanted.KeepStart is { } start ? DayTimes.MinuteOf(start) : -1);
            key.Add(week.BaseDays is { } days && days.TryGetValue(wanted.Slot, out var day) ? day : -1);
        }

        foreach (var contact in week.Contacts)
        {
            key.Add((Period.DaysBetween(week.First, contact.Date) * DayTimes.DayMinutes) + DayTimes.MinuteOf(contact.Start));
            key.Add(contact.IsMatch ? -1 : contact.Minutes);
        }

        foreach (var anchor in week.Around)
        {
            key.Add(anchor.Minute);
            key.Add((anchor.HoursBetweenHard << 8) | ((int)Spacing.TraitsOf(anchor) << 1) | (anchor.Match ? 1 : 0));
        }

        return [.. key];
    }

    private static int Hash(int[] key)
    {
        var hash = new HashCode();
        foreach (var part in key)
        {
            hash.Add(part);
        }

        return hash.ToHashCode();
    }
}
