using ClubCycle.Planning;

namespace ClubCycle.Web.Parts;

/// <summary>How the files may end that a place takes. The browser is told; one that ends otherwise and comes all the same is refused before a byte of it is read.</summary>
internal sealed class FileKind
{
    private static readonly string[] Calendars = [".ics", ".ical"];

    private readonly string[] _endings;
    private readonly Problem _other;

    private FileKind(string[] endings, string types, Problem other) => (_endings, Accept, _other) = (endings, $"{string.Join(',', endings)},{types}", other);

    public static FileKind Table { get; } = new(
        [".csv", ".txt"], "text/csv",
        new Problem("file.ending", "The name of this file ends in neither .csv nor .txt. Open it in its own program, save the table as CSV, and choose that file."));

    public static FileKind TableOrCalendar { get; } = new(
        [.. Table._endings, .. Calendars], "text/csv,text/calendar",
        new Problem("file.ending", "The name of this file ends in none of .csv, .txt, .ics and .ical. Save the table as CSV or export the calendar, and choose that file."));

    public static FileKind Json { get; } = new(
        [".json"], "application/json",
        new Problem("file.ending", "The name of this file does not end in .json. Choose a file that was saved from a template."));

    /// <summary>For the field's <c>accept</c>. Phones that know no endings go by the media types.</summary>
    public string Accept { get; }

    public static bool IsCalendar(string name) => Ends(name, Calendars);

    /// <summary>Null when the name ends as it should.</summary>
    public Problem? Refuse(string name) => Ends(name, _endings) ? null : _other;

    private static bool Ends(string name, string[] endings) => endings.Contains(Path.GetExtension(name), StringComparer.OrdinalIgnoreCase);
}
