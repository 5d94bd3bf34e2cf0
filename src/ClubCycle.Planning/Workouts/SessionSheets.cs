using System.Collections.Frozen;
using ClubCycle.Planning.Loads;
using ClubCycle.Planning.Squads;
using static ClubCycle.Planning.Workouts.ExerciseUse;

namespace ClubCycle.Planning.Workouts;

/// <summary>Writes what to do in a session: warm-up, main part, trunk, cool-down and cautions. The same workout and context give the same sheet.</summary>
/// <remarks>
/// Order inside a session: speed, jumps and agility, then strength, then trunk and muscular endurance, then steady running (Haff and Triplett 2016; Schumann et al. 2022).
/// </remarks>
public static class SessionSheets
{
    /// <summary>Most minutes that the cool-down takes over when the main part ends early.</summary>
    private const int LongerCoolDown = 5;

    private static readonly FrozenDictionary<string, Recipe> Recipes = new Dictionary<string, Recipe>(StringComparer.Ordinal)
    {
        ["easy-run"] = new(PrepareRun, EasyRunning.Run),
        ["core-and-easy-run"] = new(PrepareRun, EasyRunning.Run, CoreShare: 0.35, CoreFirst: true),
        ["strength-circuit"] = new(PrepareLift, Lifting.StrengthCircuit, CoreShare: 0.25),
        ["core-and-circuit"] = new(PrepareLift, Lifting.StrengthCircuit, CoreShare: 0.45),
        ["strength-upkeep"] = new(PrepareLift, Lifting.StrengthUpkeep),
        ["heavy-lift"] = new(PrepareLift, Lifting.Heavy),
        ["jumps"] = new(PrepareJump, Jumping.Jumps),
        ["lift-and-jump"] = new(PrepareJump, JumpThenLift),
        ["low-jumps"] = new(PrepareJump, Jumping.LowJumps, CoreShare: 0.35),
        ["sprint-intervals"] = new(PrepareSprint, Sprinting.Intervals),
        ["hill-sprints"] = new(PrepareSprint, Sprinting.Hills),
        ["reactive-agility"] = new(PrepareAgility, ReactiveAgility.Drills),
        ["strides"] = new(PrepareSprint, Sprinting.Strides),
        ["technique-lifting"] = new(PrepareLift, Lifting.TechniqueLifting, CoreShare: 0.25),
        ["body-weight"] = new(PrepareJump, Lifting.BodyWeight, CoreShare: 0.3),
        ["movement-games"] = new(ChildWarmUp, Games.Movement),
        ["tag-and-mirror"] = new(ChildWarmUp, Games.Tag),
    }.ToFrozenDictionary(StringComparer.Ordinal);

    private static readonly FrozenDictionary<AgeGroup, SessionSheet> Practices = AgeGroup.All.ToFrozenDictionary(group => group, group => AroundHockey(group, ExerciseUse.Practice, 15));

    private static readonly FrozenDictionary<AgeGroup, SessionSheet> Matches = AgeGroup.All.ToFrozenDictionary(group => group, group => AroundHockey(group, Match, 15));

    /// <summary>One sheet for each way to recover.</summary>
    private static readonly FrozenDictionary<AgeGroup, SessionSheet[]> Recoveries = AgeGroup.All.ToFrozenDictionary(
        group => group,
        group => Enumerable.Range(0, ExerciseLibrary.For(ActiveRecovery, group, TrainingAge.New).Count).Select(turn => Recover(group, turn)).ToArray());

    static SessionSheets()
    {
        var without = WorkoutCatalogue.All.Where(workout => !Recipes.ContainsKey(workout.Name)).Select(workout => workout.Name).ToArray();
        if (without.Length > 0)
        {
            throw new InvalidOperationException($"Workouts without content: {string.Join(", ", without)}.");
        }
    }

