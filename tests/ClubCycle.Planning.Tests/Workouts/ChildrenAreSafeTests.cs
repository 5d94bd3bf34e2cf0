using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Templates;
using ClubCycle.Planning.Workouts;
using CsCheck;

namespace ClubCycle.Planning.Tests.Workouts;

/// <summary>Whatever a template or a coach asks for: nothing that rules R29 to R34 forbid to minors can come out.</summary>
[Trait(Cases.Trait, Cases.Random)]
public sealed class ChildrenAreSafeTests
{
    private static readonly string[] Forbidden = ["R29", "R32", "R34"];

    private static readonly Gen<string> Workouts = Gen.Int[0, WorkoutCatalogue.All.Count - 1].Select(i => WorkoutCatalogue.All[i].Name);

    /// <summary>The built-in template with other workouts, minutes and loading; workouts that are not for the age make it refused.</summary>
    private static readonly Gen<(PlanRequest Request, string[] Swaps, int[] Weeks)> Case =
        from ages in Gen.Int[0, AgeGroup.All.Count - 1].Select(i => AgeGroup.All[i]).Where(a => a.IsYouth)
        from training in Gen.Int[0, 2].Select(i => (TrainingAge)i)
        from forAge in Gen.Bool
        from workouts in Workouts.Array[60]
        from favourite in Workouts
        from often in Gen.Int[0, 3]
        from minutes in Gen.Int[2, 24].Select(m => m * 5).Array[60]
        from contactDays in Gen.Int[0, 1]
        from unloadEvery in Gen.Int[2, 6]
        from swaps in Workouts.Array[6]
        from weeks in Gen.Int[0, 400].Array[6]
        select (A.Request(squad: A.Squad(ages, training), template: Changed(BuiltInTemplates.For(ages), ages, forAge, [.. workouts.Select((w, i) => i % 3 < often ? favourite : w)], minutes, contactDays, unloadEvery)), swaps, weeks);

    [Fact]
    public void No_template_and_no_edit_gives_minors_what_is_forbidden_to_them()
    {
        var (planned, refused) = (0, 0);
        Case.Sample(
            one =>
            {
                if (AnnualPlanner.Plan(one.Request) is not Result<SquadPlan>.Ok(var plan))
                {
                    Interlocked.Increment(ref refused);
                    return;
                }

                Interlocked.Increment(ref planned);
                IsSafe(one.Request.Squad.AgeGroup, plan);
                var sessions = plan.Sessions.Where(s => s is { Kind: SessionKind.Session }).ToList();
                if (sessions.Count > 0)
                {
                    List<Pin> pins = [.. one.Swaps.Zip(one.Weeks, (workout, i) => (workout, Session: sessions[i % sessions.Count])).DistinctBy(p => (Week(plan, p.Session), p.Session.Slot))
                        .Select(p => new Pin(Week(plan, p.Session), p.Session.Slot, null, null, Workout: p.workout))];
                    var allowed = pins.Where(p => WorkoutCatalogue.Find(p.Workout!)!.AllowedFor(one.Request.Squad.AgeGroup)).ToList();
                    Assert.Equal(allowed.Count == pins.Count, AnnualPlanner.Plan(one.Request with { Pins = pins }) is Result<SquadPlan>.Ok);
                    IsSafe(one.Request.Squad.AgeGroup, A.Plan(one.Request with { Published = plan, Pins = allowed }));
                    IsSafe(one.Request.Squad.AgeGroup, A.Plan(one.Request with { Published = plan, Pins = allowed, PlanFrom = sessions[one.Weeks[0] % sessions.Count].Date }));
                }
            },
            iter: Math.Max(200, Cases.Count / 10));

        // Both ways out are taken, so that neither half of the test is idle.
        Assert.InRange(planned, 10, int.MaxValue);
        Assert.InRange(refused, 10, int.MaxValue);
    }

    /// <summary>Every exercise on its own: none that could be forbidden is open to the ages that it is forbidden to.</summary>
    [Fact]
    public void No_pool_of_the_library_holds_what_an_age_may_not_do() => Assert.All(
        from ages in AgeGroup.All
        where ages.IsYouth
        from training in Enum.GetValues<TrainingAge>()
        from use in Enum.GetValues<ExerciseUse>()
        from exercise in ExerciseLibrary.For(use, ages, training)
        select (ages, exercise),
        pair =>
        {
            Assert.True(pair.exercise.YoungestAge <= pair.ages.YoungestAge);
            Assert.NotEqual(JumpClass.High, pair.exercise.Jumps);
            Assert.False(pair.exercise.Jumps == JumpClass.Medium && pair.ages.YoungestAge < 15);
            Assert.False(pair.exercise.Loaded && pair.ages.YoungestAge < 9);
        });

    private static void IsSafe(AgeGroup ages, SquadPlan plan)
    {
        Assert.Empty(plan.Findings.Where(f => Forbidden.Contains(f.Rule)).Select(f => $"{f.Rule} {f.Week}: {f.Message}"));
        foreach (var step in plan.Sessions.SelectMany(s => s.Steps))
        {
            Assert.True((step.PercentOfMaximum ?? 0) <= RepetitionTable.Ceiling(ages), $"{step.Name} at {step.PercentOfMaximum} % for {ages}");
            Assert.NotEqual(JumpClass.High, ExerciseLibrary.Find(step.Name)?.Jumps);
            Assert.True((step.FootContacts ?? 0) <= (ages.YoungestAge < 15 ? 100 : 140));
        }
    }

    private static NodaTime.LocalDate Week(SquadPlan plan, PlannedSession session) => plan.Weeks.Last(w => w.First <= session.Date).First;

    private static Template Changed(Template template, AgeGroup ages, bool forAge, string[] workouts, int[] minutes, int contactDays, int unloadEvery)
    {
        var allowed = WorkoutCatalogue.All.Where(w => w.AllowedFor(ages)).Select(w => w.Name).ToList();
        var next = 0;
        string Workout()
        {
            var name = workouts[next % workouts.Length];
            return forAge && !allowed.Contains(name) ? allowed[next % allowed.Count] : name;
        }

        Slot Of(Slot slot)
        {
            next++;
            return slot with { Workouts = [Workout()], Minutes = minutes[next % minutes.Length] };
        }

        return template with
        {
            Mixes = [.. template.Mixes.Select(m => m with { SessionsPerContactDay = contactDays, Slots = [.. m.Slots.Select(Of), .. Enumerable.Range(1, 3).Select(i => Of(new Slot($"more.{i}", ["-"], 20)))] })],
            Loading = template.Loading with { UnloadEvery = unloadEvery },
        };
    }
}
