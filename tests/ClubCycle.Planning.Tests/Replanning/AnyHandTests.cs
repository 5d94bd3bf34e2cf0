using ClubCycle.Planning.Phases;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Workouts;
using CsCheck;
using NodaTime;

namespace ClubCycle.Planning.Tests.Replanning;

/// <summary>What holds for every plan whatever coaches add, set and lengthen.</summary>
[Trait(Cases.Trait, Cases.Random)]
public class AnyHandTests(AnyHandTests.Pass pass) : IClassFixture<AnyHandTests.Pass>
{
    public static TheoryData<string> Invariants => [.. Cases.Of(typeof(AnyHandTests))];

    [Theory]
    [MemberData(nameof(Invariants))]
    public void Holds_for_every_plan(string invariant) => Assert.True(!pass.Failures.TryGetValue(invariant, out var failure), failure);

    private static void Phases_still_tile_the_cycle(PlanRequest request, SquadPlan _, SquadPlan plan)
    {
        var next = request.Season.Cycle.Start;
        foreach (var phase in plan.Phases)
        {
            Assert.Equal(next, phase.First);
            next = phase.Last.PlusDays(1);
        }

        Assert.Equal(request.Season.Cycle.End.PlusDays(1), next);
        Assert.Equal(plan.Weeks.Count, plan.Phases.Sum(p => p.Weeks));
    }

    private static void Every_added_session_stands_where_the_coach_put_it_or_is_reported(PlanRequest request, SquadPlan _, SquadPlan plan)
    {
        foreach (var pin in request.Pins!.Where(p => p.IsAdded))
        {
            var uid = PlannedSession.UidOf(request.Squad.Key, pin.WeekFirst, pin.Slot);
            if (plan.Sessions.SingleOrDefault(s => s.Uid == uid) is { } session)
            {
                Assert.Equal((pin.Date, pin.Minutes, pin.Workout, pin.Note, true), (session.Date, session.Minutes, session.Workout, session.Note, session.Pinned));
                Assert.True(pin.Start is null || session.InsidePractice || session.Start == pin.Start);
            }
            else
            {
                Assert.Contains(plan.Findings, f => f.Rule == "added-dropped" && f.Facts!.Sessions.Contains(uid));
            }
        }
    }

    private static void Given_minutes_are_kept(PlanRequest request, SquadPlan _, SquadPlan plan) => Assert.All(
        from pin in request.Pins!
        where pin.Minutes is not null
        from session in plan.Sessions
        where session.Slot == pin.Slot && session.Date >= pin.WeekFirst && session.Date <= pin.WeekFirst.PlusDays(6)
        select (pin, session),
        p => Assert.Equal(p.pin.Minutes, p.session.Minutes));

    private static void Young_players_keep_a_day_of_rest_and_jump_no_more_than_they_may(PlanRequest request, SquadPlan before, SquadPlan plan)
    {
        if (request.Squad.AgeGroup.IsYouth)
        {
            string[] kept = ["R01", "R29", "R32", "R34"];
            var known = before.Findings.Select(f => (f.Rule, f.Week)).ToHashSet();
            var worse = string.Join("; ", plan.Findings.Where(f => kept.Contains(f.Rule) && !known.Contains((f.Rule, f.Week))).Select(f => $"{f.Rule} {f.Week}: {f.Message}"));
            Assert.True(worse.Length == 0, worse);
            Assert.All(plan.Sessions.Where(s => s.Workout is not null), s => Assert.True(WorkoutCatalogue.Find(s.Workout!)!.AllowedFor(request.Squad.AgeGroup)));
        }
    }

    private static void Planning_again_changes_nothing(PlanRequest request, SquadPlan _, SquadPlan plan) =>
        Assert.False(A.Plan(request with { Published = plan }).Changes.Any);

