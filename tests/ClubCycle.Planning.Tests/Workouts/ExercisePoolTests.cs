using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Weeks;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Planning.Tests.Workouts;

/// <summary>Who may do what, and whether everything in the library is put to use.</summary>
public sealed class ExercisePoolTests
{
    private static readonly ExerciseUse[] ForEverybody = [ExerciseUse.ChildWarmUp, ExerciseUse.ChildCoolDown, ExerciseUse.MovementGame, ExerciseUse.TagGame, ExerciseUse.ActiveRecovery];

    /// <summary>The places that a workout fills.</summary>
    private static readonly Dictionary<string, ExerciseUse[]> Filled = new(StringComparer.Ordinal)
    {
        ["easy-run"] = [ExerciseUse.EasyRun, ExerciseUse.EasyRunNew, ExerciseUse.PrepareRun],
        ["strides"] = [ExerciseUse.Stride, ExerciseUse.PrepareSprint],
        ["sprint-intervals"] = [ExerciseUse.Acceleration],
        ["hill-sprints"] = [ExerciseUse.HillSprint],
        ["reactive-agility"] =
        [
            ExerciseUse.AgilityPlanned, ExerciseUse.AgilityCued, ExerciseUse.SmallGame, ExerciseUse.PrepareAgility,
            ExerciseUse.WarmUpRaise, ExerciseUse.WarmUpMobilise, ExerciseUse.WarmUpControl, ExerciseUse.CoolDownEasy, ExerciseUse.CoolDownStretch,
        ],
        ["low-jumps"] = [ExerciseUse.JumpLow, ExerciseUse.PrepareJump, ExerciseUse.CoreFront, ExerciseUse.CoreSide, ExerciseUse.CoreBack, ExerciseUse.CoreRotate],
        ["body-weight"] = [ExerciseUse.BodyLegs, ExerciseUse.BodyHinge, ExerciseUse.BodyPush, ExerciseUse.BodyPull],
        ["technique-lifting"] = [ExerciseUse.TechniqueSquat, ExerciseUse.TechniqueHinge, ExerciseUse.TechniquePush, ExerciseUse.TechniquePull, ExerciseUse.PrepareLift],
        ["strength-circuit"] = [ExerciseUse.CircuitLegs, ExerciseUse.CircuitHinge, ExerciseUse.CircuitPush, ExerciseUse.CircuitPull, ExerciseUse.CircuitWhole],
        ["heavy-lift"] = [ExerciseUse.HeavySquat, ExerciseUse.HeavyHinge, ExerciseUse.HeavyPush, ExerciseUse.HeavyPull],
        ["movement-games"] = ForEverybody,
    };

    [Fact]
    public void Every_place_that_a_workout_fills_offers_a_choice_to_everybody_who_may_have_it()
    {
        foreach (var (workout, uses) in Filled)
        {
            foreach (var (ageGroup, trainingAge) in Everybody().Where(who => WorkoutCatalogue.Find(workout)!.AllowedFor(who.AgeGroup)))
            {
                Assert.All(uses, use => Assert.True(ExerciseLibrary.For(use, ageGroup, trainingAge).Count >= 2, $"{use}, {ageGroup}, {trainingAge}"));
            }
        }
    }

    /// <summary>A session holds four different jumps.</summary>
    [Fact]
    public void There_are_more_jumps_than_a_session_takes()
    {
        foreach (var (ageGroup, trainingAge) in Everybody().Where(who => who.AgeGroup.YoungestAge >= 9))
        {
            Assert.True(ExerciseLibrary.For(ExerciseUse.JumpLow, ageGroup, trainingAge).Count > 4);
            Assert.True(ageGroup.YoungestAge < 15 || ExerciseLibrary.For(ExerciseUse.JumpMedium, ageGroup, trainingAge).Count > 4);
        }
    }

    [Fact]
    public void Top_speed_waits_for_some_training_and_fast_strength_for_more()
    {
        Assert.Empty(ExerciseLibrary.For(ExerciseUse.FlyingSprint, AgeGroup.Senior, TrainingAge.New));
        Assert.NotEmpty(ExerciseLibrary.For(ExerciseUse.FlyingSprint, AgeGroup.Senior, TrainingAge.Some));
        Assert.Empty(ExerciseLibrary.For(ExerciseUse.Explosive, AgeGroup.Senior, TrainingAge.Some));
        Assert.NotEmpty(ExerciseLibrary.For(ExerciseUse.Explosive, AgeGroup.Senior, TrainingAge.Trained));
    }

    [Fact]
    public void A_pool_holds_what_age_and_training_allow_and_nothing_else()
    {
        foreach (var (ageGroup, trainingAge) in Everybody())
        {
            foreach (var use in Enum.GetValues<ExerciseUse>())
            {
                Assert.Equal(
                    ExerciseLibrary.All.Where(e => e.Uses.Contains(use) && e.YoungestAge <= ageGroup.YoungestAge && e.YoungestTrainingAge <= trainingAge),
                    ExerciseLibrary.For(use, ageGroup, trainingAge));
            }
        }
    }

    [Fact]
    public void Pools_are_put_together_once() =>
        Assert.Same(ExerciseLibrary.PoolsOf(AgeGroup.Senior, TrainingAge.Some), ExerciseLibrary.PoolsOf(AgeGroup.Senior, TrainingAge.Some));

    [Fact]
    public void No_sheet_holds_an_exercise_that_asks_for_more_training_than_the_players_have()
    {
        foreach (var (workout, context, sheet) in SheetGrid.All())
        {
            Assert.All(sheet.Steps, step => SheetGrid.Holds(ExerciseLibrary.Find(step.Name)!.YoungestTrainingAge <= context.TrainingAge, workout, context, step));
        }
    }

    /// <summary>An entry that never comes up is of no use, however good it reads.</summary>
    [Fact]
    public void Every_exercise_comes_up_in_some_session()
    {
        var turns = Enumerable.Range(0, 20).ToArray();
        var sheets =
            from workout in WorkoutCatalogue.All
            from who in Everybody()
            where workout.AllowedFor(who.AgeGroup)
            from week in new[] { 1, 9 }
            from turn in turns
            select SessionSheets.For(workout, new DoseContext(who.AgeGroup, who.TrainingAge, PhaseKind.PreSeason, week, WeekLoading.Loading, 90, turn));
        var others =
            from ageGroup in AgeGroup.All
            from turn in turns
            from sheet in new[] { SessionSheets.ForPractice(ageGroup), SessionSheets.ForMatch(ageGroup), SessionSheets.ForActiveRecovery(ageGroup, turn) }
            select sheet;
        var seen = sheets.Concat(others).SelectMany(sheet => sheet.Steps).Select(step => step.Name).ToHashSet();

        Assert.Empty(ExerciseLibrary.All.Select(exercise => exercise.Name).Except(seen));
    }

    private static IEnumerable<(AgeGroup AgeGroup, TrainingAge TrainingAge)> Everybody() =>
        from ageGroup in AgeGroup.All
        from trainingAge in Enum.GetValues<TrainingAge>()
        select (ageGroup, trainingAge);
}
