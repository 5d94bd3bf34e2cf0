using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Workouts;
using Gear = ClubCycle.Planning.Workouts.Equipment;

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

    public static string Words(Gear gear) => gear switch
    {
        Gear.Marks => Say("marks"),
        Gear.Bibs => Say("bibs"),
        Gear.Hoops => Say("hoops"),
        Gear.Goals => Say("goals"),
        Gear.Stick => Say("stick"),
        Gear.Ball => Say("ball"),
        Gear.HeavyBall => Say("heavy ball"),
        Gear.Rope => Say("rope"),
        Gear.Band => Say("band"),
        Gear.Mat => Say("mat"),
        Gear.Towel => Say("towel"),
        Gear.Wall => Say("wall"),
        Gear.Step => Say("step"),
        Gear.Bench => Say("bench"),
        Gear.Box => Say("box"),
        Gear.Barriers => Say("barriers"),
        Gear.DumbBell => Say("dumb bell"),
        Gear.Kettlebell => Say("kettlebell"),
        Gear.Barbell => Say("barbell"),
        Gear.HangingBar => Say("hanging bar"),
        Gear.Bicycle => Say("bicycle"),
        Gear.Pool => Say("pool"),
        Gear.Hill => Say("hill"),
        _ => throw new ArgumentOutOfRangeException(nameof(gear), gear, "Unknown gear"),
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
