using ClubCycle.Calendars.Sheets;

namespace ClubCycle.Calendars.ClosedDayFiles;

/// <summary>Which column says what. Columns count from 0.</summary>
/// <param name="Last">Null where each row is one day.</param>
/// <param name="Why">Null where the file does not say.</param>
/// <param name="FirstLine">Line of the file on which the days begin, from 1.</param>
public sealed record ClosedDayMapping(int First, int? Last, int? Why, DateOrder Order, int FirstLine);
