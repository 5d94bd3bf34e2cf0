using ClubCycle.Planning.Weeks.Placement;
using ClubCycle.Planning.Workouts;
using Google.OrTools.Sat;
using NodaTime;

namespace ClubCycle.PlacementModel;

/// <param name="Chosen">Every wanted session, week by week; a dropped one has no day.</param>
internal sealed record Optimum(long Cost, IReadOnlyList<Chosen> Chosen);

/// <param name="Day">0 to 6 from the week's first day.</param>
/// <param name="Minute">From the day's midnight.</param>
internal sealed record Chosen(int Week, string Slot, int? Day, int? Minute, bool Inside);

/// <summary>
/// <c>docs/placement.md</c> as constraints for a general solver, so that the engine has something of another kind to agree with. Plain, not fast.
/// </summary>
internal sealed class ConstraintModel
{
    private const int DayMinutes = 24 * 60;
    private const int WeekDays = 7;

    private readonly CpModel _model = new();
    private readonly LinearExprBuilder _cost = LinearExpr.NewBuilder();
    private readonly IReadOnlyList<WeekToPlace> _weeks;
    private readonly Paper _paper;
    private readonly bool _repeats;
    private readonly List<Session> _sessions;
    private readonly List<int> _matches;
    private readonly List<Happened> _happened;
    private readonly Dictionary<int, BoolVar> _active;

    private ConstraintModel(IReadOnlyList<WeekToPlace> weeks, bool repeats, Paper paper)
    {
        (_weeks, _repeats, _paper) = (weeks, repeats, paper);
        _matches = Matches();
        _happened = [.. weeks.SelectMany((week, number) => week.Around.Where(a => !a.Match).Select(a => HappenedAt((number * WeekDays * DayMinutes) + a.Minute, a))).Distinct()];
        _sessions = [.. weeks.SelectMany((week, number) => SessionsOf(week, number))];
        _active = Enumerable.Range(0, weeks.Count * WeekDays).ToDictionary(day => day, Active);
        KeepHardRules();
        AddCosts();
    }

    /// <summary>A cheapest placement of consecutive weeks, proven to be one.</summary>
    /// <param name="repeats">The week stands before and after itself without end.</param>
    public static Optimum Cheapest(IReadOnlyList<WeekToPlace> weeks, bool repeats = false, Paper? paper = null) =>
        new ConstraintModel(weeks, repeats, paper ?? new Paper()).Solve();

    /// <summary>What a placement costs. It throws where a session is in no place that it may have, or where a hard rule is broken.</summary>
    public static long CostOf(IReadOnlyList<WeekToPlace> weeks, IReadOnlyList<PlacedWeek> placed, bool repeats = false)
    {
        var model = new ConstraintModel(weeks, repeats, new Paper());
        foreach (var session in model._sessions)
        {
            model.Fix(session, placed[session.Week].Placed.SingleOrDefault(p => p.Wanted.Slot == session.Wanted.Slot));
        }

        return model.Solve().Cost;
    }

    private void Fix(Session session, Placed? placed)
    {
        var place = placed is null ? -1 : session.Places.Index().Where(p =>
            _weeks[session.Week].First.PlusDays(p.Item.Day) == placed.Date && p.Item.Minute == (placed.Start.Hour * 60) + placed.Start.Minute && p.Item.Inside == placed.InsidePractice)
            .Select(p => (int?)p.Index).SingleOrDefault() ?? throw new InvalidOperationException($"{placed} is no place of the session.");

        _model.Add((place < 0 ? session.Dropped! : session.At[place]) == 1);
    }

    private Optimum Solve()
    {
        _model.Minimize(_cost);
        using var solver = new CpSolver { StringParameters = "num_search_workers:1,random_seed:1,linearization_level:2" };
        var status = solver.Solve(_model);
        if (status != CpSolverStatus.Optimal)
        {
            throw new InvalidOperationException($"The model of {_weeks.Count} weeks from {_weeks[0].First} ended {status}; expected Optimal. {_model.Validate()}");
        }

        return new Optimum(
            checked((long)Math.Round(solver.ObjectiveValue)),
            [.. _sessions.Select(s => s.At.FindIndex(at => solver.BooleanValue(at)) is var i and >= 0
                ? new Chosen(s.Week, s.Wanted.Slot, s.Places[i].Day, s.Places[i].Minute, s.Places[i].Inside)
                : new Chosen(s.Week, s.Wanted.Slot, null, null, false))]);
    }

