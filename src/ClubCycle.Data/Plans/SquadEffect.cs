using ClubCycle.Data.Squads;
using ClubCycle.Planning;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Rules;

namespace ClubCycle.Data.Plans;

/// <summary>What a change would do to one squad's year.</summary>
/// <param name="Before">The draft as it is; null when there is none.</param>
/// <param name="After">Null when the change gives no plan; then there are problems.</param>
public sealed record SquadEffect(Guid SquadId, string Name, SquadPlan? Before, SquadPlan? After, IReadOnlyList<Problem> Problems)
{
    /// <summary>Sessions kept, moved, added and dropped; nothing when there is no plan to compare.</summary>
    public PlanChanges Changes { get; } = Before is null || After is null ? PlanChanges.None
        : PlanDiff.Between(Before.Sessions, After.Sessions, uid => After.Changes.Dropped.FirstOrDefault(d => d.Uid == uid)?.Why);

    /// <summary>Findings of the new plan that the old one has not, by rule, strength and week. All of them when there was no plan.</summary>
    public IReadOnlyList<Finding> NewFindings { get; } = (After?.Findings ?? []).Beyond(Before?.Findings ?? []);

    /// <summary>Findings that the change does away with.</summary>
    public IReadOnlyList<Finding> GoneFindings { get; } = After is null ? [] : (Before?.Findings ?? []).Beyond(After.Findings);

    internal static SquadEffect Of(SquadRow squad, Result<SquadDraft> before, Result<SquadDraft> after) => new(
        squad.Id, squad.Name,
        before.TryGet(out var was, out _) ? was.Plan : null,
        after.TryGet(out var will, out var problems) ? will.Plan : null,
        problems);
}
