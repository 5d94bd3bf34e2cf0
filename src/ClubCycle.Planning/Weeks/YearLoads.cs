using ClubCycle.Planning.Loads;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Weeks.Placement;
using NodaTime;

namespace ClubCycle.Planning.Weeks;

/// <summary>How much a week holds.</summary>
/// <param name="Minutes">By the frame's slots, of every session that has a place; 0 for the others.</param>
/// <param name="TooMuch">Placed sessions that have to go, or the week would hold too much.</param>
/// <param name="LoadAu">Planned effort times minutes, AU.</param>
internal sealed record WeekLoad(WeekLoading Loading, IReadOnlyList<int> Minutes, IReadOnlyList<WeekSlot> TooMuch, int LoadAu);

/// <summary>Walks through the placed weeks of a cycle and says how much each of them holds.</summary>
internal sealed class YearLoads
{
    private readonly PlanRequest _request;
    private readonly LoadHistory _history;
    private readonly WeekVolume _volume;
    private LocalDate? _lastActive;
    private int? _weeksBack;

    private YearLoads(PlanRequest request, LocalDate firstWeek)
    {
        _request = request;
        _history = LoadsBefore.HistoryOf(request, firstWeek);
        _volume = new WeekVolume(request.Template.Loading, _history);

        // What a squad that joins has done before is not known: it starts gently.
        _lastActive = LoadsBefore.LastActive(request) ?? (request is { PlanFrom: not null, Published: null } ? null : request.Season.PreviousLastDay);
    }

    public static IReadOnlyList<WeekLoad> Of(PlanRequest request, IReadOnlyList<WeekFrame> frames, IReadOnlyList<WeekLoading> wave, PlacedCycle placed)
    {
        var loads = new YearLoads(request, frames[0].Week.First);
        return [.. frames.Select((f, i) => loads.LoadOf(f, wave[i], placed.Weeks[i]))];
    }

    private WeekLoad LoadOf(WeekFrame frame, WeekLoading loading, PlacedWeek placed)
    {
        var week = frame.Week;
        if (week.Phase == PhaseKind.InSeason && frame.HasMatch)
        {
            loading = WeekLoading.Match;
        }

        var load = 0;
        var (first, last) = (LocalDate.MaxIsoValue, LocalDate.MinIsoValue);
        foreach (var happened in frame.Happened)
        {
            if (happened.Kind != SessionKind.ActiveRecovery)
            {
                Active(happened.Date, happened.InsidePractice ? 0 : happened.PlannedLoadAu);
            }
        }

        if (!frame.Past)
        {
            foreach (var contact in frame.Contacts)
            {
                if (contact.Date >= frame.From)
                {
                    Active(contact.Date, contact.LoadAu);
                }
            }
        }

        foreach (var session in placed.Placed)
        {
            Active(session.Date, 0);
        }

        if (first <= last)
        {
            _weeksBack = _lastActive is not { } before || Period.DaysBetween(before, first) > RuleLimits.DaysOff ? 0 : _weeksBack + 1;
            _lastActive = last;
        }

        List<WeekSlot> tooMuch = [];
        var minutes = new int[frame.Slots.Count];
        foreach (var (slot, session, length) in Sessions(frame, loading, placed))
        {
            minutes[slot] = length;
            if (length == 0)
            {
                tooMuch.Add(frame.Slots[slot]);
            }
            else if (session is { InsidePractice: false })
            {
                load += length * session.Wanted.Workout.Effort;
            }
        }

        if (week.Phase == PhaseKind.InSeason && loading == WeekLoading.Loading && _history.MeanOfRun is { } mean && load < LoadsBefore.EasierWeekShare * mean)
        {
            loading = WeekLoading.Unloading;
        }

        // The first week may begin in the cycle before.
        _history.Add(loading, load + LoadsBefore.LoadBetween(_request, week.First, week.Last));
        return new WeekLoad(loading, minutes, tooMuch, load);

        void Active(LocalDate day, int au)
        {
            load += au;
            (first, last) = (LocalDate.Min(first, day), LocalDate.Max(last, day));
        }
    }

    /// <summary>How long the week's sessions last; 0 leaves one out. What happened earlier in the week has its share of the week.</summary>
    private List<(int Slot, Placed? Session, int Minutes)> Sessions(WeekFrame frame, WeekLoading loading, PlacedWeek placed)
    {
        List<(int Slot, Placed? Session, int Minutes)> sessions = new(frame.Slots.Count);
        List<SessionVolume> volumes = new(frame.Slots.Count);
        var usualMinutes = 0;
        for (var i = 0; i < frame.Slots.Count; i++)
        {
            var slot = frame.Slots[i];
            usualMinutes += slot.Minutes;
            if (placed.Of(slot.Name) is { } session)
            {
                sessions.Add((i, session, 0));
                volumes.Add(new SessionVolume(slot.Workout, slot.GivenMinutes ?? slot.Minutes, session.InsidePractice, session.Wanted.Pinned, slot.GivenMinutes is not null));
            }
            else if (frame.HappenedOf(slot.Uid) is { } happened)
            {
                sessions.Add((i, null, 0));
                volumes.Add(new SessionVolume(slot.Workout, slot.GivenMinutes ?? slot.Minutes, happened.InsidePractice, true, slot.GivenMinutes is not null));
            }
        }

        var minutes = _volume.Minutes(frame.Week, loading, frame.Contacts, volumes, frame.Slots.Count, _weeksBack, usualMinutes);
        for (var i = 0; i < sessions.Count; i++)
        {
            sessions[i] = sessions[i] with { Minutes = frame.Slots[sessions[i].Slot] is { GivenMinutes: null, Known.Minutes: var known } ? known : minutes[i] };
        }

        return sessions;
    }
}
