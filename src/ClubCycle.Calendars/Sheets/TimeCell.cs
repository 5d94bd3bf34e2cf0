using System.Globalization;
using System.Text.RegularExpressions;
using ClubCycle.Planning;
using NodaTime;

namespace ClubCycle.Calendars.Sheets;

/// <summary>A start as people write it into a sheet: 19:30, 19.30, 19h30, 7:30 pm, 19 Uhr.</summary>
internal static partial class TimeCell
{
    private const int Longest = 20;

    private static readonly HashSet<string> NotYetKnown = new(["", "-", "–", "?", "tba", "tbc", "tbd"], StringComparer.OrdinalIgnoreCase);

    /// <summary>Null when the cell is blank or says that the start is not known yet. Seconds are dropped.</summary>
    public static Result<LocalTime?> Read(string cell)
    {
        var text = cell.Trim();
        if (NotYetKnown.Contains(text))
        {
            return new Result<LocalTime?>.Ok(null);
        }

        if (text.Length > Longest || Written().Match(text) is not { Success: true } match)
        {
            return Bad(text);
        }

        var half = match.Groups["half"].Value;
        var hour = int.Parse(match.Groups["h"].ValueSpan, CultureInfo.InvariantCulture);
        var minute = match.Groups["m"].Success ? int.Parse(match.Groups["m"].ValueSpan, CultureInfo.InvariantCulture) : 0;
        var saysHours = match.Groups["m"].Success || half.Length > 0 || match.Groups["unit"].Success;
        var possible = half.Length > 0 ? hour is >= 1 and <= 12 : hour <= 23;
        return saysHours && possible && minute <= 59 ? new LocalTime(half.Length == 0 ? hour : (hour % 12) + (half[0] is 'p' or 'P' ? 12 : 0), minute) : Bad(text);
    }

    public static bool LooksLikeOne(string cell) => Read(cell) is Result<LocalTime?>.Ok { Value: not null };

    private static Problem Bad(string text) => new(
        "file.time",
        CellText.HasForeignDigits(text) ? "The start is not written with the digits 0 to 9. Write it like 19:30."
        : $"\"{BadRow.Shorten(text)}\" is not a time of day. Write it like 19:30.");

    [GeneratedRegex(@"^(?<h>[0-9]{1,2})(?:[:.h](?<m>[0-9]{2})(?:[:.][0-9]{2}(?:\.0+)?)?)?(?: ?(?<half>[ap]\.?m\.?))?(?: ?(?<unit>h|uhr|uur))?$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, 100)]
    private static partial Regex Written();
}
