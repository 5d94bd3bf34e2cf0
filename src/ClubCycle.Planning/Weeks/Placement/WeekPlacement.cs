using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Workouts;
using NodaTime;

namespace ClubCycle.Planning.Weeks.Placement;

/// <summary>
/// Gives each wanted session of a week a day and a time: the cheapest placement that breaks no hard rule, by a complete search of the week
/// with pruning. Spacing is counted in hours between starts and sees beyond both ends of the week.
/// </summary>
internal sealed class WeekPlacement
{
    private const int DayMinutes = 24 * 60;
    private const int HoursBetweenHeavyLifts = 48;
    private const int HoursBetweenJumps = 48;
    private const int HoursBetweenHighJumps = 72;
    private const int HoursAfterMatch = 48;
    private const int HoursAfterTwoMatches = 72;
    private const int HoursBeforeMatch = 48;
    private const int MinutesIntoPractice = 15;

    private static readonly LocalTime WeekdayFrom = new(18, 0);
    private static readonly LocalTime WeekdayTo = new(21, 0);
    private static readonly LocalTime WeekendFrom = new(10, 0);
    private static readonly LocalTime WeekendTo = new(18, 0);

    private readonly WeekToPlace _week;
    private readonly bool _repeats;
    private readonly Option[][] _options;
    private readonly List<Anchor> _anchors;
    private readonly bool[] _contactDay = new bool[7];
    private readonly bool[] _matchDay = new bool[7];
    private readonly int[] _sessionsOn = new int[7];
    private readonly Option?[] _chosen;
    private readonly int _hardContacts;
    private Option?[] _best;
    private int _bestCost = int.MaxValue;

    private WeekPlacement(WeekToPlace week, bool repeats)
    {
        _week = week;
        _repeats = repeats;
        _anchors = [.. week.Around];
        foreach (var contact in week.Contacts)
        {
            var day = Period.DaysBetween(week.First, contact.Date);
            _contactDay[day] = true;
            if (contact.IsMatch)
            {
                _matchDay[day] = true;
                _anchors.Add(new Anchor((day * DayMinutes) + MinuteOf(contact.Start), true, true, false, JumpClass.None));
                _hardContacts++;
            }
        }

        _options = [.. week.Wanted.Select(OptionsOf)];
        _chosen = new Option?[week.Wanted.Count];
        _best = new Option?[week.Wanted.Count];
    }

    public static PlacedWeek Place(WeekToPlace week) => new WeekPlacement(week, false).Solve();

    /// <summary>The best placement when the same week stands before and after this one: its spacing holds across its own ends.</summary>
    public static PlacedWeek PlaceRepeating(WeekToPlace week) => new WeekPlacement(week, true).Solve();

    /// <summary>The earliest a session can start on a weekday; the usual evening start where the squad has no window that day.</summary>
    public static LocalTime EarliestStart(Squad squad, IsoDayOfWeek weekday) => Windows(squad, weekday).Select(w => w.From).DefaultIfEmpty(WeekdayFrom).First();

    private PlacedWeek Solve()
    {
        if (_week.Wanted.Count == 0)
        {
            return new PlacedWeek([], []);
        }

        // Pinned sessions stand first: they are facts that the others have to respect.
        var order = Enumerable.Range(0, _week.Wanted.Count).OrderBy(i => _week.Wanted[i].Pinned ? 0 : 1).ToArray();
        Search(order, 0, 0, 0);

        List<Placed> placed = [];
        List<(WantedSession, string)> dropped = [];
        for (var i = 0; i < _best.Length; i++)
        {
            var wanted = _week.Wanted[i];
            if (_best[i] is { } option)
            {
                placed.Add(new Placed(wanted, _week.First.PlusDays(option.Day), TimeOf(option.Minute), option.Inside, WhyThisDay(i, option)));
            }
            else
            {
                dropped.Add((wanted, WhyDropped(i)));
            }
        }

        return new PlacedWeek([.. placed.OrderBy(p => p.Date).ThenBy(p => p.Start)], dropped);
    }

