using System.Collections.Frozen;
using System.Reflection;
using System.Text.Json;
using System.Text.Json.Serialization;
using ClubCycle.Planning.Squads;

namespace ClubCycle.Planning.Workouts;

/// <summary>Every exercise, drill and game that session sheets draw on: JSON files inside the assembly, read and checked once at first use.</summary>
public static class ExerciseLibrary
{
    private static readonly string[] Parts = ["warm-up", "main", "core", "cool-down"];

    private static readonly JsonSerializerOptions Json = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        RespectNullableAnnotations = true,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false) },
    };

    private static readonly Lazy<FrozenDictionary<string, Exercise>> ByName =
        new(() => ReadAll().ToFrozenDictionary(exercise => exercise.Name, StringComparer.Ordinal));

    private static readonly Lazy<FrozenDictionary<AgeGroup, Exercise[][]>> Pools = new(() =>
    {
        var inOrder = All;
        return AgeGroup.All.ToFrozenDictionary(
            ageGroup => ageGroup,
            ageGroup => Enum.GetValues<ExerciseUse>().Select(use => inOrder.Where(e => e.YoungestAge <= ageGroup.YoungestAge && e.Uses.Contains(use)).ToArray()).ToArray());
    });

    /// <summary>In order of name.</summary>
    public static IReadOnlyList<Exercise> All => [.. ByName.Value.Values.OrderBy(exercise => exercise.Name, StringComparer.Ordinal)];

    public static Exercise? Find(string name) => ByName.Value.GetValueOrDefault(name);

    /// <summary>The exercises for one place in a session that the youngest of an age group may do, in a fixed order.</summary>
    public static IReadOnlyList<Exercise> For(ExerciseUse use, AgeGroup ageGroup) => PoolsOf(ageGroup)[(int)use];

    /// <summary>One pool for each <see cref="ExerciseUse"/>, in its order.</summary>
    internal static Exercise[][] PoolsOf(AgeGroup ageGroup) => Pools.Value[ageGroup];

    /// <summary>Reads one library file.</summary>
    /// <exception cref="InvalidDataException">An entry is wrong; the message names it.</exception>
    internal static IReadOnlyList<Exercise> Read(string file, string json)
    {
        using var document = JsonDocument.Parse(json);
        return [.. document.RootElement.EnumerateArray().Select(element => ReadOne(file, element))];
    }

    private static List<Exercise> ReadAll()
    {
        var assembly = Assembly.GetExecutingAssembly();
        List<Exercise> all = [];
        HashSet<string> names = new(StringComparer.Ordinal);
        foreach (var file in assembly.GetManifestResourceNames().Where(name => name.StartsWith("Workouts/Library/", StringComparison.Ordinal)).Order(StringComparer.Ordinal))
        {
            using StreamReader reader = new(assembly.GetManifestResourceStream(file)!);
            foreach (var exercise in Read(file, reader.ReadToEnd()))
            {
                all.Add(names.Add(exercise.Name) ? exercise : throw new InvalidDataException($"{file}: exercise \"{exercise.Name}\": this name is already taken."));
            }
        }

        return all;
    }

    private static Exercise ReadOne(string file, JsonElement element)
    {
        var name = element.TryGetProperty("name", out var given) ? given.ToString() : "(without a name)";
        try
        {
            var exercise = element.Deserialize<Entry>(Json)!.ToExercise();
            return WhatIsWrong(exercise) is { } wrong ? throw new InvalidDataException($"{file}: exercise \"{name}\": {wrong}") : exercise;
        }
        catch (JsonException unreadable)
        {
            throw new InvalidDataException($"{file}: exercise \"{name}\": {unreadable.Message}", unreadable);
        }
    }

    private static string? WhatIsWrong(Exercise exercise) => exercise switch
    {
        { Name: "" } => "the name is empty.",
        _ when !Parts.Contains(exercise.Part) => $"\"{exercise.Part}\" is not a part of a session.",
        { Uses.Count: 0 } => "it has no use.",
        _ when !IsSentence(exercise.Purpose) || !IsSentence(exercise.How) => "purpose and note must be sentences.",
        { Points.Count: 0 } => "it has no coaching point.",
        _ when exercise.Points.Any(string.IsNullOrWhiteSpace) => "a coaching point is empty.",
        _ when exercise.Caution is { } caution && !caution.EndsWith('.') => "the caution must end with a full stop.",
        _ when exercise.WithoutEquipment is { } instead && !instead.EndsWith('.') => "the alternative must end with a full stop.",
        { YoungestAge: < 6 or > 18 } => "the youngest age must be 6 to 18.",
        { Jumps: JumpClass.High } => "high-class jumps are not planned.",
        { Jumps: JumpClass.Medium, YoungestAge: < 15 } => "medium jumps are for 15 years and older.",
        { Loaded: true, YoungestAge: < 9 } => "loads are for 9 years and older.",
        _ when exercise.Uses.Any(use => use is ExerciseUse.JumpLow or ExerciseUse.JumpMedium) != exercise.Jumps is not JumpClass.None => "jump uses and class of jump must go together.",
        _ when exercise.Uses.Any(use => use is ExerciseUse.AgilityCued or ExerciseUse.SmallGame) && !exercise.Cued => "an agility exercise needs an unpredictable cue.",
        _ => null,
    };

    private static bool IsSentence(string text) => text.Length > 0 && char.IsUpper(text[0]) && text.EndsWith('.');

    /// <summary>An exercise as the files say it: flags that are absent do not hold.</summary>
    private sealed record Entry
    {
        public required string Name { get; init; }
        public required string Part { get; init; }
        public required IReadOnlyList<ExerciseUse> Uses { get; init; }
        public required string Purpose { get; init; }
        public required string Note { get; init; }
        public required IReadOnlyList<string> Points { get; init; }
        public string? Caution { get; init; }
        public string? WithoutEquipment { get; init; }
        public required int YoungestAge { get; init; }
        public JumpClass Jumps { get; init; }
        public bool Loaded { get; init; }
        public bool LowerBody { get; init; }
        public bool BothSides { get; init; }
        public bool Held { get; init; }
        public bool Cued { get; init; }

        public Exercise ToExercise() => new(
            Name, Part, Uses, Purpose, Note, Points, Caution, WithoutEquipment, YoungestAge, Jumps,
            Jumps is JumpClass.None ? 0 : 1, Loaded, LowerBody, BothSides, Held, Cued);
    }
}
