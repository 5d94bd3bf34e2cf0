using ClubCycle.Planning.Squads;

namespace ClubCycle.Planning.Workouts;

/// <summary>An exercise, drill or game of the library, in a coach's words.</summary>
/// <param name="Part"><c>warm-up</c>, <c>main</c>, <c>core</c>, <c>cool-down</c>.</param>
/// <param name="Purpose">What it is good for.</param>
/// <param name="How">What to do.</param>
/// <param name="Points">What the coach looks for.</param>
/// <param name="Caution">What to take care of; null when the session's cautions say it all.</param>
/// <param name="WithoutEquipment">What to do instead when the equipment is missing; null when none is needed.</param>
/// <param name="Equipment">Empty when none is needed.</param>
/// <param name="Settings">Where it can be done, the usual place first.</param>
/// <param name="Faults">What often goes wrong, each with what to say or do: <c>Heels lift: sit a little higher.</c></param>
/// <param name="Easier">Name of the exercise to step back to; null when there is none.</param>
/// <param name="Harder">Name of the exercise to go on to; null when there is none.</param>
/// <param name="YoungestAge">Completed years.</param>
/// <param name="YoungestTrainingAge">The least training that it takes.</param>
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
    IReadOnlyList<Equipment> Equipment,
    IReadOnlyList<Setting> Settings,
    IReadOnlyList<string> Faults,
    string? Easier,
    string? Harder,
    int YoungestAge,
    TrainingAge YoungestTrainingAge,
    JumpClass Jumps,
    int ContactsPerRep,
    bool Loaded,
    bool LowerBody,
    bool BothSides,
    bool Held,
    bool Cued)
{
    private readonly string?[] _notes = new string?[Enum.GetValues<Effort>().Length];

    /// <summary>What it trains; empty for what prepares, calms down or frames hockey.</summary>
    public IReadOnlyList<Quality> Qualities { get; } = [.. Uses.Select(use => use.Trains()).OfType<Quality>().Distinct()];

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
