using ClubCycle.Planning.Loads;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Templates;
using ClubCycle.Planning.Weeks.Placement;
using ClubCycle.Planning.Workouts;
using NodaTime;

namespace ClubCycle.Planning.Weeks;

/// <summary>Lays out every week of a cycle: its contacts, what happened, what the mix asks for, and its placement problem.</summary>
internal sealed class WeekFrames
{
    /// <summary>Spacing looks back over a week and ahead to the matches that hard work keeps away from.</summary>
    private const int DaysBehind = 7;
    private const int DaysAhead = 3;

    private static readonly bool[] AllFree = [true, true, true, true, true, true, true];

    private readonly PlanRequest _request;
    private readonly IReadOnlyList<Contact> _matches;
    private readonly HashSet<Guid> _matchesAhead;
    private readonly Dictionary<(PhaseKind, int), IReadOnlyDictionary<string, int>> _baseWeeks = [];
    private readonly Dictionary<Guid, PlannedSession> _published;
    private readonly DayTimes _times;

    /// <summary>Days of the weeks so far on which jumps stand fast.</summary>
    private readonly HashSet<LocalDate> _jumpDays = [];
    private readonly Dictionary<PhaseKind, (WeeklyMix Mix, string[] Names)> _mixes = [];

    private WeekFrames(PlanRequest request)
    {
        _request = request;
        _times = new DayTimes(request.Squad, request.FirstWeekday);
        _matches = WeekCalendar.Matches(request);
        _matchesAhead = [.. _matches.Where(m => m.Date >= request.PlanFrom).Select(m => m.Uid)];
        _published = request.Published?.Sessions.ToDictionary(s => s.Uid) ?? [];
    }

    public static IReadOnlyList<WeekFrame> Of(PlanRequest request, IReadOnlyList<CycleWeek> weeks)
    {
        var frames = new WeekFrames(request);
        return [.. weeks.Select(frames.FrameOf)];
    }

    public static bool IsClosed(PlanRequest request, LocalDate day)
    {
        foreach (var closed in request.Closed)
        {
            if (closed.Contains(day))
            {
                return true;
            }
        }

        return false;
    }

    private WeekFrame FrameOf(CycleWeek week)
    {
        var (mix, names) = MixOf(week.Phase);
        List<Contact> contacts = [.. MatchesBetween(week.First, week.Last), .. WeekCalendar.Practices(_request, week, _matches)];
        var from = _request.PlanFrom is { } planFrom && planFrom > week.First ? planFrom : week.First;
        var past = from > week.Last;
        List<PlannedSession> happened = [.. HappenedBetween(week.First, LocalDate.Min(from.PlusDays(-1), week.Last))];
        if (past)
        {
            return new WeekFrame(week, mix, from, true, contacts, happened, [], Problem(week, mix, from, contacts, happened, []), []);
        }

        var slots = Slots(week, mix, names, contacts, true);
        var added = Added(week, from, happened).ToList();
        slots.AddRange(added);
        if (from > week.First)
        {
            slots = [.. slots.Select(s => _published.TryGetValue(s.Uid, out var known) ? s with { Known = known } : s)];
        }

        var leftOut = LeftOut(week, slots, contacts, happened);
        slots.RemoveAll(s => s.IsAdded && leftOut.Exists(l => l.Slot == s));

        // The running week is not filled up any more: what players do not know yet is not added to it, unless a coach fixed it.
        var running = from > week.First && _request.Published?.Weeks.Any(w => w.First == week.First && w.Phase == week.Phase) == true;
        List<WantedSession> wanted =
        [
            .. slots.Where(s => !happened.Exists(h => h.Uid == s.Uid) && !leftOut.Exists(l => l.Slot == s)).Select(s => WantedOf(week, from, s))
                .Where(w => !running || w.Pinned || w.KeepDate is not null),
        ];
        return new WeekFrame(week, mix, from, false, contacts, happened, slots, Problem(week, mix, from, contacts, happened, wanted), leftOut);
    }

