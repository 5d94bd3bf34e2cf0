using ClubCycle.Planning.Loads;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Templates;
using ClubCycle.Planning.Weeks;
using ClubCycle.Planning.Workouts;
using NodaTime;

namespace ClubCycle.Planning.Rules;

/// <summary>A plan laid out the way rules look at it.</summary>
public sealed partial class CheckedPlan
{
    /// <summary>Recovery after a season is never planned empty for longer.</summary>
    private const int WeeksOfSilence = 4;

    private readonly Dictionary<(PhaseKind, int, int), Workout[]> _wanted = [];

    public CheckedPlan(PlanRequest request, SquadPlan plan)
    {
        (Request, Plan) = (request, plan);
        Active = [.. plan.Sessions.Where(s => s.Kind != SessionKind.ActiveRecovery).OrderBy(s => s.StartsAt)];
        Hard = [.. Active.Where(s => s.Hardness == Hardness.Hard)];
        Matches = [.. Active.Where(s => s.Kind == SessionKind.Match)];
        HardSinceBefore = request.Before is { } before ? [.. before.Where(s => s.Kind != SessionKind.ActiveRecovery && s.Hardness == Hardness.Hard).OrderBy(s => s.StartsAt), .. Hard] : Hard;
        var byWeek = Active.ToLookup(s => WeekOf(s.Date));
        Weeks = [.. plan.Weeks.Select(w => new CheckedWeek(w, [.. byWeek[w.First]], IsWhole(w)))];
        Returns = [.. DaysBack()];
    }

    public PlanRequest Request { get; }

    public SquadPlan Plan { get; }

    public Squad Squad => Request.Squad;

    /// <summary>Sessions, practices and matches by start; active recovery does not count as activity.</summary>
    public IReadOnlyList<PlannedSession> Active { get; }

    /// <summary>What each of <see cref="Active"/> is by the catalogue; null for practices, matches and unknown names.</summary>
    internal IReadOnlyList<Workout?> Workouts => field ??= [.. Active.Select(WorkoutOf)];

    /// <summary>High-intensity sessions, matches included, by start.</summary>
    public IReadOnlyList<PlannedSession> Hard { get; }

    public IReadOnlyList<PlannedSession> Matches { get; }

    /// <summary>Those at the end of the cycle before, where they are known, and <see cref="Hard"/>.</summary>
    public IReadOnlyList<PlannedSession> HardSinceBefore { get; }

    public IReadOnlyList<CheckedWeek> Weeks { get; }

    /// <summary>Nothing is known of the days before this one; they are no rest, no zero load. A squad whose first published session comes so many weeks into the cycle joined then.</summary>
    public LocalDate KnownFrom => Request switch
    {
        { PlanFrom: { } from, Published: null } => LocalDate.Max(from, Plan.Cycle.Start),
        { Published.Sessions: [var first, ..] } when first.Date > Plan.Cycle.Start.PlusWeeks(WeeksOfSilence) => first.Date,
        _ => Plan.Cycle.Start,
    };

    /// <summary>First day of the week that holds the date.</summary>
    public LocalDate WeekOf(LocalDate date)
    {
        var back = ((int)date.DayOfWeek - (int)Request.FirstWeekday + 7) % 7;
        return date.PlusDays(-back);
    }

    /// <summary>First active days after two weeks or more without any; also the first one of a squad that joins, whose past is not known.</summary>
    public IReadOnlyList<LocalDate> Returns { get; }

    /// <summary>The planning week of a date; the first one for the days before it.</summary>
    public LocalDate PlanningWeekOf(LocalDate date) => Weeks.FirstOrDefault(w => date <= w.Week.Last)?.Week.First ?? WeekOf(date);

    public Phase? PhaseOn(LocalDate date) => Plan.Phases.FirstOrDefault(p => p.First <= date && date <= p.Last);

    /// <summary>The phase's weeks that are whole and not closed altogether.</summary>
    public IReadOnlyList<CheckedWeek> WeeksOf(Phase phase) =>
        [.. Weeks.Where(w => w.Whole && w.Week.Phase == phase.Kind && w.Week.First <= phase.Last && w.Week.Last >= phase.First && ClosedDaysIn(w) < 7)];

