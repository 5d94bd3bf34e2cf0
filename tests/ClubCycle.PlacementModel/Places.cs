using ClubCycle.Planning.Weeks;
using ClubCycle.Planning.Weeks.Placement;
using ClubCycle.Planning.Workouts;
using NodaTime;

namespace ClubCycle.PlacementModel;

/// <param name="Day">0 to 6 from the week's first day.</param>
/// <param name="Minute">From the day's midnight.</param>
/// <param name="Cost">What the place costs by itself, whatever else is placed.</param>
internal readonly record struct Place(int Day, int Minute, bool Inside, int Cost);

/// <summary>Where a session of a week can go: the section of that name of <c>docs/placement.md</c>.</summary>
internal sealed class Places(WeekToPlace week, Paper paper)
{
    private const int LaterStep = 30;

    public IReadOnlyList<Place> Of(WantedSession wanted) =>
        wanted.Pinned ? [PlaceOfPin(wanted)] : [.. Enumerable.Range(0, 7).SelectMany(day => OnDay(wanted, day))];

    private Place PlaceOfPin(WantedSession pin)
    {
        var day = DayOf(pin.KeepDate!.Value);
        var start = pin.KeepStart is { } time ? Minutes(time) : (int?)null;

        return InsideStart(pin, day) is { } inside && (start ?? inside) == inside
            ? new Place(day, inside, true, 0)
            : new Place(day, start ?? Usual(pin, day)?.Start ?? WindowsOn(day).Select(w => (int?)w.From).FirstOrDefault() ?? 18 * 60, false, 0);
    }

    private List<Place> OnDay(WantedSession wanted, int day)
    {
        if (!week.Free[day] || week.Contacts.Any(c => c.IsMatch && DayOf(c.Date) == day))
        {
            return [];
        }

        List<Place> places = [];
        if (!wanted.Workout.OnlyInsidePractice && (week.SessionsPerContactDay > 0 || PracticeOn(day) is null))
        {
            places.AddRange(OwnStarts(wanted, day).Distinct().Select(start => new Place(day, start, false, CostOf(wanted, day, start) + CostOfLater(wanted, day, start))));
        }

        if (InsideStart(wanted, day) is { } inside)
        {
            places.Add(new Place(day, inside, true, CostOf(wanted, day, inside) + paper.InsidePractice));
        }

        return places;
    }

    private IEnumerable<int> OwnStarts(WantedSession wanted, int day)
    {
        if (Usual(wanted, day) is { } usual)
        {
            yield return usual.Start;

            var workout = wanted.Workout;
            var mayBeLater = workout.Hardness == Hardness.Hard || workout.HeavyLift || workout.Jumps != JumpClass.None;
            for (var later = 1; mayBeLater && later <= paper.LaterStarts; later++)
            {
                var start = usual.Start + (later * LaterStep);
                if (start + wanted.Minutes <= usual.WindowEnd && IsClearOfPractice(day, start, wanted.Minutes))
                {
                    yield return start;
                }
            }
        }

        if (IsPublishedDay(wanted, day) && wanted.KeepStart is { } time)
        {
            var start = Minutes(time);
            if (WindowsOn(day).Any(w => w.From <= start && start + wanted.Minutes <= w.To) && IsClearOfPractice(day, start, wanted.Minutes))
            {
                yield return start;
            }
        }
    }

    private (int Start, int WindowEnd)? Usual(WantedSession wanted, int day)
    {
        foreach (var (from, to) in WindowsOn(day))
        {
            var start = IsClearOfPractice(day, from, wanted.Minutes) ? from : EndOf(PracticeOn(day)!);
            if (start + wanted.Minutes <= to)
            {
                return (start, to);
            }
        }

        return null;
    }

    private int? InsideStart(WantedSession wanted, int day) =>
        wanted.Workout.InsidePractice && PracticeOn(day) is { } practice && practice.Minutes >= wanted.Minutes + paper.MinutesIntoPractice
            ? Minutes(practice.Start) + paper.MinutesIntoPractice
            : null;

    private int CostOf(WantedSession wanted, int day, int start)
    {
        var weekend = week.First.PlusDays(day).DayOfWeek is IsoDayOfWeek.Saturday or IsoDayOfWeek.Sunday ? paper.Weekend : 0;

        return weekend
            + (wanted.KeepDate is null ? week.BaseDays?.TryGetValue(wanted.Slot, out var usual) == true && usual != day ? paper.NotOnBaseDay : 0
            : !IsPublishedDay(wanted, day) ? paper.KeptOnAnotherDay
            : !IsPublishedTime(wanted, start) ? paper.KeptAtAnotherTime
            : 0);
    }

    private int CostOfLater(WantedSession wanted, int day, int start) =>
        IsPublishedDay(wanted, day) && IsPublishedTime(wanted, start) ? 0 : (start - Usual(wanted, day)!.Value.Start) / LaterStep * paper.HalfHourLater;

    private bool IsPublishedDay(WantedSession wanted, int day) => wanted.KeepDate == week.First.PlusDays(day);

    private static bool IsPublishedTime(WantedSession wanted, int start) => wanted.KeepStart is { } time && Minutes(time) == start;

    private bool IsClearOfPractice(int day, int start, int minutes) =>
        PracticeOn(day) is not { } practice || start + minutes <= Minutes(practice.Start) || start >= EndOf(practice);

    private Contact? PracticeOn(int day) => week.Contacts.SingleOrDefault(c => !c.IsMatch && DayOf(c.Date) == day);

    private IEnumerable<(int From, int To)> WindowsOn(int day)
    {
        var weekday = week.First.PlusDays(day).DayOfWeek;
        return week.Squad.Windows.Count > 0 ? week.Squad.Windows.Where(w => w.Days.Contains(weekday)).Select(w => (Minutes(w.From), Minutes(w.To))).OrderBy(w => w.Item1)
            : weekday is IsoDayOfWeek.Saturday or IsoDayOfWeek.Sunday ? [(10 * 60, 18 * 60)]
            : [(18 * 60, 21 * 60)];
    }

    private int DayOf(LocalDate date) => Period.DaysBetween(week.First, date);

    private static int EndOf(Contact practice) => Minutes(practice.Start) + practice.Minutes;

    private static int Minutes(LocalTime time) => (time.Hour * 60) + time.Minute;
}