    private void KeepHardRules()
    {
        for (var number = 0; number < _weeks.Count; number++)
        {
            var week = _weeks[number];
            List<Session> free = [.. _sessions.Where(s => s.Week == number && !s.Wanted.Pinned)];
            List<Session> pinned = [.. _sessions.Where(s => s.Week == number && s.Wanted.Pinned)];

            foreach (var day in DaysOf(number))
            {
                AtMost(_paper.SessionsADay, pinned.Count(p => p.On.ContainsKey(day)), [.. free.Where(s => s.On.ContainsKey(day)).Select(s => s.On[day])]);
            }

            AtMost(
                week.ActiveDaysAtMost + _paper.ActiveDaysBeyondLimit,
                DaysOf(number).Count(day => HasContact(day) || pinned.Any(p => p.On.ContainsKey(day))),
                [.. DaysOf(number).Where(day => !HasContact(day) && !pinned.Any(p => p.On.ContainsKey(day))).Select(day => _active[day])]);

            AtMost(
                week.HardAtMost + _paper.HardSessionsBeyondLimit,
                pinned.Count(p => p.Hard) + week.Contacts.Count(c => c.IsMatch),
                [.. free.Where(s => s.Hard).SelectMany(s => s.At)]);
        }

        foreach (var session in _sessions.Where(s => !s.Wanted.Pinned))
        {
            for (var i = 0; i < session.At.Count; i++)
            {
                if ((session.Hard && IsTooNearAMatch(session.Start(i))) || _happened.Any(h => Gap(session.Start(i), h.Minute) < MinutesApart(session.Spacing, h.Spacing)))
                {
                    _model.Add(session.At[i] == 0);
                }
            }
        }

        for (var i = 0; i < _sessions.Count; i++)
        {
            for (var j = 0; j < i; j++)
            {
                if (!_sessions[i].Wanted.Pinned || !_sessions[j].Wanted.Pinned)
                {
                    KeepApart(_sessions[i], _sessions[j]);
                }
            }
        }

        if (!_repeats)
        {
            AddCliques();
        }
    }

    /// <summary>Facts alone may be too many; then nothing is added to them.</summary>
    private void AtMost(int limit, int facts, IReadOnlyList<BoolVar> more) => _model.Add(Sum(more) <= Math.Max(0, limit - facts));

    /// <summary>Says nothing new, but proves sooner: of all places of one kind that start within its hours, one at most.</summary>
    private void AddCliques()
    {
        foreach (var kind in Enumerable.Range(0, Spacing.Kinds))
        {
            foreach (var hours in _sessions.Select(s => s.Spacing.Hours(kind)).Where(h => h > 0).Distinct())
            {
                var starts = _sessions.Where(s => !s.Wanted.Pinned && s.Spacing.Hours(kind) >= hours)
                    .SelectMany(s => s.At.Select((at, i) => (At: at, Start: s.Start(i)))).ToLookup(s => s.Start, s => s.At);
                foreach (var first in starts.Select(s => s.Key))
                {
                    _model.AddAtMostOne(starts.Where(s => s.Key >= first && s.Key < first + (hours * 60)).SelectMany(s => s));
                }
            }
        }
    }

    private void KeepApart(Session one, Session other)
    {
        var apart = MinutesApart(one.Spacing, other.Spacing);
        for (var i = 0; i < one.At.Count; i++)
        {
            List<BoolVar> tooNear = [.. other.At.Where((_, j) => Gap(one.Start(i), other.Start(j)) < apart)];
            if (tooNear.Count > 0)
            {
                _model.AddAtMostOne([one.At[i], .. tooNear]);
            }
        }
    }

    private bool IsTooNearAMatch(int start) => _matches.Any(match =>
        start < match ? match - start < _paper.HoursToMatch * 60
        : start - match < 60 * (IsSecond(match) ? _paper.HoursAfterSecondMatch : _paper.HoursToMatch));

    private bool IsSecond(int match) => _matches.Any(earlier => earlier < match && match - earlier <= _paper.HoursThatMakeASecondMatch * 60);

    private static int MinutesApart(Spacing one, Spacing other) => 60 * Enumerable.Range(0, Spacing.Kinds)
        .Max(kind => one.Hours(kind) > 0 && other.Hours(kind) > 0 ? Math.Max(one.Hours(kind), other.Hours(kind)) : 0);

    private Spacing SpacingOf(bool hard, bool heavyLift, JumpClass jumps, int hoursBetweenHard) => new(
        hard ? hoursBetweenHard + _paper.HoursBetweenHardBeyondLimit : 0,
        heavyLift ? _paper.HoursBetweenLifts : 0,
        jumps switch { JumpClass.None => 0, JumpClass.High => _paper.HoursBetweenHighJumps, _ => _paper.HoursBetweenJumps });

