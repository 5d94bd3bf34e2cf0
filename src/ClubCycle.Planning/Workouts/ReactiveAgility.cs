namespace ClubCycle.Planning.Workouts;

/// <summary>Reactive agility: moves that answer an unpredictable cue.</summary>
/// <remarks>
/// Agility needs a stimulus (Sheppard and Young 2006); 15 minutes once or twice a week worked in under-18s (Young and Rogers 2014). Bouts of at most 6 s with
/// 12 times the rest: Haff and Triplett 2016, table 3.6. At most a quarter of the minutes is planned change of direction.
/// </remarks>
internal static class ReactiveAgility
{
    private const int WorkSeconds = 5;
    private const int RestSeconds = 60;

    /// <summary>Minutes at full attention; more only dulls it (editorial).</summary>
    private const int Longest = 24;

    public static List<Step> Drills(DoseContext context, Picker picker, int budget)
    {
        budget = Math.Min(budget, Longest);
        List<Step> steps = [];
        if (budget >= 14)
        {
            steps.Add(Drill(picker.Take(ExerciseUse.AgilityPlanned), Effort.Unsaid, 3));
        }

        var fullest = DrillMinutes(6);
        var drills = Math.Clamp((budget - steps.Minutes()) / fullest, 1, 3);
        var reps = context.Scaled(Math.Min(6, 4 + (context.Level() / 2)));
        while (reps > 1 && steps.Minutes() + (drills * DrillMinutes(reps)) > budget)
        {
            reps--;
        }

        for (var i = 0; i < drills; i++)
        {
            steps.Add(Drill(picker.Take(ExerciseUse.AgilityCued), Effort.React, reps));
        }

        var left = Math.Min(budget - steps.Minutes(), context.Scaled(8));
        if (left >= 4)
        {
            var game = picker.Take(ExerciseUse.SmallGame);
            steps.Add(new(game.Part, game.Name, game.Note(Effort.Unsaid), Minutes: left));
        }

        return steps;
    }

    private static Step Drill(Exercise exercise, Effort effort, int reps) =>
        new(exercise.Part, exercise.Name, exercise.Note(effort), Reps: reps, Seconds: WorkSeconds, Minutes: DrillMinutes(reps), RestSeconds: RestSeconds);

    private static int DrillMinutes(int reps) => Clock.Minutes((reps * WorkSeconds) + ((reps - 1) * RestSeconds));
}
