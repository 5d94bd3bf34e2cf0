using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Logging.Console;
using Microsoft.Extensions.Options;

namespace ClubCycle.Web.Hosting;

/// <summary>One line a message, warnings and worse unless the settings ask for more, and never a secret address.</summary>
internal sealed class QuietConsole() : ConsoleFormatter(FormatterName)
{
    public const string FormatterName = "quiet";

    public static string LineOf(string time, LogLevel level, string category, string message, Exception? exception, string? request = null, string? person = null) =>
        SecretAddresses.Masked($"{time} {level.ToString().ToLowerInvariant()} {category[(category.LastIndexOf('.') + 1)..]}{Of("request", request)}{Of("person", person)}: {OneLine(message)}{(exception is null ? "" : Environment.NewLine + Indented(exception))}");

    private static string Of(string what, string? id) => id is null ? "" : $" {what} {OneLine(id)}";

    /// <summary>A value with line ends in it must not look like a line of its own.</summary>
    private static string OneLine(string message) => string.Concat(message.Select(sign => char.IsControl(sign) || sign is '\u2028' or '\u2029' ? ' ' : sign));

    private static string Indented(Exception exception) => string.Join(Environment.NewLine, exception.ToString().ReplaceLineEndings("\n").Split('\n').Select(line => "    " + OneLine(line)));

    public override void Write<TState>(in LogEntry<TState> logEntry, IExternalScopeProvider? scopeProvider, TextWriter textWriter)
    {
        var mark = RequestMark.Of(scopeProvider);
        textWriter.WriteLine(LineOf(
            TimeProvider.System.GetUtcNow().ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", System.Globalization.CultureInfo.InvariantCulture),
            logEntry.LogLevel, logEntry.Category, logEntry.Formatter(logEntry.State, logEntry.Exception), logEntry.Exception, mark?.Request, mark?.Person));
    }
}

internal static class QuietConsoleSetup
{
    /// <summary>Setting <c>Logging:Format</c>: <c>text</c> for people, <c>json</c> for programs.</summary>
    private const string Format = "Logging:Format";

    public static void AddQuietConsole(this ILoggingBuilder logging, IConfiguration settings)
    {
        var format = settings[Format] switch
        {
            null or "" or "text" => QuietConsole.FormatterName,
            "json" => JsonConsole.FormatterName,
            var other => throw new OptionsValidationException(Format, typeof(QuietConsole), [$"{Format} is \"{other}\", which is not known. Use text or json."]),
        };
        logging.ClearProviders();
        logging.AddConsole(console => console.FormatterName = format);
        logging.AddConsoleFormatter<QuietConsole, ConsoleFormatterOptions>();
        logging.AddConsoleFormatter<JsonConsole, ConsoleFormatterOptions>();
        logging.AddFilter(level => level >= LogLevel.Warning);

        // Says at each start that the key ring lies in the database unencrypted; KeyRing says it with what to do.
        logging.AddFilter("Microsoft.AspNetCore.DataProtection.KeyManagement.XmlKeyManager", LogLevel.Error);

        // These write the address of each request.
        logging.AddFilter("Microsoft.AspNetCore.Hosting.Diagnostics", LogLevel.None);
        logging.AddFilter("Microsoft.AspNetCore.HttpLogging", LogLevel.None);

        // A backup that is late would be told at each question; BackupWatch tells it once a day.
        logging.AddFilter("Microsoft.Extensions.Diagnostics.HealthChecks.DefaultHealthCheckService", LogLevel.Error);

        // What these log is thrown as well, and told once by whoever catches it. A fresh database has no list of migrations to read.
        logging.AddFilter("Microsoft.Extensions.Hosting.Internal.Host", LogLevel.None);
        logging.AddFilter("Microsoft.EntityFrameworkCore.Database.Command", LogLevel.None);
    }
}
