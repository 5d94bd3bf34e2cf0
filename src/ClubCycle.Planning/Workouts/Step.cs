namespace ClubCycle.Planning.Workouts;

/// <summary>One thing to do in a session. Absent numbers do not apply; young children get no numbers but minutes.</summary>
/// <param name="Part"><c>warm-up</c>, <c>main</c>, <c>core</c>, <c>cool-down</c>.</param>
/// <param name="Name">Of an <see cref="Exercise"/> in the <see cref="ExerciseLibrary"/>.</param>
/// <param name="Note">How to do it, how hard, and the no-equipment alternative where there is one.</param>
/// <param name="Reps">In each set; without sets, in all.</param>
/// <param name="Seconds">Of each repetition: a hold, or one bout of work.</param>
/// <param name="Minutes">Of the whole step, rests included; rounded up.</param>
/// <param name="Metres">Of each repetition.</param>
/// <param name="RestSeconds">After each set; without sets, after each repetition.</param>
/// <param name="FootContacts">Of the whole step, all sets together. Each foot-strike or two-footed landing is one.</param>
/// <param name="PercentOfMaximum">Of the load that can be lifted once.</param>
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
