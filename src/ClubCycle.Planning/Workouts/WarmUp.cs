namespace ClubCycle.Planning.Workouts;

/// <summary>Raise, mobilise, control, prepare. Balance and landing control make it a neuromuscular warm-up (Steib et al. 2017).</summary>
internal static class WarmUp
{
    public static List<Step> Of(Picker picker, ExerciseUse prepare, int minutes)
    {
        if (prepare is ExerciseUse.ChildWarmUp)
        {
            return [Take(picker, ExerciseUse.ChildWarmUp, minutes)];
        }

        var raise = Math.Max(1, (minutes + 2) / 4);
        var control = Math.Max(1, minutes / 3);
        var mobilise = minutes >= 8 ? minutes / 5 : 0;
        var left = minutes - raise - control - mobilise;
        List<Step> steps = [Take(picker, ExerciseUse.WarmUpRaise, raise)];
        if (mobilise > 0)
        {
            steps.Add(Take(picker, ExerciseUse.WarmUpMobilise, mobilise));
        }

        steps.Add(Take(picker, ExerciseUse.WarmUpControl, control));
        if (left > 0)
        {
            steps.Add(Take(picker, prepare, left));
        }

        return steps;
    }

    private static Step Take(Picker picker, ExerciseUse use, int minutes)
    {
        var exercise = picker.Take(use);
        return new(exercise.Part, exercise.Name, exercise.Note(Effort.Unsaid), Minutes: minutes);
    }
}
