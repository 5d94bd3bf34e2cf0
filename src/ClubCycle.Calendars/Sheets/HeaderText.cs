using System.Globalization;
using System.Text;

namespace ClubCycle.Calendars.Sheets;

/// <summary>The head of a column as words that can be compared.</summary>
internal static class HeaderText
{
    private const int Longest = 100;

    public static bool Meets(string header, HashSet<string> words) => Words(header).Any(words.Contains);

    /// <summary>The text is one of the words and nothing else.</summary>
    public static bool Is(string text, HashSet<string> words) => words.Contains(Words(text)[^1]);

    /// <summary>Lower case, without accents; all of them together count as one word too ("Kick-off").</summary>
    private static string[] Words(string header)
    {
        var plain = new StringBuilder();
        foreach (var letter in Start(header).Normalize(NormalizationForm.FormD))
        {
            if (CharUnicodeInfo.GetUnicodeCategory(letter) != UnicodeCategory.NonSpacingMark)
            {
                plain.Append(char.IsLetter(letter) ? char.ToLowerInvariant(letter) : ' ');
            }
        }

        var words = plain.ToString().Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return [.. words, string.Concat(words)];
    }

    /// <summary>Never cut inside a character.</summary>
    private static string Start(string header) =>
        header.Length <= Longest ? header : header[..(char.IsHighSurrogate(header[Longest - 1]) ? Longest - 1 : Longest)];
}
