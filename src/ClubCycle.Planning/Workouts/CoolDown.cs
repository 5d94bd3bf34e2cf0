namespace ClubCycle.Planning.Workouts;

/// <summary>Easy movement, then calm mobility when there is time.</summary>
internal static class CoolDown
{
    public static List<Step> Of(Picker picker, int minutes, bool children)
    {
        if (children)
        {
            return [Take(picker, ExerciseUse.ChildCoolDown, minutes)];
        }

        return minutes < 3
            ? [Take(picker, ExerciseUse.CoolDownEasy, minutes)]
            : [Take(picker, ExerciseUse.CoolDownEasy, minutes / 2), Take(picker, ExerciseUse.CoolDownStretch, minutes - (minutes / 2))];
    }

    private static Step Take(Picker picker, ExerciseUse use, int minutes)
    {
        var exercise = picker.Take(use);
        return new(exercise.Part, exercise.Name, exercise.Note(Effort.Unsaid), Minutes: minutes);
    }
}
