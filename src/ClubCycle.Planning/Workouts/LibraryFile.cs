using System.Text.Json;
using System.Text.Json.Serialization;
using ClubCycle.Planning.Squads;

namespace ClubCycle.Planning.Workouts;

/// <summary>Reads one file of the exercise library: a JSON list of entries.</summary>
internal static class LibraryFile
{
    private static readonly JsonSerializerOptions Json = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        RespectNullableAnnotations = true,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false) },
    };

    /// <exception cref="InvalidDataException">Not such a list, or an entry is wrong; the message names file, line and entry.</exception>
    public static List<LibraryEntry> Read(string file, ReadOnlySpan<byte> json)
    {
        Utf8JsonReader reader = new(json);
        List<LibraryEntry> entries = [];
        try
        {
            if (!reader.Read() || reader.TokenType is not JsonTokenType.StartArray)
            {
                throw new InvalidDataException($"{file}: a list of exercises is expected.");
            }

            while (reader.Read() && reader.TokenType is not JsonTokenType.EndArray)
            {
                entries.Add(ReadOne(file, LineOf(json, reader.TokenStartIndex), ref reader));
            }

            // Anything after the list makes the reader throw.
            reader.Read();
        }
        catch (JsonException broken)
        {
            throw new InvalidDataException($"{file}, line {broken.LineNumber + 1}: not readable as JSON: {broken.Message}", broken);
        }

        return entries;
    }

    private static LibraryEntry ReadOne(string file, int line, ref Utf8JsonReader reader)
    {
        using var element = JsonDocument.ParseValue(ref reader);
        var name = element.RootElement is { ValueKind: JsonValueKind.Object } entry && entry.TryGetProperty("name", out var given) ? given.ToString() : "(without a name)";
        try
        {
            var exercise = (element.Deserialize<Entry>(Json) ?? throw new JsonException("an entry is expected.")).ToExercise();
            return LibraryChecks.WhatIsWrong(exercise) is { } wrong ? throw LibraryEntry.Refused(file, line, name, wrong) : new(file, line, exercise);
        }
        catch (JsonException unreadable)
        {
            throw LibraryEntry.Refused(file, line, name, unreadable.Message, unreadable);
        }
    }

    private static int LineOf(ReadOnlySpan<byte> json, long position) => 1 + json[..(int)position].Count((byte)'\n');

    /// <summary>An exercise as the files say it: flags that are absent do not hold.</summary>
    private sealed record Entry
    {
        public required string Name { get; init; }
        public required string Part { get; init; }
        public required IReadOnlyList<ExerciseUse> Uses { get; init; }
        public required string Purpose { get; init; }
        public required string Note { get; init; }
        public required IReadOnlyList<string> Points { get; init; }
        public required IReadOnlyList<string> Faults { get; init; }
        public string? Caution { get; init; }
        public required IReadOnlyList<Equipment> Equipment { get; init; }
        public string? WithoutEquipment { get; init; }
        public required IReadOnlyList<Setting> Setting { get; init; }
        public string? Easier { get; init; }
        public string? Harder { get; init; }
        public required int YoungestAge { get; init; }
        public TrainingAge YoungestTrainingAge { get; init; }
        public JumpClass Jumps { get; init; }
        public bool Loaded { get; init; }
        public bool LowerBody { get; init; }
        public bool BothSides { get; init; }
        public bool Held { get; init; }
        public bool Cued { get; init; }

        public Exercise ToExercise() => new(
            Name, Part, Uses, Purpose, Note, Points, Caution, WithoutEquipment, Equipment, Setting, Faults, Easier, Harder,
            YoungestAge, YoungestTrainingAge, Jumps, Jumps is JumpClass.None ? 0 : 1, Loaded, LowerBody, BothSides, Held, Cued);
    }
}
