using ClubCycle.Planning.Rules;

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

    [Fact]
    public void The_rules_page_is_written_by_the_rule_book() => GoldenFile.Matches("../../docs/rules.md", RuleList.Markdown());
}
