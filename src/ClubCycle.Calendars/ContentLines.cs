using System.Text;

namespace ClubCycle.Calendars;

/// <summary>The line rules of RFC 5545, 3.1: CRLF, and at most 75 octets a line, folded between whole characters.</summary>
internal static class ContentLines
{
    private const int MostOctets = 75;

    /// <summary>Joins folded lines and folds them again so that no UTF-8 sequence is cut.</summary>
    public static string Refold(string calendarText)
    {
        var folded = new StringBuilder(calendarText.Length + (calendarText.Length / 32));
        foreach (var line in Unfold(calendarText).Split("\r\n", StringSplitOptions.RemoveEmptyEntries))
        {
            AppendFolded(folded, line);
        }

        return folded.ToString();
    }

    /// <summary>Line ends become LF; characters that no content line may hold, or that careless readers take for a line end, go.</summary>
    public static string Clean(string text)
    {
        var clean = new StringBuilder(text.Length);
        var previousWasReturn = false;
        foreach (var rune in text.EnumerateRunes())
        {
            // EnumerateRunes turns half a surrogate pair into U+FFFD.
            switch (rune.Value)
            {
                case '\r':
                case 0x85 or 0x0B or 0x0C or 0x2028 or 0x2029:
                    clean.Append('\n');
                    break;
                case '\n' when previousWasReturn:
                    break;
                case '\n' or '\t':
                    clean.Append((char)rune.Value);
                    break;
                case < 0x20 or (>= 0x7F and < 0xA0):
                    break;
                default:
                    clean.Append(rune.ToString());
                    break;
            }

            previousWasReturn = rune.Value == '\r';
        }

        return clean.ToString();
    }

    private static string Unfold(string text) =>
        text.Replace("\r\n ", "", StringComparison.Ordinal).Replace("\r\n\t", "", StringComparison.Ordinal);

    private static void AppendFolded(StringBuilder folded, string line)
    {
        var octets = 0;
        foreach (var rune in line.EnumerateRunes())
        {
            if (octets + rune.Utf8SequenceLength > MostOctets)
            {
                // The space that marks the continuation counts.
                folded.Append("\r\n ");
                octets = 1;
            }

            folded.Append(rune.ToString());
            octets += rune.Utf8SequenceLength;
        }

        folded.Append("\r\n");
    }
}
