namespace ClubCycle.Calendars.FixtureFiles;

/// <summary>A first look at a CSV file, for a person to confirm.</summary>
/// <param name="Encoding">UTF-8, UTF-16, UTF-32 or Windows-1252.</param>
/// <param name="Headers">One for each column: "Column 1" where the file has none. Shortened to be shown.</param>
/// <param name="FirstRows">At most ten, each with as many cells as there are headers. Shortened to be shown.</param>
/// <param name="Guess">Null when no column looks like dates.</param>
/// <param name="Remarks">What was guessed without being sure; empty as a rule.</param>
public sealed record CsvLook(
    string Encoding,
    char Delimiter,
    IReadOnlyList<string> Headers,
    IReadOnlyList<IReadOnlyList<string>> FirstRows,
    CsvMapping? Guess,
    IReadOnlyList<string> Remarks);
