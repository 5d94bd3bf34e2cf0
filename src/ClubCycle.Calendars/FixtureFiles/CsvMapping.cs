using ClubCycle.Calendars.Sheets;

namespace ClubCycle.Calendars.FixtureFiles;

/// <summary>Which column says what. Columns count from 0.</summary>
/// <param name="Note">Home or away.</param>
/// <param name="Place">Where it is played.</param>
/// <param name="FirstLine">Line of the file on which the matches begin, from 1.</param>
public sealed record CsvMapping(int Date, int? Start, int? Opponent, int? Note, int? Place, DateOrder Order, int FirstLine);
