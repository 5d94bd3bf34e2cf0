namespace ClubCycle.Calendars.Sheets;

/// <summary>How a file writes a day in numbers. A year of four digits in front is always read as year-month-day, dots always as day.month.year.</summary>
public enum DateOrder
{
    DayFirst,
    MonthFirst,
    YearFirst,
}
