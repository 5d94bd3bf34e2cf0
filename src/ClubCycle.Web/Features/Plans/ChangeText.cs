using ClubCycle.Planning.Replanning;

namespace ClubCycle.Web.Features.Plans;

/// <summary>Changes in a coach's words.</summary>
public static class ChangeText
{
    /// <summary>Only what there is: "1 moved, 4 added"; empty when nothing changes.</summary>
    public static string Counts(PlanChanges changes) => string.Join(
        ", ",
        new[]
        {
            changes.Moved.Count > 0 ? Say($"{changes.Moved.Count} moved") : null, changes.Added.Count > 0 ? Say($"{changes.Added.Count} added") : null, changes.Dropped.Count > 0 ? Say($"{changes.Dropped.Count} dropped") : null,
        }.Where(said => said is not null));
}
