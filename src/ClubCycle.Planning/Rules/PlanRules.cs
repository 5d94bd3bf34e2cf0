namespace ClubCycle.Planning.Rules;

/// <summary>The rule book: every rule that a plan is checked against.</summary>
public static class PlanRules
{
    public static IReadOnlyList<Rule> All { get; } =
    [
        RestRules.R01, RestRules.R02, RestRules.R03,
        HoursRules.R04, HoursRules.R05, HoursRules.R06,
        HockeyFreeRules.R07,
        LoadRules.R09, LoadRules.R13,
        PhaseRules.R14, PhaseRules.R15, PhaseRules.R16, PhaseRules.R18,
        SpacingRules.R36, SpacingRules.R37, SpacingRules.R38, SpacingRules.R39,
    ];

    public static IReadOnlyList<Finding> Check(PlanRequest request, SquadPlan plan)
    {
        var laidOut = new CheckedPlan(request, plan);
        return [.. All.SelectMany(rule => rule.Check(rule, laidOut))];
    }
}
