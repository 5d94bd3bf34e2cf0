using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Unicode;

namespace ClubCycle.Planning.PlanFiles;

/// <summary>JSON in and out: capped, byte-stable, in no culture.</summary>
internal static class JsonText
{
    /// <summary>A published plan of sixty weeks with its sheets has about 1 MB.</summary>
    public const int LongestText = 4 * 1024 * 1024;

    private const int DeepestNesting = 24;

    // Half a surrogate pair is a mistake to tell, not to replace.
    private static readonly UTF8Encoding Strict = new(false, throwOnInvalidBytes: true);

    private static readonly JsonWriterOptions Writing = new()
    {
        Indented = true,
        IndentSize = 2,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.Create(UnicodeRanges.All),
    };

    /// <summary>Reads a text with a function that adds problems; gives its value when there are none.</summary>
    public static Result<T> Read<T>(string text, Func<Place, List<Problem>, T?> read)
        where T : class
    {
        if (text.Length > LongestText)
        {
            return new Problem("request.too-large", $"The text has {text.Length} characters; {LongestText} at most. Send one squad and its last published plan only.");
        }

        try
        {
            using var document = JsonDocument.Parse(Strict.GetBytes(text), new JsonDocumentOptions { MaxDepth = DeepestNesting });
            List<Problem> problems = [];
            var value = read(new Place(document.RootElement, problems), problems);
            return problems.Count > 0 ? new Result<T>.Failed(problems)
                : value ?? throw new InvalidOperationException("A reader gave neither a value nor a problem");
        }
        catch (EncoderFallbackException broken)
        {
            return new Problem("request.bad-text", $"The text holds half of a surrogate pair at character {broken.Index + 1}. Write the whole character, or save the file again as UTF-8.");
        }
        catch (JsonException broken)
        {
            return new Problem(
                "request.not-json",
                $"This is not JSON: line {(broken.LineNumber ?? 0) + 1}, position {(broken.BytePositionInLine ?? 0) + 1}. Check quotes, commas and braces there; nesting ends at {DeepestNesting} levels.");
        }
    }

    /// <summary>UTF-8 text ending in a line feed.</summary>
    public static string Write(Action<Utf8JsonWriter> write)
    {
        ArrayBufferWriter<byte> bytes = new();
        using (var json = new Utf8JsonWriter(bytes, Writing))
        {
            write(json);
        }

        bytes.Write("\n"u8);
        return Encoding.UTF8.GetString(bytes.WrittenSpan);
    }
}
