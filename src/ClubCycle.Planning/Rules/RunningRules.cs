using System.Globalization;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Planning.Rules;

internal static class RunningRules
{
    public static readonly Rule R35 = new(
        "R35", Strength.Should, "Sprints are few metres at full speed with full rest.",
        "acceleration ≤ 300 m a session, top speed ≤ 150 m, half of both under 16; rest ≥ 120 s and ≥ 12 × the work for repetitions of 10 s or less (metres count as 5 m/s where the sheet gives no seconds)", "everyone, acceleration, flying and hill sprints",
        "Take out repetitions or lengthen the rest.",
        "Haugen et al. 2019 (Sports Med Open 5:44); Haff and Triplett 2016, table 3.6; half under 16 and 5 m/s are editorial",
        SprintsAreFewWithFullRest);

    public static readonly Rule R41 = new(
        "R41", Strength.Should, "Steady runs that build the base are easy enough to talk.",
        "easy, planned effort ≤ 4, the note names talking; a fixed 140 b/min only for players of 12 to 37 years", "sessions of steady running in aerobic build, recovery and restore",
        "Make the run easy and let talking set the pace.",
        "Foster et al. 2009 (J Strength Cond Res 23:2425); Condello et al. 2014 (J Sports Sci Med 13:309); Garber et al. 2011; effort 4 is editorial",
        SteadyRunsAreEasyEnoughToTalk);

    /// <summary>R35 for one sprint: shortest rest in seconds; none for repetitions of more than 10 s.</summary>
    /// <param name="work">Seconds.</param>
    internal static double? LeastRest(double work) => work > 10 ? null : Math.Max(120, 12 * work);

    private static IEnumerable<Finding> SprintsAreFewWithFullRest(Rule rule, CheckedPlan plan)
    {
        var half = plan.Squad.AgeGroup.YoungestAge < 16 ? 2 : 1;
        var (acceleration, topSpeed) = (RuleLimits.AccelerationMetres / half, RuleLimits.TopSpeedMetres / half);
        return
        [
            .. rule.OncePerPhase(
                plan,
                sheet => sheet.AccelerationMetres > acceleration ? new(sheet.AccelerationMetres, acceleration, "m") : null,
                (_, worst) => $"{worst.Measured} m of acceleration; {acceleration} m at most."),
            .. rule.OncePerPhase(
                plan,
                sheet => sheet.TopSpeedMetres > topSpeed ? new(sheet.TopSpeedMetres, topSpeed, "m") : null,
                (_, worst) => $"{worst.Measured} m at top speed; {topSpeed} m at most."),
            .. rule.OncePerPhase(
                plan,
                ShortRest,
                (sheet, worst) => string.Create(CultureInfo.InvariantCulture, $"{sheet.Steps[worst.Step!.Value].Name} rests {worst.Measured} s; {worst.Limit:0} s at least.")),
        ];
    }

    private static Breach? ShortRest(CheckedSession sheet)
    {
        if (sheet.AccelerationMetres + sheet.TopSpeedMetres == 0)
        {
            return null;
        }

        for (var i = 0; i < sheet.Kinds.Length; i++)
        {
            if (sheet.Kinds[i] is StepKind.Acceleration or StepKind.TopSpeed
                && sheet.Steps[i] is { RestSeconds: { } rest } step
                && LeastRest(step.Seconds ?? ((step.Metres ?? 0) / RuleLimits.SprintMetresPerSecond)) is { } least
                && rest < least)
            {
                return new(rest, least, "s", i);
            }
        }

        return null;
    }

    private static IEnumerable<Finding> SteadyRunsAreEasyEnoughToTalk(Rule rule, CheckedPlan plan)
    {
        var ages = plan.Squad.AgeGroup;
        var beatsFit = ages is { YoungestAge: >= RuleLimits.FixedBeatsAge, IsMasters: false };
        return rule.OncePerPhase(
            plan,
            sheet => sheet.HasSteadyRun && sheet.Phase?.Kind is PhaseKind.AerobicBuild or PhaseKind.Recovery or PhaseKind.Restore ? NotEasy(sheet, beatsFit) : null,
            (sheet, worst) => worst.Unit switch
            {
                "CR10" => string.Create(CultureInfo.InvariantCulture, $"a steady run planned {FileName.Of(sheet.Session.Hardness)} at effort {worst.Measured}; easy and {RuleLimits.EasyEffort} at most build the base."),
                "b/min" => "names 140 b/min, which fits 12 to 37 years only; let talking set the pace.",
                _ => "the note does not say that you can talk all the way.",
            });
    }

    /// <summary>Null when the steady run is easy; sessions with fast work in them are judged by their run's note alone.</summary>
    private static Breach? NotEasy(CheckedSession sheet, bool beatsFit)
    {
        var fast = false;
        for (var i = 0; i < sheet.Kinds.Length; i++)
        {
            fast |= sheet.Kinds[i] is StepKind.Stride or StepKind.Acceleration or StepKind.TopSpeed or StepKind.Agility;
            if (sheet.Kinds[i] == StepKind.SteadyRun)
            {
                var note = sheet.Steps[i].Note;
                if (!note.Contains("talk", StringComparison.OrdinalIgnoreCase))
                {
                    return new(0, 1, "notes", i);
                }

                if (!beatsFit && note.Contains("140", StringComparison.Ordinal))
                {
                    return new(140, 0, "b/min", i);
                }
            }
        }

        return !fast && (sheet.Session.Hardness != Hardness.Easy || sheet.Session.PlannedEffort > RuleLimits.EasyEffort)
            ? new(sheet.Session.PlannedEffort, RuleLimits.EasyEffort, "CR10")
            : null;
    }
}
