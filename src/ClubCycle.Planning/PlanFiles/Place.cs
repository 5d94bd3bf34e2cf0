using System.Globalization;
using System.Text.Json;
using NodaTime;
using NodaTime.Text;

namespace ClubCycle.Planning.PlanFiles;

/// <summary>A place in a JSON text: reads one value and adds a problem with its path when the value cannot be accepted. Never throws for any content.</summary>
internal sealed class Place(JsonElement element, string path, List<Problem> problems)
{
    /// <summary>A flood of mistakes is not answered with a flood.</summary>
    private const int MostProblems = 100;

    private static readonly LocalTimePattern Minutes = LocalTimePattern.CreateWithInvariantCulture("HH:mm");

    public string Path { get; } = path;

    public JsonValueKind Kind => element.ValueKind;

    public void Refuse(string code, string message) => Refuse(code, message, Path);

    /// <summary>True for an object with none but the known properties, each once.</summary>
    public bool IsObject(params ReadOnlySpan<string> known)
    {
        if (element.ValueKind != JsonValueKind.Object)
        {
            Refuse("request.wrong-type", $"Expected an object in braces, found {Found()}.");
            return false;
        }

        var names = known.ToArray();
        HashSet<string> seen = new(StringComparer.Ordinal);
        foreach (var property in element.EnumerateObject())
        {
            if (Unescaped(() => property.Name) is not { } name)
            {
                Refuse("request.bad-text", "The name of a property holds half of a surrogate pair. Remove it.");
                return false;
            }

            if (!names.Contains(name, StringComparer.Ordinal))
            {
                Refuse(
                    "request.unknown-property",
                    $"'{Shortened(name)}' is not known here. Known: {string.Join(", ", names)}. Correct or remove it.",
                    Below(Shortened(name)));
            }
            else if (!seen.Add(name))
            {
                Refuse("request.duplicate-property", $"'{name}' stands here twice. Keep one.", Below(name));
            }
        }

        return true;
    }

    /// <summary>The value of a property; null when it is absent or JSON null.</summary>
    public Place? Optional(string name) =>
        element.ValueKind == JsonValueKind.Object && element.TryGetProperty(name, out var value) && value.ValueKind != JsonValueKind.Null
            ? new Place(value, Below(name), problems)
            : null;

    public Place? Required(string name)
    {
        if (Optional(name) is { } place)
        {
            return place;
        }

        if (element.ValueKind == JsonValueKind.Object)
        {
            Refuse("request.missing-property", $"'{name}' is missing. Add it.", Below(name));
        }

        return null;
    }

    public IReadOnlyList<Place> Items(int most)
    {
        if (element.ValueKind != JsonValueKind.Array)
        {
            Refuse("request.wrong-type", $"Expected a list in square brackets, found {Found()}.");
            return [];
        }

        if (element.GetArrayLength() > most)
        {
            Refuse("request.too-many", $"The list holds {element.GetArrayLength()} entries; {most} at most.");
            return [];
        }

        return [.. element.EnumerateArray().Select((item, i) => new Place(item, string.Create(CultureInfo.InvariantCulture, $"{Path}[{i}]"), problems))];
    }

    /// <param name="lines">Lines may break.</param>
    public string? Text(int most = 100, bool lines = false)
    {
        if (element.ValueKind != JsonValueKind.String)
        {
            Refuse("request.wrong-type", $"Expected text in quotes, found {Found()}.");
            return null;
        }

        if (Unescaped(() => element.GetString()!) is not { } text)
        {
            Refuse("request.bad-text", "The text holds half of a surrogate pair. Write the whole character.");
            return null;
        }

        if (text.Any(c => char.IsControl(c) && !(lines && c == '\n')))
        {
            Refuse("request.bad-text", "The text holds a control character, such as a line break. Write it on one line.");
            return null;
        }

        if (TypedText.Length(text) is var length && length > most)
        {
            Refuse("request.text-too-long", $"The text has {length} characters; {most} at most.");
            return null;
        }

        return text;
    }