    private void Search(int[] order, int depth, int cost, int hard)
    {
        if (cost >= _bestCost)
        {
            return;
        }

        if (depth == order.Length)
        {
            cost += ShapeCost();
            if (cost < _bestCost)
            {
                _bestCost = cost;
                _chosen.CopyTo(_best, 0);
            }

            return;
        }

        var slot = order[depth];
        var wanted = _week.Wanted[slot];
        var isHard = wanted.Workout.Hardness == Hardness.Hard ? 1 : 0;
        foreach (var option in _options[slot])
        {
            if (!wanted.Pinned && (!Fits(wanted, option, hard + isHard) || !Spaced(wanted.Workout, option)))
            {
                continue;
            }

            _chosen[slot] = option;
            _sessionsOn[option.Day]++;
            _anchors.Add(AnchorOf(wanted.Workout, option));
            Search(order, depth + 1, cost + option.Cost, hard + isHard);
            _anchors.RemoveAt(_anchors.Count - 1);
            _sessionsOn[option.Day]--;
            _chosen[slot] = null;
        }

        if (!wanted.Pinned)
        {
            Search(order, depth + 1, cost + PlacementCost.Dropped + (PlacementCost.DroppedStep * (_week.Wanted.Count - slot)), hard);
        }
    }

    /// <summary>Days: at most one session a day (inside practice or not), active days within the limit, hard sessions within the limit.</summary>
    private bool Fits(WantedSession wanted, Option option, int hard)
    {
        if (wanted.Workout.Hardness == Hardness.Hard && hard + _hardContacts > _week.HardAtMost)
        {
            return false;
        }

        if (_sessionsOn[option.Day] > 0)
        {
            return false;
        }

        if (_contactDay[option.Day])
        {
            return option.Inside || _week.SessionsPerContactDay > 0;
        }

        var active = 0;
        for (var day = 0; day < 7; day++)
        {
            active += _contactDay[day] || _sessionsOn[day] > 0 ? 1 : 0;
        }

        return active < _week.ActiveDaysAtMost;
    }

    /// <summary>Hours between starts: hard work, matches, heavy lifts and jumps, on both sides.</summary>
    private bool Spaced(Workout workout, Option option)
    {
        var minute = (option.Day * DayMinutes) + option.Minute;
        foreach (var anchor in _anchors)
        {
            if (!Spaced(workout, minute, _repeats ? Nearest(anchor, minute) : anchor))
            {
                return false;
            }
        }

        return true;
    }

    private bool Spaced(Workout workout, int minute, Anchor other)
    {
        var apart = Math.Abs(minute - other.Minute);
        if (workout.Hardness == Hardness.Hard && other.Match)
        {
            var before = minute < other.Minute;
            var needed = before ? HoursBeforeMatch : SecondMatchWithin48(other) ? HoursAfterTwoMatches : HoursAfterMatch;
            if (apart < needed * 60 || (before && DayOf(other.Minute) - DayOf(minute) == 1))
            {
                return false;
            }
        }
        else if (workout.Hardness == Hardness.Hard && other.Hard && apart < _week.HoursBetweenHard * 60)
        {
            return false;
        }

        if (workout.HeavyLift && other.HeavyLift && apart < HoursBetweenHeavyLifts * 60)
        {
            return false;
        }

        if (workout.Jumps == JumpClass.None || other.Jumps == JumpClass.None)
        {
            return true;
        }

        var high = workout.Jumps == JumpClass.High || other.Jumps == JumpClass.High;
        return apart >= (high ? HoursBetweenHighJumps : HoursBetweenJumps) * 60;
    }

    /// <summary>The copy of an anchor in this week, the one before or the one after that is nearest to the minute.</summary>
    private static Anchor Nearest(Anchor anchor, int minute)
    {
        const int Week = 7 * DayMinutes;
        var off = anchor.Minute - minute;
        return off > Week / 2 ? anchor with { Minute = anchor.Minute - Week } : off < -Week / 2 ? anchor with { Minute = anchor.Minute + Week } : anchor;
    }

