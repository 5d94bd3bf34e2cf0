using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Workouts;
using static ClubCycle.Planning.Workouts.Equipment;

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

    public static string Words(Equipment equipment) => equipment switch
    {
        Marks => Say("marks"),
        Bibs => Say("bibs"),
        Hoops => Say("hoops"),
        Goals => Say("goals"),
        Stick => Say("stick"),
        Ball => Say("ball"),
        HeavyBall => Say("heavy ball"),
        Rope => Say("rope"),
        Band => Say("band"),
        Mat => Say("mat"),
        Towel => Say("towel"),
        Wall => Say("wall"),
        Step => Say("step"),
        Bench => Say("bench"),
        Box => Say("box"),
        Barriers => Say("barriers"),
        DumbBell => Say("dumb bell"),
        Kettlebell => Say("kettlebell"),
        Barbell => Say("barbell"),
        HangingBar => Say("hanging bar"),
        Bicycle => Say("bicycle"),
        Pool => Say("pool"),
        Hill => Say("hill"),
        _ => throw new ArgumentOutOfRangeException(nameof(equipment), equipment, "Unknown equipment"),
    };

    public static string Words(Setting setting) => setting switch
    {
        Setting.Pitch => Say("pitch"),
        Setting.Gym => Say("gym"),
        Setting.Hall => Say("hall"),
        Setting.Hill => Say("hill"),
        Setting.Home => Say("home"),
        _ => throw new ArgumentOutOfRangeException(nameof(setting), setting, "Unknown setting"),
    };
}
