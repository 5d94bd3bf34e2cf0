using ClubCycle.Planning.Loads;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Weeks.Placement;
using NodaTime;

namespace ClubCycle.Planning.Weeks;

/// <summary>Places the sessions of the whole cycle, then walks through it week by week: how much, which sheets, what to say.</summary>
internal sealed class YearBuilder
{
    /// <summary>A week without a match and with clearly less to do is an easier week.</summary>
    private const double EasierWeekShare = 0.8;
    private const int MostReasons = 3;

    private readonly PlanRequest _request;
    private readonly LoadHistory _history = new();
    private readonly WeekVolume _volume;
    private readonly SessionMaker _sessionMaker;
    private readonly List<PlannedSession> _sessions = [];
    private readonly List<PlanWeek> _weeks = [];
    private readonly List<Finding> _findings = [];
    private readonly Dictionary<Guid, string> _whyGone = [];
    private LocalDate? _lastActive;
    private int? _weeksBack;

    private YearBuilder(PlanRequest request)
    {
        _request = request;
        _volume = new WeekVolume(request.Template.Loading, _history);
        _sessionMaker = new SessionMaker(request.Squad);

        // What a squad that joins has done before is not known: it starts gently.
        _lastActive = request is { PlanFrom: not null, Published: null } ? null : request.Season.PreviousLastDay;
    }

    public sealed record Year(IReadOnlyList<PlanWeek> Weeks, IReadOnlyList<PlannedSession> Sessions, IReadOnlyList<Finding> Findings, IReadOnlyDictionary<Guid, string> WhyGone);

    public static Year Build(PlanRequest request, CyclePhases phases)
    {
        var builder = new YearBuilder(request);
        var frames = WeekFrames.Of(request, phases.Weeks);
        var closed = frames.Where(f => IsClosed(request, f)).Select(f => f.Week).ToHashSet();
        var wave = LoadingWave.Of(phases.Weeks, LoadingWave.UnloadEvery(request.Template, request.Squad), closed.Contains);
        var placed = CyclePlacement.Place([.. frames.Select(f => f.ToPlace)]);
        List<Volume> volumes = [.. frames.Select((f, i) => builder.VolumeOf(f, wave[i], placed.Weeks[i]))];
        bool TakesPlace(int week, string slot) => volumes[week].Minutes[slot] > 0;
        for (var i = 0; i < frames.Count; i++)
        {
            builder.AddWeek(frames[i], volumes[i], placed.Weeks[i], volumes[i].Minutes.Count == 0 ? null : placed.WhyOf(i, TakesPlace), closed.Contains(frames[i].Week));
        }

        builder._sessions.Sort((a, b) =>
            a.Date != b.Date ? a.Date.CompareTo(b.Date) : a.Start != b.Start ? a.Start.CompareTo(b.Start) : string.CompareOrdinal(a.Slot, b.Slot));
        return new Year(builder._weeks, builder._sessions, builder._findings, builder._whyGone);
    }

    /// <summary>How much a week holds.</summary>
    /// <param name="Minutes">By slot; 0 for a session that is left out to keep the week easy.</param>
    private sealed record Volume(WeekLoading Loading, IReadOnlyDictionary<string, int> Minutes, int LoadAu);

    private Volume VolumeOf(WeekFrame frame, WeekLoading loading, PlacedWeek placed)
    {
        var week = frame.Week;
        if (week.Phase == PhaseKind.InSeason && frame.HasMatch)
        {
            loading = WeekLoading.Match;
        }

        var happened = frame.Happened.Where(h => h.Kind != SessionKind.ActiveRecovery).ToList();
        var ahead = frame.Past ? [] : frame.Contacts.Where(c => c.Date >= frame.From).ToList();
        List<LocalDate> known = [.. happened.Select(h => h.Date), .. ahead.Select(c => c.Date)];
        List<LocalDate> active = [.. known, .. placed.Placed.Select(p => p.Date)];
        var back = WeeksBack(active);
        var minutes = MinutesOf(frame, loading, placed, back);

        // A session that is left out is no training: without it the week may be the first one back.
        active = [.. known, .. placed.Placed.Where(p => minutes[p.Wanted.Slot] > 0).Select(p => p.Date)];
        if (WeeksBack(active) != back)
        {
            back = WeeksBack(active);
            minutes = MinutesOf(frame, loading, placed, back);
            active = [.. known, .. placed.Placed.Where(p => minutes[p.Wanted.Slot] > 0).Select(p => p.Date)];
        }

        if (active.Count > 0)
        {
            (_weeksBack, _lastActive) = (back, active.Max());
        }

        var load = happened.Sum(h => h.InsidePractice ? 0 : h.PlannedLoadAu)
            + ahead.Sum(c => c.Minutes * (c.IsMatch ? LoadTable.MatchEffort : LoadTable.PracticeEffort))
            + placed.Placed.Sum(p => p.InsidePractice ? 0 : minutes[p.Wanted.Slot] * p.Wanted.Workout.Effort);
        if (week.Phase == PhaseKind.InSeason && loading == WeekLoading.Loading && _history.MeanOfRun is { } mean && load < EasierWeekShare * mean)
        {
            loading = WeekLoading.Unloading;
        }

        _history.Add(loading, load);
        return new Volume(loading, minutes, load);
    }