    private void AddCosts()
    {
        foreach (var session in _sessions)
        {
            var week = _weeks[session.Week];
            if (session.Dropped is { } dropped)
            {
                Pay(dropped, _paper.Dropped + (_paper.DroppedStep * (week.Wanted.Count - session.Number)) + (session.Wanted.KeepDate is null ? 0 : _paper.KeptDropped));
            }

            for (var i = 0; i < session.At.Count; i++)
            {
                Pay(session.At[i], session.Places[i].Cost);
            }

            if (session.Wanted.Workout.Hardness != Hardness.Easy)
            {
                AddCostsAfterHardThings(session);
            }

            AddCostsBeforeMatches(session);
        }

        foreach (var week in Enumerable.Range(0, _weeks.Count))
        {
            AddCostsOfActiveDays(week);
        }

        AddCostsOfStrength();
    }

    private void AddCostsBeforeMatches(Session session)
    {
        for (var i = 0; i < session.At.Count; i++)
        {
            if (!session.Places[i].Inside && _matches.Any(m => DayOf(m) == DayAfter(session.Day(i))))
            {
                Pay(session.At[i], session.Wanted.Workout.Hardness == Hardness.Easy ? _paper.EasyBeforeMatch : _paper.NotEasyBeforeMatch);
            }
        }
    }

    private void AddCostsAfterHardThings(Session session)
    {
        var afterHard = PaidBool(_paper.NotEasyAfterHard);
        for (var i = 0; i < session.At.Count; i++)
        {
            if (!session.Places[i].Inside)
            {
                foreach (var hard in HardThingsOn(DayBefore(session.Day(i))))
                {
                    _model.AddBoolOr([session.At[i].Not(), hard.Not(), afterHard]);
                }
            }
        }
    }

    private IEnumerable<ILiteral> HardThingsOn(int day) =>
        _matches.Any(m => DayOf(m) == day) || _happened.Any(h => h.Hard && DayOf(h.Minute) == day)
            ? [_model.TrueLiteral()]
            : _sessions.Where(s => s.Hard && s.On.ContainsKey(day)).Select(s => s.On[day]);

    private void AddCostsOfActiveDays(int week)
    {
        foreach (var day in DaysOf(week))
        {
            PayWhereAllActive(week, day, 2, _paper.DayAfterDay);
            PayWhereAllActive(week, day, 4, _paper.FourthInARow);
        }

        var sixOrMore = PaidBool(_paper.SixthActiveDay);
        _model.Add(Sum(DaysOf(week).Select(d => _active[d])) <= 5 + (2 * sixOrMore));
    }

    private void PayWhereAllActive(int week, int last, int days, int weight)
    {
        List<int> row = [.. Enumerable.Range(0, days).Select(back => _repeats ? Circular(last - back) : last - back)];
        if (_repeats || row.All(DaysOf(week).Contains))
        {
            _model.AddBoolOr([.. row.Select(d => _active[d].Not()), PaidBool(weight)]);
        }
    }

    private void AddCostsOfStrength()
    {
        List<Session> strength = [.. _sessions.Where(s => s.Strength && _weeks[s.Week].Squad.AgeGroup.IsYouth)];
        foreach (var session in strength)
        {
            foreach (var (day, on) in session.On)
            {
                foreach (var next in strength.Where(s => s != session && s.On.ContainsKey(DayAfter(day))))
                {
                    _model.AddBoolOr([on.Not(), next.On[DayAfter(day)].Not(), PaidBool(_paper.StrengthOfMinorsNextDay)]);
                }
            }
        }
    }

    private IEnumerable<Session> SessionsOf(WeekToPlace week, int number)
    {
        var places = new Places(week, _paper);
        for (var i = 0; i < week.Wanted.Count; i++)
        {
            var workout = week.Wanted[i].Workout;
            var spacing = SpacingOf(workout.Hardness == Hardness.Hard, workout.HeavyLift, workout.Jumps, week.HoursBetweenHard);
            var session = new Session(number, i, week.Wanted[i], places.Of(week.Wanted[i]), spacing);
            session.At.AddRange(session.Places.Select((_, p) => _model.NewBoolVar($"{number}.{session.Wanted.Slot}.{p}")));
            session.Dropped = session.Wanted.Pinned ? null : _model.NewBoolVar($"{number}.{session.Wanted.Slot}.dropped");
            _model.AddExactlyOne(session.Dropped is { } dropped ? [.. session.At, dropped] : session.At);

            foreach (var day in session.Places.Select((_, p) => session.Day(p)).Distinct())
            {
                session.On[day] = _model.NewBoolVar($"{number}.{session.Wanted.Slot}.on.{day}");
                _model.Add(Sum(session.At.Where((_, p) => session.Day(p) == day)) == session.On[day]);
            }

            yield return session;
        }
    }

