using System.Globalization;
using System.Text;
using ClubCycle.Planning;

namespace ClubCycle.Calendars.Sheets;

/// <summary>Free text out of a file: a name or a note.</summary>
internal static class CellText
{
    public const int Longest = 100;

    /// <summary>Trimmed and NFC; null when blank.</summary>
    /// <param name="text">Without lone surrogates, as decoded text is.</param>
    /// <param name="what">Begins the reason: <c>The opponent</c>.</param>
    public static Result<string?> Read(string? text, string what)
    {
        var trimmed = (text ?? "").Trim();
        if (trimmed.Any(char.IsControl))
        {
            return new Problem("file.control-character", $"{what} holds a line break or an invisible control character. Type it again in one line.");
        }

        // Composing shortens text, but not that much.
        var name = trimmed.Length > 10 * Longest ? trimmed : trimmed.Normalize(NormalizationForm.FormC);
        return name.Length > Longest ? new Problem("file.text-too-long", $"{what} is longer than {Longest} characters. Shorten it.")
            : new Result<string?>.Ok(name.Length == 0 ? null : name);
    }

    /// <summary>True where a digit is none of 0 to 9.</summary>
    public static bool HasForeignDigits(string text) =>
        text.Any(letter => char.GetUnicodeCategory(letter) == UnicodeCategory.DecimalDigitNumber && !char.IsAsciiDigit(letter));
}
