using System.Globalization;
using ClubCycle.Planning.Loads;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Templates;
using ClubCycle.Planning.Weeks.Placement;
using ClubCycle.Planning.Workouts;
using NodaTime;
using NodaTime.Text;

namespace ClubCycle.Planning.Weeks;

/// <summary>Walks through the cycle week by week: how much, what, when, and the sheets.</summary>
internal sealed class YearBuilder
{
    /// <summary>No session shrinks below this share of its full minutes to keep a rise small; below it a session is not worth the way to it.</summary>
    private const double SmallestShare = 0.5;
    private const double SmallestEasyWeekShare = 0.3;

    /// <summary>Warm-up, something worth it, cool-down: minutes.</summary>
    private const int Shortest = 15;
    private const int ShortestHard = 25;
    private const int ShortestTaper = 20;

    /// <summary>The last week before matches has about half of the mean of the weeks before (R46: 40 to 59 %).</summary>
    private const double TaperShare = 0.5;
    private const double FirstEasyWeekShare = 0.7;
    private const double EasierWeekShare = 0.8;
    private const int MostReasons = 3;
    private const double LargestRise = 1.10;

    /// <summary>So many weeks of a stint keep to the largest rise; after them the matches alone decide.</summary>
    private const int WeeksIntoStint = 4;

    /// <summary>Volume in the weeks after two weeks or more without training (R19).</summary>
    private static readonly double[] ReturnShares = [0.5, 0.7, 0.8, 0.9];

    private readonly PlanRequest _request;
    private readonly CyclePhases _phases;
    private readonly IReadOnlyList<WeekLoading> _wave;
    private readonly IReadOnlyList<Contact> _matches;
    private readonly Dictionary<Guid, PlannedSession> _published;
    private readonly Dictionary<string, int> _turns = new(StringComparer.Ordinal);
    private readonly Dictionary<string, IReadOnlyDictionary<string, int>> _baseWeeks = new(StringComparer.Ordinal);
    private readonly LoadHistory _history = new();
    private readonly string _squadKey;
    private readonly List<PlannedSession> _sessions = [];
    private readonly List<PlanWeek> _weeks = [];
    private readonly List<Finding> _findings = [];
    private readonly Dictionary<Guid, string> _whyGone = [];
    private List<PlacedEvent> _recent = [];
    private int _weeksOff;
    private int _weeksBack = int.MaxValue / 2;

    private YearBuilder(PlanRequest request, CyclePhases phases)
    {
        _request = request;
        _phases = phases;
        _squadKey = request.Squad.Key.ToString("N");
        _matches = WeekCalendar.Matches(request);
        _wave = LoadingWave.Of(phases.Weeks, LoadingWave.UnloadEvery(request.Template, request.Squad), IsClosed);
        _published = request.Published?.Sessions.ToDictionary(s => s.Uid) ?? [];
        if (request is { PlanFrom: not null, Published: null })
        {
            _weeksOff = 2;
        }
    }

    public sealed record Year(IReadOnlyList<PlanWeek> Weeks, IReadOnlyList<PlannedSession> Sessions, IReadOnlyList<Finding> Findings, IReadOnlyDictionary<Guid, string> WhyGone);

    private readonly record struct PlacedEvent(LocalDate Date, LocalTime Start, Workout? Workout, bool Match);

    public static Year Build(PlanRequest request, CyclePhases phases)
    {
        var builder = new YearBuilder(request, phases);
        for (var i = 0; i < phases.Weeks.Count; i++)
        {
            builder.AddWeek(phases.Weeks[i], builder._wave[i]);
        }

        builder._sessions.Sort((a, b) =>
            a.Date != b.Date ? a.Date.CompareTo(b.Date) : a.Start != b.Start ? a.Start.CompareTo(b.Start) : string.CompareOrdinal(a.Slot, b.Slot));
        return new Year(builder._weeks, builder._sessions, builder._findings, builder._whyGone);
    }

