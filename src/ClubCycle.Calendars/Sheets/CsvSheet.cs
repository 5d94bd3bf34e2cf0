using ClubCycle.Planning;

namespace ClubCycle.Calendars.Sheets;

/// <summary>A CSV file as rows of cells.</summary>
/// <param name="Rows">Without blank ones; at least one.</param>
internal sealed record CsvSheet(string Encoding, char Delimiter, IReadOnlyList<CsvRow> Rows)
{
    public const int MostColumns = 200;

    /// <summary>Most rows that are taken from one file.</summary>
    public const int MostRows = 5_000;

    public int Columns { get; } = Rows.Max(row => row.Cells.Count);

    public static Result<CsvSheet> Open(byte[] bytes)
    {
        if (!FileText.Read(bytes).TryGet(out var file, out var problems))
        {
            return new Result<CsvSheet>.Failed(problems);
        }

        var (delimiter, rows) = CsvRows.Read(file.Text.Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n'), MostRows + 1);
        return rows.Count == 0 ? new Problem("file.empty", "The file is empty. Export it again and check that it holds rows.")
            : rows.Count > MostRows ? new Problem("file.too-many-rows", $"The file has more than {MostRows} rows. Export the rows of one season only.")
            : rows.Max(row => row.Cells.Count) > MostColumns ? new Problem("file.too-many-columns", $"The file has more than {MostColumns} columns, so it is no list of dates. Keep the columns that you need.")
            : new CsvSheet(file.Encoding, delimiter, rows);
    }
}
