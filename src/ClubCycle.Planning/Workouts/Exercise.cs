namespace ClubCycle.Planning.Workouts;

/// <summary>An exercise, drill or game of the library, in a coach's words.</summary>
/// <param name="Part"><c>warm-up</c>, <c>main</c>, <c>core</c>, <c>cool-down</c>.</param>
/// <param name="Purpose">What it is good for.</param>
/// <param name="How">What to do.</param>
/// <param name="Points">What the coach looks for.</param>
/// <param name="Caution">What to take care of; null when the session's cautions say it all.</param>
/// <param name="WithoutEquipment">What to do instead when the equipment is missing; null when none is needed.</param>
/// <param name="YoungestAge">Completed years.</param>
/// <param name="Jumps">Class of jump. Shock jumps are not in the library.</param>
/// <param name="ContactsPerRep">Foot contacts of one repetition; 0 for exercises without jumps.</param>
/// <param name="Loaded">Takes an external load, so a share of the maximum applies.</param>
/// <param name="LowerBody">A heavy load falls on hips and legs.</param>
/// <param name="BothSides">Repetitions are for each side.</param>
/// <param name="Held">Each repetition is a short hold.</param>
/// <param name="Cued">Holds an unpredictable stimulus, so it trains agility.</param>
public sealed record Exercise(
    string Name,
    string Part,
    IReadOnlyList<ExerciseUse> Uses,
    string Purpose,
    string How,
    IReadOnlyList<string> Points,
    string? Caution,
    string? WithoutEquipment,
    int YoungestAge,
    JumpClass Jumps,
    int ContactsPerRep,
    bool Loaded,
    bool LowerBody,
    bool BothSides,
    bool Held,
    bool Cued)
{
    private readonly string?[] _notes = new string?[Enum.GetValues<Effort>().Length];

    /// <summary>What a player reads: how, how hard, what to look for, what to take care of, what to do without equipment.</summary>
    internal string Note(Effort effort) => _notes[(int)effort] ??= string.Join(' ', Sentences(effort));

    private IEnumerable<string> Sentences(Effort effort)
    {
        yield return How;
        if (effort.Words() is { } words)
        {
            yield return words;
        }

        yield return "Look for: " + string.Join("; ", Points.Select(LowerFirst)) + ".";
        if (Caution is not null)
        {
            yield return "Take care: " + Caution;
        }

        if (WithoutEquipment is not null)
        {
            yield return "Without equipment: " + WithoutEquipment;
        }
    }

    private static string LowerFirst(string text) => char.ToLowerInvariant(text[0]) + text[1..];
}
