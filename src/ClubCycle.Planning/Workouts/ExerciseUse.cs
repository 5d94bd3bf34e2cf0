namespace ClubCycle.Planning.Workouts;

/// <summary>A place in a session that an exercise can fill. In the library files: <c>warm-up-raise</c>.</summary>
public enum ExerciseUse
{
    WarmUpRaise,
    WarmUpMobilise,

    /// <summary>Balance, landing and trunk control: the neuromuscular heart of the warm-up.</summary>
    WarmUpControl,
    PrepareRun,
    PrepareSprint,
    PrepareLift,
    PrepareJump,
    PrepareAgility,
    ChildWarmUp,
    EasyRun,
    EasyRunNew,
    Stride,
    Acceleration,
    FlyingSprint,
    HillSprint,

    /// <summary>Change of direction known beforehand: technique, not agility.</summary>
    AgilityPlanned,
    AgilityCued,
    SmallGame,
    JumpLow,
    JumpMedium,
    CircuitLegs,
    CircuitHinge,
    CircuitPush,
    CircuitPull,
    CircuitWhole,
    Explosive,
    HeavySquat,
    HeavyHinge,
    HeavyPush,
    HeavyPull,
    TechniqueSquat,
    TechniqueHinge,
    TechniquePush,
    TechniquePull,
    BodyLegs,
    BodyHinge,
    BodyPush,
    BodyPull,
    CoreFront,
    CoreSide,
    CoreBack,
    CoreRotate,
    MovementGame,
    TagGame,
    CoolDownEasy,
    CoolDownStretch,
    ChildCoolDown,
    ActiveRecovery,
    Practice,
    Match,
}

internal static class UseQuality
{
    /// <summary>The quality that the workouts with this place are there for; null for warm-up, cool-down, recovery and hockey.</summary>
    public static Quality? Trains(this ExerciseUse use) => use switch
    {
        ExerciseUse.EasyRun or ExerciseUse.EasyRunNew => Quality.AerobicEndurance,
        >= ExerciseUse.Stride and <= ExerciseUse.HillSprint => Quality.Speed,
        >= ExerciseUse.AgilityPlanned and <= ExerciseUse.SmallGame => Quality.Agility,
        ExerciseUse.MovementGame or ExerciseUse.TagGame => Quality.Agility,
        ExerciseUse.JumpLow or ExerciseUse.JumpMedium or ExerciseUse.Explosive => Quality.Speed,

        // Heavy lifting raises the strength behind speed.
        >= ExerciseUse.HeavySquat and <= ExerciseUse.HeavyPull => Quality.Speed,
        >= ExerciseUse.CircuitLegs and <= ExerciseUse.CircuitWhole => Quality.MuscularEndurance,
        >= ExerciseUse.TechniqueSquat and <= ExerciseUse.BodyPull => Quality.MuscularEndurance,
        >= ExerciseUse.CoreFront and <= ExerciseUse.CoreRotate => Quality.CoreStrength,
        _ => null,
    };
}