    /// <summary>The sheet of one session. Its steps' minutes add up to at most <see cref="DoseContext.Minutes"/>.</summary>
    /// <exception cref="ArgumentException">The workout is not in the catalogue or not for this age group, or the session is shorter than 5 minutes.</exception>
    public static SessionSheet For(Workout workout, DoseContext context)
    {
        ArgumentNullException.ThrowIfNull(workout);
        ArgumentNullException.ThrowIfNull(context);
        ArgumentOutOfRangeException.ThrowIfLessThan(context.Minutes, SessionMinutes.Shortest);
        ArgumentOutOfRangeException.ThrowIfNegative(context.Turn);
        if (!Recipes.TryGetValue(workout.Name, out var recipe))
        {
            throw new ArgumentException($"\"{workout.Name}\" is not in the workout catalogue.", nameof(workout));
        }

        if (!workout.AllowedFor(context.AgeGroup))
        {
            throw new ArgumentException($"\"{workout.Name}\" is not for {context.AgeGroup}.", nameof(workout));
        }

        Picker picker = new(context.AgeGroup, context.TrainingAge, context.Turn);
        var minutes = SessionMinutes.Of(context.Minutes, recipe.CoreShare);
        var warmUp = WarmUp.Of(picker, recipe.Prepare, minutes.WarmUp);
        var main = recipe.Main(context, picker, minutes.Main);
        var core = CoreWork.Of(context, picker, minutes.Core);
        var spare = minutes.Main + minutes.Core - main.Minutes() - core.Minutes();
        var coolDown = CoolDown.Of(picker, minutes.CoolDown + Math.Min(spare, LongerCoolDown), recipe.Prepare is ChildWarmUp);
        return new(
            recipe.CoreFirst ? [.. warmUp, .. core, .. main, .. coolDown] : [.. warmUp, .. main, .. core, .. coolDown],
            SessionCautions.For(workout, context));
    }

    /// <summary>What frames the squad's own practice; the coach fills it.</summary>
    public static SessionSheet ForPractice(AgeGroup ageGroup) => Practices[ageGroup];

    public static SessionSheet ForMatch(AgeGroup ageGroup) => Matches[ageGroup];

    /// <summary>Optional easy movement on a rest day.</summary>
    /// <param name="turn">From 0; each turn suggests something else.</param>
    public static SessionSheet ForActiveRecovery(AgeGroup ageGroup, int turn)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(turn);
        var sheets = Recoveries[ageGroup];
        return sheets[turn % sheets.Length];
    }

    private static List<Step> JumpThenLift(DoseContext context, Picker picker, int budget)
    {
        var jumps = Jumping.BeforeLifting(context, picker, Math.Max(1, (int)(budget * 0.4)));
        return [.. jumps, .. Lifting.Heavy(context, picker, Math.Max(1, budget - jumps.Minutes()), alternate: false)];
    }

    private static SessionSheet AroundHockey(AgeGroup ageGroup, ExerciseUse hockey, int warmUp)
    {
        var children = ageGroup.YoungestAge < 9;
        Picker picker = new(ageGroup, TrainingAge.New, hockey is Match ? 1 : 0);
        var play = picker.Take(hockey);
        return new(
            [
                .. WarmUp.Of(picker, children ? ChildWarmUp : PrepareSprint, children ? 5 : warmUp),
                new(play.Part, play.Name, play.Note(Effort.Unsaid)),
                .. CoolDown.Of(picker, children ? 2 : 6, children),
            ],
            SessionCautions.ForContact(ageGroup));
    }

    private static SessionSheet Recover(AgeGroup ageGroup, int turn)
    {
        var children = ageGroup.YoungestAge < 9;
        Picker picker = new(ageGroup, TrainingAge.New, turn);
        var choice = picker.Take(ActiveRecovery);
        return new(
            [new(choice.Part, choice.Name, choice.Note(Effort.Unsaid), Minutes: LoadTable.ActiveRecoveryMinutes - 5), .. CoolDown.Of(picker, 5, children)],
            SessionCautions.ForActiveRecovery(ageGroup));
    }
}
