using ClubCycle.Planning.Squads;
using static ClubCycle.Planning.Workouts.ExerciseUse;

namespace ClubCycle.Planning.Workouts;

/// <summary>Main parts with loads or body weight.</summary>
/// <remarks>
/// Windows by goal (strength at most 6 repetitions, rest of 2 min or more; muscular endurance at most 67 %, 12 repetitions or more, 2–3 sets, rest of at most 30 s):
/// Haff and Triplett 2016, ch. 17. Minors: Lloyd et al. 2014 (first months 1–2 × 8–12 at 60 % or less, later 2–4 × 6–12). Steps from week to week are editorial.
/// </remarks>
internal static class Lifting
{
    private static readonly ExerciseUse[] HeavyA = [HeavySquat, HeavyPush, HeavyHinge, HeavyPull];
    private static readonly ExerciseUse[] HeavyB = [HeavyHinge, HeavyPull, HeavySquat, HeavyPush];
    private static readonly ExerciseUse[] Circuit = [CircuitLegs, CircuitPush, CircuitHinge, CircuitPull, CircuitWhole];
    private static readonly ExerciseUse[] Technique = [TechniqueSquat, TechniquePush, TechniqueHinge, TechniquePull];
    private static readonly ExerciseUse[] Body = [BodyLegs, BodyPush, BodyHinge, BodyPull];

    public static List<Step> Heavy(DoseContext context, Picker picker, int budget) => Heavy(context, picker, budget, alternate: true);

    /// <param name="alternate">Trained adults alternate the first lift with a fast exercise.</param>
    public static List<Step> Heavy(DoseContext context, Picker picker, int budget, bool alternate)
    {
        var fullest = HeavyDose(context);
        fullest = fullest with { Sets = Math.Min(fullest.Sets, budget switch { < 14 => 2, < 25 => 3, _ => 5 }) };
        var loading = fullest with { Sets = context.Level() < 2 ? Math.Max(2, fullest.Sets - 1) : fullest.Sets };
        var dose = loading with { Sets = context.Scaled(loading.Sets) };
        var uses = context.Turn % 2 == 0 ? HeavyA : HeavyB;
        List<Step> steps = [];
        if (alternate && context.TrainingAge is TrainingAge.Trained && context.AgeGroup == AgeGroup.Senior && budget >= 18)
        {
            steps.Add(ExplosiveDose(context, dose.Sets).Step(picker.Take(Explosive)));
        }

        steps.AddRange(SetWork.Of(picker, uses, 4, new(fullest, loading, dose, context.StepsBack()), budget - steps.Minutes()));
        return steps;
    }

    public static List<Step> StrengthUpkeep(DoseContext context, Picker picker, int budget)
    {
        // Lower-body loads stay under 80 %, so the session needs no 48 hours of its own.
        var reps = context.TrainingAge is TrainingAge.New ? 6 : 5;
        var percent = context.AgeGroup.IsMasters || context.TrainingAge is TrainingAge.New ? 75 : 79;
        SetDose loading = new(2, reps, 120, 5, Effort.Upkeep, percent);
        var dose = loading with { Sets = context.StepsBack() ? 1 : 2 };
        return SetWork.Of(picker, context.Turn % 2 == 0 ? HeavyA : HeavyB, 4, new(loading, loading, dose, context.StepsBack()), budget);
    }

    public static List<Step> StrengthCircuit(DoseContext context, Picker picker, int budget)
    {
        var mostSets = budget < 16 ? 2 : 3;
        var fullest = CircuitDose(context, 5, mostSets);
        var loading = CircuitDose(context, context.Level(), mostSets);
        var dose = context.StepsBack() ? CircuitDose(context, 0, 2) with { Percent = loading.Percent } : loading;
        List<Step> steps = [];
        if (context.TrainingAge is TrainingAge.Trained && context.AgeGroup.YoungestAge >= 15 && !context.AgeGroup.IsMasters && budget >= 12)
        {
            steps.Add(ExplosiveDose(context, 2).Step(picker.Take(Explosive)));
        }

        steps.AddRange(SetWork.Of(picker, Circuit, 8, new(fullest, loading, dose, context.StepsBack()), budget - steps.Minutes()));
        return steps;
    }

