using System.Text;
using System.Text.RegularExpressions;
using ClubCycle.Calendars.Sheets;
using NodaTime;
using NodaTime.Text;

namespace ClubCycle.Calendars.FixtureFiles;

/// <summary>What an entry's lines may hold before the library sees them.</summary>
internal static partial class EntryCheck
{
    public const int LongestLine = 65_536;
    public const int LongestHead = 1_024;
    public const int LongestUid = 255;

    private const string Next = " Correct it in the calendar and export again.";

    private static readonly LocalDatePattern BasicDate = LocalDatePattern.CreateWithInvariantCulture("uuuuMMdd");
    private static readonly LocalTimePattern BasicTime = LocalTimePattern.CreateWithInvariantCulture("'T'HHmmss");
    private static readonly HashSet<string> Once = ["UID", "DTSTART", "SUMMARY", "LOCATION", "STATUS", "RRULE", "RECURRENCE-ID", "SEQUENCE"];
    private static readonly HashSet<string> Dated = ["DTSTART", "RECURRENCE-ID", "RDATE", "EXDATE"];

    /// <summary>The lines that a match is read from; all others are dropped.</summary>
    public static IEnumerable<IcsLine> Needed(IcsEntry entry) =>
        entry.Properties.Where(line => Once.Contains(line.Name) || Dated.Contains(line.Name));

    /// <summary>Why the entry is refused; null when it is not.</summary>
    public static string? Fault(IcsEntry entry)
    {
        if (entry.Fault is { } broken)
        {
            return broken;
        }

        foreach (var line in Needed(entry))
        {
            var fault = line.Text.Length > LongestLine || line.Head.Length > LongestHead ? $"Its {line.Name} is far too long." + Next
                : line.Text.Any(char.IsControl) ? $"Its {line.Name} holds an invisible control character." + Next
                : line.Name is not ("SUMMARY" or "LOCATION" or "UID") && !Ascii.IsValid(line.Value) ? $"Its {line.Name} uses digits or letters that dates do not have." + Next
                : line.Name == "UID" && Encoding.UTF8.GetByteCount(line.Value) > LongestUid ? $"Its identifier (UID) is longer than {LongestUid} bytes." + Next
                : line.Name == "RECURRENCE-ID" && line.Head.Contains("RANGE", StringComparison.OrdinalIgnoreCase) ? "It changes all later dates at once. Enter them by hand."
                : Dated.Contains(line.Name) && line.Value.Split(',').FirstOrDefault(value => !IsDate(value)) is { } wrong ? $"\"{BadRow.Shorten(wrong)}\" is not a date between {DateCell.FirstYear} and {DateCell.LastYear}." + Next
                : Dated.Contains(line.Name) && Zone(line) is { Found: null } named ? $"Its time zone \"{BadRow.Shorten(named.Id)}\" is not known, so its start would be a guess. Export with a named zone such as Europe/London, or enter it by hand."
                : null;
            if (fault is not null)
            {
                return fault;
            }
        }

        return Once.FirstOrDefault(name => entry.Named(name).Skip(1).Any()) is { } twice ? $"It says {twice} more than once." + Next
            : entry.Named("EXRULE").Any() ? "It uses a rule for exceptions (EXRULE) that is no longer allowed. Enter its dates by hand."
            : entry.Named("RDATE").Concat(entry.Named("EXDATE")).Sum(line => line.Value.Count(letter => letter == ',') + 1) > EntryReader.MostDates ? $"It lists more than {EntryReader.MostDates} dates." + Next
            : entry.Value("DTSTART") is not { } start ? "It has no start (DTSTART)." + Next
            : entry.Value("RRULE") is { } rule ? RepeatRule.Fault(rule, start)
            : null;
    }

    /// <summary>The line's name and parameters, its zone by the name in the zone database.</summary>
    public static string HeadWithKnownZone(IcsLine line) =>
        Dated.Contains(line.Name) && Zone(line)?.Found is { } named ? ZoneParameter().Replace(line.Head, $";TZID={named.Id}") : line.Head;

    /// <summary>A date, or a date and a time with or without the Z for UTC; of a period, its start.</summary>
    private static bool IsDate(string value)
    {
        var text = value.Split('/')[0].Trim();
        return text.Length >= 8
            && BasicDate.Parse(text[..8]).TryGetValue(default, out var date)
            && date.Year is >= DateCell.FirstYear and <= DateCell.LastYear
            && (text.Length == 8 || BasicTime.Parse(text[8..].TrimEnd('Z')).Success);
    }

    private static (string Id, DateTimeZone? Found)? Zone(IcsLine line) =>
        ZoneParameter().Match(line.Head) is { Success: true } match && match.Groups["id"].Value.Trim('"') is var id ? (id, ZoneName.Find(id)) : null;

    [GeneratedRegex("""(?i);TZID=(?<id>"[^"]*"|[^;:"]*)""", RegexOptions.CultureInvariant, 100)]
    private static partial Regex ZoneParameter();
}