    private List<(WeekSlot Slot, string Why)> LeftOut(CycleWeek week, List<WeekSlot> slots, List<Contact> contacts, List<PlannedSession> happened)
    {
        List<(WeekSlot, string)> leftOut = [];
        if (_request.Pins is { Count: > 0 } pins)
        {
            leftOut.AddRange(slots.Where(s => pins.Any(p => p.WeekFirst == week.First && p.Slot == s.Name && p.Skipped)).Select(s => (s, "A coach left it out.")));
            leftOut.AddRange(from slot in slots where slot.IsAdded && !happened.Exists(h => h.Uid == slot.Uid) && WhyNotOn(slot, contacts) is not null select (slot, WhyNotOn(slot, contacts)!));
        }

        if (_request.Squad.AgeGroup.YoungestAge < RuleLimits.JumpsLikeAdultsAge)
        {
            // A must (R32), whatever the template or a coach asks for. What happened earlier in the week counts first.
            leftOut.AddRange(slots.Where(s => s.Workout.Jumps != JumpClass.None && !leftOut.Exists(l => l.Item1 == s))
                .OrderBy(s => happened.Exists(h => h.Uid == s.Uid) ? 0 : 1).Skip(RuleLimits.ChildJumpSessions).Select(s => (s, "Children jump twice a week at most.")));
            leftOut.AddRange(JumpsInARow(week, slots.Where(s => !leftOut.Exists(l => l.Item1 == s)), happened).Select(s => (s, "Children never jump twice within two days.")));
        }

        if (_request.Squad.AgeGroup.IsYouth)
        {
            leftOut.AddRange(WithoutRest(slots.Where(s => !leftOut.Exists(l => l.Item1 == s)), contacts, happened).Select(s => (s, "Young players keep a day of rest in every week.")));
        }

        return leftOut;
    }

    /// <summary>What speaks against the day that a coach gave an added session; null when nothing does.</summary>
    private string? WhyNotOn(WeekSlot slot, List<Contact> contacts)
    {
        var day = slot.Pin!.Date!.Value;
        return IsClosed(_request, day) ? "Its day is closed."
            : !_request.Season.Cycle.Contains(day) ? "Its day lies outside the planning year."
            : slot.Workout.OnlyInsidePractice && !contacts.Exists(c => !c.IsMatch && c.Date == day) ? "It belongs inside a practice, and there is none that day."
            : null;
    }

    /// <summary>Added sessions that would take a young squad's last day of rest (a must, R01): later ones go first.</summary>
    private static List<WeekSlot> WithoutRest(IEnumerable<WeekSlot> slots, List<Contact> contacts, List<PlannedSession> happened)
    {
        var pinned = slots.Where(s => s.Pin is { Date: not null }).ToList();
        HashSet<LocalDate> active =
        [
            .. contacts.Select(c => c.Date), .. happened.Where(h => h.Kind != SessionKind.ActiveRecovery).Select(h => h.Date),
            .. pinned.Where(s => !s.IsAdded).Select(s => s.Pin!.Date!.Value),
        ];
        return pinned.Where(s => s.IsAdded && !active.Contains(s.Pin!.Date!.Value) && (active.Count >= 6 || !active.Add(s.Pin!.Date!.Value))).ToList();
    }

    /// <summary>Added jumps on a day beside other jumps that have their day (a must for children, R32).</summary>
    private List<WeekSlot> JumpsInARow(CycleWeek week, IEnumerable<WeekSlot> slots, List<PlannedSession> happened)
    {
        var jumps = slots.Where(s => s.Workout.Jumps != JumpClass.None && s.Pin?.Date is not null && !happened.Exists(h => h.Uid == s.Uid)).ToList();
        _jumpDays.UnionWith(HappenedBetween(week.First.PlusDays(-1), week.Last).Where(h => h.Workout is { } name && WorkoutCatalogue.Find(name) is { Jumps: not JumpClass.None }).Select(h => h.Date));
        _jumpDays.UnionWith(jumps.Where(s => !s.IsAdded).Select(s => s.Pin!.Date!.Value));
        List<WeekSlot> inARow = [];
        foreach (var slot in jumps.Where(s => s.IsAdded))
        {
            var day = slot.Pin!.Date!.Value;
            if (_jumpDays.Contains(day.PlusDays(-1)) || _jumpDays.Contains(day) || _jumpDays.Contains(day.PlusDays(1)))
            {
                inARow.Add(slot);
            }
            else
            {
                _jumpDays.Add(day);
            }
        }

        return inARow;
    }

    /// <summary>Sessions that a coach added to the week and that are still to come or took place.</summary>
    private IEnumerable<WeekSlot> Added(CycleWeek week, LocalDate first, List<PlannedSession> happened) =>
        from pin in _request.Pins ?? []
        where pin.IsAdded && pin.WeekFirst == week.First && !pin.Skipped
        let uid = PlannedSession.UidOf(_request.Squad.Key, week.First, pin.Slot)
        where pin.Date >= first || happened.Exists(h => h.Uid == uid)
        select new WeekSlot(pin.Slot, uid, WorkoutCatalogue.Find(pin.Workout!)!, pin.Minutes!.Value, Pin: pin);

    private WantedSession WantedOf(CycleWeek week, LocalDate from, WeekSlot slot)
    {
        var pin = slot.Pin is { Skipped: false, Date: { } d } fixedDay && d >= from && d <= week.Last ? fixedDay : null;
        var kept = pin is null && _published.TryGetValue(slot.Uid, out var published) && published.Date >= from && published.Date <= week.Last ? published : null;
        return new WantedSession(slot.Name, slot.Workout, slot.GivenMinutes ?? slot.Minutes, pin is not null, pin?.Date ?? kept?.Date, pin?.Start ?? kept?.Start);
    }

