using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Workouts;
using CsCheck;
using NodaTime;

namespace ClubCycle.Planning.Tests.Replanning;

/// <summary>What holds whenever a published plan is planned again.</summary>
[Trait(Cases.Trait, Cases.Random)]
public class AnyReplanTests(AnyReplanTests.Pass pass) : IClassFixture<AnyReplanTests.Pass>
{
    public static TheoryData<string> Invariants => [.. Cases.Of(typeof(AnyReplanTests))];

    [Theory]
    [MemberData(nameof(Invariants))]
    public void Holds_whenever_a_plan_is_planned_again(string invariant) => Assert.True(!pass.Failures.TryGetValue(invariant, out var failure), failure);

    private static void Nothing_changes_when_nothing_changed_whatever_day_it_is(PlanRequest request, SquadPlan plan, LocalDate day, SquadPlan _, int[] __)
    {
        var again = A.Plan(request with { Published = plan, PlanFrom = day });

        Assert.Equal(plan.Weeks, again.Weeks);
        Assert.Equal(plan.Phases, again.Phases);
        Assert.Equal(plan.Sessions.Select(Told), again.Sessions.Select(Told));
        Assert.False(again.Changes.Any);
        Assert.Equal(plan.Sessions.Count(s => s.Kind != SessionKind.ActiveRecovery), again.Changes.Kept);
    }

    private static void The_past_stays_as_it_was_published_whatever_is_closed_later(PlanRequest _, SquadPlan plan, LocalDate day, SquadPlan closed, int[] __)
    {
        Assert.Equal(plan.Sessions.Where(s => s.Date < day), closed.Sessions.Where(s => s.Date < day));
        Assert.Equal(closed.Sessions.Count, closed.Sessions.Select(s => s.Uid).Distinct().Count());
        Assert.DoesNotContain(closed.Changes.Moved, m => m.From.Date < day || m.To.Date < day);
        Assert.DoesNotContain(closed.Changes.Dropped, d => d.At.Date < day);
    }

    private static void Every_change_has_a_reason(PlanRequest _, SquadPlan __, LocalDate ___, SquadPlan closed, int[] ____)
    {
        Assert.All(closed.Changes.Moved, m => Assert.NotEmpty(m.Why));
        Assert.All(closed.Changes.Dropped, d => Assert.NotEmpty(d.Why));
    }

    private static void The_changes_lead_from_the_published_plan_to_the_new_one(PlanRequest _, SquadPlan plan, LocalDate __, SquadPlan closed, int[] ___)
    {
        var was = plan.Sessions.Where(s => s.Kind != SessionKind.ActiveRecovery).ToDictionary(s => s.Uid, s => s.StartsAt);
        foreach (var moved in closed.Changes.Moved)
        {
            Assert.Equal(moved.From, was[moved.Uid]);
            was[moved.Uid] = moved.To;
        }

        Assert.All(closed.Changes.Dropped, d => Assert.True(was.Remove(d.Uid)));
        Assert.All(closed.Changes.Added, a => was.Add(a.Uid, a.At));

        Assert.Equal(was.OrderBy(w => w.Key), closed.Sessions.Where(s => s.Kind != SessionKind.ActiveRecovery).Select(s => KeyValuePair.Create(s.Uid, s.StartsAt)).OrderBy(s => s.Key));
    }

    /// <summary>
    /// Spacing looks three days around a match, so the weeks of the old and the new day and their neighbours may change, and no other. While a stint's
    /// load still climbs, in its first eight weeks, a week may also change for the week before it.
    /// </summary>
    private static void Moving_one_match_leaves_the_sessions_of_other_weeks_alone(PlanRequest given, SquadPlan _, LocalDate __, SquadPlan ___, int[] dice)
    {
        var squad = given.Squad;
        List<LocalDate> dates = [.. A.SeasonA.Stints.SelectMany(s => new DateInterval(s.First, s.Last)).Where(d => d.DayOfWeek == squad.MatchDay)];
        List<Fixture> fixtures = [.. dates.Select((d, i) => new Fixture(d, Key: NamedId.From("fixture", $"{i}")))];
        var request = A.Request(A.SeasonA, squad, fixtures: fixtures);
        var plan = A.Plan(request);
        var which = dice[0] % dates.Count;
        var from = dates[which];
        var to = LocalDate.Min(LocalDate.Max(from.PlusDays((dice[1] % 7) - 3), A.SeasonA.Stints[0].First), A.SeasonA.Cycle.End);
        fixtures[which] = fixtures[which] with { Date = to };

        var changes = A.Plan(request with { Fixtures = fixtures, Published = plan }).Changes;

        var days = changes.Moved.SelectMany(m => new[] { m.From.Date, m.To.Date }).Concat(changes.Added.Select(a => a.At.Date)).Concat(changes.Dropped.Select(d => d.At.Date));
        var first = LocalDate.Min(from, to).PlusDays(-13);
        var last = LocalDate.Max(from, to).PlusDays(13);
        var climbs = plan.Weeks.Where(w => w is { Phase: PhaseKind.InSeason, WeekInPhase: 8 } && w.First.PlusWeeks(-7) <= last && w.Last >= first).Select(w => w.Last);
        Assert.All(days, d => Assert.InRange(d, first, climbs.Append(last).Max()));
    }

