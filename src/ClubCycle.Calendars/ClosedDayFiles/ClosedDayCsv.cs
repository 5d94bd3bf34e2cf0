using System.Globalization;
using ClubCycle.Calendars.Sheets;
using ClubCycle.Planning;
using ClubCycle.Planning.Seasons;
using NodaTime;

namespace ClubCycle.Calendars.ClosedDayFiles;

/// <summary>Reads school holidays and other closed days from a CSV file of at most 1 MB. A file that is no such list gives a <c>file.*</c> problem.</summary>
public static class ClosedDayCsv
{
    private const int RowsShown = 10;
    private const int HeaderWithin = 10;

    /// <summary>What the file looks like and which column seems to say what.</summary>
    public static Result<ClosedDayLook> Look(byte[] bytes)
    {
        if (!CsvSheet.Open(bytes).TryGet(out var sheet, out var problems))
        {
            return new Result<ClosedDayLook>.Failed(problems);
        }

        var header = sheet.Rows.Take(HeaderWithin).FirstOrDefault(row => !row.Cells.Any(DateCell.LooksLikeOne) && row.Cells.Any(ClosedDayWords.MeanFirst));
        var data = header is null ? sheet.Rows : [.. sheet.Rows.Where(row => row.Line > header.Line)];
        List<string> remarks = [];
        var guess = Guess(sheet, header, data, remarks);
        if (guess is null)
        {
            remarks.Add("No column looks like dates. Choose the column with the first days, or check that this is the right file.");
        }

        return new ClosedDayLook(
            sheet.Encoding,
            sheet.Delimiter,
            [.. Enumerable.Range(0, sheet.Columns).Select(column => header is null || string.IsNullOrWhiteSpace(header[column]) ? $"Column {column + 1}" : BadRow.Shorten(header[column]))],
            [.. data.Take(RowsShown).Select(row => Enumerable.Range(0, sheet.Columns).Select(column => BadRow.Shorten(row[column])).ToList())],
            guess,
            remarks);
    }

    public static Result<ClosedDayFile> Read(byte[] bytes, ClosedDayMapping mapping)
    {
        if (!CsvSheet.Open(bytes).TryGet(out var sheet, out var problems))
        {
            return new Result<ClosedDayFile>.Failed(problems);
        }

        int?[] columns = [mapping.First, mapping.Last, mapping.Why];
        if (columns.Any(column => column < 0 || column >= sheet.Columns))
        {
            return new Problem("file.no-such-column", $"The file has {sheet.Columns} columns, and one that was chosen is not among them. Choose the columns again.");
        }

        List<ReadClosedDays> good = [];
        List<BadRow> bad = [];
        Dictionary<ClosedDays, int> seen = [];
        foreach (var row in sheet.Rows.Where(row => row.Line >= mapping.FirstLine))
        {
            if (!Days(row, mapping).TryGet(out var days, out var reasons))
            {
                bad.Add(BadRow.Of(row.Line, row.Raw, reasons[0].Message));
            }
            else if (!seen.TryAdd(days, row.Line))
            {
                bad.Add(BadRow.Of(row.Line, row.Raw, $"Line {seen[days]} says the same. Delete one of the two."));
            }
            else
            {
                good.Add(new ReadClosedDays(row.Line, days));
            }
        }

        return new ClosedDayFile(good, bad, [.. sheet.Rows.Where(row => row.Lines > 1 && row.Line >= mapping.FirstLine).Select(row =>
            $"Lines {row.Line} to {row.Line + row.Lines - 1} were read as one row because a cell in quotation marks holds line breaks. Check that no day is missing.")]);
    }

    private static Result<ClosedDays> Days(CsvRow row, ClosedDayMapping mapping)
    {
        if (row.LoneQuote)
        {
            return new Problem("file.lone-quote", "A quotation mark in this row has no partner. Remove it, or add the second one.");
        }

        // A time behind a date says nothing about a whole day, so the zone does not matter.
        if (!DateCell.Read(row[mapping.First], mapping.Order, DateTimeZone.Utc).TryGet(out var first, out var problems)
            || !CellText.Read(row[mapping.Why], "The reason").TryGet(out var why, out problems))
        {
            return new Result<ClosedDays>.Failed(problems);
        }

        var last = first;
        if (!string.IsNullOrWhiteSpace(row[mapping.Last]) && !DateCell.Read(row[mapping.Last], mapping.Order, DateTimeZone.Utc).TryGet(out last, out problems))
        {
            return new Result<ClosedDays>.Failed(problems);
        }

        var days = new ClosedDays(first.Date, last.Date, why ?? ClosedDays.WithoutReason);
        return days.Problems() is [var problem, ..] ? problem : days;
    }

    private static ClosedDayMapping? Guess(CsvSheet sheet, CsvRow? header, IReadOnlyList<CsvRow> data, List<string> remarks)
    {
        var columns = Enumerable.Range(0, sheet.Columns).Select(c => (int?)c).ToList();
        bool Dated(int? column) => data.Any(row => DateCell.LooksLikeOne(row[column]));
        var dated = columns.Where(Dated).ToList();
        int? Headed(Func<string, bool> means, IEnumerable<int?> among) => header is null ? null : among.FirstOrDefault(c => means(header[c]));

        if ((Headed(ClosedDayWords.MeanFirst, dated) ?? dated.FirstOrDefault()) is not { } first)
        {
            return null;
        }

        var last = Headed(ClosedDayWords.MeanLast, dated.Where(c => c != first)) ?? dated.FirstOrDefault(c => c > first);
        var texts = columns.Where(c => c != first && c != last && !Dated(c) && data.Any(row => !string.IsNullOrWhiteSpace(row[c]))).ToList();
        var why = Headed(ClosedDayWords.MeanWhy, texts) ?? texts.FirstOrDefault(c => data.Any(row => row[c].Any(char.IsLetter)));
        var (order, sure) = DateCell.Guess(data.SelectMany(row => new[] { row[first], row[last] }));
        if (!sure && data.FirstOrDefault(row => DateCell.LooksLikeOne(row[first])) is { } unsure
            && DateCell.Read(unsure[first], order, DateTimeZone.Utc).TryGet(out var read, out _))
        {
            remarks.Add($"The dates do not show whether day or month comes first. {unsure[first].Trim()} is read as {read.Date.ToString("d MMM uuuu", CultureInfo.InvariantCulture)}, day first. Choose month first if that is wrong.");
        }

        return new ClosedDayMapping(first, last, why, order, data[0].Line);
    }
}
