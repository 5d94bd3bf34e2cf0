using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Weeks;
using ClubCycle.Planning.Workouts;
using NodaTime;

namespace ClubCycle.Planning.Rules;

/// <summary>A plan laid out the way rules look at it.</summary>
public sealed partial class CheckedPlan
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

    public static double HoursBetween(PlannedSession earlier, PlannedSession later) =>
        Period.Between(earlier.StartsAt, later.StartsAt, PeriodUnits.Minutes).Minutes / 60.0;

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

    /// <summary>Load of practices and matches, which the planner does not choose, AU.</summary>
    public int ContactLoadAu => Active.Where(s => s.Kind is SessionKind.Practice or SessionKind.Match).Sum(s => s.PlannedLoadAu);
}