    /// <summary>A coach fixes and leaves out sessions, one after the other; every decision holds to the end, under the same id.</summary>
    private static void Every_decision_of_a_coach_holds_after_all_later_ones(PlanRequest request, SquadPlan plan, LocalDate _, SquadPlan __, int[] dice)
    {
        var pins = new Dictionary<(LocalDate, string), (Pin Pin, Guid Uid)>();
        for (var i = 0; i + 3 < dice.Length; i += 4)
        {
            var sessions = plan.Sessions.Where(s => s is { Kind: SessionKind.Session, InsidePractice: false }).ToList();
            if (sessions.Count == 0)
            {
                return;
            }

            var session = sessions[dice[i] % sessions.Count];
            var week = plan.Weeks.Single(w => w.First <= session.Date && session.Date <= w.Last).First;
            var date = week.PlusDays(dice[i + 1] % 7);
            var skip = dice[i + 2] % 4 == 0 || !plan.Cycle.Contains(date);
            pins[(week, session.Slot)] = (skip ? new Pin(week, session.Slot, null, null, true) : new Pin(week, session.Slot, date, new LocalTime(14 + (dice[i + 3] % 7), 0)), session.Uid);
            plan = A.Plan(request with { Published = plan, Pins = [.. pins.Values.Select(p => p.Pin)] });
        }

        Assert.All(pins.Values, decided =>
        {
            var (pin, uid) = decided;
            var found = plan.Sessions.SingleOrDefault(s => s.Slot == pin.Slot && pin.WeekFirst <= s.Date && s.Date <= pin.WeekFirst.PlusDays(6));
            Assert.Equal(pin.Skipped, found is null);
            if (found is not null)
            {
                Assert.Equal((pin.Date, pin.Start, true, uid), (found.Date, found.Start, found.Pinned, found.Uid));
            }
        });
        ClashesAreFound(plan);
    }

    /// <summary>Hard things less than two days apart are there only where a coach fixed one of them, and then a finding says so.</summary>
    private static void ClashesAreFound(SquadPlan plan)
    {
        var hard = plan.Sessions.Where(s => s.Hardness == Hardness.Hard).OrderBy(s => s.StartsAt).ToList();
        foreach (var (one, two) in hard.Zip(hard.Skip(1)).Where(p => p.First.Kind == SessionKind.Session || p.Second.Kind == SessionKind.Session))
        {
            if (Period.Between(one.StartsAt, two.StartsAt, PeriodUnits.Minutes).Minutes < 48 * 60)
            {
                Assert.True(one.Pinned || two.Pinned);
                Assert.Contains(plan.Findings, f => f.Rule is "R36" or "R37" or "R38" && f.Facts!.Sessions.Contains(one.Kind == SessionKind.Match ? two.Uid : one.Uid));
            }
        }
    }

    /// <summary>All that a session's sheet depends on, and what people read of it.</summary>
    private static (Guid, LocalDateTime, int, string, string, bool, int) Told(PlannedSession session) =>
        (session.Uid, session.StartsAt, session.Minutes, session.Title, string.Join(' ', session.Why), session.InsidePractice, session.Steps.Count);

    public sealed class Pass
    {
        private static readonly Gen<object[]?> Case =
            from request in Any.Request
            from number in Gen.Int[0, 419]
            from closed in Gen.Int[0, 30]
            from dice in Gen.Int[0, 9_999].Array[8]
            select Planned(request, number, closed, dice);

        public IReadOnlyDictionary<string, string> Failures { get; } = Cases.Failures(typeof(AnyReplanTests), Case);

        private static object[]? Planned(PlanRequest request, int number, int closed, int[] dice)
        {
            if (AnnualPlanner.Plan(request) is not Result<SquadPlan>.Ok(var plan))
            {
                return null;
            }

            var day = plan.Cycle.Start.PlusDays(number % plan.Cycle.Length);
            return [request, plan, day, A.Plan(request with { Published = plan, PlanFrom = day, Closed = [new ClosedDays(day, day.PlusDays(closed), "closed")] }), dice];
        }
    }
}
