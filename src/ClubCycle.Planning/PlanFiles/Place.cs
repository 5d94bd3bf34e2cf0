using System.Globalization;
using System.Text;
using System.Text.Json;
using NodaTime;
using NodaTime.Text;

namespace ClubCycle.Planning.PlanFiles;

/// <summary>A place in a JSON text: reads one value and adds a problem with its path when the value cannot be accepted. Never throws for any content.</summary>
internal sealed class Place(JsonElement element, Place? above, string name, int index, List<Problem> problems)
{
    /// <summary>A flood of mistakes is not answered with a flood.</summary>
    private const int MostProblems = 100;

    private static readonly LocalTimePattern Minutes = LocalTimePattern.CreateWithInvariantCulture("HH:mm");

    private static readonly LocalDateTimePattern DayAndMinutes = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm");

    /// <summary>The whole text.</summary>
    public Place(JsonElement root, List<Problem> problems)
        : this(root, null, "", 0, problems)
    {
    }

    /// <summary>Put together when asked for: most places have nothing to say.</summary>
    public string Path => above is null ? "" : name.Length > 0 ? above.Below(name) : string.Create(CultureInfo.InvariantCulture, $"{above.Path}[{index}]");

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

        Span<bool> seen = stackalloc bool[known.Length];
        foreach (var property in element.EnumerateObject())
        {
            if (NameOf(property) is not { } found)
            {
                Refuse("request.bad-text", "The name of a property holds half of a surrogate pair. Remove it.");
                return false;
            }

            var at = known.IndexOf(found);
            if (at < 0)
            {
                Refuse(
                    "request.unknown-property",
                    $"'{Shortened(found)}' is not known here. Known: {string.Join(", ", known)}. Correct or remove it.",
                    Below(Shortened(found)));
            }
            else if (seen[at])
            {
                Refuse("request.duplicate-property", $"'{found}' stands here twice. Keep one.", Below(found));
            }
            else
            {
                seen[at] = true;
            }
        }

        return true;
    }

    /// <summary>The value of a property; null when it is absent or JSON null.</summary>
    public Place? Optional(string name) =>
        element.ValueKind == JsonValueKind.Object && element.TryGetProperty(name, out var value) && value.ValueKind != JsonValueKind.Null
            ? new Place(value, this, name, 0, problems)
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

        return [.. element.EnumerateArray().Select((item, i) => new Place(item, this, "", i, problems))];
    }

    /// <param name="lines">Lines may break.</param>
    public string? Text(int most = 100, bool lines = false)
    {
        if (element.ValueKind != JsonValueKind.String)
        {
            Refuse("request.wrong-type", $"Expected text in quotes, found {Found()}.");
            return null;
        }

        if (Unescaped() is not { } text)
        {
            Refuse("request.bad-text", "The text holds half of a surrogate pair. Write the whole character.");
            return null;
        }

        if (HasControl(text, lines))
        {
            Refuse("request.bad-text", "The text holds a control character, such as a line break. Write it on one line.");
            return null;
        }

        if (text.Length > most && TypedText.Length(text) is var length && length > most)
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

        if (IsPlain(text) && DayAndMinutes.Parse(text).TryGetValue(default, out var at))
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

    private static bool IsPlain(string text) => Ascii.IsValid(text);

    private static bool HasControl(string text, bool lines)
    {
        foreach (var c in text)
        {
            if (char.IsControl(c) && !(lines && c == '\n'))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Null when the JSON escapes half of a surrogate pair: valid JSON, but not text.</summary>
    private string? Unescaped()
    {
        try
        {
            return element.GetString();
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }

    /// <summary>Null as <see cref="Unescaped"/>.</summary>
    private static string? NameOf(JsonProperty property)
    {
        try
        {
            return property.Name;
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
