using ClubCycle.Planning.Replanning;

namespace ClubCycle.Web.Features.Plans;

/// <summary>Changes in a coach's words.</summary>
public static class ChangeText
{
    /// <summary>Only what there is: "1 moved, 4 added"; empty when nothing changes.</summary>
    public static string Counts(PlanChanges changes) => string.Join(", ",
    [
        .. changes.Moved.Count > 0 ? new[] { Say($"{changes.Moved.Count} moved") } : [],
        .. changes.Added.Count > 0 ? new[] { Say($"{changes.Added.Count} added") } : [],
        .. changes.Dropped.Count > 0 ? new[] { Say($"{changes.Dropped.Count} dropped") } : [],
    ]);
}
