using System.Text;
using ClubCycle.Planning;

namespace ClubCycle.Calendars.Sheets;

/// <summary>The text of an uploaded file, with the encoding it was read in.</summary>
internal sealed record FileText(string Text, string Encoding)
{
    /// <summary>One mebibyte.</summary>
    public const int MostBytes = 1_048_576;

    private static readonly Encoding Utf8 = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);
    private static readonly Encoding Windows = CodePagesEncodingProvider.Instance.GetEncoding(1252)!;

    // UTF-32 first: its little-endian mark begins with that of UTF-16.
    private static readonly (byte[] Mark, Encoding Encoding, string Name)[] Marks =
    [
        ([0xFF, 0xFE, 0x00, 0x00], new UTF32Encoding(bigEndian: false, byteOrderMark: true), "UTF-32"),
        ([0x00, 0x00, 0xFE, 0xFF], new UTF32Encoding(bigEndian: true, byteOrderMark: true), "UTF-32"),
        ([0xFF, 0xFE], System.Text.Encoding.Unicode, "UTF-16"),
        ([0xFE, 0xFF], System.Text.Encoding.BigEndianUnicode, "UTF-16"),
    ];

    /// <summary>By byte order mark, else UTF-8 where every byte fits, else Windows-1252.</summary>
    public static Result<FileText> Read(byte[] bytes)
    {
        if (Refuse(bytes) is { } problem)
        {
            return problem;
        }

        var read = Decode(bytes);
        return string.IsNullOrWhiteSpace(read.Text) ? new Problem("file.empty", "The file is empty. Export it again and check that it holds rows.")
            // A stray one spoils its row only; many mean bytes that are no text, or UTF-16 without its mark.
            : read.Text.Count(letter => letter == '\0') * 20 > read.Text.Length
                ? new Problem("file.not-text", "The file is not plain text. Open it in its own program and save it as CSV (UTF-8), or export the calendar as .ics.")
            : read;
    }

    /// <summary>The bytes as UTF-8, or as they are where they are neither UTF-16 nor UTF-32.</summary>
    public static byte[] Narrow(byte[] bytes) =>
        Marks.Any(m => bytes.AsSpan().StartsWith(m.Mark)) ? Utf8.GetBytes(Decode(bytes).Text) : bytes;

    private static Problem? Refuse(byte[] bytes) =>
        bytes.Length > MostBytes ? new Problem("file.too-large", "The file is larger than 1 MB. Export the rows of one season only.")
        : bytes.AsSpan().StartsWith("PK\u0003\u0004"u8) ? new Problem("file.workbook", "This is a spreadsheet workbook or a zip archive, whatever its name says. Open it and save the sheet as CSV (UTF-8).")
        : null;

    private static FileText Decode(byte[] bytes)
    {
        foreach (var (mark, encoding, name) in Marks)
        {
            if (bytes.AsSpan().StartsWith(mark))
            {
                return new(encoding.GetString(bytes, mark.Length, bytes.Length - mark.Length), name);
            }
        }

        var start = bytes.AsSpan().StartsWith("\uFEFF"u8) ? 3 : 0;
        try
        {
            return new(Utf8.GetString(bytes, start, bytes.Length - start), "UTF-8");
        }
        catch (DecoderFallbackException)
        {
            return new(Windows.GetString(bytes, start, bytes.Length - start), "Windows-1252");
        }
    }
}
