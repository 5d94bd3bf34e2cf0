using ClubCycle.Planning.Squads;

namespace ClubCycle.Planning.Workouts;

/// <summary>Running below the talk threshold.</summary>
internal static class EasyRunning
{
    /// <summary>Longest easy run of minors, in minutes (editorial).</summary>
    public const int LongestForYouth = 25;

    /// <summary>From this age on a heart rate may be named; younger players go by talking.</summary>
    private const int YoungestWithBeats = 12;

    public static List<Step> Run(DoseContext context, Picker picker, int budget)
    {
        var use = context.TrainingAge is TrainingAge.New && context.Turn % 2 == 0 ? ExerciseUse.EasyRunNew : ExerciseUse.EasyRun;
        var exercise = picker.Take(use);
        var minutes = context.AgeGroup.IsYouth ? Math.Min(budget, LongestForYouth) : budget;
        return [new(exercise.Part, exercise.Name, exercise.Note(EffortFor(context.AgeGroup)), Minutes: minutes)];
    }

    private static Effort EffortFor(AgeGroup ageGroup) => ageGroup switch
    {
        { IsMasters: true } => Effort.Talk,
        { IsYouth: false } => Effort.TalkOrBeatsOrSpeed,
        { YoungestAge: >= YoungestWithBeats } => Effort.TalkOrBeats,
        _ => Effort.Talk,
    };
}