    private static void Lengths_hold_or_are_reported(PlanRequest request, SquadPlan _, SquadPlan plan)
    {
        foreach (var gap in request.Lengths!.GroupBy(l => l.Gap).Where(_ => !plan.Findings.Any(f => f.Rule == "lengths-ignored")))
        {
            var chain = request.Template.Chains.First(c => c.Name == gap.First().Chain);
            Assert.All(gap.Where(l => l.Weeks > 0), l => Assert.Contains(plan.Phases, p => p.Chain == chain.Name && p.Kind == chain.Phases[l.Phase].Kind && p.Weeks == l.Weeks));
        }
    }

    private static void Moving_a_boundary_moves_that_boundary_alone(PlanRequest request, SquadPlan _, SquadPlan plan)
    {
        foreach (var boundary in PhaseBoundary.Of(request, plan).Take(2))
        {
            var lengths = PhaseBoundary.Move(request, plan, boundary.Index, boundary.Before.Weeks + 1).OrThrow();
            var moved = A.Plan(request with { Lengths = [.. request.Lengths!.Where(l => l.Gap != boundary.Gap), .. lengths] });
            var by = Math.Min(1, boundary.Most - boundary.Before.Weeks);
            if (!plan.Findings.Any(f => f.Rule == "lengths-ignored"))
            {
                Assert.Equal(plan.Phases.Select((p, i) => p.Weeks + (i == boundary.Index ? by : i == boundary.Index + 1 ? -by : 0)), moved.Phases.Select(p => p.Weeks));
            }
        }
    }

    private static void The_request_reads_back_as_it_was_written(PlanRequest request, SquadPlan _, SquadPlan __)
    {
        var text = PlanFile.WriteRequest(request);
        Assert.Equal(text, PlanFile.WriteRequest(PlanFile.ReadRequest(text).OrThrow()));
    }

    public sealed class Pass
    {
        private static readonly Gen<object[]?> Case =
            from request in Any.Request
            from dice in Gen.Int[0, 9_999].Array[30]
            select Planned(request, dice);

        public IReadOnlyDictionary<string, string> Failures { get; } = Cases.Failures(typeof(AnyHandTests), Case, share: 2);

        private static object[]? Planned(PlanRequest request, int[] dice)
        {
            if (AnnualPlanner.Plan(request) is not Result<SquadPlan>.Ok(var before))
            {
                return null;
            }

            var workouts = WorkoutCatalogue.All.Where(w => w.AllowedFor(request.Squad.AgeGroup)).ToList();
            List<Pin> pins = [];
            for (var i = 0; i < 20; i += 5)
            {
                // Close weeks, so that several fall into one and beside each other.
                var week = before.Weeks[(dice[0] + (dice[i] % 3)) % before.Weeks.Count].First;
                LocalTime? start = dice[i + 3] % 2 == 0 ? new LocalTime(10 + (dice[i + 3] % 9), 0) : null;
                pins.Add(new Pin(week, Pin.AddedSlotOf(i + 1), week.PlusDays(dice[i + 1] % 7), start, Workout: workouts[dice[i + 2] % workouts.Count].Name, Minutes: 10 + (dice[i + 4] % 111), Note: dice[i + 4] % 3 == 0 ? "Two\nlines" : null));
            }

            if (before.Sessions.Where(s => s.Kind == SessionKind.Session).ToList() is { Count: > 0 } sessions)
            {
                var session = sessions[dice[20] % sessions.Count];
                pins.Add(new Pin(before.Weeks.Single(w => w.First <= session.Date && session.Date <= w.Last).First, session.Slot, null, null, Minutes: 10 + (dice[21] % 111)));
            }

            var (withPins, lengths) = (request with { Pins = pins }, new List<PhaseLength>());
            if (PhaseBoundary.Of(request, before) is { Count: > 0 } boundaries)
            {
                var boundary = boundaries[dice[22] % boundaries.Count];
                lengths.AddRange(PhaseBoundary.Move(request, before, boundary.Index, dice[23] % 20).OrThrow());
            }

            if (dice[24] % 4 == 0 && before.Phases.FirstOrDefault(p => p.Chain.Length > 0) is { } phase)
            {
                lengths = [new PhaseLength(0, phase.Chain, 0, dice[25] % 61)];
            }

            var asked = withPins with { Lengths = lengths };
            return [asked, before, A.Plan(asked)];
        }
    }
}
