using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Squads;

namespace ClubCycle.Planning.Tests.Rules;

public class RuleBookTests
{
    [Fact]
    public void Every_rule_has_a_test_class_of_its_own()
    {
        var classes = typeof(RuleBookTests).Assembly.GetTypes().Select(type => type.Name).ToHashSet();

        Assert.All(PlanRules.All, rule => Assert.Contains($"{rule.Check.Method.Name}Tests", classes));
    }

    [Fact]
    public void Ids_are_unique_and_in_order() => Assert.Equal(PlanRules.All.Select(r => r.Id).Distinct().Order(StringComparer.Ordinal), PlanRules.All.Select(r => r.Id));

    /// <summary>Plans are read from files too: parts may be missing.</summary>
    [Fact]
    public void No_rule_throws_on_a_plan_with_parts_missing()
    {
        var request = A.Request();
        var plan = A.Plan(request);
        SquadPlan[] odd =
        [
            plan with { Weeks = [], Sessions = [], Phases = [] },
            plan with { Weeks = [], Phases = [] },
            plan with { Weeks = [] },
            plan with { Phases = [] },
            plan with { Sessions = [] },
            plan with { Weeks = [plan.Weeks[^1]] },
            plan with { Sessions = [.. plan.Sessions.Select(s => s with { Steps = [], Workout = "gone" })] },
        ];
        PlanRequest[] requests = [request, request with { Template = request.Template with { Mixes = [], Chains = [] } }, request with { PlanFrom = request.Season.Cycle.End }, A.Request(squad: A.Squad(AgeGroup.Youth(13)))];

        Assert.All(odd, p => Assert.All(requests, r => Assert.NotNull(PlanRules.Check(r, p))));
    }

    [Fact]
    public void The_rules_page_is_written_by_the_rule_book() => GoldenFile.Matches("../../docs/rules.md", RuleList.Markdown());
}
