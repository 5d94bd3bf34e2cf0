namespace ClubCycle.Calendars.Sheets;

/// <summary>One record of a CSV file.</summary>
/// <param name="Line">Line of the file on which it starts, from 1.</param>
/// <param name="Raw">As it stands in the file, with its line end.</param>
/// <param name="Lines">More than one when a quoted cell holds line breaks.</param>
/// <param name="LoneQuote">The quotation marks do not pair up, so the cells cannot be trusted.</param>
internal sealed record CsvRow(int Line, IReadOnlyList<string> Cells, string Raw, int Lines, bool LoneQuote)
{
    public bool IsBlank => Cells.All(string.IsNullOrWhiteSpace) && !LoneQuote;

    /// <summary>Blank where the row ends before the column.</summary>
    public string this[int? column] => column is { } index && index < Cells.Count ? Cells[index] : "";
}
