using ClubCycle.Planning.Rules;
using NodaTime;

namespace ClubCycle.Data.Plans;

internal static class FindingsBeyond
{
    /// <summary>Findings that other findings do not hold, by rule, strength and week: changed words make no new finding.</summary>
    public static IReadOnlyList<Finding> Beyond(this IReadOnlyList<Finding> findings, IReadOnlyList<Finding> others)
    {
        var known = others.CountBy(Place).ToDictionary();
        return [.. findings.Where(IsNew)];

        bool IsNew(Finding finding)
        {
            var left = known.GetValueOrDefault(Place(finding));
            known[Place(finding)] = Math.Max(0, left - 1);
            return left == 0;
        }
    }

    private static (string, Strength, LocalDate?) Place(Finding finding) => (finding.Rule, finding.Strength, finding.Week);
}