    private void AddWeek(CycleWeek week, WeekLoading loading)
    {
        var mix = _request.Template.Mixes.First(m => m.Phase == week.Phase);
        var past = _request.PlanFrom is { } from && week.Last < from;
        List<Contact> contacts =
        [
            .. _matches.Where(m => m.Date >= week.First && m.Date <= week.Last),
            .. WeekCalendar.Practices(_request, week, _matches),
        ];
        if (week.Phase == PhaseKind.InSeason && contacts.Any(c => c.IsMatch))
        {
            loading = WeekLoading.Match;
        }

        var first = _sessions.Count;
        if (past)
        {
            Keep(PublishedBetween(week.First, week.Last));
        }
        else
        {
            AddPlannedWeek(week, mix, loading, contacts);
        }

        var load = 0;
        var trained = false;
        for (var i = first; i < _sessions.Count; i++)
        {
            if (_sessions[i].Kind != SessionKind.ActiveRecovery)
            {
                trained = true;
                load += _sessions[i].InsidePractice ? 0 : _sessions[i].PlannedLoadAu;
            }
        }

        // A week without a match and with clearly less to do is an easier week.
        if (week.Phase == PhaseKind.InSeason && loading == WeekLoading.Loading && _history.MeanOfRun is { } mean && load < EasierWeekShare * mean)
        {
            loading = WeekLoading.Unloading;
        }

        _history.Add(loading, load);
        _weeks.Add(new PlanWeek(WeekCalendar.Name(week.First), week.First, week.Phase, week.WeekInPhase, loading, load));
        CountWeeksOff(trained, past);
        _recent =
        [
            .. _sessions.Skip(first)
                .Where(s => s.Kind is SessionKind.Session or SessionKind.Match && s.Date >= week.First.PlusDays(2))
                .Select(s => new PlacedEvent(s.Date, s.Start, s.Workout is { } name ? WorkoutCatalogue.Find(name) : null, s.Kind == SessionKind.Match)),
        ];
    }

    private void CountWeeksOff(bool trained, bool past)
    {
        if (trained)
        {
            _weeksBack = _weeksOff >= 2 ? 1 : _weeksBack + 1;
            _weeksOff = 0;
        }
        else if (!(past && _request.Published is null))
        {
            _weeksOff++;
        }
    }

    private void AddPlannedWeek(CycleWeek week, WeeklyMix mix, WeekLoading loading, List<Contact> contacts)
    {
        // What already happened this week is history: it stays as published.
        var from = _request.PlanFrom is { } planFrom && planFrom > week.First ? planFrom : week.First;
        var happened = PublishedBetween(week.First, from.PlusDays(-1)).ToList();
        var first = _sessions.Count;
        Keep(happened);

        var slots = Slots(mix, week, contacts.Count);
        var minutes = Minutes(week, loading, contacts, slots);
        List<WantedSession> wanted = [];
        foreach (var ((slot, workout), i) in slots.Select((s, i) => (s, i)))
        {
            var name = SlotName(week, slot);
            var uid = SessionUid(week, name);
            if (happened.Any(h => h.Uid == uid) || IsSkipped(week, name))
            {
                continue;
            }

            var pin = _request.Pins?.FirstOrDefault(p => p.WeekFirst == week.First && p.Slot == name && p is { Skipped: false, Date: { } d } && d >= from && d <= week.Last);
            if (minutes[i] == 0 && pin is null)
            {
                _whyGone[uid] = "The week is an easier one.";
                continue;
            }

            var kept = pin is null && _published.TryGetValue(uid, out var published) && published.Date >= from ? published : null;
            wanted.Add(new WantedSession(name, workout, minutes[i] == 0 ? ShortestOf(workout) : minutes[i], pin is not null, pin?.Date ?? kept?.Date, pin?.Start ?? kept?.Start));
        }

        var cycle = _request.Season.Cycle;
        var toPlace = new WeekToPlace(
            _request.Squad, week.First, week.Phase, wanted, contacts, Around(week, happened), PublishedAhead(week),
            [.. Enumerable.Range(0, 7).Select(d => week.First.PlusDays(d)).Select(d => d >= from && cycle.Contains(d) && !_request.Closed.Any(c => c.Contains(d)))],
            Math.Min(mix.ActiveDaysAtMost, 7 - RestDaysAtLeast) - happened.Where(h => h.Kind == SessionKind.Session && !h.InsidePractice && !contacts.Any(c => c.Date == h.Date)).Select(h => h.Date).Distinct().Count(),
            mix.HoursBetweenHard, HardAtMost - happened.Count(h => h.Kind == SessionKind.Session && h.Hardness == Hardness.Hard), mix.SessionsPerContactDay,
            wanted.Count == 0 ? null : BaseDays(week, mix));
        var placed = WeekPlacement.Place(toPlace);

        foreach (var contact in contacts.Where(c => c.Date >= from))
        {
            _sessions.Add(FromContact(contact, week));
        }

        foreach (var session in placed.Placed)
        {
            _sessions.Add(FromPlaced(session, week, loading));
        }

        AddActiveRecovery(week, happened, first, toPlace.Free);
        ReportDropped(week, from, placed.Dropped);
    }

