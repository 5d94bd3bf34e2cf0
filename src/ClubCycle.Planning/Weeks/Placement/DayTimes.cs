using ClubCycle.Planning.Squads;
using NodaTime;

namespace ClubCycle.Planning.Weeks.Placement;

/// <summary>When a squad's added sessions may take place, by day of its week, in minutes from midnight.</summary>
internal sealed class DayTimes
{
    public const int DayMinutes = 24 * 60;
    private const int MinutesIntoPractice = 15;
    private const int HalfHour = 30;
    public const int LateStarts = 4;
    private const int UsualEvening = 18 * 60;

    private readonly (int From, int To)[][] _windows = new (int, int)[7][];

    public DayTimes(Squad squad, IsoDayOfWeek firstWeekday)
    {
        for (var day = 0; day < 7; day++)
        {
            var weekday = (IsoDayOfWeek)((((int)firstWeekday - 1 + day) % 7) + 1);
            _windows[day] = squad.Windows.Count > 0
                ? [.. squad.Windows.Where(w => w.Days.Contains(weekday)).Select(w => (MinuteOf(w.From), MinuteOf(w.To))).OrderBy(w => w.Item1)]
                : IsWeekend(weekday) ? [(10 * 60, 18 * 60)] : [(UsualEvening, 21 * 60)];
        }
    }

    public static bool IsWeekend(IsoDayOfWeek weekday) => weekday is IsoDayOfWeek.Saturday or IsoDayOfWeek.Sunday;

    public static int MinuteOf(LocalTime time) => (time.Hour * 60) + time.Minute;

    /// <summary>Start inside the practice, after its warm-up; null when the session does not fit there.</summary>
    public static int? Inside(Contact? practice, int minutes) =>
        practice is not null && practice.Minutes >= minutes + MinutesIntoPractice ? MinuteOf(practice.Start) + MinutesIntoPractice : null;

    /// <summary>The earliest start in the day's windows that is clear of practice; null when there is none.</summary>
    public int? Usual(int day, int minutes, Contact? practice)
    {
        foreach (var (from, to) in _windows[day])
        {
            var start = practice is not null && from + minutes > MinuteOf(practice.Start) ? Math.Max(from, MinuteOf(practice.Start) + practice.Minutes) : from;
            if (start + minutes <= to)
            {
                return start;
            }
        }

        return null;
    }

    /// <summary>So many half hours after the usual start; null when that leaves its window or runs into practice.</summary>
    /// <param name="halfHours">1 to <see cref="LateStarts"/>.</param>
    public int? Later(int day, int minutes, Contact? practice, int usual, int halfHours)
    {
        var start = usual + (halfHours * HalfHour);
        foreach (var (from, to) in _windows[day])
        {
            if (usual >= from && usual + minutes <= to)
            {
                return start + minutes <= to && IsClear(start, minutes, practice) ? start : null;
            }
        }

        return null;
    }

    public bool Fits(int day, int start, int minutes, Contact? practice) =>
        IsClear(start, minutes, practice) && Array.Exists(_windows[day], w => start >= w.From && start + minutes <= w.To);

    /// <summary>When the day's first window opens; the usual evening where it has none.</summary>
    public int Opens(int day) => _windows[day].Length > 0 ? _windows[day][0].From : UsualEvening;

    private static bool IsClear(int start, int minutes, Contact? practice) =>
        practice is null || start + minutes <= MinuteOf(practice.Start) || start >= MinuteOf(practice.Start) + practice.Minutes;
}