    public int? Whole(int least, int most)
    {
        if (element.ValueKind != JsonValueKind.Number || !element.TryGetInt32(out var number))
        {
            Refuse("request.wrong-type", $"Expected a whole number, found {Found()}.");
            return null;
        }

        if (number < least || number > most)
        {
            Refuse("request.out-of-range", $"{number} is outside {least} to {most}.");
            return null;
        }

        return number;
    }

    public double? Number()
    {
        if (element.ValueKind != JsonValueKind.Number || !element.TryGetDouble(out var number) || !double.IsFinite(number))
        {
            Refuse("request.wrong-type", $"Expected a number, found {Found()}.");
            return null;
        }

        return number;
    }

    public bool? Flag()
    {
        if (element.ValueKind is JsonValueKind.True or JsonValueKind.False)
        {
            return element.GetBoolean();
        }

        Refuse("request.wrong-type", $"Expected true or false, found {Found()}.");
        return null;
    }

    public LocalDate? Date()
    {
        if (Text() is not { } text)
        {
            return null;
        }

        if (!IsPlain(text) || !LocalDatePattern.Iso.Parse(text).TryGetValue(default, out var date))
        {
            Refuse("request.bad-date", $"'{text}' is not a date of the calendar. Write year-month-day, such as 2026-09-01.");
            return null;
        }

        if (PlanDates.Problem(date, "request", Path) is { } outside)
        {
            Refuse(outside.Code, outside.Message);
            return null;
        }

        return date;
    }

    public LocalTime? Time()
    {
        if (Text() is not { } text)
        {
            return null;
        }

        if (IsPlain(text) && Minutes.Parse(text).TryGetValue(default, out var time))
        {
            return time;
        }

        Refuse("request.bad-time", $"'{text}' is not a time of day. Write hours and minutes, such as 19:30.");
        return null;
    }

    public LocalDateTime? DateAndTime()
    {
        if (Text() is not { } text)
        {
            return null;
        }

        if (IsPlain(text) && LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm").Parse(text).TryGetValue(default, out var at))
        {
            return at;
        }

        Refuse("request.bad-time", $"'{text}' is not a date and time. Write it as 2026-09-01T19:30.");
        return null;
    }

    public Guid? Id()
    {
        if (Text() is not { } text)
        {
            return null;
        }

        if (Guid.TryParseExact(text, "D", out var id))
        {
            return id;
        }

        Refuse("request.bad-id", $"'{text}' is not an id. Write 32 hexadecimal digits with hyphens.");
        return null;
    }

    public T? Choice<T>()
        where T : struct, Enum
    {
        if (Text() is not { } text)
        {
            return null;
        }

        if (FileName.TryParse<T>(text, out var value))
        {
            return value;
        }

        Refuse("request.unknown-value", $"'{text}' is not known here. Known: {string.Join(", ", FileName.All<T>())}.");
        return null;
    }

    private static bool IsPlain(string text) => text.All(char.IsAscii);

    /// <summary>Null when the JSON escapes half of a surrogate pair: valid JSON, but not text.</summary>
    private static string? Unescaped(Func<string> read)
    {
        try
        {
            return read();
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }

    private static string Shortened(string name) => name.Length <= 60 ? name : name[..60] + "…";

    private void Refuse(string code, string message, string at)
    {
        if (problems.Count < MostProblems)
        {
            problems.Add(new Problem(code, message, at));
        }
    }

    private string Below(string name) => Path.Length == 0 ? name : $"{Path}.{name}";

    private string Found() => element.ValueKind switch
    {
        JsonValueKind.Object => "an object",
        JsonValueKind.Array => "a list",
        JsonValueKind.String => "text",
        JsonValueKind.Number => "a number",
        JsonValueKind.True or JsonValueKind.False => "true or false",
        _ => "nothing",
    };
}
