namespace ClubCycle.Planning.Players;

/// <summary>What is known of one player that limits or doses training.</summary>
/// <param name="BirthYear">Null when not given.</param>
/// <param name="GrowingFast">In a growth spurt: fewer jumps and sprints.</param>
/// <param name="Results">In any order; the latest of a kind counts.</param>
public sealed record PlayerNumbers(int? BirthYear, bool GrowingFast, IReadOnlyList<FieldTestResult> Results)
{
    /// <summary>The latest result of a kind; null without one.</summary>
    public FieldTestResult? Latest(TestKind kind, string? exercise = null) =>
        Results.Where(r => r.Kind == kind && r.Exercise == exercise).MaxBy(r => r.On);
}
