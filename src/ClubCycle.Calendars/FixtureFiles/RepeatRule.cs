using System.Globalization;
using NodaTime;
using NodaTime.Text;

namespace ClubCycle.Calendars.FixtureFiles;

/// <summary>What an RRULE (RFC 5545, 3.3.10) may say here: days, weeks, months and years, nothing within a day.</summary>
internal static class RepeatRule
{
    private const int LongestInterval = 999;
    private const int MostDays = 366;

    private static readonly LocalDatePattern Basic = LocalDatePattern.CreateWithInvariantCulture("uuuuMMdd");
    private static readonly HashSet<string> Frequencies = ["DAILY", "WEEKLY", "MONTHLY", "YEARLY"];
    private static readonly HashSet<string> Lists = ["BYDAY", "BYMONTHDAY", "BYMONTH", "BYYEARDAY", "BYWEEKNO", "BYSETPOS"];

    /// <summary>Why the rule is refused; null when it is not.</summary>
    /// <param name="start">The value of DTSTART.</param>
    public static string? Fault(string rule, string start)
    {
        var parts = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var part in rule.ToUpperInvariant().Split(';', StringSplitOptions.RemoveEmptyEntries))
        {
            var pair = part.Split('=', 2);
            if (pair.Length < 2 || !parts.TryAdd(pair[0].Trim(), pair[1].Trim()))
            {
                return Unclear;
            }
        }

        if (!parts.TryGetValue("FREQ", out var frequency) || !Frequencies.Contains(frequency))
        {
            return "It repeats more often than daily, or not in a way we know. Enter its dates by hand.";
        }

        foreach (var (name, value) in parts)
        {
            var clear = name switch
            {
                "FREQ" or "WKST" => true,
                "INTERVAL" => Number(value) is >= 1 and <= LongestInterval,
                "COUNT" => Number(value) >= 1,
                "UNTIL" => Day(value) is not null,
                _ => Lists.Contains(name) && value.Count(letter => letter == ',') < MostDays,
            };
            if (!clear)
            {
                return Unclear;
            }
        }

        // A day of grace: one of the two may be in UTC.
        return parts.TryGetValue("UNTIL", out var until) && Day(until) is { } last && Day(start) is { } first && last.PlusDays(1) < first
            ? "It stops repeating before its first date. Correct it in the calendar and export again."
            : null;
    }

    private static LocalDate? Day(string value) =>
        value.Length >= 8 && Basic.Parse(value[..8]).TryGetValue(default, out var day) && day.Year is > 1 and < 9999 ? day : null;

    private static string Unclear => "The way it repeats makes no sense or goes below a day. Enter its dates by hand.";

    private static int Number(string value) => int.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : 0;
}