    private void ReportDropped(CycleWeek week, LocalDate from, IReadOnlyList<(WantedSession Wanted, string Why)> dropped)
    {
        foreach (var (slot, why) in dropped)
        {
            _whyGone[SessionUid(week, slot.Slot)] = char.ToUpperInvariant(why[0]) + why[1..] + ".";
        }

        // A squad that joins in the middle of a week has simply missed its first days.
        if (from > week.First || week.Last > _request.Season.Cycle.End)
        {
            return;
        }

        var closed = Enumerable.Range(0, 7).Count(d => _request.Closed.Any(c => c.Contains(week.First.PlusDays(d))));
        if (IsClosed(week))
        {
            _findings.Add(new Finding(
                "closed-week", Strength.Note, week.First,
                $"Nothing is planned this week: {string.Join(", ", _request.Closed.Where(c => c.First <= week.Last && c.Last >= week.First).Select(c => c.Why).Distinct().Take(MostReasons))}.",
                "Players may keep moving on their own; the weeks after start gently.", "The club's closed days"));
            return;
        }

        foreach (var reason in dropped.GroupBy(d => d.Why))
        {
            _findings.Add(new Finding(
                "slot-dropped", Strength.Should, week.First,
                $"No place this week for {string.Join(", ", reason.Select(d => $"'{d.Wanted.Workout.Title}'"))}: {reason.Key}.{(closed > 0 ? $" {closed} of its days are closed." : "")}",
                "Leave it out, or free a day: another practice night, a wider time window, or one session less in the weekly mix.",
                "The planner's own limits on days and spacing (rules R01 to R04, R36 to R39)"));
        }
    }

    /// <summary>Every day is closed and no match is played in spite of it.</summary>
    private bool IsClosed(CycleWeek week) => !_matches.Any(m => m.Date >= week.First && m.Date <= week.Last) && Enumerable.Range(0, 7).All(d => _request.Closed.Any(c => c.Contains(week.First.PlusDays(d))));

    /// <remarks>A match that was put off is no longer history: it is planned on its new day.</remarks>
    private IEnumerable<PlannedSession> PublishedBetween(LocalDate first, LocalDate last) =>
        _request.Published?.Sessions.Where(s => s.Date >= first && s.Date <= last && !(s.Kind == SessionKind.Match && IsAhead(s.Uid))) ?? [];

    private bool IsAhead(Guid match) => _matches.Any(m => m.Uid == match && m.Date >= _request.PlanFrom);

    private void Keep(IEnumerable<PlannedSession> happened)
    {
        foreach (var session in happened)
        {
            _sessions.Add(session);
            if (session.Workout is { } workout)
            {
                NextTurn(workout);
            }
        }
    }

    /// <summary>How often the workout came up before in this cycle.</summary>
    private int NextTurn(string workout) => _turns[workout] = _turns.GetValueOrDefault(workout, -1) + 1;

    private int RestDaysAtLeast => RuleLimits.RestDays(_request.Squad.AgeGroup);

    /// <summary>High-intensity sessions a week, matches included (R39).</summary>
    private int HardAtMost => RuleLimits.HardSessions(_request.Squad.AgeGroup);

    private static List<(Slot Slot, Workout Workout)> Slots(WeeklyMix mix, CycleWeek week, int contacts) =>
    [
        .. mix.Slots
            .Where(s => (s.WhenContactsAtMost is not { } most || contacts <= most) && (s.WhenContactsAtLeast is not { } least || contacts >= least))
            .Select(s => (s, WorkoutCatalogue.Find(s.Workouts[(week.WeekInPhase - 1) % s.Workouts.Count])
                ?? throw new InvalidOperationException($"Template check let the workout in '{s.Name}' pass"))),
    ];

    private static int ShortestOf(Workout workout) => workout.Hardness == Hardness.Hard ? ShortestHard : Shortest;