    private List<int> Matches()
    {
        var minutes = _weeks.SelectMany((week, number) => week.Contacts.Where(c => c.IsMatch).Select(c => MinuteOf(c.Date, c.Start))
            .Concat(week.Around.Where(a => a.Match).Select(a => (number * WeekDays * DayMinutes) + a.Minute)));

        // Two copies either way: one that is seen, and the one that may make it a second match.
        return [.. minutes.SelectMany(m => Enumerable.Range(-2, 5).Where(copy => _repeats || copy == 0).Select(copy => m + (copy * Length))).Distinct()];
    }

    private Happened HappenedAt(int minute, Anchor anchor) =>
        new(minute, anchor.Hard, SpacingOf(anchor.Hard, anchor.HeavyLift, anchor.Jumps, Math.Max(1, anchor.HoursBetweenHard)));

    private BoolVar Active(int day)
    {
        var active = _model.NewBoolVar($"active.{day}");
        if (HasContact(day))
        {
            _model.Add(active == 1);
        }
        else
        {
            _model.AddMaxEquality(active, _sessions.Where(s => s.Week == day / WeekDays && s.On.ContainsKey(day)).Select(s => (LinearExpr)s.On[day]).Append(LinearExpr.Constant(0)));
        }

        return active;
    }

    private void Pay(BoolVar when, int weight) => _cost.AddTerm(when, weight);

    private BoolVar PaidBool(int weight)
    {
        var paid = _model.NewBoolVar("");
        Pay(paid, weight);
        return paid;
    }

    private bool HasContact(int day) => _weeks[day / WeekDays].Contacts.Any(c => Period.DaysBetween(_weeks[0].First, c.Date) == day);

    /// <summary>From start to start, towards the nearest copy where weeks repeat.</summary>
    private int Gap(int one, int other)
    {
        var gap = Math.Abs(one - other);
        return _repeats ? Math.Min(gap % Length, Length - (gap % Length)) : gap;
    }

    private int Length => _weeks.Count * WeekDays * DayMinutes;

    private static IEnumerable<int> DaysOf(int week) => Enumerable.Range(week * WeekDays, WeekDays);

    private int DayBefore(int day) => _repeats ? Circular(day - 1) : day - 1;

    private int DayAfter(int day) => _repeats ? Circular(day + 1) : day + 1;

    private int Circular(int day) => (day + (_weeks.Count * WeekDays)) % (_weeks.Count * WeekDays);

    private static int DayOf(int minute) => (int)Math.Floor((double)minute / DayMinutes);

    private int MinuteOf(LocalDate date, LocalTime start) => (Period.DaysBetween(_weeks[0].First, date) * DayMinutes) + (start.Hour * 60) + start.Minute;

    private static LinearExpr Sum(IEnumerable<BoolVar> bools) => LinearExpr.Sum(bools);

    /// <summary>Hours to the next of its kind; 0 for what is not of that kind. Of two, the larger counts.</summary>
    private readonly record struct Spacing(int Hard, int Lift, int Jump)
    {
        public const int Kinds = 3;

        public int Hours(int kind) => kind switch { 0 => Hard, 1 => Lift, _ => Jump };
    }

    private readonly record struct Happened(int Minute, bool Hard, Spacing Spacing);

    private sealed class Session(int week, int number, WantedSession wanted, IReadOnlyList<Place> places, Spacing spacing)
    {
        public int Week => week;
        public int Number => number;
        public WantedSession Wanted => wanted;
        public IReadOnlyList<Place> Places => places;
        public List<BoolVar> At { get; } = [];
        public Dictionary<int, BoolVar> On { get; } = [];
        public BoolVar? Dropped { get; set; }

        public Spacing Spacing => spacing;
        public bool Hard => wanted.Workout.Hardness == Hardness.Hard;
        public bool Strength => wanted.Workout.HeavyLift || wanted.Workout.Qualities.Contains(Quality.MuscularEndurance);

        /// <summary>Both count from the first week's first midnight.</summary>
        public int Day(int place) => (week * WeekDays) + places[place].Day;

        public int Start(int place) => (Day(place) * DayMinutes) + places[place].Minute;
    }
}
