using CsvHelper;

namespace ClubCycle.Calendars.Sheets;

/// <summary>Writes CSV that spreadsheets open (RFC 4180). A text that would run there as a formula gets an apostrophe in front (OWASP, CSV injection).</summary>
public static class CsvText
{
    public static string Of(IEnumerable<string[]> rows)
    {
        var text = new StringWriter();
        using (var csv = CsvWriter.Create(text, new CsvWriterOptions { Injection = CsvInjection.Escape, NewLine = "\r\n" }, false))
        {
            foreach (var row in rows)
            {
                csv.WriteRecord(row);
            }
        }

        return text.ToString();
    }
}
