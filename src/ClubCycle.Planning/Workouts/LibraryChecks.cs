namespace ClubCycle.Planning.Workouts;

/// <summary>What must hold for an entry of the exercise library, and for all of them together.</summary>
internal static class LibraryChecks
{
    private const int MostFaults = 3;

    /// <summary>A youngest under-17: the youngest age group that lifts heavy.</summary>
    private const int YoungestForHeavy = 15;

    private static readonly string[] Parts = ["warm-up", "main", "core", "cool-down"];

    /// <summary>Null when nothing is wrong with the entry by itself.</summary>
    public static string? WhatIsWrong(Exercise exercise) => Text(exercise) ?? Kit(exercise) ?? Limits(exercise);

    /// <exception cref="InvalidDataException">The first entry that does not fit the others.</exception>
    public static void Together(IReadOnlyList<LibraryEntry> entries)
    {
        Refuse(entries, Repeated(entries));
        var byName = entries.ToDictionary(entry => entry.Exercise.Name, entry => entry.Exercise, StringComparer.Ordinal);
        Refuse(entries, exercise => Link(exercise, exercise.Easier, easier: true, byName) ?? Link(exercise, exercise.Harder, easier: false, byName));
        var easierThan = EasierThan(byName.Values);
        Refuse(entries, exercise => LeadsBackTo(exercise.Name, easierThan) ? "its easier exercises lead back to it." : null);
    }

    private static void Refuse(IReadOnlyList<LibraryEntry> entries, Func<Exercise, string?> whatIsWrong)
    {
        foreach (var entry in entries)
        {
            if (whatIsWrong(entry.Exercise) is { } wrong)
            {
                throw entry.Refused(wrong);
            }
        }
    }

    private static Func<Exercise, string?> Repeated(IReadOnlyList<LibraryEntry> entries)
    {
        HashSet<string> names = new(entries.Count, StringComparer.Ordinal);
        Dictionary<string, string> notes = new(entries.Count, StringComparer.Ordinal);
        return exercise =>
            !names.Add(exercise.Name) ? "this name is already taken."
            : !notes.TryAdd(exercise.How, exercise.Name) ? $"\"{notes[exercise.How]}\" has the same note."
            : null;
    }

    private static string? Text(Exercise exercise) => exercise switch
    {
        _ when string.IsNullOrWhiteSpace(exercise.Name) => "the name is empty.",
        _ when !Parts.Contains(exercise.Part) => $"\"{exercise.Part}\" is not a part of a session.",
        { Uses.Count: 0 } => "it has no use.",
        _ when !IsSentence(exercise.Purpose) || !IsSentence(exercise.How) => "purpose and note must be sentences.",
        { Points.Count: 0 } => "it has no coaching point.",
        _ when exercise.Points.Any(string.IsNullOrWhiteSpace) => "a coaching point is empty.",
        { Faults.Count: 0 or > MostFaults } => $"it must name 1 to {MostFaults} faults.",
        _ when !exercise.Faults.All(IsFault) => "a fault must be a sentence: what goes wrong, a colon, and what to say or do.",
        _ when exercise.Caution is { } caution && !caution.EndsWith('.') => "the caution must end with a full stop.",
        _ when exercise.WithoutEquipment is { } instead && !instead.EndsWith('.') => "the alternative must end with a full stop.",
        _ => null,
    };

    private static string? Kit(Exercise exercise) => exercise switch
    {
        { Settings.Count: 0 } => "it has no setting.",
        _ when exercise.Settings.Distinct().Count() < exercise.Settings.Count => "a setting comes twice.",
        _ when exercise.Equipment.Distinct().Count() < exercise.Equipment.Count => "a piece of equipment comes twice.",
        { Equipment.Count: > 0, WithoutEquipment: null } => "it needs equipment and must say what to do without.",
        { Equipment.Count: 0, WithoutEquipment: not null } => "it says what to do without equipment but needs none.",
        { Equipment.Count: 0, Loaded: true } => "a load needs equipment.",
        _ => null,
    };

    private static string? Limits(Exercise exercise) => exercise switch
    {
        { YoungestAge: < 6 or > 18 } => "the youngest age must be 6 to 18.",
        { Jumps: JumpClass.High } => "high-class jumps are not planned.",
        { Jumps: JumpClass.Medium, YoungestAge: < 15 } => "medium jumps are for 15 years and older.",
        { Loaded: true, YoungestAge: < 9 } => "loads are for 9 years and older.",
        { YoungestAge: < YoungestForHeavy } when exercise.Uses.Any(use => use is >= ExerciseUse.HeavySquat and <= ExerciseUse.HeavyPull) => $"heavy lifting is for {YoungestForHeavy} years and older.",
        _ when exercise.Uses.Any(use => use is ExerciseUse.JumpLow or ExerciseUse.JumpMedium) != exercise.Jumps is not JumpClass.None => "jump uses and class of jump must go together.",
        _ when exercise.Uses.Any(use => use is ExerciseUse.AgilityCued or ExerciseUse.SmallGame) && !exercise.Cued => "an agility exercise needs an unpredictable cue.",
        { Cued: true } when exercise.Uses.Contains(ExerciseUse.AgilityPlanned) => "a planned change of direction has no cue.",
        _ => null,
    };

    private static string? Link(Exercise exercise, string? named, bool easier, Dictionary<string, Exercise> byName)
    {
        var word = easier ? "easier" : "harder";
        if (named is null)
        {
            return null;
        }

        if (!byName.TryGetValue(named, out var other))
        {
            return $"its {word} exercise \"{named}\" is not in the library.";
        }

        var (less, more) = easier ? (other, exercise) : (exercise, other);
        return ReferenceEquals(other, exercise) ? $"it is named as {word} than itself."
            : other.Part != exercise.Part ? $"its {word} exercise \"{named}\" belongs to another part of a session."
            : less.YoungestAge > more.YoungestAge || less.YoungestTrainingAge > more.YoungestTrainingAge
                ? $"its {word} exercise \"{named}\" is for {(easier ? "older or longer-trained" : "younger or newer")} players."
            : null;
    }

    /// <summary>By name, what is said to be easier: by the entry itself, or by an entry that calls it harder.</summary>
    private static ILookup<string, string> EasierThan(IEnumerable<Exercise> exercises) => exercises
        .SelectMany(exercise => new[] { (Than: exercise.Name, exercise.Easier), (Than: exercise.Harder, Easier: exercise.Name) })
        .Where(step => step is { Than: not null, Easier: not null })
        .ToLookup(step => step.Than!, step => step.Easier!, StringComparer.Ordinal);

    private static bool LeadsBackTo(string name, ILookup<string, string> easierThan)
    {
        HashSet<string> seen = new(StringComparer.Ordinal);
        Stack<string> open = new([name]);
        while (open.TryPop(out var next))
        {
            foreach (var easier in easierThan[next])
            {
                if (easier == name)
                {
                    return true;
                }

                if (seen.Add(easier))
                {
                    open.Push(easier);
                }
            }
        }

        return false;
    }

    private static bool IsSentence(string text) => text.Length > 0 && char.IsUpper(text[0]) && text.EndsWith('.');

    private static bool IsFault(string text) => IsSentence(text) && text.IndexOf(": ", StringComparison.Ordinal) is var colon and > 0 && colon < text.Length - 3;
}