    public static List<Step> TechniqueLifting(DoseContext context, Picker picker, int budget)
    {
        var first = context.TrainingAge is TrainingAge.New;
        var ceiling = Math.Min(RepetitionTable.Ceiling(context.AgeGroup), first ? 60 : 70);
        var percent = Math.Min(ceiling, (first ? 40 : 50) + (5 * (context.Level() / 2)));
        SetDose fullest = new(first ? 2 : 3, first ? 10 : 8, 75, 4, Effort.Technique, percent);
        var loading = context.Level() >= 2 ? fullest : first ? fullest with { Reps = 8 } : fullest with { Sets = fullest.Sets - 1 };
        var dose = loading with { Sets = context.StepsBack() ? fullest.Sets - 1 : loading.Sets };
        return SetWork.Of(picker, Technique, 6, new(fullest, loading, dose, context.StepsBack()), budget);
    }

    public static List<Step> BodyWeight(DoseContext context, Picker picker, int budget)
    {
        var child = context.AgeGroup.YoungestAge < 16;
        var fewest = child ? 8 : 12;
        SetDose fullest = new(2, fewest + 4, child ? 45 : 30, 3, Effort.BodyWeight);
        var loading = fullest with { Reps = Math.Min(fullest.Reps, fewest + context.Level()) };
        var dose = context.StepsBack() ? loading with { Reps = fewest } : loading;
        return SetWork.Of(picker, Body, 8, new(fullest, loading, dose, context.StepsBack()), budget);
    }

    private static SetDose HeavyDose(DoseContext context)
    {
        var step = Math.Min(2, context.Level() / 2);
        SetDose dose = (context.AgeGroup, context.TrainingAge) switch
        {
            ({ IsYouth: true }, TrainingAge.New) => new(2, 8, 120, 5, Effort.HeavyYouth, 50 + (5 * step)),
            ({ IsYouth: true }, _) => new(3, 6, 150, 5, Effort.HeavyYouth, 70 + (5 * step)),
            (_, TrainingAge.New) => new(3, 6, 150, 5, Effort.HeavyNew, 70 + (5 * step)),
            ({ IsMasters: true }, _) => new(3, 5, 180, 5, Effort.HeavySome, step < 1 ? 75 : 80),
            (_, TrainingAge.Some) => step < 1 ? new(4, 5, 150, 5, Effort.HeavySome, 80) : new(4, 5, 180, 5, Effort.HeavySome, step < 2 ? 83 : 85),
            _ => step < 2 ? new(4, 5, 180, 5, Effort.HeavyTrained, step < 1 ? 83 : 85) : new(5, 4, 180, 5, Effort.HeavyTrained, 87),
        };
        return dose with { Percent = Math.Min(RepetitionTable.Ceiling(context.AgeGroup), dose.Percent!.Value) };
    }

    private static SetDose ExplosiveDose(DoseContext context, int sets) =>
        new(sets, context.Level() < 2 ? 12 : 15, 60, 2, Effort.Explosive);

    /// <param name="level">Two sets of 12, then more repetitions, then a third set.</param>
    private static SetDose CircuitDose(DoseContext context, int level, int mostSets)
    {
        var youth = context.AgeGroup.IsYouth;
        var (sets, reps) = level switch
        {
            < 1 => (2, 12),
            < 4 when youth => (2, 12),
            < 2 => (2, 15),
            < 4 when context.TrainingAge is TrainingAge.New => (2, 15),
            < 4 => (3, 12),
            _ => (3, youth ? 12 : 15),
        };
        var lightest = context.TrainingAge is TrainingAge.New ? 50 : 55;
        var heaviest = youth || context.AgeGroup.IsMasters || context.TrainingAge is TrainingAge.New ? 60 : 65;
        return new(Math.Min(sets, mostSets), sets > mostSets && !youth ? 15 : reps, 30, 3, Effort.Station, Math.Min(heaviest, lightest + (5 * (level / 3))));
    }
}
