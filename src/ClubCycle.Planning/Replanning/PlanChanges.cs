using NodaTime;

namespace ClubCycle.Planning.Replanning;

/// <summary>What differs from the published plan, over sessions, practices and matches (active recovery is not counted).</summary>
public sealed record PlanChanges(int Kept, IReadOnlyList<Moved> Moved, IReadOnlyList<Added> Added, IReadOnlyList<Dropped> Dropped)
{
    public static PlanChanges None { get; } = new(0, [], [], []);

    public bool Any => Moved.Count + Added.Count + Dropped.Count > 0;
}

public sealed record Moved(Guid Uid, string Title, LocalDateTime From, LocalDateTime To, string Why);

public sealed record Added(Guid Uid, string Title, LocalDateTime At);

public sealed record Dropped(Guid Uid, string Title, LocalDateTime At, string Why);
