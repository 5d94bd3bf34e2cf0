using ClubCycle.Planning.Rules;
using NodaTime;

namespace ClubCycle.Web.Features.Plans;

/// <summary>Findings of one rule and strength, by the rule's name, with their weeks.</summary>
/// <param name="Weeks">First days; empty when the whole year is meant.</param>
public sealed record FindingGroup(Strength Strength, string Name, IReadOnlyList<LocalDate> Weeks)
{
    /// <summary>Binding ones first, then in the order given.</summary>
    public static IReadOnlyList<FindingGroup> Of(IEnumerable<Finding> findings) =>
    [
        .. findings.GroupBy(f => (f.Strength, f.Rule)).OrderBy(g => g.Key.Strength)
            .Select(g => new FindingGroup(g.Key.Strength, NameOf([.. g]), [.. g.Where(f => f.Week is not null).Select(f => f.Week!.Value).Distinct().Order()])),
    ];

    // One place tells its figures; several are told by the rule. The engine's own findings belong to no rule.
    private static string NameOf(IReadOnlyList<Finding> findings) =>
        SayPlan(findings.Count == 1 ? findings[0].Message : PlanRules.All.FirstOrDefault(r => r.Id == findings[0].Rule)?.Sentence ?? findings[0].Message);
}
