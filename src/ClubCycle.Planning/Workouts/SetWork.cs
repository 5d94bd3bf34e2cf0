namespace ClubCycle.Planning.Workouts;

/// <summary>Exercises done in sets: lifting, circuits, body weight, trunk.</summary>
internal static class SetWork
{
    /// <summary>Share of the phase's fullest volume that the weeks before may reach by adding exercises (editorial).</summary>
    private const double BeforeTheFullest = 0.85;

    /// <summary>
    /// As many exercises as fit at the phase's fullest dose; smaller doses leave room for a few more, still under the fullest volume.
    /// A lighter week is lighter in sets and repetitions, or else leaves out exercises.
    /// </summary>
    /// <param name="budget">Minutes, at least 1.</param>
    public static List<Step> Of(Picker picker, IReadOnlyList<ExerciseUse> uses, int most, SetPlan plan, int budget)
    {
        var chosen = Choose(picker, uses, most, plan, budget);
        if (chosen.Count == 0)
        {
            var only = picker.Take(uses[0]);
            return [Shrunk(plan.Today, only, budget).Step(only)];
        }

        if (plan.Lighter && chosen.Count > 1 && 4 * plan.Today.Volume > 3 * plan.Loading.Volume)
        {
            var keep = Math.Max(1, chosen.Count * 2 / 3);
            chosen.RemoveRange(keep, chosen.Count - keep);
        }

        return [.. chosen.Select(plan.Today.Step)];
    }

    private static List<Exercise> Choose(Picker picker, IReadOnlyList<ExerciseUse> uses, int most, SetPlan plan, int budget)
    {
        List<Exercise> chosen = [];
        var (atFullest, minutesAtFullest, minutes) = (0, 0, 0);
        for (var i = 0; chosen.Count < most && i < 2 * most; i++)
        {
            if (picker.TryPeek(uses[i % uses.Count]) is not { } exercise)
            {
                continue;
            }

            var fitsAtFullest = atFullest == chosen.Count && minutesAtFullest + plan.Fullest.Minutes(exercise) <= budget;
            var fits = minutes + plan.Loading.Minutes(exercise) <= budget
                && (chosen.Count + 1) * plan.Loading.Volume <= BeforeTheFullest * atFullest * plan.Fullest.Volume;
            if (fitsAtFullest || fits)
            {
                picker.Take(exercise);
                chosen.Add(exercise);
                minutes += plan.Loading.Minutes(exercise);
                if (fitsAtFullest)
                {
                    atFullest++;
                    minutesAtFullest += plan.Fullest.Minutes(exercise);
                }
            }
        }

        return chosen;
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
