using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Logging.Console;

namespace ClubCycle.Web.Hosting;

/// <summary>One line a message, warnings and worse unless the settings ask for more, and never a secret address.</summary>
internal sealed class QuietConsole() : ConsoleFormatter(FormatterName)
{
    public const string FormatterName = "quiet";

    public static string LineOf(string time, LogLevel level, string category, string message, Exception? exception) =>
        SecretAddresses.Masked($"{time} {level.ToString().ToLowerInvariant()} {category[(category.LastIndexOf('.') + 1)..]}: {OneLine(message)}{(exception is null ? "" : Environment.NewLine + Indented(exception))}");

    /// <summary>A value with line ends in it must not look like a line of its own.</summary>
    private static string OneLine(string message) => string.Concat(message.Select(sign => char.IsControl(sign) || sign is '\u2028' or '\u2029' ? ' ' : sign));

    private static string Indented(Exception exception) => string.Join(Environment.NewLine, exception.ToString().ReplaceLineEndings("\n").Split('\n').Select(line => "    " + OneLine(line)));

    public override void Write<TState>(in LogEntry<TState> logEntry, IExternalScopeProvider? scopeProvider, TextWriter textWriter) =>
        textWriter.WriteLine(LineOf(
            TimeProvider.System.GetUtcNow().ToString("HH:mm:ss'Z'", System.Globalization.CultureInfo.InvariantCulture),
            logEntry.LogLevel, logEntry.Category, logEntry.Formatter(logEntry.State, logEntry.Exception), logEntry.Exception));
}

internal static class QuietConsoleSetup
{
    public static void AddQuietConsole(this ILoggingBuilder logging)
    {
        logging.ClearProviders();
        logging.AddConsole(console => console.FormatterName = QuietConsole.FormatterName);
        logging.AddConsoleFormatter<QuietConsole, ConsoleFormatterOptions>();
        logging.AddFilter(level => level >= LogLevel.Warning);

        // Says at each start that the key ring lies in the database unencrypted, which is so on purpose: whoever reads the database reads everything.
        logging.AddFilter("Microsoft.AspNetCore.DataProtection.KeyManagement.XmlKeyManager", LogLevel.Error);

        // These write the address of each request.
        logging.AddFilter("Microsoft.AspNetCore.Hosting.Diagnostics", LogLevel.None);
        logging.AddFilter("Microsoft.AspNetCore.HttpLogging", LogLevel.None);

        // What these log is thrown as well, and told once by whoever catches it. A fresh database has no list of migrations to read.
        logging.AddFilter("Microsoft.Extensions.Hosting.Internal.Host", LogLevel.None);
        logging.AddFilter("Microsoft.EntityFrameworkCore.Database.Command", LogLevel.None);
    }
}
