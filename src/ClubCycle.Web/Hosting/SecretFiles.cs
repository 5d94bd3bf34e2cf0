using ClubCycle.Data.Embedded;
using Microsoft.Extensions.Options;
using Npgsql;

namespace ClubCycle.Web.Hosting;

/// <summary>Secrets that come as files, as containers have them: for each of these settings, its name with <c>_FILE</c> names a file whose text is the setting.</summary>
internal static class SecretFiles
{
    /// <summary>As environment variables.</summary>
    public static readonly IReadOnlyList<string> Names = ["ConnectionStrings__ClubCycle", "Database__Password", "ConnectionStrings__ClubCycleOwner", "Database__OwnerPassword", "Mail__User", "Mail__Password", "OTEL_EXPORTER_OTLP_HEADERS"];

    public static IConfigurationBuilder AddSecretFiles(this IConfigurationBuilder settings) => settings.AddInMemoryCollection(
        from name in Names
        let file = Environment.GetEnvironmentVariable(name + "_FILE")
        where !string.IsNullOrEmpty(file)
        select KeyValuePair.Create(name.Replace("__", ":", StringComparison.Ordinal), (string?)TextOf(name, file)));

    /// <summary>The connection string, with <c>Database:Password</c> for its password where that is given; null for a private PostgreSQL.</summary>
    /// <exception cref="OptionsValidationException">It leads to another machine without TLS.</exception>
    public static string? DatabaseAddress(this IConfiguration settings) => settings.AddressOf(DatabaseChoice.ConnectionName, "Database:Password");

    /// <summary>The same for the role that owns the tables, with <c>Database:OwnerPassword</c>; null where the app's role owns them and for a private PostgreSQL.</summary>
    /// <exception cref="OptionsValidationException">It leads to another machine without TLS, or nobody said who the app is.</exception>
    public static string? OwnerAddress(this IConfiguration settings)
    {
        var owner = settings.AddressOf(DatabaseChoice.OwnerConnectionName, "Database:OwnerPassword");
        return owner is null || settings.DatabaseAddress() is not null
            ? owner
            : throw new OptionsValidationException(DatabaseChoice.OwnerConnectionName, typeof(SecretFiles), ["ConnectionStrings__ClubCycleOwner names the owner of the tables, but no ConnectionStrings__ClubCycle the role of the app. Give both."]);
    }

    private static string? AddressOf(this IConfiguration settings, string name, string password) =>
        settings.WithPassword(name, password) is { Length: > 0 } given ? DatabaseTls.Checked(given, settings.GetValue(DatabaseTls.Allow, false), name) : null;

    private static string? WithPassword(this IConfiguration settings, string name, string setting)
    {
        var given = settings.GetConnectionString(name);
        if (string.IsNullOrWhiteSpace(given) || settings[setting] is not { Length: > 0 } password)
        {
            return given;
        }

        try
        {
            return new NpgsqlConnectionStringBuilder(given) { Password = password }.ConnectionString;
        }
        catch (Exception malformed) when (malformed is ArgumentException or FormatException)
        {
            // Told, without its text, by whoever opens it.
            return given;
        }
    }

    private static string TextOf(string name, string file)
    {
        try
        {
            return File.ReadAllText(file).Trim();
        }
        catch (Exception unreadable) when (unreadable is IOException or UnauthorizedAccessException)
        {
            throw new OptionsValidationException(name, typeof(SecretFiles), [$"{name}_FILE names {file}, which cannot be read: {unreadable.Message} Check that it is there and that this user may read it."]);
        }
    }
}
