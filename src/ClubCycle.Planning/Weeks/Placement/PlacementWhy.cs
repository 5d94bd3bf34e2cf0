using System.Globalization;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Planning.Weeks.Placement;

/// <summary>Says in a coach's words why a session has its day, or why it has none.</summary>
internal sealed class PlacementWhy
{
    /// <summary>What is four days away explains nothing.</summary>
    private const int TellingMinutes = 4 * DayTimes.DayMinutes;

    private readonly WeekToPlace _week;
    private readonly PreparedWeek _prepared;
    private readonly int[] _spots;

    /// <summary>Everything at a fixed time that a session can be held against: facts and the sessions of this week and its neighbours.</summary>
    private readonly List<Seen> _seen = [];

    /// <param name="before">The week before; null when there is none. The same for <paramref name="after"/>.</param>
    public PlacementWhy(ChosenWeek week, ChosenWeek? before, ChosenWeek? after)
    {
        (_week, _prepared, _spots) = (week.Problem, week.Prepared, week.Spots);
        foreach (var fact in _prepared.Facts)
        {
            _seen.Add(new Seen(-1, fact.Minute, Spacing.TraitsOf(fact), fact.Match, fact.Title, 0));
        }

        See(week, 0);
        See(before, -PreparedWeek.WeekMinutes);
        See(after, PreparedWeek.WeekMinutes);
    }

    /// <param name="Session">Its number in this week; -1 for everything else.</param>
    private readonly record struct Seen(int Session, int Minute, Traits Traits, bool Match, string Title, int HoursBetweenHard);

    public string ThisPlaceFor(int session)
    {
        var wanted = _week.Wanted[session];
        var spot = _prepared.Spots[session][_spots[session]];
        if (wanted.Pinned)
        {
            return "A coach fixed this day.";
        }

        var here = Here(session, spot);
        if (wanted.KeepDate is { } kept && kept != _week.First.PlusDays(spot.Day))
        {
            var day = NodaTime.Period.DaysBetween(_week.First, kept);
            return $"It was published for {Weekday(day)}, which {WhyNot(session, day)}. {here}";
        }

        return _week.BaseDays is { } days && days.TryGetValue(wanted.Slot, out var usual) && usual != spot.Day
            ? $"Its usual {Weekday(usual)} {WhyNot(session, usual)}. {here}"
            : here;
    }

    public string NoPlaceFor(int session)
    {
        var workout = _week.Wanted[session].Workout;
        if (_prepared.Spots[session].Length == 0)
        {
            return workout.OnlyInsidePractice ? "there is no practice this week to play it in"
                : Enumerable.Range(0, 7).Any(day => IsOpen(day) && _prepared.UsualStart(session, day) is not null) ? "no free day is far enough from matches and hard sessions"
                : "no free day this week has room for it (closed days, matches and the squad's times)";
        }

        return workout.Hardness == Hardness.Hard && HardInWeek() >= _week.HardAtMost ? $"the week already holds {_week.HardAtMost} hard sessions, matches included"
            : workout.Hardness == Hardness.Hard ? "no day is far enough from the other hard sessions and matches"
            : workout.Jumps != JumpClass.None ? "no day is far enough from the other jumps, or the week already has its active days"
            : ActiveDays() >= _week.ActiveDaysAtMost ? $"the week already has its {_week.ActiveDaysAtMost} active days"
            : "other sessions have the days that it could take";
    }

    private string Here(int session, Spot spot)
    {
        if (spot.Inside)
        {
            return "Inside practice, so it costs no extra day.";
        }

        var traits = _prepared.Traits[session];
        if ((traits & Traits.Spaced) != 0)
        {
            return Distances(session, spot);
        }

        var yesterday = _seen.Where(s => s.Session != session && PreparedWeek.DayOf(s.Minute) == spot.Day - 1).ToList();
        return (traits & Traits.NotEasy) == 0 && yesterday.Exists(s => s.Match) ? "Light enough for the day after a match."
            : (traits & Traits.NotEasy) == 0 && yesterday.Find(s => (s.Traits & Traits.Hard) != 0) is { Title: not null } hard ? $"Lighter work the day after {Name(hard)}."
            : _week.BaseDays is { } days && days.TryGetValue(_week.Wanted[session].Slot, out var usual) && usual == spot.Day ? "Its usual day in this phase, where it leaves the week best spread."
            : "The day that leaves the week best spread.";
    }

