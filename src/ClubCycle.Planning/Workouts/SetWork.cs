namespace ClubCycle.Planning.Workouts;

/// <summary>Exercises done in sets: lifting, circuits, body weight, trunk.</summary>
internal static class SetWork
{
    /// <summary>As many exercises as fit at the phase's fullest dose, then dosed for this week: so a lighter week is lighter.</summary>
    /// <param name="budget">Minutes, at least 1.</param>
    public static List<Step> Of(Picker picker, IReadOnlyList<ExerciseUse> uses, int most, SetPlan plan, int budget)
    {
        List<Exercise> chosen = [];
        var used = 0;
        for (var i = 0; chosen.Count < most && i < 2 * most; i++)
        {
            if (picker.TryTake(uses[i % uses.Count]) is not { } exercise)
            {
                continue;
            }

            var minutes = plan.Fullest.Minutes(exercise);
            if (used + minutes <= budget)
            {
                chosen.Add(exercise);
                used += minutes;
            }
            else if (chosen.Count == 0)
            {
                return [Shrunk(plan.Today, exercise, budget).Step(exercise)];
            }
        }

        if (plan.Lighter && chosen.Count > 1 && 4 * plan.Today.Volume > 3 * plan.Loading.Volume)
        {
            var keep = Math.Max(1, chosen.Count * 2 / 3);
            chosen.RemoveRange(keep, chosen.Count - keep);
        }

        return [.. chosen.Select(exercise => plan.Today.Step(exercise))];
    }

    private static SetDose Shrunk(SetDose dose, Exercise exercise, int budget)
    {
        while (dose.Minutes(exercise) > budget && dose.Sets > 1)
        {
            dose = dose with { Sets = dose.Sets - 1 };
        }

        while (dose.Minutes(exercise) > budget && dose.Reps > 1)
        {
            dose = dose with { Reps = dose.Reps - 1 };
        }

        return dose;
    }
}