    /// <summary>How long each session of the week lasts.</summary>
    private int[] Minutes(CycleWeek week, WeekLoading loading, List<Contact> contacts, List<(Slot Slot, Workout Workout)> slots)
    {
        int[] full = [.. slots.Select(s => s.Slot.Minutes)];
        int[] least = [.. slots.Select(s => loading == WeekLoading.Taper ? Math.Min(ShortestTaper, ShortestOf(s.Workout)) : ShortestOf(s.Workout))];

        // What can sit inside practice is part of the practice's load.
        int[] efforts = [.. slots.Select(s => s.Workout.InsidePractice && contacts.Any(c => !c.IsMatch) ? 0 : s.Workout.Effort)];
        double fullAu = full.Zip(efforts, (m, e) => m * e).Sum();
        double contactAu = contacts.Sum(c => c.Minutes * (c.IsMatch ? LoadTable.MatchEffort : LoadTable.PracticeEffort));
        var pattern = _request.Template.Loading;

        // Weeks back in training, this one included, after two weeks or more without any.
        var back = _weeksOff >= 2 ? 0 : _weeksBack;
        var returning = back < ReturnShares.Length ? ReturnShares[back] : 1;
        var builds = LoadingWave.Builds(week.Phase);
        if (builds && loading != WeekLoading.Loading && _history.MeanOfRun is { } mean)
        {
            var share = loading == WeekLoading.Taper ? TaperShare : pattern.UnloadVolume;
            var minutes = WeekMinutes.Fill(full, efforts, least, SmallestEasyWeekShare, Math.Min((share * mean) - contactAu, share * fullAu));

            // Sessions do not shrink for ever: where practices hold much of the load, the least valuable session is left out instead.
            var spare = slots.Count / 2;
            for (var last = slots.Count - 1; spare > 0 && last > 0 && contactAu + minutes.Zip(efforts, (m, e) => m * e).Sum() > EasierWeekShare * mean; last--)
            {
                if (efforts[last] > 0)
                {
                    minutes[last] = 0;
                    spare--;
                }
            }

            return minutes;
        }

        var wanted = builds ? Math.Min(1, pattern.FirstWeekVolume * Math.Pow(1 + pattern.WeeklyRise, week.WeekInPhase - 1))
            : week.WeekInPhase == 1 && week.Phase != PhaseKind.InSeason ? FirstEasyWeekShare
            : 1;
        var target = fullAu * Math.Min(wanted, returning);

        // In season the matches decide; only the way into a stint is made gentle.
        var rises = builds || week.Phase == PhaseKind.Break || (week.Phase == PhaseKind.InSeason && week.WeekInPhase <= WeeksIntoStint);
        if (rises && _history.Reference is { } reference and >= LoadHistory.TooLittleToJudgeAu)
        {
            target = Math.Min(target, (LargestRise * reference) - contactAu);
        }

        return WeekMinutes.Fill(full, efforts, least, Math.Min(SmallestShare, returning), target);
    }

    /// <summary>What the week's spacing must see beyond its ends: the end of last week, the start of next week, and what already happened this week.</summary>
    private List<Anchor> Around(CycleWeek week, List<PlannedSession> happened)
    {
        List<Anchor> around = [.. _recent.Select(e => AnchorOf(week, e.Date, e.Start, e.Workout, e.Match))];
        around.AddRange(happened.Where(h => h.Kind == SessionKind.Session)
            .Select(h => AnchorOf(week, h.Date, h.Start, h.Workout is { } name ? WorkoutCatalogue.Find(name) : null, false)));
        around.AddRange(_matches.Where(m => m.Date > week.Last && m.Date <= week.Last.PlusDays(3)).Select(m => AnchorOf(week, m.Date, m.Start, null, true)));
        around.AddRange(PinnedAhead(week));
        return around;
    }

    /// <summary>Next week's pinned sessions that this week's spacing can see.</summary>
    private IEnumerable<Anchor> PinnedAhead(CycleWeek week) =>
        from pin in _request.Pins ?? []
        where pin is { Skipped: false, Date: not null } && pin.WeekFirst == week.First.PlusDays(7) && pin.Date <= week.Last.PlusDays(3)
        let day = pin.Date!.Value
        let next = _phases.Weeks.FirstOrDefault(w => w.First == pin.WeekFirst)
        where next is not null
        let mix = _request.Template.Mixes.First(m => m.Phase == next.Phase)
        from slot in Slots(mix, next, _matches.Count(m => m.Date >= next.First && m.Date <= next.Last) + WeekCalendar.Practices(_request, next, _matches).Count())
        where SlotName(next, slot.Slot) == pin.Slot
        select AnchorOf(week, day, pin.Start ?? WeekPlacement.EarliestStart(_request.Squad, day.DayOfWeek), slot.Workout, false);

