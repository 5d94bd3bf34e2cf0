using ClubCycle.Planning.Replanning;

namespace ClubCycle.Web.Features.Plans;

/// <summary>Changes in a coach's words.</summary>
public static class ChangeText
{
    /// <summary>Only what there is: "1 moved, 4 added"; empty when nothing changes.</summary>
    public static string Counts(PlanChanges changes) => string.Join(
        ", ",
        new[] { (changes.Moved.Count, "moved"), (changes.Added.Count, "added"), (changes.Dropped.Count, "dropped") }.Where(c => c.Item1 > 0).Select(c => $"{c.Item1} {c.Item2}"));
}
