using System.Globalization;
using System.Text.RegularExpressions;
using ClubCycle.Planning;
using NodaTime;
using NodaTime.Text;

namespace ClubCycle.Calendars.Sheets;

/// <summary>A date as people write it into a sheet, with a time behind it or not.</summary>
internal static partial class DateCell
{
    public const int FirstYear = 2000;
    public const int LastYear = 2099;

    private const int Longest = 60;

    /// <summary>The date, and the time when the cell has one; a time with an offset from UTC is turned to the zone.</summary>
    public static Result<(LocalDate Date, LocalTime? Start)> Read(string cell, DateOrder order, DateTimeZone zone)
    {
        if (Parts(cell) is not { } parts)
        {
            return Unreadable(cell);
        }

        if (!Day(parts, order).TryGet(out var date, out var problems))
        {
            return new Result<(LocalDate, LocalTime?)>.Failed(problems);
        }

        if (parts.Time is not { } time)
        {
            return (date, (LocalTime?)null);
        }

        var offset = OffsetBehind().Match(time);
        if (!TimeCell.Read(offset.Success ? time[..offset.Index] : time).TryGet(out var start, out problems))
        {
            return new Result<(LocalDate, LocalTime?)>.Failed(problems);
        }

        if (!offset.Success || start is not { } at)
        {
            return (date, start);
        }

        if (!OffsetPattern.GeneralInvariantWithZ.Parse(offset.Value).TryGetValue(Offset.Zero, out var fromUtc))
        {
            return Unreadable(cell);
        }

        var local = (date + at).WithOffset(fromUtc).InZone(zone).LocalDateTime;
        return (local.Date, (LocalTime?)local.TimeOfDay);
    }

    /// <summary>The order that the dates show, and whether they show it.</summary>
    public static (DateOrder Order, bool Sure) Guess(IEnumerable<string> cells)
    {
        var parts = cells.Select(Parts).OfType<DateParts>().ToList();
        var open = parts.Where(p => p.First.Length < 4 && p.Separator != ".").ToList();
        var dayFirst = open.Any(p => Number(p.First) > 12) || (open.Count == 0 && parts.Any(p => p.Separator == "." && p.First.Length < 4));
        var monthFirst = open.Any(p => Number(p.Second) > 12);
        return (dayFirst, monthFirst, open.Count) switch
        {
            (true, false, _) => (DateOrder.DayFirst, true),
            (false, true, _) => (DateOrder.MonthFirst, true),
            (false, false, 0) when parts.Count > 0 => (DateOrder.YearFirst, true),
            _ => (DateOrder.DayFirst, false),
        };
    }

    public static bool LooksLikeOne(string cell) => Parts(cell) is not null;

    private static DateParts? Parts(string cell)
    {
        var text = cell.Trim();
        if (text.Length > Longest || Written().Match(text) is not { Success: true } match)
        {
            return null;
        }

        return new(match.Groups["a"].Value, match.Groups["b"].Value, match.Groups["c"].Value, match.Groups["s"].Value, match.Groups["time"] is { Success: true } time ? time.Value : null);
    }

    private static Result<LocalDate> Day(DateParts parts, DateOrder order)
    {
        var (day, month, year) = parts switch
        {
            { First.Length: 4 } => (parts.Third, parts.Second, parts.First),
            { Separator: "." } => (parts.First, parts.Second, parts.Third),
            _ when order == DateOrder.MonthFirst => (parts.Second, parts.First, parts.Third),
            _ => (parts.First, parts.Second, parts.Third),
        };
        return year.Length == 2 ? Bad($"The year {year} is too short. Write all four digits, such as 20{year}.")
            : year.Length < 4 ? Bad($"The year {year} is too short. Write all four digits.")
            : order == DateOrder.YearFirst && parts.First.Length < 4 && parts.Separator != "." ? Bad($"{parts.Written} does not begin with the year as the other dates do. Write it as year-month-day, or choose another order of day and month.")
            : Number(year) is < FirstYear or > LastYear ? Bad($"The year {year} lies outside {FirstYear} to {LastYear}. Write the year of the common calendar.")
            : Number(month) is < 1 or > 12 ? Bad(order == DateOrder.MonthFirst
                ? $"There is no month {month}. If this file writes the day first, choose that order; else correct the date."
                : $"There is no month {month}. If this file writes the month first, choose that order; else correct the date.")
            : Number(day) < 1 || Number(day) > CalendarSystem.Iso.GetDaysInMonth(Number(year), Number(month)) ? Bad($"{Number(day)} {MonthName(month)} {year} does not exist. Correct the date.")
            : new LocalDate(Number(year), Number(month), Number(day));
    }

    private static Problem Unreadable(string cell) => Bad(
        string.IsNullOrWhiteSpace(cell) ? "There is no date. Enter one, or delete the row."
        : CellText.HasForeignDigits(cell) ? "The date is not written with the digits 0 to 9. Write it like 2026-09-12."
        : $"\"{BadRow.Shorten(cell)}\" is not a date in numbers. Write it like 2026-09-12 or 12.09.2026.");

    private static Problem Bad(string reason) => new("file.date", reason);

    private static string MonthName(string month) => CultureInfo.InvariantCulture.DateTimeFormat.GetAbbreviatedMonthName(Number(month));

    private static int Number(string digits) => int.Parse(digits, CultureInfo.InvariantCulture);

    // A weekday may stand in front: "Sat 12.09.2026".
    [GeneratedRegex(@"^(?:\p{L}{2,12}[.,]{0,2} +)?(?<a>[0-9]{1,4})(?<s>[./-]) ?(?<b>[0-9]{1,2})\k<s> ?(?<c>[0-9]{1,4})(?:(?:,? +|T)(?<time>.+))?$", RegexOptions.CultureInvariant, 100)]
    private static partial Regex Written();

    [GeneratedRegex("(?:Z|[+-][0-9]{2}(?::[0-9]{2})?)$", RegexOptions.CultureInvariant, 100)]
    private static partial Regex OffsetBehind();

    private sealed record DateParts(string First, string Second, string Third, string Separator, string? Time)
    {
        public string Written => $"{First}{Separator}{Second}{Separator}{Third}";
    }
}
