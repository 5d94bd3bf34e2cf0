using ClubCycle.Planning.Squads;

namespace ClubCycle.Planning.Workouts;

/// <summary>Sprints and strides, dosed by metres and rest.</summary>
/// <remarks>
/// Acceleration 100–300 m, maximal velocity 50–150 m a session: Haugen et al. 2019, table 2; club players stay in the lower part and under-16s at half (editorial).
/// Rest of 12 times the work or more for 5–10 s: Haff and Triplett 2016, table 3.6; here never under 120 s.
/// Hills of 5–7 %: Kavaliauskas et al. 2017, a small evidence base.
/// </remarks>
internal static class Sprinting
{
    private static readonly (int Short, int Long)[] Flat = [(20, 30), (10, 30), (20, 40), (15, 25)];
    private static readonly (int Short, int Long)[] FlatYoung = [(10, 20), (15, 25), (10, 30), (15, 20)];
    private static readonly (int Short, int Long)[] Hill = [(20, 30), (25, 40), (20, 40), (15, 30)];

    public static List<Step> Intervals(DoseContext context, Picker picker, int budget)
    {
        var distances = IsYoung(context) ? FlatYoung : Flat;
        var metres = Metres(context);
        var flying = FlyingReps(context, budget);
        var kept = flying is 0 ? metres : metres - (flying * FlyingMetres);
        var flyingMinutes = flying is 0 ? 0 : Clock.Minutes(flying * (5 + FlyingRest));
        var steps = Repeats(context, picker, ExerciseUse.Acceleration, distances[context.Turn % distances.Length], kept, budget - flyingMinutes);
        if (flying > 0)
        {
            var exercise = picker.Take(ExerciseUse.FlyingSprint);
            steps.Add(new(exercise.Part, exercise.Name, exercise.Note(Effort.TopSpeed), Reps: flying, Minutes: flyingMinutes, Metres: FlyingMetres, RestSeconds: FlyingRest));
        }

        return steps;
    }

    public static List<Step> Hills(DoseContext context, Picker picker, int budget) =>
        Repeats(context, picker, ExerciseUse.HillSprint, Hill[context.Turn % Hill.Length], (int)(0.8 * Metres(context)), budget);

    /// <summary>A few strides, then an easy jog for what is left.</summary>
    public static List<Step> Strides(DoseContext context, Picker picker, int budget)
    {
        var exercise = picker.Take(ExerciseUse.Stride);
        var metres = context.AgeGroup.YoungestAge < 16 ? 50 : 70;
        var rest = 75;
        var each = rest + (metres / 5);
        var reps = Math.Clamp(budget * 60 / each, 1, context.Scaled(Math.Min(8, 4 + (context.Level() / 2))));
        var minutes = Clock.Minutes(reps * each);
        List<Step> steps = [new(exercise.Part, exercise.Name, exercise.Note(Effort.Smooth), Reps: reps, Minutes: Math.Min(minutes, budget), Metres: metres, RestSeconds: rest)];
        if (budget - minutes >= 5)
        {
            steps.AddRange(EasyRunning.Run(context, picker, budget - minutes));
        }

        return steps;
    }

    private const int FlyingMetres = 20;
    private const int FlyingRest = 240;

    private static bool IsYoung(DoseContext context) => context.AgeGroup.YoungestAge < 16;

    private static int FlyingReps(DoseContext context, int budget) =>
        IsYoung(context) || context.AgeGroup.IsMasters || context.TrainingAge is TrainingAge.New || context.Level() < 2 || budget < 22
            ? 0
            : context.Scaled(context.Level() < 5 ? 2 : 3);

    /// <summary>Metres at full effort in one session, flying sprints included.</summary>
    private static int Metres(DoseContext context)
    {
        var most = (IsYoung(context) ? 150 : 300) * (context.AgeGroup.IsMasters ? 0.6 : 1);
        var own = most * context.TrainingAge switch { TrainingAge.New => 0.6, TrainingAge.Some => 0.8, _ => 1 };
        return (int)(Math.Min(own, own * 0.6 * Math.Pow(1.07, context.Level())) * context.Volume());
    }

    private static List<Step> Repeats(DoseContext context, Picker picker, ExerciseUse use, (int Short, int Long) distances, int metres, int budget)
    {
        var longer = context.AgeGroup.IsMasters ? 30 : 0;
        (int Metres, int Pause) first = (distances.Short, 120 + longer);
        (int Metres, int Pause) second = (distances.Long, (distances.Long > 30 ? 180 : 150) + longer);
        var firstReps = Math.Max(1, (int)(metres * 0.4 / first.Metres));
        var secondReps = Math.Max(0, (metres - (firstReps * first.Metres)) / second.Metres);
        while (MinutesOf(first, firstReps) + MinutesOf(second, secondReps) > budget && firstReps + secondReps > 1)
        {
            _ = firstReps > secondReps ? firstReps-- : secondReps--;
        }

        var effort = context.AgeGroup.IsMasters ? Effort.FastMasters : Effort.Fast;
        List<Step> steps = [];
        foreach (var ((distance, pause), reps) in new[] { (first, firstReps), (second, secondReps) })
        {
            if (reps > 0)
            {
                var exercise = picker.Take(use);
                steps.Add(new(exercise.Part, exercise.Name, exercise.Note(effort), Reps: reps, Minutes: Math.Min(budget, MinutesOf((distance, pause), reps)), Metres: distance, RestSeconds: pause));
            }
        }

        return steps;
    }

    /// <summary>At a slow four metres a second, so that the plan is never too short. No rest is counted after the last.</summary>
    private static int MinutesOf((int Metres, int Pause) run, int reps) => reps is 0 ? 0 : Clock.Minutes((reps * run.Metres / 4) + ((reps - 1) * run.Pause) + 30);
}
