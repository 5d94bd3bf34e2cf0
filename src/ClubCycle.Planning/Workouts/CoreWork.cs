using static ClubCycle.Planning.Workouts.ExerciseUse;

namespace ClubCycle.Planning.Workouts;

/// <summary>The trunk: short repeated holds and slow movements, two sets, a few more repetitions from week to week (doses editorial).</summary>
internal static class CoreWork
{
    private static readonly ExerciseUse[] Directions = [CoreFront, CoreSide, CoreBack, CoreRotate];

    public static List<Step> Of(DoseContext context, Picker picker, int budget)
    {
        if (budget == 0)
        {
            return [];
        }

        var uses = new ExerciseUse[Directions.Length];
        for (var i = 0; i < uses.Length; i++)
        {
            uses[i] = Directions[(context.Turn + i) % Directions.Length];
        }

        SetDose fullest = new(2, 6, 30, 4, Effort.Trunk);
        var loading = fullest with { Reps = Math.Min(fullest.Reps, 4 + (context.Level() / 2)) };
        var dose = context.StepsBack() ? loading with { Reps = 4 } : loading;
        return SetWork.Of(picker, uses, 6, new(fullest, loading, dose, context.StepsBack()), budget);
    }
}