    /// <summary>How far the nearest things are that it must keep away from, before and after.</summary>
    private string Distances(int session, Spot spot)
    {
        Seen? before = null;
        Seen? after = null;
        foreach (var other in _seen)
        {
            if (other.Session == session || Needed(session, spot.Minute, other) == 0 || Math.Abs(other.Minute - spot.Minute) > TellingMinutes)
            {
                continue;
            }

            if (other.Minute <= spot.Minute && (before is not { } b || other.Minute > b.Minute))
            {
                before = other;
            }
            else if (other.Minute > spot.Minute && (after is not { } a || other.Minute < a.Minute))
            {
                after = other;
            }
        }

        var needed = Math.Max(before is { } x ? Needed(session, spot.Minute, x) : 0, after is { } y ? Needed(session, spot.Minute, y) : 0) / 60;
        var parts = new[] { before is { } from ? $"{Hours(spot.Minute - from.Minute)} after {Named(from)}" : null, after is { } to ? $"{Hours(to.Minute - spot.Minute)} before {Named(to)}" : null }.OfType<string>().ToList();
        return parts.Count == 0 ? "No match and nothing that it must keep away from within four days." : $"{string.Join(" and ", parts)}; {needed} h belong between.";
    }

    /// <summary>What speaks against another day of the week: continues "Thursday …".</summary>
    private string WhyNot(int session, int day)
    {
        if (!_week.Free[day])
        {
            return "is closed or not free";
        }

        if ((_prepared.MatchDays & (1 << day)) != 0)
        {
            return "is a match day";
        }

        if (_prepared.Practices[day] is not null && _week.SessionsPerContactDay == 0 && !_week.Wanted[session].Workout.InsidePractice)
        {
            return "holds a practice already";
        }

        if (_seen.FirstOrDefault(s => s.Session >= 0 && s.Session != session && PreparedWeek.DayOf(s.Minute) == day) is { Title: not null } taker)
        {
            return $"went to {Name(taker)}";
        }

        if (_prepared.UsualStart(session, day) is not { } start)
        {
            return "has no time for it";
        }

        var minute = (day * DayTimes.DayMinutes) + start;
        foreach (var other in _seen)
        {
            if (other.Session != session && Math.Abs(minute - other.Minute) < Needed(session, minute, other))
            {
                return minute > other.Minute ? $"is only {Hours(minute - other.Minute)} after {Named(other)}" : $"is only {Hours(other.Minute - minute)} before {Named(other)}";
            }
        }

        return (_prepared.ContactDays & (1 << day)) == 0 && ActiveDays() >= _week.ActiveDaysAtMost ? $"would be one active day more than {_week.ActiveDaysAtMost}" : "would spread the week worse";
    }

    private int Needed(int session, int minute, Seen other)
    {
        var traits = _prepared.Traits[session];
        return other.Match ? _prepared.MinutesNeeded(traits, minute, new Anchor(other.Minute, true, true, false, JumpClass.None))
            : Spacing.MinutesBetween(traits, other.Traits, Math.Max(_week.HoursBetweenHard, other.HoursBetweenHard));
    }

    private void See(ChosenWeek? seen, int shift)
    {
        if (seen is not { } week)
        {
            return;
        }

        for (var i = 0; i < week.Spots.Length; i++)
        {
            if (week.Spots[i] >= 0)
            {
                _seen.Add(new Seen(shift == 0 ? i : -1, week.Prepared.Spots[i][week.Spots[i]].Minute + shift, week.Prepared.Traits[i], false, week.Problem.Wanted[i].Workout.Title, week.Problem.HoursBetweenHard));
            }
        }
    }

    private bool IsOpen(int day) => _week.Free[day] && (_prepared.MatchDays & (1 << day)) == 0;

    private int HardInWeek() => _prepared.Matches + _spots.Where((s, i) => s >= 0 && (_prepared.Traits[i] & Traits.Hard) != 0).Count();

    private int ActiveDays() => int.PopCount(_spots.Select((s, i) => s < 0 ? 0 : 1 << _prepared.Spots[i][s].Day).Aggregate(_prepared.ContactDays, (a, b) => a | b));

    private string Named(Seen other) => $"{Name(other)} on {Weekday(PreparedWeek.DayOf(other.Minute))}";

    private string Weekday(int day) => _week.First.PlusDays(day).DayOfWeek.ToString();

    private static string Name(Seen seen) => seen.Match ? "the match" : $"'{seen.Title}'";

    private static string Hours(int minutes) => (minutes / 60.0).ToString("0.#", CultureInfo.InvariantCulture) + " h";
}