    /// <summary>Next week's published sessions that this week's spacing can see.</summary>
    private List<Anchor> PublishedAhead(CycleWeek week) =>
    [
        .. PublishedBetween(week.Last.PlusDays(1), week.Last.PlusDays(3))
            .Where(s => s.Kind == SessionKind.Session)
            .Select(s => AnchorOf(week, s.Date, s.Start, s.Workout is { } name ? WorkoutCatalogue.Find(name) : null, false)),
    ];

    private static Anchor AnchorOf(CycleWeek week, LocalDate date, LocalTime start, Workout? workout, bool match) => new(
        (Period.DaysBetween(week.First, date) * 24 * 60) + (start.Hour * 60) + start.Minute,
        match || workout?.Hardness == Hardness.Hard, match, workout?.HeavyLift ?? false, workout?.Jumps ?? JumpClass.None);

    /// <summary>
    /// The phase's base week: the best placement of its ordinary week (usual practices and match day, nothing closed) when the same week stands
    /// before and after it. Real weeks pay for departing from it.
    /// </summary>
    private IReadOnlyDictionary<string, int> BaseDays(CycleWeek week, WeeklyMix mix)
    {
        var turn = (week.WeekInPhase - 1) % Math.Max(1, mix.Slots.Select(s => s.Workouts.Count).Aggregate(1, Lcm));
        var key = string.Create(CultureInfo.InvariantCulture, $"{week.Phase}/{turn}");
        if (_baseWeeks.TryGetValue(key, out var known))
        {
            return known;
        }

        var ordinary = week with { WeekInPhase = turn + 1 };
        List<Contact> contacts = [];
        for (var day = 0; day < 7; day++)
        {
            var date = week.First.PlusDays(day);
            if (week.Phase == PhaseKind.InSeason && date.DayOfWeek == _request.Squad.MatchDay)
            {
                contacts.Add(new Contact(Guid.Empty, "match", date, _request.Squad.MatchStart ?? Squad.UsualMatchStart, 60, true, ""));
            }
            else if (_request.Squad.Practices.FirstOrDefault(p => p.Day == date.DayOfWeek && p.Phases.Contains(week.Phase)) is { } practice)
            {
                contacts.Add(new Contact(Guid.Empty, "practice", date, practice.Start, practice.Minutes, false, ""));
            }
        }

        var slots = Slots(mix, ordinary, contacts.Count);
        List<WantedSession> wanted = [.. slots.Select(s => new WantedSession(SlotName(week, s.Slot), s.Workout, s.Slot.Minutes))];
        var toPlace = new WeekToPlace(
            _request.Squad, week.First, week.Phase, wanted, contacts, [], [], [true, true, true, true, true, true, true],
            Math.Min(mix.ActiveDaysAtMost, 7 - RestDaysAtLeast), mix.HoursBetweenHard, HardAtMost, mix.SessionsPerContactDay, null);
        IReadOnlyDictionary<string, int> days = WeekPlacement.PlaceRepeating(toPlace).Placed.ToDictionary(p => p.Wanted.Slot, p => Period.DaysBetween(week.First, p.Date), StringComparer.Ordinal);
        return _baseWeeks[key] = days;

        static int Lcm(int a, int b)
        {
            var n = a;
            while (n % b != 0)
            {
                n += a;
            }

            return n;
        }
    }

    private static string SlotName(CycleWeek week, Slot slot) => FileName.Of(week.Phase) + "." + slot.Name;

    private Guid SessionUid(CycleWeek week, string slot) => NamedId.From("session", _squadKey, LocalDatePattern.Iso.Format(week.First), slot);

    private bool IsSkipped(CycleWeek week, string slot)
    {
        if (_request.Pins?.Any(p => p.WeekFirst == week.First && p.Slot == slot && p.Skipped) != true)
        {
            return false;
        }

        _whyGone[SessionUid(week, slot)] = "A coach left it out.";
        return true;
    }

