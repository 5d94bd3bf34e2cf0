using ClubCycle.Planning.Loads;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Weeks;
using ClubCycle.Planning.Workouts;
using NodaTime;

namespace ClubCycle.Planning.Rules;

/// <summary>A plan laid out the way rules look at it.</summary>
public sealed class CheckedPlan
{
    public CheckedPlan(PlanRequest request, SquadPlan plan)
    {
        (Request, Plan) = (request, plan);
        Active = [.. plan.Sessions.Where(s => s.Kind != SessionKind.ActiveRecovery).OrderBy(s => s.StartsAt)];
        Hard = [.. Active.Where(s => s.Hardness == Hardness.Hard)];
        Matches = [.. Active.Where(s => s.Kind == SessionKind.Match)];
        var byWeek = Active.ToLookup(s => WeekOf(s.Date));
        Weeks = [.. plan.Weeks.Select(w => new CheckedWeek(w, [.. byWeek[w.First]], IsWhole(w)))];
    }

    public PlanRequest Request { get; }

    public SquadPlan Plan { get; }

    public Squad Squad => Request.Squad;

    /// <summary>Sessions, practices and matches by start; active recovery does not count as activity.</summary>
    public IReadOnlyList<PlannedSession> Active { get; }

    /// <summary>High-intensity sessions, matches included, by start.</summary>
    public IReadOnlyList<PlannedSession> Hard { get; }

    public IReadOnlyList<PlannedSession> Matches { get; }

    public IReadOnlyList<CheckedWeek> Weeks { get; }

    /// <summary>Nothing is known of the days before this one; they are no rest, no zero load.</summary>
    public LocalDate KnownFrom => Request is { PlanFrom: { } from, Published: null } ? LocalDate.Max(from, Plan.Cycle.Start) : Plan.Cycle.Start;

    /// <summary>First day of the week that holds the date.</summary>
    public LocalDate WeekOf(LocalDate date)
    {
        var back = ((int)date.DayOfWeek - (int)Request.FirstWeekday + 7) % 7;
        return date.PlusDays(-back);
    }

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
        sessions.Any(s => s.Pinned) ? Cause.Coach
        : Request is { Published: not null, PlanFrom: { } from } && sessions.Any(s => s.Date < from) ? Cause.Past
        : null;

    public int ClosedDaysIn(CheckedWeek week) => Enumerable.Range(0, 7).Count(day => Request.Closed.Any(c => c.Contains(week.Week.First.PlusDays(day))));

    /// <summary>Sessions of their own are all as short as is still worth it.</summary>
    public bool AtShortest(CheckedWeek week)
    {
        var own = week.Own.ToList();
        return own.Count > 0 && own.TrueForAll(s => s.Minutes <= ShortestMinutes(s, week.Week.Loading));
    }

    private int ShortestMinutes(PlannedSession session, WeekLoading loading)
    {
        if (WorkoutOf(session) is not { } workout)
        {
            return session.Minutes;
        }

        var full = Request.Template.Mixes.SelectMany(m => m.Slots, (m, s) => (Name: $"{FileName.Of(m.Phase)}.{s.Name}", s.Minutes)).FirstOrDefault(s => s.Name == session.Slot).Minutes;
        return WeekVolume.ShortestMinutes(workout, loading, full == 0 ? session.Minutes : full);
    }

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

    public int Matches => Active.Count(s => s.Kind == SessionKind.Match);

    public IEnumerable<PlannedSession> Contacts => Active.Where(s => s.Kind is SessionKind.Practice or SessionKind.Match);

    /// <summary>Sessions at a time of their own.</summary>
    public IEnumerable<PlannedSession> Own => Active.Where(s => s is { Kind: SessionKind.Session, InsidePractice: false });

    /// <summary>Load of practices and matches, which the planner does not choose, AU.</summary>
    public int ContactLoadAu => Contacts.Sum(s => s.PlannedLoadAu);

    public IReadOnlyList<Guid> Uids => [.. Active.Select(s => s.Uid)];
}