    private WeekToPlace Problem(CycleWeek week, WeeklyMix mix, LocalDate from, List<Contact> contacts, List<PlannedSession> happened, List<WantedSession> wanted)
    {
        if (wanted.Count == 0)
        {
            return new WeekToPlace(_request.Squad, week.First, wanted, contacts, [], AllFree, 0, mix.HoursBetweenHard, 0, 0, null);
        }

        var free = new bool[7];
        for (var day = 0; day < 7; day++)
        {
            var date = week.First.PlusDays(day);
            free[day] = date >= from && _request.Season.Cycle.Contains(date) && !IsClosed(_request, date);
        }

        var trained = happened.Where(h => h.Kind == SessionKind.Session).ToList();
        var daysGone = trained.Where(h => !h.InsidePractice && !contacts.Exists(c => c.Date == h.Date)).Select(h => h.Date).Distinct().Count();
        return new WeekToPlace(
            _request.Squad, week.First, wanted, contacts, Around(week, from), free,
            Math.Min(mix.ActiveDaysAtMost + AddedDays(wanted, contacts), 7 - RuleLimits.RestDays(_request.Squad.AgeGroup)) - daysGone,
            mix.HoursBetweenHard, RuleLimits.HardSessions(_request.Squad.AgeGroup) - trained.Count(h => h.Hardness == Hardness.Hard), mix.SessionsPerContactDay,
            BaseDays(week, mix));
    }

    /// <summary>Days that are active because a coach added to them: the mix's own sessions keep theirs.</summary>
    private static int AddedDays(List<WantedSession> wanted, List<Contact> contacts)
    {
        var days = 0;
        foreach (var session in wanted)
        {
            if (session.Slot.StartsWith(Pin.AddedSlot, StringComparison.Ordinal) && !contacts.Exists(c => c.Date == session.KeepDate))
            {
                days |= 1 << ((int)session.KeepDate!.Value.DayOfWeek);
            }
        }

        return int.PopCount(days);
    }

    private List<Anchor> Around(CycleWeek week, LocalDate from)
    {
        List<Anchor> around =
        [
            .. MatchesBetween(week.First.PlusDays(-DaysBehind), week.First.PlusDays(-1)).Select(m => AnchorOf(week, m)),
            .. MatchesBetween(week.Last.PlusDays(1), week.Last.PlusDays(DaysAhead)).Select(m => AnchorOf(week, m)),
            .. BeforeSince(week.First.PlusDays(-DaysBehind)).Select(b => AnchorOf(week, b)),
        ];
        if (from > week.First.PlusDays(-DaysBehind) && _request.PlanFrom is { } planFrom)
        {
            around.AddRange(HappenedBetween(week.First.PlusDays(-DaysBehind), LocalDate.Min(planFrom.PlusDays(-1), week.Last)).Where(h => h.Kind == SessionKind.Session).Select(h => AnchorOf(week, h)));
        }

        return around;
    }

    /// <summary>
    /// The phase's base week: the best placement of its ordinary week (usual practices and match day, nothing closed) when the same week stands
    /// before and after it. Real weeks pay for departing from it.
    /// </summary>
    private IReadOnlyDictionary<string, int> BaseDays(CycleWeek week, WeeklyMix mix)
    {
        var turn = (week.WeekInPhase - 1) % mix.Slots.Select(s => s.Workouts.Count).Aggregate(1, LeastCommonMultiple);
        if (_baseWeeks.TryGetValue((week.Phase, turn), out var known))
        {
            return known;
        }

        var squad = _request.Squad;
        List<Contact> contacts = [];
        for (var day = 0; day < 7; day++)
        {
            var date = week.First.PlusDays(day);
            if (week.Phase == PhaseKind.InSeason && date.DayOfWeek == squad.MatchDay)
            {
                contacts.Add(new Contact(Guid.Empty, "match", date, squad.MatchStart ?? Squad.UsualMatchStart, LoadTable.MatchMinutes(squad.AgeGroup), true, "Match"));
            }
            else if (squad.Practices.FirstOrDefault(p => p.Day == date.DayOfWeek && p.Phases.Contains(week.Phase)) is { } practice)
            {
                contacts.Add(new Contact(Guid.Empty, "practice", date, practice.Start, practice.Minutes, false, ""));
            }
        }

        var problem = new WeekToPlace(
            squad, week.First, [.. Slots(week with { WeekInPhase = turn + 1 }, mix, MixOf(week.Phase).Names, contacts, false).Select(s => new WantedSession(s.Name, s.Workout, s.Minutes))], contacts, [], AllFree,
            Math.Min(mix.ActiveDaysAtMost, 7 - RuleLimits.RestDays(squad.AgeGroup)), mix.HoursBetweenHard, RuleLimits.HardSessions(squad.AgeGroup), mix.SessionsPerContactDay, null);
        return _baseWeeks[(week.Phase, turn)] = CyclePlacement.PlaceRepeating(problem, _times).Weeks[0].Placed
            .ToDictionary(p => p.Wanted.Slot, p => Period.DaysBetween(week.First, p.Date), StringComparer.Ordinal);

        static int LeastCommonMultiple(int a, int b)
        {
            var n = a;
            while (n % b != 0)
            {
                n += a;
            }

            return n;
        }
    }

