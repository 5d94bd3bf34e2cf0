using ClubCycle.Planning;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Tests;
using ClubCycle.Planning.Workouts;
using CsCheck;
using NodaTime;

namespace ClubCycle.Web.Tests.Feeds;

/// <summary>Plans of the demo club, of seasons of every shape and of random squads, each also as coaches change it, so that every sentence of a plan comes up.</summary>
internal static class ManyPlans
{
    private const int RandomSquads = 40;

    private static readonly IReadOnlyList<PhaseKind> AnyPhase = Enum.GetValues<PhaseKind>();

    public static IReadOnlyList<(PlanRequest Request, SquadPlan Plan)> Planned { get; } = [.. Requests().SelectMany(WithChanges)];

    public static IReadOnlyList<SquadPlan> All { get; } = [.. Planned.Select(p => p.Plan)];

    private static List<PlanRequest> Requests()
    {
        List<PlanRequest> requests = [.. PublishedSquad.Demo, .. PublishedSquad.Seasons];
        Any.Planned.Sample(planned => requests.Add(planned.Request), iter: RandomSquads, threads: 1, seed: "0000KoIShtY3");
        return [.. requests.Select((r, i) => i % 2 == 1 ? r with { Squad = r.Squad with { Practices = [.. r.Squad.Practices.Select(p => p with { Phases = AnyPhase })] } } : r)];
    }

    private static IEnumerable<(PlanRequest Request, SquadPlan Plan)> WithChanges(PlanRequest request, int number)
    {
        var plan = AnnualPlanner.Plan(request).OrThrow();
        yield return (request, plan);
        for (var n = 0; n < 3; n++)
        {
            var random = new Random((number * 10) + n);
            var changed = Changed(request, plan, random);
            if (AnnualPlanner.Plan(changed) is Result<SquadPlan>.Ok again)
            {
                yield return (changed, again.OrThrow());
            }
        }
    }

    /// <summary>Days closed, other matches, other free times or practices, a template that pairs nothing with a practice, and a coach's hand on some sessions, a while into the year.</summary>
    private static PlanRequest Changed(PlanRequest request, SquadPlan plan, Random random)
    {
        var cycle = request.Season.Cycle;
        var from = cycle.Start.PlusDays(random.Next(0, 40));
        List<ClosedDays> closed = [.. request.Closed];
        for (var n = 0; n < 12; n++)
        {
            var first = from.PlusDays(random.Next(1, cycle.Length));
            closed.Add(new ClosedDays(first, first.PlusDays(random.Next(0, 3)), "closed"));
        }

        return request with
        {
            Squad = random.Next(3) switch
            {
                0 => request.Squad with { Windows = [new TimeWindow([IsoDayOfWeek.Monday, IsoDayOfWeek.Wednesday, IsoDayOfWeek.Friday], new LocalTime(17, 0), new LocalTime(20, 0))] },
                1 => request.Squad with { Practices = [.. request.Squad.Practices.Append(new Practice((IsoDayOfWeek)random.Next(1, 8), new LocalTime(19, 0), 75, AnyPhase)).DistinctBy(p => p.Day)] },
                _ => request.Squad,
            },
            Template = random.Next(2) == 0 ? request.Template : request.Template with { Mixes = [.. request.Template.Mixes.Select(m => m with { SessionsPerContactDay = 0 })] },
            Published = plan,
            PlanFrom = from,
            Closed = closed,
            Fixtures = request.Fixtures?.Where(f => f.Date < from).Concat(Enumerable.Range(0, 30).Select(_ => new Fixture(from.PlusDays(random.Next(1, cycle.Length)), new LocalTime(random.Next(10, 18), 0)))).Where(f => cycle.Contains(f.Date)).DistinctBy(f => f.Date).ToList(),
            Pins = [.. plan.Sessions.Where(s => s.Kind == SessionKind.Session && s.Date > from && random.Next(12) == 0).DistinctBy(s => WeekOf(plan, s)).Select((s, i) => PinOf(request, WeekOf(plan, s), s, i, random))],
        };
    }

    private static LocalDate WeekOf(SquadPlan plan, PlannedSession session) => plan.Weeks.Last(w => w.First <= session.Date).First;

    private static Pin PinOf(PlanRequest request, LocalDate week, PlannedSession session, int number, Random random)
    {
        var workout = WorkoutCatalogue.Find(session.Workout!)!;
        return random.Next(3) switch
        {
            0 => new Pin(week, session.Slot, session.Date, null),
            1 => new Pin(week, session.Slot, null, null, Workout: WorkoutCatalogue.InsteadOf(workout, request.Squad.AgeGroup) is [var other, ..] ? other.Name : null),
            _ => new Pin(week, Pin.AddedSlotOf(number + 1), week.PlusDays(random.Next(7)), null, Workout: workout.Name, Minutes: 40),
        };
    }
}
