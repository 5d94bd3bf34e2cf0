namespace ClubCycle.Planning.Workouts;

/// <summary>What to do in a session, in order, and what to watch out for.</summary>
public sealed record SessionSheet(IReadOnlyList<Step> Steps, IReadOnlyList<string> Cautions);
