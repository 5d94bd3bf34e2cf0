using System.Globalization;
using NodaTime;

namespace ClubCycle.Web.Languages;

/// <summary>Days and times as people write them. The order of day and month is the language's: its pattern is one of the translated texts.</summary>
internal static class Dates
{
    /// <summary>12 Nov 2026</summary>
    public static string Full(LocalDate day) => Write(day, Say("d MMM yyyy"));

    /// <summary>12 Nov</summary>
    public static string Short(LocalDate day) => Write(day, Say("d MMM"));

    /// <summary>Thu 12 Nov</summary>
    public static string WithWeekday(LocalDate day) => Write(day, Say("ddd d MMM"));

    /// <summary>Thursday 12 Nov</summary>
    public static string WithLongWeekday(LocalDate day) => Write(day, Say("dddd d MMM"));

    /// <summary>Thursday 12 November</summary>
    public static string WithMonth(LocalDate day) => Write(day, Say("dddd d MMMM"));

    /// <summary>Thursday 12 November 2026</summary>
    public static string Whole(LocalDate day) => Write(day, Say("dddd d MMMM yyyy"));

    /// <summary>Thursday</summary>
    public static string Weekday(LocalDate day) => Write(day, "dddd");

    /// <summary>Thu</summary>
    public static string ShortWeekday(LocalDate day) => Write(day, "ddd");

    /// <summary>Thursday</summary>
    public static string Weekday(IsoDayOfWeek day) => CultureInfo.CurrentCulture.DateTimeFormat.GetDayName((DayOfWeek)((int)day % 7));

    /// <summary>Nov</summary>
    public static string Month(LocalDate day) => Write(day, "MMM");

    /// <summary>Nov 2026</summary>
    public static string MonthAndYear(LocalDate day) => Write(day, "MMM yyyy");

    /// <summary>Thu 12 Nov, 18:30</summary>
    public static string Moment(LocalDateTime at) => $"{WithWeekday(at.Date)}, {Time(at.TimeOfDay)}";

    /// <summary>12 Nov 2026, 18:30</summary>
    public static string FullMoment(LocalDateTime at) => $"{Full(at.Date)}, {Time(at.TimeOfDay)}";

    /// <summary>18:30, by a clock of 24 hours everywhere.</summary>
    public static string Time(LocalTime time) => time.ToString("HH:mm", CultureInfo.InvariantCulture);

    private static string Write(LocalDate day, string pattern) => day.ToString(pattern, CultureInfo.CurrentCulture);
}
