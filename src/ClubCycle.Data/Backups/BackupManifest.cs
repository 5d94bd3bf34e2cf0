using System.Text.Json;
using NodaTime;
using NodaTime.Serialization.SystemTextJson;

namespace ClubCycle.Data.Backups;

/// <summary>What a backup holds, written beside its dump. Names nobody.</summary>
/// <param name="Form">Changes when older programs could no longer read the backup.</param>
/// <param name="App">Version of the program that made it.</param>
/// <param name="Schema">The last migration it holds.</param>
/// <param name="Postgres">Major version of the server it comes from.</param>
/// <param name="Rows">How many each table holds.</param>
/// <param name="Ended">What must stay ended when an older backup is restored.</param>
public sealed record BackupManifest(int Form, Instant MadeAt, string App, string Schema, int Postgres, IReadOnlyDictionary<string, long> Rows, Endings Ended)
{
    public const int ThisForm = 1;

    private static readonly JsonSerializerOptions Json = new JsonSerializerOptions { PropertyNamingPolicy = JsonNamingPolicy.CamelCase, WriteIndented = true, RespectNullableAnnotations = true, RespectRequiredConstructorParameters = true }
        .ConfigureForNodaTime(DateTimeZoneProviders.Tzdb);

    /// <summary>That of the running program.</summary>
    public static string AppVersion { get; } = typeof(BackupManifest).Assembly.GetName().Version!.ToString(3);

    internal string Write() => JsonSerializer.Serialize(this, Json) + "\n";

    /// <summary>Null when this is no manifest of a form we know.</summary>
    internal static BackupManifest? Read(string text)
    {
        try
        {
            return JsonSerializer.Deserialize<BackupManifest>(text, Json) is { Form: ThisForm } known ? known : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