    /// <summary>Slots that the template wants in a full week with so many practices and matches.</summary>
    public IEnumerable<Slot> WantedSlots(PhaseKind phase, int contacts) =>
        Request.Template.Mixes.FirstOrDefault(m => m.Phase == phase)?.Slots.Where(s => !(contacts > s.WhenContactsAtMost) && !(contacts < s.WhenContactsAtLeast)) ?? [];

    /// <summary>What the template wants in a full week with as many practices and matches as this one.</summary>
    private Workout[] WantedWorkouts(CheckedWeek week)
    {
        var contacts = week.Contacts.Count();
        var key = (week.Week.Phase, week.Week.WeekInPhase, contacts);
        if (!_wanted.TryGetValue(key, out var known))
        {
            known = _wanted[key] =
            [
                .. WantedSlots(week.Week.Phase, contacts).Select(s => WorkoutCatalogue.Find(s.WorkoutIn(week.Week.WeekInPhase))).OfType<Workout>(),
            ];
        }

        return known;
    }

    /// <summary>Why a week has fewer sessions of a kind than a rule asks for; null when nothing forced it.</summary>
    public Cause? WhyFewer(CheckedWeek week, Func<Workout, bool> kind, int least)
    {
        var asked = 0;
        foreach (var workout in WantedWorkouts(week))
        {
            asked += kind(workout) ? 1 : 0;
        }

        return ClosedDaysIn(week) > 0 ? Cause.ClosedDays
            : Request.Pins?.Any(p => p.Skipped && p.WeekFirst == week.Week.First) == true ? Cause.Coach
            : asked < least ? WorkoutCatalogue.All.Any(w => kind(w) && w.AllowedFor(Squad.AgeGroup)) ? Cause.Template : Cause.AgeGroup
            : week.Week.Loading is WeekLoading.Unloading or WeekLoading.Taper || Returns.Any(back => back <= week.Week.Last && Period.DaysBetween(back, week.Week.First) < RuleLimits.ReturnDays) ? Cause.EasierWeek
            : Decided(week.Active) is { } decided ? decided
            : week.Contacts.Any() ? Cause.Contacts
            : Squad.Windows.Count > 0 ? Cause.Times
            : null;
    }

    /// <summary>The commonest of several causes; null as soon as one place was not forced.</summary>
    public static Cause? Together(params IEnumerable<Cause?> causes)
    {
        var all = causes.ToList();
        return all.Contains(null) ? null : all.GroupBy(c => c).OrderByDescending(g => g.Count()).ThenBy(g => g.Key).FirstOrDefault()?.Key;
    }

    public static bool IsStrength(Workout workout) => workout.HeavyLift || workout.Qualities.Contains(Quality.MuscularEndurance);

    public static bool IsStrength(PlannedSession session) => session.Qualities.Contains(Quality.MuscularEndurance) || WorkoutOf(session) is { HeavyLift: true };

    public static Workout? WorkoutOf(PlannedSession session) => session.Workout is { } name ? WorkoutCatalogue.Find(name) : null;

    /// <summary>The phases between two runs of matches that this phase is one of.</summary>
    public IReadOnlyList<Phase> GapOf(Phase phase)
    {
        var at = Plan.Phases.ToList().IndexOf(phase);
        return
        [
            .. Plan.Phases.Take(at).Reverse().TakeWhile(p => p.Kind != PhaseKind.InSeason).Reverse(),
            .. Plan.Phases.Skip(at).TakeWhile(p => p.Kind != PhaseKind.InSeason),
        ];
    }

    public static double HoursBetween(PlannedSession earlier, PlannedSession later) =>
        Period.Between(earlier.StartsAt, later.StartsAt, PeriodUnits.Minutes).Minutes / 60.0;

    /// <summary>A coach's or history's part in it, where neither practices nor dates explain a finding.</summary>
    public Cause? Decided(params IEnumerable<PlannedSession> sessions) =>
        sessions.Any(s => s.Pinned || HasGivenMinutes(s)) ? Cause.Coach
        : Request is { Published: not null, PlanFrom: { } from } && sessions.Any(s => s.Date < from) ? Cause.Past
        : null;

