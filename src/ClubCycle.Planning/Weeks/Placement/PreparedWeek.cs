using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Workouts;
using NodaTime;

namespace ClubCycle.Planning.Weeks.Placement;

/// <summary>One place that a session can take.</summary>
/// <param name="Minute">From midnight of the week's first day.</param>
/// <param name="Inside">Inside a practice.</param>
/// <param name="Cost">All that it costs whatever the other sessions do.</param>
/// <param name="PaysAfterHard">It pays for work after a hard day when one of the sessions makes it so.</param>
internal readonly record struct Spot(int Day, int Minute, bool Inside, int Cost, bool PaysAfterHard);

/// <summary>A week ready to be searched: every place each session can take as far as facts decide, and what pairs of sessions need.</summary>
internal sealed class PreparedWeek
{
    public const int WeekMinutes = 7 * DayTimes.DayMinutes;

    private readonly DayTimes _times;

    /// <summary>Bit 0 is the day before the first.</summary>
    private readonly int _hardFactDays;
    private readonly int _matchFactDays;

    public PreparedWeek(WeekToPlace week, DayTimes times, bool repeats)
    {
        (Week, _times, Repeats) = (week, times, repeats);
        Traits = [.. week.Wanted.Select(w => Spacing.TraitsOf(w, week.Squad.AgeGroup.IsYouth))];
        foreach (var contact in week.Contacts)
        {
            var day = Period.DaysBetween(week.First, contact.Date);
            ContactDays |= 1 << day;
            MatchDays |= contact.IsMatch ? 1 << day : 0;
            Matches += contact.IsMatch ? 1 : 0;
            if (!contact.IsMatch)
            {
                Practices[day] ??= contact;
            }
        }

        Facts = FactsOf(week, repeats);
        foreach (var fact in Facts)
        {
            var day = DayOf(fact.Minute);
            if (day is >= -1 and <= 7)
            {
                _hardFactDays |= fact.Hard ? 1 << (day + 1) : 0;
                _matchFactDays |= fact.Match ? 1 << (day + 1) : 0;
            }
        }

        Spots = new Spot[week.Wanted.Count][];
        SmallestCost = new int[week.Wanted.Count];
        TakesOwnDay = new bool[week.Wanted.Count];
        for (var i = 0; i < Spots.Length; i++)
        {
            Spots[i] = [.. SpotsOf(i)];
            TakesOwnDay[i] = !IsPinned(i) && Spots[i].Length > 0 && Array.TrueForAll(Spots[i], s => (ContactDays & (1 << s.Day)) == 0);
            SmallestCost[i] = Math.Min(Spots[i].Length == 0 ? int.MaxValue : Spots[i][0].Cost, DropCost(i));
        }

        Between = new int[Spots.Length * Spots.Length];
        for (var i = 0; i < Spots.Length; i++)
        {
            for (var j = 0; j < Spots.Length; j++)
            {
                Between[(i * Spots.Length) + j] = Spacing.MinutesBetween(Traits[i], Traits[j], week.HoursBetweenHard);
            }
        }

        // Pinned sessions stand first: they are facts that the others have to respect. Then those that the next week sees.
        Order = [.. Enumerable.Range(0, Spots.Length).OrderBy(i => IsPinned(i) ? 0 : (Traits[i] & Placement.Traits.Spaced) != 0 ? 1 : 2).ThenBy(i => Spots[i].Length)];
    }

    public WeekToPlace Week { get; }

    public bool Repeats { get; }

    /// <summary>Bit 0 is the first day.</summary>
    public int ContactDays { get; }

    public int MatchDays { get; }

    public int Matches { get; }

    public Contact?[] Practices { get; } = new Contact?[7];

    /// <summary>Matches and what happened, in and around the week; with copies a week away when the week repeats.</summary>
    public Anchor[] Facts { get; }

    /// <summary>By session, cheapest first.</summary>
    public Spot[][] Spots { get; }

