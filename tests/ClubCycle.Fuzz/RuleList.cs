using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using ClubCycle.Calendars.FixtureFiles;
using NodaTime;
using NodaTime.Text;

namespace ClubCycle.Fuzz;

/// <summary>
/// Rules of repetition with the dates that they give, as libical keeps them for its own tests (blocks of RRULE, DTSTART and INSTANCES). All of them are moved by 28 years, after which
/// weekdays, leap years and week numbers come again: matches lie in this century.
/// </summary>
internal static partial class RuleList
{
    private const int Moved = 28;
    private const int YearsThatAreRead = 2;

    private static readonly LocalDatePattern Basic = LocalDatePattern.CreateWithInvariantCulture("uuuuMMdd");

    /// <summary>Ends with 1 when a rule that is taken gives other dates than listed.</summary>
    public static async Task<int> RunAsync(string file)
    {
        var (same, refused, different, without) = (0, 0, 0, 0);
        foreach (Match block in Block().Matches(await File.ReadAllTextAsync(file)))
        {
            var (rule, start, instances) = (Later(block.Groups[1].Value), Later(block.Groups[2].Value), block.Groups[3].Value.Trim());
            if (!IsDate().IsMatch(instances))
            {
                without++;
                continue;
            }

            var first = DateOf(start);
            var calendar = $"BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//rules//EN\r\nBEGIN:VEVENT\r\nUID:1\r\nDTSTAMP:20260101T000000Z\r\nDTSTART{(start.Contains('T', StringComparison.Ordinal) ? "" : ";VALUE=DATE")}:{start}\r\nRRULE:{rule}\r\nSUMMARY:Match\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n";
            if (!(await FixtureIcs.ReadAsync(Encoding.UTF8.GetBytes(calendar), DateTimeZone.Utc)).TryGet(out var read, out _) || read.Bad.Count > 0)
            {
                refused++;
                Console.WriteLine($"refused: {rule}: {read?.Bad[0].Reason}");
                continue;
            }

            // A date for each day: matches have one start a day; what lies further away than is read does not count.
            var listed = instances.Split(',').Select(i => DateOf(Later(i))).Where(d => d < first.PlusYears(YearsThatAreRead)).Distinct().ToList();
            var given = read.Good.Select(m => m.Date).Where(d => d < first.PlusYears(YearsThatAreRead)).ToList();
            if (listed.SequenceEqual(given))
            {
                same++;
            }
            else
            {
                different++;
                Console.WriteLine($"DIFFERENT: {rule} from {start}: listed {Words(listed)}, given {Words(given)}");
            }
        }

        Console.WriteLine($"rules whose dates are as listed: {same}");
        Console.WriteLine($"rules refused with a reason: {refused}");
        Console.WriteLine($"rules that give other dates: {different}");
        Console.WriteLine($"rules listed without dates: {without}");
        return different == 0 && same > 0 ? 0 : 1;
    }

    /// <summary>Each date in it.</summary>
    private static string Later(string text) => EachDate().Replace(text, day => $"{int.Parse(day.Groups[1].Value, CultureInfo.InvariantCulture) + Moved:0000}{day.Groups[2].Value}");

    private static LocalDate DateOf(string value) => Basic.Parse(value[..8]).GetValueOrThrow();

    private static string Words(List<LocalDate> dates) => string.Join(' ', dates.Take(8).Select(Basic.Format)) + (dates.Count > 8 ? $" … ({dates.Count})" : "");

    [GeneratedRegex(@"RRULE:(\S+)\s+DTSTART:(\S+)\s+INSTANCES:([^\n]*)")]
    private static partial Regex Block();

    [GeneratedRegex(@"\b((?:19|20)[0-9]{2})([0-9]{4}(?:T[0-9]{6}Z?)?)\b")]
    private static partial Regex EachDate();

    [GeneratedRegex("^[0-9]{8}")]
    private static partial Regex IsDate();
}