    private (WeeklyMix Mix, string[] Names) MixOf(PhaseKind phase)
    {
        if (!_mixes.TryGetValue(phase, out var known))
        {
            var mix = _request.Template.Mixes.First(m => m.Phase == phase);
            known = _mixes[phase] = (mix, [.. mix.Slots.Select(s => FileName.Of(phase) + "." + s.Name)]);
        }

        return known;
    }

    /// <param name="real">Sessions of a real week have an identity; those of a base week need none.</param>
    private List<WeekSlot> Slots(CycleWeek week, WeeklyMix mix, string[] names, List<Contact> contacts, bool real)
    {
        List<WeekSlot> slots = new(names.Length);
        for (var i = 0; i < names.Length; i++)
        {
            var slot = mix.Slots[i];
            if ((slot.WhenContactsAtMost is { } most && contacts.Count > most) || (slot.WhenContactsAtLeast is { } least && contacts.Count < least))
            {
                continue;
            }

            var asked = WorkoutCatalogue.Find(slot.WorkoutIn(week.WeekInPhase))
                ?? throw new InvalidOperationException($"Template check let the workout in '{slot.Name}' pass");
            var pin = real ? PinOf(week.First, names[i]) : null;
            var swapped = pin?.Workout is { } chosen ? WorkoutCatalogue.Find(chosen) : null;
            var workout = swapped ?? asked;
            if (!workout.OnlyInsidePractice || contacts.Exists(c => !c.IsMatch))
            {
                slots.Add(new WeekSlot(names[i], real ? PlannedSession.UidOf(_request.Squad.Key, week.First, names[i]) : default, workout, slot.Minutes, swapped is null || swapped == asked ? null : asked, Pin: pin));
            }
        }

        return slots;
    }

    /// <summary>What a coach decided about a slot of a week; null when none did.</summary>
    private Pin? PinOf(LocalDate week, string slot)
    {
        foreach (var pin in _request.Pins ?? [])
        {
            if (pin.WeekFirst == week && pin.Slot == slot)
            {
                return pin;
            }
        }

        return null;
    }

    /// <remarks>A match that was put off is no longer history: it is planned on its new day.</remarks>
    private IEnumerable<PlannedSession> HappenedBetween(LocalDate first, LocalDate last) => last < first || _request is not { Published: { } published, PlanFrom: { } from }
        ? []
        : published.Sessions.Where(s => s.Date >= first && s.Date <= last && s.Date < from && !(s.Kind == SessionKind.Match && _matchesAhead.Contains(s.Uid)));

    /// <summary>Sessions and matches at the end of the cycle before.</summary>
    private IEnumerable<PlannedSession> BeforeSince(LocalDate first) =>
        _request.Before?.Where(s => s.Date >= first && s.Kind is SessionKind.Session or SessionKind.Match) ?? [];

    private List<Contact> MatchesBetween(LocalDate first, LocalDate last)
    {
        List<Contact> between = [];
        foreach (var match in _matches)
        {
            if (match.Date >= first && match.Date <= last)
            {
                between.Add(match);
            }
        }

        return between;
    }

    private static Anchor AnchorOf(CycleWeek week, Contact match) => new(MinuteOf(week, match.Date, match.Start), true, true, false, JumpClass.None, match.Title);

    private static Anchor AnchorOf(CycleWeek week, PlannedSession happened)
    {
        var workout = happened.Workout is { } name ? WorkoutCatalogue.Find(name) : null;
        var match = happened.Kind == SessionKind.Match;
        return new Anchor(MinuteOf(week, happened.Date, happened.Start), match || workout?.Hardness == Hardness.Hard, match, workout?.HeavyLift ?? false, workout?.Jumps ?? JumpClass.None, happened.Title);
    }

    private static int MinuteOf(CycleWeek week, LocalDate date, LocalTime start) => (Period.DaysBetween(week.First, date) * DayTimes.DayMinutes) + DayTimes.MinuteOf(start);
}