    public int[] SmallestCost { get; }

    /// <summary>Wherever it goes, its day becomes active by it.</summary>
    public bool[] TakesOwnDay { get; }

    public Traits[] Traits { get; }

    /// <summary>Minutes that belong between sessions i and j, at i · count + j.</summary>
    public int[] Between { get; }

    /// <summary>In which order sessions are placed.</summary>
    public int[] Order { get; }

    /// <summary>The cheapest placement without neighbours; solved once.</summary>
    public WeekChoice Best => field ??= WeekSearch.Cheapest(this, null, long.MaxValue)!;

    /// <summary>When the session would usually start on a day, minutes from its midnight; null when the day has no time for it.</summary>
    public int? UsualStart(int session, int day) => _times.Usual(day, Week.Wanted[session].Minutes, Practices[day]);

    public bool IsPinned(int session) => (Traits[session] & Placement.Traits.Pinned) != 0;

    public int DropCost(int session) => IsPinned(session) ? int.MaxValue
        : PlacementCost.Dropped + (PlacementCost.DroppedStep * (Spots.Length - session)) + (Week.Wanted[session].KeepDate is null ? 0 : PlacementCost.PublishedDropped);

    /// <summary>The match or happening that keeps a session from this minute; null when none does.</summary>
    public Anchor? InTheWay(Traits traits, int minute)
    {
        foreach (var fact in Facts)
        {
            if (Math.Abs(minute - fact.Minute) < MinutesNeeded(traits, minute, fact))
            {
                return fact;
            }
        }

        return null;
    }

    /// <summary>Minutes that belong between a session at this minute and a fact.</summary>
    public int MinutesNeeded(Traits traits, int minute, Anchor fact)
    {
        if (!fact.Match)
        {
            return Spacing.MinutesBetween(traits, Spacing.TraitsOf(fact), Math.Max(Week.HoursBetweenHard, fact.HoursBetweenHard));
        }

        return (traits & Placement.Traits.Hard) == 0 ? 0
            : 60 * (minute > fact.Minute && IsSecondMatch(fact) ? RuleLimits.HoursAfterTwoMatches : RuleLimits.HoursBetweenHard);
    }

    /// <summary>Day of the week that holds the minute; -1 for the day before the first.</summary>
    public static int DayOf(int minute) => minute >= 0 ? minute / DayTimes.DayMinutes : ((minute + 1) / DayTimes.DayMinutes) - 1;

    private static Anchor[] FactsOf(WeekToPlace week, bool repeats)
    {
        List<Anchor> facts = [.. week.Around];
        foreach (var contact in week.Contacts)
        {
            if (contact.IsMatch)
            {
                var minute = (Period.DaysBetween(week.First, contact.Date) * DayTimes.DayMinutes) + DayTimes.MinuteOf(contact.Start);
                facts.Add(new Anchor(minute, true, true, false, JumpClass.None, contact.Title));
            }
        }

        if (repeats)
        {
            for (var i = facts.Count - 1; i >= 0; i--)
            {
                facts.Add(facts[i] with { Minute = facts[i].Minute - WeekMinutes });
                facts.Add(facts[i] with { Minute = facts[i].Minute + WeekMinutes });
            }
        }

        return [.. facts];
    }

    private bool IsSecondMatch(Anchor match)
    {
        foreach (var fact in Facts)
        {
            if (fact.Match && fact.Minute < match.Minute && match.Minute - fact.Minute <= RuleLimits.HoursBetweenHard * 60)
            {
                return true;
            }
        }

        return false;
    }

