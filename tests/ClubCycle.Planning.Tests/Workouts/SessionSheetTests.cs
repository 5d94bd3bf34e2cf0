using ClubCycle.Planning.Loads;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Weeks;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Planning.Tests.Workouts;

public sealed class SessionSheetTests
{
    private static readonly string[] Parts = ["warm-up", "main", "core", "cool-down"];
    private static readonly string[] ForChildren = ["movement-games", "tag-and-mirror"];

    [Fact]
    public void Every_sheet_has_warm_up_main_part_and_cool_down_within_its_minutes()
    {
        foreach (var (workout, context, sheet) in SheetGrid.All())
        {
            var parts = sheet.Steps.Select(step => step.Part).Distinct().ToArray();
            SheetGrid.Holds(parts[0] == "warm-up" && parts[^1] == "cool-down" && parts.Contains("main") && parts.All(Parts.Contains), workout, context);
            var minutes = sheet.Steps.Sum(step => step.Minutes);
            SheetGrid.Holds(minutes <= context.Minutes, workout, context, minutes);
            SheetGrid.Holds(sheet.Steps.All(step => step.Minutes >= 1), workout, context);
        }
    }

    [Fact]
    public void What_a_step_asks_for_takes_no_longer_than_its_minutes()
    {
        foreach (var (workout, context, sheet) in SheetGrid.All())
        {
            foreach (var step in sheet.Steps.Where(step => step.Reps is not null))
            {
                SheetGrid.Holds(SecondsOf(step) <= 60 * step.Minutes, workout, context, step);
            }
        }
    }

    [Fact]
    public void A_loading_week_fills_most_of_the_minutes_unless_a_cap_on_jumps_or_sprints_ends_it_early()
    {
        foreach (var (workout, context, sheet) in SheetGrid.All())
        {
            if (context is { Loading: WeekLoading.Loading, WeekInPhase: >= 4, Minutes: >= 30 and <= 45, Phase: PhaseKind.PreSeason })
            {
                var share = sheet.Steps.Sum(step => step.Minutes) / (double)context.Minutes;
                SheetGrid.Holds(share >= (workout.Sprint || workout.Jumps is not JumpClass.None ? 0.5 : 0.75), workout, context, share);
            }
        }
    }

    /// <summary>Steib et al. 2017: neuromuscular warm-ups of 10 to 15 minutes.</summary>
    [Fact]
    public void Sessions_of_half_an_hour_or_more_start_with_ten_to_fifteen_minutes_of_control_and_movement()
    {
        foreach (var (workout, context, sheet) in SheetGrid.All())
        {
            var warmUp = sheet.Steps.Where(step => step.Part == "warm-up").ToArray();
            if (context.Minutes >= 30)
            {
                Assert.InRange(warmUp.Sum(step => step.Minutes!.Value), 10, 15);
            }

            SheetGrid.Holds(
                ForChildren.Contains(workout.Name) || warmUp.Any(step => Uses(step).Contains(ExerciseUse.WarmUpControl)),
                workout, context);
        }
    }

    /// <summary>Haff and Triplett 2016 (order of lifts from memory); Schumann et al. 2022.</summary>
    [Fact]
    public void Fast_work_comes_before_strength_strength_before_endurance_and_steady_running_last()
    {
        foreach (var (workout, context, sheet) in SheetGrid.All())
        {
            var ranks = sheet.Steps.Where(step => step.Part is "main" or "core").Select(Rank).ToArray();
            SheetGrid.Holds(ranks.SequenceEqual(ranks.Order()), workout, context, sheet);
        }
    }

    [Fact]
    public void Workouts_with_core_strength_hold_trunk_exercises()
    {
        foreach (var (workout, context, sheet) in SheetGrid.All())
        {
            var hasCore = sheet.Steps.Any(step => step.Part == "core");
            SheetGrid.Holds(hasCore == (workout.Qualities.Contains(Quality.CoreStrength) && context.Minutes >= 10), workout, context);
        }
    }

    [Fact]
    public void Two_sheets_of_the_same_workout_in_a_row_differ()
    {
        foreach (var (workout, context, sheet) in SheetGrid.All())
        {
            var next = SessionSheets.For(workout, context with { Turn = context.Turn + 1 });
            SheetGrid.Holds(
                !sheet.Steps.Where(step => step.Part is "main" or "core").SequenceEqual(next.Steps.Where(step => step.Part is "main" or "core")),
                workout, context);
        }
    }

    [Fact]
    public void The_same_context_gives_the_same_sheet()
    {
        foreach (var (workout, context, sheet) in SheetGrid.All("lift-and-jump", "core-and-circuit", "sprint-intervals"))
        {
            var again = SessionSheets.For(workout, context with { });
            Assert.Equal(sheet.Steps, again.Steps);
            Assert.Equal(sheet.Cautions, again.Cautions);
        }
    }

    [Fact]
    public void No_exercise_is_younger_than_it_may_be_and_none_comes_twice()
    {
        foreach (var (workout, context, sheet) in SheetGrid.All())
        {
            Assert.All(sheet.Steps, step => Assert.True(ExerciseLibrary.Find(step.Name)!.YoungestAge <= context.AgeGroup.YoungestAge, step.Name));
            SheetGrid.Holds(sheet.Steps.Select(step => step.Name).Distinct().Count() == sheet.Steps.Count, workout, context, sheet);
        }
    }

