using System.Text;
using CsvHelper;

namespace ClubCycle.Calendars.Sheets;

/// <summary>The records of a CSV text.</summary>
/// <param name="Rows">Those that are not blank, in the order of the text.</param>
internal sealed record CsvRows(char Delimiter, IReadOnlyList<CsvRow> Rows)
{
    /// <summary>The delimiter is the one a first line such as <c>sep=;</c> names, else the comma, semicolon, tab or bar that fits.</summary>
    public static CsvRows Read(string text, int most)
    {
        var (rows, swallows) = Read(text, most, lineBreaksInCells: true);

        // A quotation mark without a partner swallows the lines after it: give up line breaks inside cells to save them.
        return swallows ? Read(text, most, lineBreaksInCells: false).Rows : rows;
    }

    private static (CsvRows Rows, bool Swallows) Read(string text, int most, bool lineBreaksInCells)
    {
        var broken = new Dictionary<long, CsvMalformedReason>();
        using var reader = CsvReader.FromText(text, new CsvReaderOptions
        {
            HasHeader = false,
            AllowLineBreaksInQuotes = lineBreaksInCells,
            TrackLineNumbers = true,
            OnMalformedRecord = record => broken.TryAdd(record.LineNumber, record.Reason),
        });
        var rows = new List<CsvRow>();
        while (rows.Count < most && reader.Read())
        {
            var raw = Encoding.UTF8.GetString(reader.RawRecord);
            var row = new CsvRow((int)reader.LineNumber, [.. Enumerable.Range(0, reader.FieldCount).Select(reader.GetString)], raw, raw.Count(letter => letter == '\n') + 1, LoneQuote: false);
            if (!row.IsBlank)
            {
                rows.Add(row);
            }
        }

        // A stray quotation mark inside a name is text.
        var marked = rows.Select(row => row with { LoneQuote = broken.TryGetValue(row.Line, out var reason) && reason != CsvMalformedReason.StrayQuote }).ToList();
        return (new CsvRows((char)reader.Separator, marked), rows.Any(row => row.Lines > 1 && broken.ContainsKey(row.Line)));
    }
}
