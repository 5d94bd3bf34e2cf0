namespace ClubCycle.Planning.Workouts;

/// <summary>One thing to do in a session. Absent numbers do not apply.</summary>
/// <param name="Part"><c>warm-up</c>, <c>main</c>, <c>core</c>, <c>cool-down</c>.</param>
/// <param name="Note">How to do it, how hard, and the no-equipment alternative where there is one.</param>
public sealed record Step(
    string Part,
    string Name,
    string Note,
    int? Sets = null,
    int? Reps = null,
    int? Seconds = null,
    int? Minutes = null,
    int? Metres = null,
    int? RestSeconds = null,
    int? FootContacts = null,
    int? PercentOfMaximum = null);