    [Fact]
    public void Children_see_no_numbers_but_the_minutes_of_a_game()
    {
        foreach (var sheet in SheetGrid.All(ForChildren).Select(sample => sample.Sheet)
            .Concat(AgeGroup.All.Where(group => group.YoungestAge < 9).SelectMany(SheetsWithoutWorkout)))
        {
            Assert.All(sheet.Steps, step =>
            {
                Assert.Equal(new Step(step.Part, step.Name, step.Note, Minutes: step.Minutes), step);
                Assert.DoesNotContain(step.Note, char.IsDigit);
            });
        }
    }

    [Fact]
    public void Each_sheet_has_two_to_four_cautions_that_defer_to_local_rules_and_licensed_professionals()
    {
        foreach (var sheet in SheetGrid.All().Select(sample => sample.Sheet).Concat(AgeGroup.All.SelectMany(SheetsWithoutWorkout)))
        {
            Assert.InRange(sheet.Cautions.Count, 2, 4);
            Assert.All(sheet.Cautions, caution => Assert.EndsWith("Local rules and licensed professionals come first.", caution, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Masters_are_asked_about_their_health_first() =>
        Assert.All(
            WorkoutCatalogue.All.Where(workout => workout.AllowedFor(AgeGroup.Masters)),
            workout => Assert.StartsWith("Health questions", SessionSheets.For(workout, Senior with { AgeGroup = AgeGroup.Masters }).Cautions[0], StringComparison.Ordinal));

    [Fact]
    public void Practices_matches_and_active_recovery_have_something_to_follow()
    {
        foreach (var group in AgeGroup.All)
        {
            Assert.Equal(["warm-up", "main", "cool-down"], SessionSheets.ForPractice(group).Steps.Select(step => step.Part).Distinct());
            Assert.Equal(["warm-up", "main", "cool-down"], SessionSheets.ForMatch(group).Steps.Select(step => step.Part).Distinct());
            Assert.Equal(LoadTable.ActiveRecoveryMinutes, SessionSheets.ForActiveRecovery(group, 0).Steps.Sum(step => step.Minutes));
        }
    }

    [Fact]
    public void Active_recovery_suggests_something_else_each_turn()
    {
        var choices = ExerciseLibrary.For(ExerciseUse.ActiveRecovery, AgeGroup.Senior, TrainingAge.New).Count;
        var suggested = Enumerable.Range(0, choices + 1).Select(turn => SessionSheets.ForActiveRecovery(AgeGroup.Senior, turn).Steps[0].Name).ToArray();

        Assert.Equal(choices, suggested.Distinct().Count());
        Assert.Equal(suggested[0], suggested[choices]);
    }

    [Fact]
    public void A_workout_is_refused_for_an_age_group_that_may_not_have_it() =>
        Assert.Throws<ArgumentException>(() => SessionSheets.For(WorkoutCatalogue.Find("heavy-lift")!, Senior with { AgeGroup = AgeGroup.Youth(14) }));

    [Fact]
    public void A_workout_outside_the_catalogue_is_refused() =>
        Assert.Throws<ArgumentException>(() => SessionSheets.For(new Workout("own-idea", "Own idea", [], Hardness.Easy, 3), Senior));

    [Fact]
    public void A_session_too_short_for_a_warm_up_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => SessionSheets.For(WorkoutCatalogue.Find("easy-run")!, Senior with { Minutes = 4 }));

    private static DoseContext Senior => new(AgeGroup.Senior, TrainingAge.Some, PhaseKind.Mixed, 2, WeekLoading.Loading, 45, 0);

    private static SessionSheet[] SheetsWithoutWorkout(AgeGroup group) =>
        [SessionSheets.ForPractice(group), SessionSheets.ForMatch(group), .. Enumerable.Range(0, 7).Select(turn => SessionSheets.ForActiveRecovery(group, turn))];

    private static IReadOnlyList<ExerciseUse> Uses(Step step) => ExerciseLibrary.Find(step.Name)!.Uses;

    /// <summary>Time without the rest after the last effort, at quick but honest speeds.</summary>
    private static double SecondsOf(Step step)
    {
        var exercise = ExerciseLibrary.Find(step.Name)!;
        var rep = step.Seconds ?? (step.Metres is { } metres ? metres / 5.0 : step.FootContacts is not null ? 1 : 2);
        var efforts = (step.Sets ?? 1) * step.Reps!.Value * (exercise.BothSides ? 2 : 1);
        var rests = (step.Sets ?? step.Reps!.Value) - 1;
        return (efforts * rep) + (rests * (step.RestSeconds ?? 0));
    }

    private static int Rank(Step step)
    {
        var uses = Uses(step);
        return uses[0] switch
        {
            ExerciseUse.EasyRun or ExerciseUse.EasyRunNew => 4,
            _ when step.Part == "core" => 3,
            ExerciseUse.HeavySquat or ExerciseUse.HeavyHinge or ExerciseUse.HeavyPush or ExerciseUse.HeavyPull => 2,
            >= ExerciseUse.TechniqueSquat and <= ExerciseUse.BodyPull => 3,
            >= ExerciseUse.CircuitLegs and <= ExerciseUse.CircuitWhole => 3,
            _ => 1,
        };
    }
}
