namespace ClubCycle.Planning.Rules;

public static class PlanRules
{
    public static IReadOnlyList<Finding> Check(PlanRequest request, SquadPlan plan) => [];
}
