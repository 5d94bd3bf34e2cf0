using System.Collections.Frozen;
using ClubCycle.Planning.Workouts;
using static ClubCycle.Planning.Workouts.ExerciseUse;

namespace ClubCycle.Planning.Rules;

/// <summary>What a step of a sheet trains.</summary>
internal enum StepKind
{
    /// <summary>Warm-up, cool-down, hockey, children's games of balance and skill, or an exercise that the library does not know.</summary>
    Other,

    /// <summary>Balance, landing and trunk control inside a warm-up; children's warm-ups hold all three.</summary>
    Control,
    Acceleration,
    TopSpeed,
    Stride,
    Jump,

    /// <summary>Changes of direction, with or without a cue.</summary>
    Agility,
    Explosive,

    /// <summary>Heavy or technique lifting.</summary>
    Strength,

    /// <summary>An exercise that serves technique lifting and circuits alike.</summary>
    StrengthOrEndurance,

    /// <summary>Circuits and body weight.</summary>
    MuscularEndurance,
    Core,
    SteadyRun,
}

/// <summary>An exercise of the library with its kind.</summary>
internal sealed record KnownExercise(Exercise Exercise, StepKind Kind)
{
    private static readonly FrozenDictionary<string, KnownExercise> ByName =
        ExerciseLibrary.All.ToFrozenDictionary(e => e.Name, e => new KnownExercise(e, KindOf(e)), StringComparer.Ordinal);

    /// <summary>Null when the library does not know the name.</summary>
    public static KnownExercise? Find(string name) => ByName.GetValueOrDefault(name);

    internal static StepKind KindOf(Exercise exercise)
    {
        var (strength, endurance) = (false, false);
        foreach (var use in exercise.Uses)
        {
            switch (use)
            {
                case WarmUpControl or ChildWarmUp:
                    return StepKind.Control;
                case EasyRun or EasyRunNew:
                    return StepKind.SteadyRun;
                case ExerciseUse.Stride:
                    return StepKind.Stride;
                case ExerciseUse.Acceleration or HillSprint:
                    return StepKind.Acceleration;
                case FlyingSprint:
                    return StepKind.TopSpeed;
                case AgilityPlanned or AgilityCued or SmallGame or TagGame:
                    return StepKind.Agility;
                case MovementGame:
                    return exercise.Cued ? StepKind.Agility : StepKind.Other;
                case JumpLow or JumpMedium:
                    return StepKind.Jump;
                case ExerciseUse.Explosive:
                    return StepKind.Explosive;
                case CoreFront or CoreSide or CoreBack or CoreRotate:
                    return StepKind.Core;
                case >= HeavySquat and <= TechniquePull:
                    strength = true;
                    break;
                case (>= CircuitLegs and <= CircuitWhole) or (>= BodyLegs and <= BodyPull):
                    endurance = true;
                    break;
            }
        }

        return (strength, endurance) switch
        {
            (true, true) => StepKind.StrengthOrEndurance,
            (true, false) => StepKind.Strength,
            (false, true) => StepKind.MuscularEndurance,
            _ => StepKind.Other,
        };
    }
}
