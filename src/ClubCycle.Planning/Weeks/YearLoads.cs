using ClubCycle.Planning.Loads;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Weeks.Placement;
using NodaTime;

namespace ClubCycle.Planning.Weeks;

/// <summary>How much a week holds.</summary>
/// <param name="Minutes">By slot, of every session that has a place.</param>
/// <param name="TooMuch">Placed sessions that have to go, or the week would hold too much.</param>
/// <param name="LoadAu">Planned effort times minutes, AU.</param>
internal sealed record WeekLoad(WeekLoading Loading, IReadOnlyDictionary<string, int> Minutes, IReadOnlyList<WeekSlot> TooMuch, int LoadAu);

/// <summary>Walks through the placed weeks of a cycle and says how much each of them holds.</summary>
internal sealed class YearLoads
{
    /// <summary>A week without a match and with clearly less to do is an easier week.</summary>
    private const double EasierWeekShare = 0.8;

    private readonly LoadHistory _history = new();
    private readonly WeekVolume _volume;
    private LocalDate? _lastActive;
    private int? _weeksBack;

    private YearLoads(PlanRequest request)
    {
        _volume = new WeekVolume(request.Template.Loading, _history);

        // What a squad that joins has done before is not known: it starts gently.
        _lastActive = request is { PlanFrom: not null, Published: null } ? null : request.Season.PreviousLastDay;
    }

    public static IReadOnlyList<WeekLoad> Of(PlanRequest request, IReadOnlyList<WeekFrame> frames, IReadOnlyList<WeekLoading> wave, PlacedCycle placed)
    {
        var loads = new YearLoads(request);
        return [.. frames.Select((f, i) => loads.LoadOf(f, wave[i], placed.Weeks[i]))];
    }

    private WeekLoad LoadOf(WeekFrame frame, WeekLoading loading, PlacedWeek placed)
    {
        var week = frame.Week;
        if (week.Phase == PhaseKind.InSeason && frame.HasMatch)
        {
            loading = WeekLoading.Match;
        }

        var happened = frame.Happened.Where(h => h.Kind != SessionKind.ActiveRecovery).ToList();
        var ahead = frame.Past ? [] : frame.Contacts.Where(c => c.Date >= frame.From).ToList();
        List<LocalDate> active = [.. happened.Select(h => h.Date), .. ahead.Select(c => c.Date), .. placed.Placed.Select(p => p.Date)];
        if (active.Count > 0)
        {
            _weeksBack = _lastActive is not { } last || Period.DaysBetween(last, active.Min()) > RuleLimits.DaysOff ? 0 : _weeksBack + 1;
            _lastActive = active.Max();
        }

        var minutes = MinutesOf(frame, loading, placed);
        var load = happened.Sum(h => h.InsidePractice ? 0 : h.PlannedLoadAu)
            + ahead.Sum(c => c.LoadAu)
            + placed.Placed.Sum(p => p.InsidePractice ? 0 : minutes[p.Wanted.Slot] * p.Wanted.Workout.Effort);
        if (week.Phase == PhaseKind.InSeason && loading == WeekLoading.Loading && _history.MeanOfRun is { } mean && load < EasierWeekShare * mean)
        {
            loading = WeekLoading.Unloading;
        }

        _history.Add(loading, load);
        return new WeekLoad(loading, minutes, [.. frame.Slots.Where(s => minutes.TryGetValue(s.Name, out var length) && length == 0)], load);
    }

    /// <summary>How long the week's sessions last, by slot; 0 leaves one out. What happened earlier in the week has its share of the week.</summary>
    private Dictionary<string, int> MinutesOf(WeekFrame frame, WeekLoading loading, PlacedWeek placed)
    {
        var bySlot = placed.Placed.ToDictionary(p => p.Wanted.Slot, StringComparer.Ordinal);
        List<WeekSlot> slots = [];
        List<SessionVolume> volumes = [];
        foreach (var slot in frame.Slots)
        {
            if (bySlot.TryGetValue(slot.Name, out var session))
            {
                slots.Add(slot);
                volumes.Add(new SessionVolume(slot.Workout, slot.Minutes, session.InsidePractice, session.Wanted.Pinned));
            }
            else if (frame.Happened.FirstOrDefault(h => h.Uid == slot.Uid) is { } happened)
            {
                slots.Add(slot);
                volumes.Add(new SessionVolume(slot.Workout, slot.Minutes, happened.InsidePractice, true));
            }
        }

        var minutes = _volume.Minutes(frame.Week, loading, frame.Contacts, volumes, frame.Slots.Count, _weeksBack, frame.Slots.Sum(s => s.Minutes));
        return slots.Zip(minutes).ToDictionary(p => p.First.Name, p => p.First.Known?.Minutes ?? p.Second, StringComparer.Ordinal);
    }
}