    /// <summary>A coach said how long it lasts.</summary>
    private bool HasGivenMinutes(PlannedSession session) => Request.Pins?.Any(p => p.Minutes is not null && p.Slot == session.Slot && p.WeekFirst == WeekOf(session.Date)) == true;

    public int ClosedDaysIn(CheckedWeek week) => Request.Closed.Count == 0 ? 0 : Enumerable.Range(0, 7).Count(day => Request.Closed.Any(c => c.Contains(week.Week.First.PlusDays(day))));

    /// <summary>Sessions of their own are all as short as is still worth it.</summary>
    public bool AtShortest(CheckedWeek week) => AtShortest(week.Own);

    public bool AtShortest(IEnumerable<PlannedSession> own)
    {
        var sessions = own.ToList();
        return sessions.Count > 0 && sessions.TrueForAll(s => s.Minutes <= ShortestMinutes(s));
    }

    private int ShortestMinutes(PlannedSession session)
    {
        var loading = Weeks.FirstOrDefault(w => session.Date <= w.Week.Last)?.Week.Loading ?? WeekLoading.Loading;
        if (WorkoutOf(session) is not { } workout)
        {
            return session.Minutes;
        }

        return HasGivenMinutes(session) ? session.Minutes : WeekVolume.ShortestMinutes(workout, loading, Request.Template.SlotOf(session.Slot)?.Minutes ?? session.Minutes);
    }

    private IEnumerable<LocalDate> DaysBack()
    {
        var last = Loads.LoadsBefore.LastActive(Request) ?? (Request is { PlanFrom: not null, Published: null } ? null : (LocalDate?)Plan.Cycle.Start.PlusDays(-1));
        foreach (var day in Active.Select(s => s.Date).Distinct().Where(d => d >= KnownFrom))
        {
            if (last is not { } before || Period.DaysBetween(before, day) > RuleLimits.DaysOff)
            {
                yield return day;
            }

            last = day;
        }
    }

    /// <summary>The loads of the weeks before the first whole one that are known.</summary>
    internal LoadHistory LoadsBefore() => Plan.Weeks.Count == 0 ? new LoadHistory() : Loads.LoadsBefore.HistoryOf(Request, Plan.Weeks[0].First);

    private bool IsWhole(PlanWeek week) => week.First >= KnownFrom && week.Last <= Plan.Cycle.End;
}

/// <param name="Active">Sessions, practices and matches of the week by start.</param>
/// <param name="Whole">All seven days lie in the cycle and are known.</param>
public sealed record CheckedWeek(PlanWeek Week, IReadOnlyList<PlannedSession> Active, bool Whole)
{
    public int ActiveDays => Active.Select(s => s.Date).Distinct().Count();

    public int RestDays => 7 - ActiveDays;

    public int HockeyDays => Active.Where(s => s.Kind is SessionKind.Practice or SessionKind.Match).Select(s => s.Date).Distinct().Count();

    /// <summary>Practices, matches and sessions of their own, hours.</summary>
    public double OrganisedHours => Active.Where(s => !s.InsidePractice).Sum(s => s.Minutes) / 60.0;

    public int Practices => Active.Count(s => s.Kind == SessionKind.Practice);

    public int StrengthSessions => Active.Count(CheckedPlan.IsStrength);

    public int Matches => Active.Count(s => s.Kind == SessionKind.Match);

    public IEnumerable<PlannedSession> Contacts => Active.Where(s => s.Kind is SessionKind.Practice or SessionKind.Match);

    /// <summary>Sessions at a time of their own.</summary>
    public IEnumerable<PlannedSession> Own => Active.Where(s => s is { Kind: SessionKind.Session, InsidePractice: false });

    /// <summary>Load of practices and matches, which the planner does not choose, AU.</summary>
    public int ContactLoadAu => Contacts.Sum(s => s.PlannedLoadAu);

    public IReadOnlyList<Guid> Uids => [.. Active.Select(s => s.Uid)];
}
