using ClubCycle.Planning.Loads;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Weeks.Placement;

namespace ClubCycle.Planning.Weeks;

/// <summary>Places the sessions of the whole cycle, then walks through it week by week: which sheets, what to say.</summary>
internal sealed class YearBuilder
{
    private const int MostReasons = 3;

    private readonly PlanRequest _request;
    private readonly SessionMaker _sessionMaker;
    private readonly List<PlannedSession> _sessions = [];
    private readonly List<PlanWeek> _weeks = [];
    private readonly List<Finding> _findings = [];
    private readonly Dictionary<Guid, string> _whyGone = [];

    private YearBuilder(PlanRequest request)
    {
        _request = request;
        _sessionMaker = new SessionMaker(request.Squad);
    }

    public sealed record Year(IReadOnlyList<PlanWeek> Weeks, IReadOnlyList<PlannedSession> Sessions, IReadOnlyList<Finding> Findings, IReadOnlyDictionary<Guid, string> WhyGone, IReadOnlyList<LeftOutSlot> LeftOut);

    public static Year Build(PlanRequest request, CyclePhases phases)
    {
        var builder = new YearBuilder(request);
        WeekFrame[] frames = [.. WeekFrames.Of(request, phases.Weeks)];
        var closed = frames.Where(f => IsClosed(request, f)).Select(f => f.Week).ToHashSet();
        var wave = LoadingWave.Of(phases.Weeks, LoadingWave.UnloadEvery(request.Template, request.Squad), closed.Contains);
        var (placed, loads) = Place(request, frames, wave);
        for (var i = 0; i < frames.Length; i++)
        {
            builder.AddWeek(frames[i], loads[i], placed.Weeks[i], frames[i].Past ? null : placed.WhyOf(i), closed.Contains(frames[i].Week));
        }

        builder.ReportAddedOutside(frames);
        builder._sessions.Sort((a, b) =>
            a.Date != b.Date ? a.Date.CompareTo(b.Date) : a.Start != b.Start ? a.Start.CompareTo(b.Start) : string.CompareOrdinal(a.Slot, b.Slot));
        return new Year(builder._weeks, builder._sessions, builder._findings, builder._whyGone, [.. frames.SelectMany(f => f.TooMuch.Select(s => new LeftOutSlot(f.Week.First, s.Name)))]);
    }

    /// <summary>
    /// Gives every session its place and its minutes. What makes a week too much is left out, and the rest is placed again without it: a session that
    /// does not take place takes nobody's day.
    /// </summary>
    private static (PlacedCycle Placed, IReadOnlyList<WeekLoad> Loads) Place(PlanRequest request, WeekFrame[] frames, IReadOnlyList<WeekLoading> wave)
    {
        if (request.Published is { LeftOut.Count: > 0 } published)
        {
            for (var i = 0; i < frames.Length; i++)
            {
                frames[i] = WithoutWhatWasTooMuch(frames[i], wave[i], published);
            }
        }

        var known = new Dictionary<int[], PreparedWeek>(WeekKey.Comparer);
        while (true)
        {
            var placed = CyclePlacement.Place([.. frames.Select(f => f.ToPlace)], known);
            var loads = YearLoads.Of(request, frames, wave, placed);
            var tooMuch = false;
            for (var i = 0; i < frames.Length; i++)
            {
                if (loads[i].TooMuch.Count > 0)
                {
                    tooMuch = true;
                    frames[i] = frames[i].Without(loads[i].TooMuch);
                }
            }

            if (!tooMuch)
            {
                return (placed, loads);
            }
        }
    }

    /// <summary>An easy week that players know is not filled up while it stays as easy.</summary>
    private static WeekFrame WithoutWhatWasTooMuch(WeekFrame frame, WeekLoading loading, SquadPlan published)
    {
        var known = published.Weeks.FirstOrDefault(w => w.First == frame.Week.First);
        var same = known?.Phase == frame.Week.Phase && (known.Loading == loading || !LoadingWave.Builds(known.Phase));
        return same ? frame.Without([.. frame.Slots.Where(s => published.LeftOut.Contains(new LeftOutSlot(known!.First, s.Name)))]) : frame;
    }

    private void AddWeek(WeekFrame frame, WeekLoad load, PlacedWeek placed, PlacementWhy? why, bool closed)
    {
        var week = frame.Week;
        var first = _sessions.Count;
        foreach (var session in frame.Happened)
        {
            _sessions.Add(session);
            _sessionMaker.Remember(session);
        }

        if (why is not null)
        {
            AddPlanned(frame, load, placed, why);
            AddActiveRecovery(frame, first);
            ReportDropped(frame, placed.Dropped, closed);
            ReportAdded(frame);
        }

        _weeks.Add(new PlanWeek(WeekCalendar.Name(week.First), week.First, week.Phase, week.WeekInPhase, load.Loading, load.LoadAu));
    }

    private void AddPlanned(WeekFrame frame, WeekLoad load, PlacedWeek placed, PlacementWhy why)
    {
        foreach (var contact in frame.Contacts.Where(c => c.Date >= frame.From))
        {
            _sessions.Add(_sessionMaker.FromContact(contact, frame.Week));
        }

        foreach (var session in placed.Placed)
        {
            // A session that stays where players know it keeps the reason they know.
            var number = frame.SlotOf(session.Wanted.Slot);
            var slot = frame.Slots[number];
            var reason = slot.Known is { Why.Count: > 0 } known && known.StartsAt == session.Date.At(session.Start) && !session.Wanted.Pinned ? known.Why[^1] : why.ThisPlaceFor(session.Session);
            var place = session.InsidePractice ? frame.Contacts.Single(c => !c.IsMatch && c.Date == session.Date).Place : null;
            _sessions.Add(_sessionMaker.FromPlaced(session, slot, load.Minutes[number], reason, place, frame.Week, load.Loading));
        }

        foreach (var slot in frame.TooMuch)
        {
            _whyGone[slot.Uid] = "The week is an easier one.";
        }

        foreach (var (slot, reason) in frame.LeftOut)
        {
            _whyGone[slot.Uid] = reason;
        }
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

    /// <summary>What a coach added and cannot stand; what a coach left out again needs no word.</summary>
    private void ReportAdded(WeekFrame frame)
    {
        foreach (var (slot, why) in frame.LeftOut.Where(l => l.Slot.IsAdded))
        {
            AddedHasNoPlace(frame.Week.First, slot.Workout.Title, char.ToLowerInvariant(why[0]) + why[1..], WeekFrames.IsClosed(_request, slot.Pin!.Date!.Value) ? Cause.ClosedDays : Cause.AgeGroup, slot.Uid);
        }
    }

    private void ReportAddedOutside(IReadOnlyList<WeekFrame> frames)
    {
        foreach (var pin in (_request.Pins ?? []).Where(p => p is { IsAdded: true, Skipped: false } && !frames.Any(f => f.Week.First == p.WeekFirst)))
        {
            AddedHasNoPlace(null, Workouts.WorkoutCatalogue.Find(pin.Workout!)!.Title, "its week lies outside the planning year.", Cause.SeasonDates, PlannedSession.UidOf(_request.Squad.Key, pin.WeekFirst, pin.Slot));
        }
    }

    private void AddedHasNoPlace(NodaTime.LocalDate? week, string title, string why, Cause cause, Guid uid) => _findings.Add(new Finding(
        "added-dropped", Strength.Should, week,
        $"'{title}', which a coach added, does not take place: {why}",
        "Give it another day, or remove it.",
        "The planner's own limits (closed days, the planning year, rules R01 and R32)",
        new FindingFacts(0, 1, "sessions", [uid], cause)));

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
