using ClubCycle.Planning;

namespace ClubCycle.Calendars.FixtureFiles;

/// <summary>A CSV file as rows of cells.</summary>
/// <param name="Rows">Without blank ones; at least one.</param>
internal sealed record CsvSheet(string Encoding, char Delimiter, IReadOnlyList<CsvRow> Rows)
{
    public const int MostColumns = 200;

    public int Columns { get; } = Rows.Max(row => row.Cells.Count);

    public static Result<CsvSheet> Open(byte[] bytes)
    {
        if (!FileText.Read(bytes).TryGet(out var file, out var problems))
        {
            return new Result<CsvSheet>.Failed(problems);
        }

        var (delimiter, rows) = CsvRows.Read(file.Text.Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n'), FixtureFile.MostRows + 1);
        return rows.Count == 0 ? new Problem("fixture-file.empty", "The file is empty. Export it again and check that it holds rows.")
            : rows.Count > FixtureFile.MostRows ? new Problem("fixture-file.too-many-rows", $"The file has more than {FixtureFile.MostRows} rows. Export the squad's own matches of one season only.")
            : rows.Max(row => row.Cells.Count) > MostColumns ? new Problem("fixture-file.too-many-columns", $"The file has more than {MostColumns} columns, so it is no list of matches. Keep date, start and opponent.")
            : new CsvSheet(file.Encoding, delimiter, rows);
    }
}
