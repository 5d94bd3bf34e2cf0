using ClubCycle.Planning;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Web.Features.Exercises;

/// <summary>Words about exercises.</summary>
public static class ExerciseText
{
    public static string Address(string exercise) => $"/exercises/{Uri.EscapeDataString(exercise)}";

    public static string Equipment(Exercise exercise) => exercise.Equipment.Count == 0 ? Say("no equipment") : string.Join(", ", exercise.Equipment.Select(Words));

    public static string Settings(Exercise exercise) => string.Join(", ", exercise.Settings.Select(Words));

    /// <summary>Whom it is for: <c>from 15 years, with some training</c>.</summary>
    public static string For(Exercise exercise) => exercise.YoungestTrainingAge switch
    {
        TrainingAge.New => Say($"from {exercise.YoungestAge} years"),
        TrainingAge.Some => Say($"from {exercise.YoungestAge} years, with a year of training or more"),
        _ => Say($"from {exercise.YoungestAge} years, with more than three years of training"),
    };

    public static string Words<T>(T value)
        where T : struct, Enum => SayPlan(FileName.Of(value).Replace('-', ' '));
}