    private bool SecondMatchWithin48(Anchor match)
    {
        foreach (var other in _anchors)
        {
            if (other.Match && other.Minute < match.Minute && match.Minute - other.Minute <= 48 * 60)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Costs that depend on the whole week: spread, easy after hard, a sixth active day.</summary>
    private int ShapeCost()
    {
        var cost = 0;
        var active = 0;
        var run = 0;
        for (var i = _repeats ? -7 : 0; i < 7; i++)
        {
            var day = (i + 7) % 7;
            run = _contactDay[day] || _sessionsOn[day] > 0 ? run + 1 : 0;
            if (i >= 0)
            {
                active += run > 0 ? 1 : 0;
                cost += run > 1 ? PlacementCost.DayAfterActive : 0;
                cost += run > 3 ? PlacementCost.LongRun : 0;
            }
        }

        cost += active > 5 ? PlacementCost.SixthActiveDay : 0;
        for (var i = 0; i < _chosen.Length; i++)
        {
            if (_chosen[i] is not { Inside: false } option)
            {
                continue;
            }

            var workout = _week.Wanted[i].Workout;
            if (workout.Hardness != Hardness.Easy)
            {
                cost += HardOn(option.Day - 1) ? PlacementCost.NotEasyAfterHard : 0;
                cost += MatchOn(option.Day + 1) ? PlacementCost.NotEasyBeforeMatch : 0;
            }

            if (_week.Squad.AgeGroup.IsYouth && IsStrength(workout))
            {
                for (var other = 0; other < i; other++)
                {
                    if (_chosen[other] is { } twin && IsStrength(_week.Wanted[other].Workout) && Math.Abs(twin.Day - option.Day) == 1)
                    {
                        cost += PlacementCost.YouthStrengthNextDay;
                    }
                }
            }
        }

        return cost;
    }

    private static bool IsStrength(Workout workout) => workout.Qualities.Contains(Quality.MuscularEndurance) || workout.HeavyLift;

    private bool HardOn(int day)
    {
        foreach (var anchor in _anchors)
        {
            if (anchor.Hard && SameDay(anchor, day))
            {
                return true;
            }
        }

        return false;
    }

    private bool MatchOn(int day)
    {
        foreach (var anchor in _anchors)
        {
            if (anchor.Match && SameDay(anchor, day))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>In a week that repeats, the day before its first is its last.</summary>
    private bool SameDay(Anchor anchor, int day) => DayOf(anchor.Minute) == (_repeats ? (day + 7) % 7 : day);

    private Option[] OptionsOf(WantedSession wanted)
    {
        if (wanted is { Pinned: true, KeepDate: { } pinned })
        {
            var day = Period.DaysBetween(_week.First, pinned);
            if (InsideStart(wanted, day) is { } inside && (wanted.KeepStart is null || wanted.KeepStart == inside))
            {
                return [new Option(day, MinuteOf(inside), true, 0)];
            }

            var start = wanted.KeepStart ?? FreeStart(day, wanted.Minutes) ?? EarliestStart(_week.Squad, pinned.DayOfWeek);
            return [new Option(day, MinuteOf(start), false, 0)];
        }

        List<Option> options = [];
        for (var day = 0; day < 7; day++)
        {
            if (!_week.Free[day] || _matchDay[day])
            {
                continue;
            }

            if (!OnlyInside(wanted.Workout) && FreeStart(day, wanted.Minutes) is { } usual)
            {
                var start = wanted.KeepDate == _week.First.PlusDays(day) && wanted.KeepStart is { } kept && FitsWindow(day, kept, wanted.Minutes) ? kept : usual;
                options.Add(new Option(day, MinuteOf(start), false, DayCost(wanted, day, start)));
            }

            if (InsideStart(wanted, day) is { } inside)
            {
                options.Add(new Option(day, MinuteOf(inside), true, DayCost(wanted, day, inside) + PlacementCost.InsidePractice));
            }
        }

        return [.. options.OrderBy(o => o.Cost)];
    }

    /// <summary>When the session would start inside that day's practice, after its warm-up; null when it cannot take place there.</summary>
    private LocalTime? InsideStart(WantedSession wanted, int day) =>
        wanted.Workout.InsidePractice && PracticeOn(day) is { } practice && practice.Minutes >= wanted.Minutes + MinutesIntoPractice
            ? practice.Start.PlusMinutes(MinutesIntoPractice)
            : null;

    // Games of the youngest children have no session of their own.
    private static bool OnlyInside(Workout workout) => workout.Name == "movement-games";

    private int DayCost(WantedSession wanted, int day, LocalTime start)
    {
        var cost = _week.First.PlusDays(day).DayOfWeek is IsoDayOfWeek.Saturday or IsoDayOfWeek.Sunday ? PlacementCost.Weekend : 0;
        if (wanted.KeepDate is { } kept)
        {
            cost += kept != _week.First.PlusDays(day) ? PlacementCost.PublishedDayLost : wanted.KeepStart is { } time && time != start ? PlacementCost.PublishedTimeLost : 0;
        }
        else if (_week.BaseDays is { } days && days.TryGetValue(wanted.Slot, out var usual) && usual != day)
        {
            cost += PlacementCost.BaseDayLost;
        }

        foreach (var ahead in _week.PublishedAhead)
        {
            cost += Spaced(wanted.Workout, (day * DayMinutes) + MinuteOf(start), ahead) ? 0 : PlacementCost.PublishedDayLost;
        }

        return cost;
    }

    private Contact? PracticeOn(int day) => _week.Contacts.FirstOrDefault(c => !c.IsMatch && c.Date == _week.First.PlusDays(day));

    /// <summary>The earliest start inside the squad's windows that does not run into practice; null when the day has none.</summary>
    private LocalTime? FreeStart(int day, int minutes)
    {
        foreach (var (from, to) in WindowsOn(day))
        {
            var start = MinuteOf(from);
            if (PracticeOn(day) is { } practice && start + minutes > MinuteOf(practice.Start))
            {
                start = Math.Max(start, MinuteOf(practice.Start) + practice.Minutes);
            }

            if (start + minutes <= MinuteOf(to))
            {
                return TimeOf(start);
            }
        }

        return null;
    }

    private bool FitsWindow(int day, LocalTime start, int minutes)
    {
        if (PracticeOn(day) is { } practice && MinuteOf(start) < MinuteOf(practice.Start) + practice.Minutes && MinuteOf(practice.Start) < MinuteOf(start) + minutes)
        {
            return false;
        }

        return WindowsOn(day).Any(w => start >= w.From && MinuteOf(start) + minutes <= MinuteOf(w.To));
    }

    private IEnumerable<(LocalTime From, LocalTime To)> WindowsOn(int day) => Windows(_week.Squad, _week.First.PlusDays(day).DayOfWeek);

    private static IEnumerable<(LocalTime From, LocalTime To)> Windows(Squad squad, IsoDayOfWeek weekday)
    {
        if (squad.Windows.Count > 0)
        {
            return squad.Windows.Where(w => w.Days.Contains(weekday)).Select(w => (w.From, w.To)).OrderBy(w => w.From);
        }

        return [weekday is IsoDayOfWeek.Saturday or IsoDayOfWeek.Sunday ? (WeekendFrom, WeekendTo) : (WeekdayFrom, WeekdayTo)];
    }

    private string WhyThisDay(int slot, Option option)
    {
        var wanted = _week.Wanted[slot];
        if (wanted.Pinned)
        {
            return "A coach fixed this day.";
        }

        if (option.Inside)
        {
            return "Inside practice, so it costs no extra day.";
        }

        var matches = _week.Contacts.Where(c => c.IsMatch).Select(c => c.Date.DayOfWeek.ToString()).Distinct().ToList();
        if (wanted.Workout.Hardness == Hardness.Hard)
        {
            return matches.Count > 0
                ? $"Two days clear of the {string.Join(" and ", matches)} match, and at least {_week.HoursBetweenHard} hours from other hard work."
                : $"At least {_week.HoursBetweenHard} hours from other hard work.";
        }

        var hardBefore = false;
        for (var i = 0; i < _best.Length; i++)
        {
            hardBefore |= _best[i] is { } other && other.Day == option.Day - 1 && _week.Wanted[i].Workout.Hardness == Hardness.Hard;
        }

        return hardBefore ? "Lighter work the day after hard work."
            : option.Day > 0 && _matchDay[option.Day - 1] ? "Light enough for the day after a match."
            : _week.BaseDays is { } days && days.TryGetValue(wanted.Slot, out var usual) && usual == option.Day ? "The usual day for this session in this phase."
            : "The day that leaves the week best spread.";
    }

    private string WhyDropped(int slot)
    {
        var wanted = _week.Wanted[slot];
        if (_options[slot].Length == 0)
        {
            return OnlyInside(wanted.Workout) ? "there is no practice this week to play it in" : "no free day this week has room for it (closed days, matches and the squad's times)";
        }

        var hard = _week.Wanted.Count(w => w.Workout.Hardness == Hardness.Hard) + _hardContacts;
        return wanted.Workout.Hardness == Hardness.Hard && hard > _week.HardAtMost ? $"the week already holds {_week.HardAtMost} hard sessions, matches included"
            : wanted.Workout.Hardness == Hardness.Hard ? "no day is far enough from the other hard sessions and matches"
            : wanted.Workout.Jumps != JumpClass.None ? "no day is far enough from the other jumps, or the week already has its active days"
            : $"the week already has its {_week.ActiveDaysAtMost} active days";
    }

    private static Anchor AnchorOf(Workout workout, Option option) =>
        new((option.Day * DayMinutes) + option.Minute, workout.Hardness == Hardness.Hard, false, workout.HeavyLift, workout.Jumps);

    private static int DayOf(int minute) => (int)Math.Floor(minute / (double)DayMinutes);

    private static int MinuteOf(LocalTime time) => (time.Hour * 60) + time.Minute;

    private static LocalTime TimeOf(int minute) => new(minute / 60, minute % 60);

    /// <param name="Minute">From midnight.</param>
    private readonly record struct Option(int Day, int Minute, bool Inside, int Cost);
}