    private List<Spot> SpotsOf(int session)
    {
        var wanted = Week.Wanted[session];
        List<Spot> spots = new(16);
        if (wanted is { Pinned: true, KeepDate: { } pinned })
        {
            var day = Period.DaysBetween(Week.First, pinned);
            var named = wanted.KeepStart is { } time ? DayTimes.MinuteOf(time) : (int?)null;
            var inside = wanted.Workout.InsidePractice && DayTimes.Inside(Practices[day], wanted.Minutes) is { } start && (named ?? start) == start ? start : (int?)null;
            Add(spots, session, day, inside ?? named ?? UsualStart(session, day) ?? _times.Opens(day), inside is not null, 0);
            return spots;
        }

        for (var day = 0; day < 7; day++)
        {
            if (!Week.Free[day] || (MatchDays & (1 << day)) != 0)
            {
                continue;
            }

            var practice = Practices[day];
            if (!wanted.Workout.OnlyInsidePractice && (practice is null || Week.SessionsPerContactDay > 0))
            {
                AddOwn(spots, session, day);
            }

            if (wanted.Workout.InsidePractice && DayTimes.Inside(practice, wanted.Minutes) is { } inside)
            {
                Add(spots, session, day, inside, true, DayCost(wanted, day, inside, 0) + PlacementCost.InsidePractice);
            }
        }

        return spots;
    }

    private void AddOwn(List<Spot> spots, int session, int day)
    {
        var wanted = Week.Wanted[session];
        var practice = Practices[day];
        var usual = UsualStart(session, day);
        if (usual is { } start)
        {
            Add(spots, session, day, start, false, DayCost(wanted, day, start, 0));
            if ((Traits[session] & Placement.Traits.Spaced) != 0)
            {
                for (var late = 1; late <= DayTimes.LateStarts; late++)
                {
                    if (_times.Later(day, wanted.Minutes, practice, start, late) is { } later)
                    {
                        Add(spots, session, day, later, false, DayCost(wanted, day, later, late));
                    }
                }
            }
        }

        if (wanted is { KeepDate: { } date, KeepStart: { } time } && date == Week.First.PlusDays(day) && DayTimes.MinuteOf(time) is var kept && kept != usual
            && _times.Fits(day, kept, wanted.Minutes, practice))
        {
            Add(spots, session, day, kept, false, DayCost(wanted, day, kept, 0));
        }
    }

    private void Add(List<Spot> spots, int session, int day, int minuteOfDay, bool inside, int cost)
    {
        var minute = (day * DayTimes.DayMinutes) + minuteOfDay;
        var traits = Traits[session];
        if (!IsPinned(session) && InTheWay(traits, minute) is not null)
        {
            return;
        }

        var pays = !inside && (traits & Placement.Traits.NotEasy) != 0;
        var afterHard = pays && (_hardFactDays & (1 << day)) != 0;
        cost += afterHard ? PlacementCost.NotEasyAfterHard : 0;
        cost += inside || (_matchFactDays & (4 << day)) == 0 ? 0 : pays ? PlacementCost.NotEasyBeforeMatch : PlacementCost.EasyBeforeMatch;
        var at = spots.Count;
        while (at > 0 && spots[at - 1].Cost > cost)
        {
            at--;
        }

        spots.Insert(at, new Spot(day, minute, inside, cost, pays && !afterHard));
    }

    private int DayCost(WantedSession wanted, int day, int start, int halfHoursLate)
    {
        var date = Week.First.PlusDays(day);
        var cost = DayTimes.IsWeekend(date.DayOfWeek) ? PlacementCost.Weekend : 0;
        if (wanted.KeepDate is not { } kept)
        {
            return cost + (PlacementCost.HalfHourLater * halfHoursLate)
                + (Week.BaseDays is { } days && days.TryGetValue(wanted.Slot, out var usual) && usual != day ? PlacementCost.BaseDayLost : 0);
        }

        if (kept != date)
        {
            return cost + (PlacementCost.HalfHourLater * halfHoursLate) + PlacementCost.PublishedDayLost;
        }

        return wanted.KeepStart is { } time && DayTimes.MinuteOf(time) != start
            ? cost + (PlacementCost.HalfHourLater * halfHoursLate) + PlacementCost.PublishedTimeLost
            : cost;
    }
}
