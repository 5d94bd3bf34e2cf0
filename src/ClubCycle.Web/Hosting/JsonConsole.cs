using System.Buffers;
using System.Diagnostics;
using System.Text;
using System.Text.Json;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Logging.Console;

namespace ClubCycle.Web.Hosting;

/// <summary>One JSON object a line, for programs that collect logs: UTC, and never a secret address.</summary>
internal sealed class JsonConsole() : ConsoleFormatter(FormatterName)
{
    public const string FormatterName = "json-lines";

    public static string LineOf(string time, LogLevel level, string category, string message, Exception? exception, string? trace, string? request = null, string? person = null)
    {
        ArrayBufferWriter<byte> bytes = new();
        using (Utf8JsonWriter json = new(bytes))
        {
            json.WriteStartObject();
            json.WriteString("time", time);
            json.WriteString("level", level.ToString().ToLowerInvariant());
            json.WriteString("category", category);
            json.WriteString("message", SecretAddresses.Masked(message));
            if (exception is not null)
            {
                json.WriteString("exception", SecretAddresses.Masked(exception.ToString()));
            }

            foreach (var (name, id) in new[] { ("trace", trace), ("request", request), ("person", person) })
            {
                if (id is not null)
                {
                    json.WriteString(name, id);
                }
            }

            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(bytes.WrittenSpan);
    }

    public override void Write<TState>(in LogEntry<TState> logEntry, IExternalScopeProvider? scopeProvider, TextWriter textWriter)
    {
        var mark = RequestMark.Of(scopeProvider);
        textWriter.WriteLine(LineOf(
            TimeProvider.System.GetUtcNow().UtcDateTime.ToString("O", System.Globalization.CultureInfo.InvariantCulture),
            logEntry.LogLevel, logEntry.Category, logEntry.Formatter(logEntry.State, logEntry.Exception), logEntry.Exception, Activity.Current?.TraceId.ToString(), mark?.Request, mark?.Person));
    }
}
