namespace ClubCycle.Planning.Workouts;

/// <summary>Children's games: time only, no targets and no counting.</summary>
internal static class Games
{
    /// <summary>Minutes of one game with its drink break (editorial).</summary>
    private const int Usual = 7;

    public static List<Step> Movement(DoseContext context, Picker picker, int budget) => Play(context, picker, ExerciseUse.MovementGame, budget);

    public static List<Step> Tag(DoseContext context, Picker picker, int budget) => Play(context, picker, ExerciseUse.TagGame, budget);

    private static List<Step> Play(DoseContext context, Picker picker, ExerciseUse use, int budget)
    {
        var count = Math.Clamp((budget + 2) / Usual, 1, ExerciseLibrary.For(use, context.AgeGroup, context.TrainingAge).Count);
        List<Step> steps = [];
        for (var i = 0; i < count; i++)
        {
            var game = picker.Take(use);
            steps.Add(new(game.Part, game.Name, game.Note(Effort.Unsaid), Minutes: (budget / count) + (i < budget % count ? 1 : 0)));
        }

        return steps;
    }
}