    private void AddWeek(WeekFrame frame, Volume volume, PlacedWeek placed, PlacementWhy? why, bool closed)
    {
        var week = frame.Week;
        var first = _sessions.Count;
        foreach (var session in frame.Happened)
        {
            _sessions.Add(session);
            if (session.Workout is { } workout)
            {
                _sessionMaker.NextTurn(workout);
            }
        }

        if (!frame.Past)
        {
            AddPlanned(frame, volume, placed, why);
            AddActiveRecovery(frame, first);
            ReportDropped(frame, placed.Dropped, closed);
        }

        _weeks.Add(new PlanWeek(WeekCalendar.Name(week.First), week.First, week.Phase, week.WeekInPhase, volume.Loading, volume.LoadAu));
    }

    private void AddPlanned(WeekFrame frame, Volume volume, PlacedWeek placed, PlacementWhy? why)
    {
        foreach (var contact in frame.Contacts.Where(c => c.Date >= frame.From))
        {
            _sessions.Add(_sessionMaker.FromContact(contact, frame.Week));
        }

        foreach (var session in placed.Placed)
        {
            if (volume.Minutes[session.Wanted.Slot] is > 0 and var length)
            {
                // A session that stays where players know it keeps the reason they know.
                var slot = frame.Slots.First(s => s.Name == session.Wanted.Slot);
                var reason = slot.Known is { Why.Count: > 0 } known && known.StartsAt == session.Date.At(session.Start) && !session.Wanted.Pinned ? known.Why[^1] : why!.ThisPlaceFor(session.Session);
                _sessions.Add(_sessionMaker.FromPlaced(session, slot.Uid, length, reason, frame.Week, volume.Loading));
            }
        }

        foreach (var slot in frame.Slots)
        {
            if (volume.Minutes.TryGetValue(slot.Name, out var length) && length == 0)
            {
                _whyGone[slot.Uid] = "The week is an easier one.";
            }
        }

        foreach (var slot in frame.LeftOut)
        {
            _whyGone[slot.Uid] = "A coach left it out.";
        }
    }

    /// <summary>Weeks in training before this one since two weeks or more without (R19); null when there was no such time.</summary>
    private int? WeeksBack(List<LocalDate> active) =>
        active.Count == 0 ? _weeksBack : _lastActive is not { } last || Period.DaysBetween(last, active.Min()) > RuleLimits.DaysOff ? 0 : _weeksBack + 1;

    /// <summary>How long the week's sessions last, by slot; 0 leaves one out. What happened earlier in the week has its share of the week.</summary>
    private Dictionary<string, int> MinutesOf(WeekFrame frame, WeekLoading loading, PlacedWeek placed, int? weeksBack)
    {
        var bySlot = placed.Placed.ToDictionary(p => p.Wanted.Slot, StringComparer.Ordinal);
        List<string> names = [];
        List<SessionVolume> volumes = [];
        foreach (var slot in frame.Slots)
        {
            if (bySlot.TryGetValue(slot.Name, out var session))
            {
                names.Add(slot.Name);
                volumes.Add(new SessionVolume(slot.Workout, slot.Minutes, session.InsidePractice, session.Wanted.Pinned));
            }
            else if (frame.Happened.FirstOrDefault(h => h.Uid == slot.Uid) is { } happened)
            {
                names.Add(slot.Name);
                volumes.Add(new SessionVolume(slot.Workout, slot.Minutes, happened.InsidePractice, happened.Pinned));
            }
        }

        var minutes = _volume.Minutes(frame.Week, loading, frame.Contacts, volumes, weeksBack, frame.Slots.Sum(s => s.Minutes));
        var known = frame.Slots.ToDictionary(s => s.Name, s => s.Known?.Minutes, StringComparer.Ordinal);
        return names.Zip(minutes).ToDictionary(p => p.First, p => known[p.First] ?? p.Second, StringComparer.Ordinal);
    }

