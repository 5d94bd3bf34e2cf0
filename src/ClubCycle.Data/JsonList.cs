using System.Text.Json;
using System.Text.Json.Serialization;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;
using NodaTime;
using NodaTime.Text;

namespace ClubCycle.Data;

/// <summary>Small lists of plain values kept in one <c>jsonb</c> column, such as a squad's practices.</summary>
internal static class JsonList
{
    // The serializer's own form of NodaTime values is wrong without a word, so each type used here is named.
    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Converters = { new LocalTimeText(), new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false) },
    };

    public static ValueConverter<IReadOnlyList<T>, string> Converter<T>() => new(list => Write(list), json => Read<T>(json));

    public static ValueComparer<IReadOnlyList<T>> Comparer<T>() => new(
        (left, right) => Write(left!) == Write(right!),
        list => Write(list).GetHashCode(StringComparison.Ordinal),
        list => list);

    internal static string Write<T>(IReadOnlyList<T> list) => JsonSerializer.Serialize(list, Options);

    internal static IReadOnlyList<T> Read<T>(string json) => JsonSerializer.Deserialize<List<T>>(json, Options)!;

    private sealed class LocalTimeText : JsonConverter<LocalTime>
    {
        private static readonly LocalTimePattern Pattern = LocalTimePattern.CreateWithInvariantCulture("HH:mm");

        public override LocalTime Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            Pattern.Parse(reader.GetString() ?? "").Value;

        public override void Write(Utf8JsonWriter writer, LocalTime value, JsonSerializerOptions options) =>
            writer.WriteStringValue(Pattern.Format(value));
    }
}
