namespace ClubCycle.Planning.Rules;

/// <summary>The rule book: every rule that a plan is checked against.</summary>
public static class PlanRules
{
    public static IReadOnlyList<Rule> All { get; } =
    [
        RestRules.R01, RestRules.R02, RestRules.R03,
        HoursRules.R04, HoursRules.R05, HoursRules.R06,
        HockeyFreeRules.R07, HockeyFreeRules.R08,
        LoadRules.R09, StrainRules.R11, StrainRules.R12, LoadRules.R13,
        PhaseRules.R14, PhaseRules.R15, PhaseRules.R16, StrengthRules.R17, PhaseRules.R18,
        ReturnRules.R19, ResidualRules.R20, ResidualRules.R21,
        StrengthRules.R22, UpkeepRules.R23, StrengthRules.R24,
        LiftingRules.R25, LiftingRules.R26, LiftingRules.R27, YouthLiftingRules.R29, YouthLiftingRules.R30,
        JumpRules.R31, ChildJumpRules.R32, JumpRules.R33, JumpRules.R34,
        RunningRules.R35,
        SpacingRules.R36, SpacingRules.R37, SpacingRules.R38, SpacingRules.R39,
        OrderRules.R40, RunningRules.R41, AgilityRules.R43, WarmUpRules.R44,
        TaperRules.R46,
    ];

    public static IReadOnlyList<Finding> Check(PlanRequest request, SquadPlan plan)
    {
        var laidOut = new CheckedPlan(request, plan);
        return [.. All.SelectMany(rule => rule.Check(rule, laidOut))];
    }
}