    /// <summary>Optional easy movement on up to two rest days; never for the youngest, who play anyway.</summary>
    /// <param name="first">Where the week's sessions start.</param>
    private void AddActiveRecovery(WeekFrame frame, int first)
    {
        var week = frame.Week;
        if (week.Phase is not (PhaseKind.InSeason or PhaseKind.Recovery or PhaseKind.Restore or PhaseKind.Break) || _request.Squad.AgeGroup.YoungestAge < 12)
        {
            return;
        }

        var busy = _sessions.Skip(first).Where(s => s.Kind != SessionKind.ActiveRecovery).Select(s => s.Date).ToHashSet();
        var count = frame.Happened.Count(h => h.Kind == SessionKind.ActiveRecovery);
        for (var day = 0; day < 7 && count < 2; day++)
        {
            var date = week.First.PlusDays(day);
            if (date >= frame.From && _request.Season.Cycle.Contains(date) && !WeekFrames.IsClosed(_request, date)
                && !busy.Contains(date) && (day == 0 || busy.Contains(date.PlusDays(-1))))
            {
                count++;
                _sessions.Add(_sessionMaker.ActiveRecovery(week, date, count));
            }
        }
    }

    private void ReportDropped(WeekFrame frame, IReadOnlyList<(WantedSession Wanted, string Why)> dropped, bool isClosed)
    {
        foreach (var (wanted, why) in dropped)
        {
            _whyGone[frame.Slots.First(s => s.Name == wanted.Slot).Uid] = char.ToUpperInvariant(why[0]) + why[1..] + ".";
        }

        // A squad that joins in the middle of a week has simply missed its first days.
        var week = frame.Week;
        if (frame.From > week.First || week.Last > _request.Season.Cycle.End)
        {
            return;
        }

        var closed = Enumerable.Range(0, 7).Count(d => WeekFrames.IsClosed(_request, week.First.PlusDays(d)));
        if (isClosed)
        {
            _findings.Add(new Finding(
                "closed-week", Strength.Note, week.First,
                $"Nothing is planned this week: {string.Join(", ", _request.Closed.Where(c => c.First <= week.Last && c.Last >= week.First).Select(c => c.Why).Distinct().Take(MostReasons))}.",
                "Players may keep moving on their own; the weeks after start gently.", "The club's closed days",
                new FindingFacts(closed, 0, "days", [], Cause.ClosedDays)));
            return;
        }

        foreach (var reason in dropped.GroupBy(d => d.Why))
        {
            _findings.Add(new Finding(
                "slot-dropped", Strength.Should, week.First,
                $"No place this week for {string.Join(", ", reason.Select(d => $"'{d.Wanted.Workout.Title}'"))}: {reason.Key}.{(closed > 0 ? $" {closed} of its days are closed." : "")}",
                "Leave it out, or free a day: another practice night, a wider time window, or one session less in the weekly mix.",
                "The planner's own limits on days and spacing (rules R01 to R04, R36 to R39)",
                new FindingFacts(
                    frame.Slots.Count - reason.Count(), frame.Slots.Count, "sessions", [.. reason.Select(d => frame.Slots.First(s => s.Name == d.Wanted.Slot).Uid)], WhyNoPlace(frame, reason.Select(d => d.Wanted), closed))));
        }
    }

    private Cause WhyNoPlace(WeekFrame frame, IEnumerable<WantedSession> dropped, int closedDays) =>
        closedDays > 0 ? Cause.ClosedDays
        : dropped.All(d => d.Workout.OnlyInsidePractice) ? Cause.Contacts
        : frame.ToPlace.Wanted.Any(w => w.Pinned) ? Cause.Coach
        : frame.Slots.Count(s => !s.Workout.InsidePractice) > frame.Mix.ActiveDaysAtMost ? Cause.Template
        : frame.Contacts.Count > 0 || frame.ToPlace.Around.Any(a => a.Match) ? Cause.Contacts
        : _request.Squad.Windows.Count > 0 ? Cause.Times
        : frame.ToPlace.ActiveDaysAtMost < frame.Mix.ActiveDaysAtMost ? Cause.AgeGroup
        : Cause.Template;

    /// <summary>Every day is closed and no match is played in spite of it.</summary>
    private static bool IsClosed(PlanRequest request, WeekFrame frame) =>
        !frame.HasMatch && Enumerable.Range(0, 7).All(d => WeekFrames.IsClosed(request, frame.Week.First.PlusDays(d)));
}
