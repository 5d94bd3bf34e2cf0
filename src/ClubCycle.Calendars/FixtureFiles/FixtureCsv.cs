using System.Globalization;
using ClubCycle.Calendars.Sheets;
using ClubCycle.Planning;
using NodaTime;

namespace ClubCycle.Calendars.FixtureFiles;

/// <summary>Reads matches from a CSV file of at most 1 MB. A file that is no such list gives a <c>fixture-file.*</c> problem.</summary>
public static class FixtureCsv
{
    private const int RowsShown = 10;
    private const int HeaderWithin = 10;

    /// <summary>What the file looks like and which column seems to say what.</summary>
    public static Result<CsvLook> Look(byte[] bytes)
    {
        if (!CsvSheet.Open(bytes).TryGet(out var sheet, out var problems))
        {
            return new Result<CsvLook>.Failed(problems);
        }

        var header = sheet.Rows.Take(HeaderWithin).FirstOrDefault(row => row.Cells.Any(IsDateHeader));
        var data = header is null ? sheet.Rows : [.. sheet.Rows.Where(row => row.Line > header.Line)];
        var remarks = new List<string>();
        var guess = data.Count == 0 ? null : Guess(sheet, header, data, remarks);
        if (guess is null)
        {
            remarks.Add("No column looks like dates. Choose the column with the dates, or check that this is the right file.");
        }

        return new CsvLook(
            sheet.Encoding,
            sheet.Delimiter,
            [.. Enumerable.Range(0, sheet.Columns).Select(column => Name(header, column))],
            [.. data.Take(RowsShown).Select(row => Enumerable.Range(0, sheet.Columns).Select(column => BadRow.Shorten(row[column])).ToList())],
            guess,
            remarks);
    }

    /// <summary>The matches in the file.</summary>
    /// <param name="zone">The club's, for times that are written with an offset from UTC; others are local already.</param>
    public static Result<FixtureFile> Read(byte[] bytes, CsvMapping mapping, DateTimeZone zone)
    {
        if (!CsvSheet.Open(bytes).TryGet(out var sheet, out var problems))
        {
            return new Result<FixtureFile>.Failed(problems);
        }

        int?[] columns = [mapping.Date, mapping.Start, mapping.Opponent, mapping.Note, mapping.Place];
        if (columns.Any(column => column < 0 || column >= sheet.Columns))
        {
            return new Problem("file.no-such-column", $"The file has {sheet.Columns} columns, and one that was chosen is not among them. Choose the columns again.");
        }

        var good = new List<ReadFixture>();
        var bad = new List<BadRow>();
        foreach (var row in sheet.Rows.Where(row => row.Line >= mapping.FirstLine))
        {
            if (Fixture(row, mapping, zone).TryGet(out var fixture, out var reasons))
            {
                good.Add(fixture);
            }
            else
            {
                bad.Add(BadRow.Of(row.Line, row.Raw, reasons[0].Message));
            }
        }

        return new FixtureFile(good, bad, [.. sheet.Rows.Where(row => row.Lines > 1 && row.Line >= mapping.FirstLine).Select(row =>
            $"Lines {row.Line} to {row.Line + row.Lines - 1} were read as one row because a cell in quotation marks holds line breaks. Check that no match is missing.")]);
    }

    private static Result<ReadFixture> Fixture(CsvRow row, CsvMapping mapping, DateTimeZone zone)
    {
        if (row.LoneQuote)
        {
            return new Problem("file.lone-quote", "A quotation mark in this row has no partner. Remove it, or add the second one.");
        }

        if (!DateCell.Read(row[mapping.Date], mapping.Order, zone).TryGet(out var when, out var problems)
            || !TimeCell.Read(row[mapping.Start]).TryGet(out var start, out problems)
            || !CellText.Read(row[mapping.Opponent], "The opponent").TryGet(out var opponent, out problems)
            || !CellText.Read(row[mapping.Note], "The home or away column").TryGet(out var note, out problems)
            || !PlaceText.Read(HeaderWords.NameAPlace(row[mapping.Place]) ? row[mapping.Place] : null).TryGet(out var place, out problems))
        {
            return new Result<ReadFixture>.Failed(problems);
        }

        return new ReadFixture(row.Line, when.Date, start ?? when.Start, opponent, note, place);
    }

    private static CsvMapping? Guess(CsvSheet sheet, CsvRow? header, IReadOnlyList<CsvRow> data, List<string> remarks)
    {
        var columns = Enumerable.Range(0, sheet.Columns).ToList();
        int? Headed(Func<string, bool> means, Func<string, bool> looksRight, params int?[] taken)
        {
            var found = columns.Where(column => header is not null && !taken.Contains(column) && means(header[column]) && data.Any(row => looksRight(row[column]))).ToList();
            if (found.Count > 1)
            {
                remarks.Add($"More than one column could be meant: {string.Join(", ", found.Take(5).Select(column => $"\"{Name(header, column)}\""))}. The first one was taken; choose another if that is wrong.");
            }

            return found.Count > 0 ? found[0] : null;
        }

        int? Filled(Func<string, bool> looksRight, params int?[] taken) =>
            columns.Where(column => !taken.Contains(column))
                .Select(column => (Column: (int?)column, Cells: data.Count(row => looksRight(row[column]))))
                .Where(c => c.Cells * 2 >= data.Count)
                .OrderByDescending(c => c.Cells)
                .FirstOrDefault().Column;

        if ((Headed(HeaderWords.MeanDate, DateCell.LooksLikeOne) ?? Filled(DateCell.LooksLikeOne) ?? Headed(HeaderWords.MeanDate, Anything)) is not { } date)
        {
            return null;
        }

        var start = Headed(HeaderWords.MeanStart, Anything, date) ?? Filled(TimeCell.LooksLikeOne, date);
        var opponent = Headed(HeaderWords.MeanOpponent, Anything, date, start);
        var place = Headed(HeaderWords.MeanPlace, HeaderWords.NameAPlace, date, start, opponent);
        var note = Headed(HeaderWords.MeanNote, Anything, date, start, opponent, place);
        var (order, sure) = DateCell.Guess(data.Select(row => row[date]));
        if (!sure && data.FirstOrDefault(row => DateCell.LooksLikeOne(row[date])) is { } unsure)
        {
            remarks.Add(DateCell.Read(unsure[date], order, DateTimeZone.Utc).TryGet(out var first, out _)
                ? $"The dates do not show whether day or month comes first. {unsure[date].Trim()} is read as {first.Date.ToString("d MMM uuuu", CultureInfo.InvariantCulture)}, day first. Choose month first if that is wrong."
                : "The dates do not show whether day or month comes first. They are read day first. Choose month first if that is wrong.");
        }

        return new CsvMapping(date, start, opponent, note, place, order, data[0].Line);
    }

    private static bool Anything(string cell) => true;

    private static bool IsDateHeader(string cell) => HeaderWords.MeanDate(cell) && !cell.Any(char.IsDigit);

    private static string Name(CsvRow? header, int column) =>
        header is null || string.IsNullOrWhiteSpace(header[column]) ? $"Column {column + 1}" : BadRow.Shorten(header[column]);
}