    private PlannedSession FromContact(Contact contact, CycleWeek week)
    {
        var ages = _request.Squad.AgeGroup;
        var sheet = contact.IsMatch ? SessionSheets.ForMatch(ages) : SessionSheets.ForPractice(ages);
        return new PlannedSession(
            contact.Uid, contact.Slot, contact.Date, contact.Start, contact.Minutes,
            contact.IsMatch ? SessionKind.Match : SessionKind.Practice, null, [],
            contact.IsMatch ? Hardness.Hard : Hardness.Moderate,
            contact.IsMatch ? LoadTable.MatchEffort : LoadTable.PracticeEffort,
            contact.Title,
            [contact.IsMatch ? "From the club's fixtures." : $"The squad's usual practice in {Words(week.Phase)}."],
            sheet.Steps, sheet.Cautions);
    }

    private PlannedSession FromPlaced(Placed placed, CycleWeek week, WeekLoading loading)
    {
        var workout = placed.Wanted.Workout;
        var sheet = SessionSheets.For(workout, new DoseContext(
            _request.Squad.AgeGroup, _request.Squad.TrainingAge, week.Phase, week.WeekInPhase, loading, placed.Wanted.Minutes, NextTurn(workout.Name)));
        return new PlannedSession(
            SessionUid(week, placed.Wanted.Slot), placed.Wanted.Slot, placed.Date, placed.Start, placed.Wanted.Minutes, SessionKind.Session,
            workout.Name, workout.Qualities, workout.Hardness, workout.Effort, workout.Title,
            [WhyHere(week, loading), placed.Why], sheet.Steps, sheet.Cautions, placed.InsidePractice, placed.Wanted.Pinned);
    }

    private static string WhyHere(CycleWeek week, WeekLoading loading)
    {
        var place = $"Week {week.WeekInPhase} of {week.WeeksInPhase} of {Words(week.Phase)}: {Purpose(week.Phase)}";
        return loading switch
        {
            WeekLoading.Unloading => place + " This is an unloading week: less of it, so that the body catches up.",
            WeekLoading.Taper => place + " The matches are near: shorter, just as sharp.",
            _ => place,
        };
    }

    /// <summary>Optional easy movement on up to two rest days; never for the youngest, who play anyway.</summary>
    /// <param name="first">Where the week's sessions start.</param>
    private void AddActiveRecovery(CycleWeek week, List<PlannedSession> happened, int first, IReadOnlyList<bool> free)
    {
        if (week.Phase is not (PhaseKind.InSeason or PhaseKind.Recovery or PhaseKind.Restore or PhaseKind.Break) || _request.Squad.AgeGroup.YoungestAge < 12)
        {
            return;
        }

        var busy = _sessions.Skip(first).Where(s => s.Kind != SessionKind.ActiveRecovery).Select(s => s.Date).ToHashSet();
        var count = happened.Count(h => h.Kind == SessionKind.ActiveRecovery);
        var sheet = SessionSheets.ForActiveRecovery(_request.Squad.AgeGroup);
        for (var day = 0; day < 7 && count < 2; day++)
        {
            var date = week.First.PlusDays(day);
            if (free[day] && !busy.Contains(date) && (day == 0 || busy.Contains(date.PlusDays(-1))))
            {
                count++;
                var slot = string.Create(CultureInfo.InvariantCulture, $"active-recovery.{count}");
                _sessions.Add(new PlannedSession(
                    SessionUid(week, slot), slot, date, new LocalTime(18, 0), LoadTable.ActiveRecoveryMinutes, SessionKind.ActiveRecovery, null, [],
                    Hardness.Easy, LoadTable.ActiveRecoveryEffort, "Active recovery (optional)", ["A rest day: easy movement if you feel like it."], sheet.Steps, sheet.Cautions));
            }
        }
    }

    private static string Words(PhaseKind phase) => phase switch
    {
        PhaseKind.InSeason => "the season",
        PhaseKind.AerobicBuild => "the aerobic build",
        PhaseKind.Mixed => "the mixed phase",
        PhaseKind.Break => "the break",
        _ => FileName.Of(phase),
    };

    private static string Purpose(PhaseKind phase) => phase switch
    {
        PhaseKind.InSeason => "stay fresh between matches and keep what was built.",
        PhaseKind.Break => "rest from matches, keep moving.",
        PhaseKind.Recovery or PhaseKind.Restore => "recover and mend weak spots.",
        PhaseKind.AerobicBuild => "build endurance that the rest of the year stands on.",
        PhaseKind.Mixed => "bring in strength and speed while endurance is kept.",
        PhaseKind.PreSeason => "sharpen for the first match.",
        _ => throw new ArgumentOutOfRangeException(nameof(phase), phase, "Unknown phase"),
    };
}
