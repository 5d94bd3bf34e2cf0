using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Metadata;
using NodaTime;
using NodaTime.Serialization.SystemTextJson;

namespace ClubCycle.Data.Edits;

/// <summary>A row as JSON, by the names of its columns, and back. How often it was saved is not part of it.</summary>
internal static class RowValues
{
    private static readonly JsonSerializerOptions Options = new JsonSerializerOptions().ConfigureForNodaTime(DateTimeZoneProviders.Tzdb);

    public static JsonObject Key(EntityEntry entry) => Of(entry.CurrentValues, entry.Metadata.FindPrimaryKey()!.Properties);

    public static JsonObject All(PropertyValues values) => Of(values, values.Properties.Where(IsContent));

    public static JsonObject Of(PropertyValues values, IEnumerable<IReadOnlyProperty> properties) =>
        new([.. properties.Select(p => KeyValuePair.Create(p.GetColumnName(), Json((IProperty)p, values[(IProperty)p])))]);

    /// <summary>A row that no context tracks.</summary>
    public static JsonObject All(IEntityType type, object row) =>
        new([.. type.GetProperties().Where(IsContent).Select(p => KeyValuePair.Create(p.GetColumnName(), Json(p, p.PropertyInfo!.GetValue(row))))]);

    public static bool IsContent(IReadOnlyProperty property) => property.Name != nameof(IEditableRow.Version);

    public static object?[] KeyOf(IEntityType type, JsonObject key) => [.. type.FindPrimaryKey()!.Properties.Select(p => Value(p, key[p.GetColumnName()]))];

    /// <summary>A new row with these values; columns that are not named keep their start value.</summary>
    public static object New(IEntityType type, JsonObject values)
    {
        var row = Activator.CreateInstance(type.ClrType)!;
        foreach (var property in type.GetProperties().Where(p => values.ContainsKey(p.GetColumnName())))
        {
            property.PropertyInfo!.SetValue(row, Value(property, values[property.GetColumnName()]));
        }

        return row;
    }

    public static void Set(EntityEntry entry, JsonObject values)
    {
        foreach (var property in entry.Metadata.GetProperties().Where(p => values.ContainsKey(p.GetColumnName())))
        {
            entry.CurrentValues[property] = Value(property, values[property.GetColumnName()]);
        }
    }

    /// <summary>The row has these values in the columns that are named.</summary>
    public static bool Match(EntityEntry entry, JsonObject values) =>
        entry.Metadata.GetProperties().Where(p => values.ContainsKey(p.GetColumnName()))
            .All(p => JsonNode.DeepEquals(Json(p, entry.CurrentValues[p]), values[p.GetColumnName()]));

    private static JsonNode? Json(IProperty property, object? value) => property.GetTypeMapping().Converter is { } converter
        ? JsonSerializer.SerializeToNode(converter.ConvertToProvider(value), converter.ProviderClrType, Options)
        : JsonSerializer.SerializeToNode(value, property.ClrType, Options);

    private static object? Value(IProperty property, JsonNode? json) => property.GetTypeMapping().Converter is { } converter
        ? converter.ConvertFromProvider(json.Deserialize(converter.ProviderClrType, Options))
        : json.Deserialize(property.ClrType, Options);
}
