using System.Globalization;
using System.Text;

namespace ClubCycle.Planning;

/// <summary>
/// The one check of what people type. Text is kept trimmed and composed (NFC), so that a word is the same text whatever keyboard it came from;
/// nothing else about it is changed, and what cannot be kept so is refused.
/// </summary>
public static class TypedText
{
    // Letters and signs that draw nothing: Hangul fillers and the empty Braille cell.
    private static readonly int[] Blanks = [0x115F, 0x1160, 0x3164, 0xFFA0, 0x2800];

    /// <summary>What is wrong with a name that must be given; null for nothing.</summary>
    /// <param name="code">The first part of the problem's code: <c>squad.name</c>.</param>
    /// <param name="what">As in a sentence: <c>name</c>.</param>
    public static Problem? NameProblem(string text, int longest, string code, string what, string at) =>
        SignProblem(text, code, what, at, lines: false)
        ?? (IsVisible(text) ? LengthProblem(text, longest, code, what, at) : new Problem($"{code}-missing", $"The {what} is empty. Write at least one letter, digit or sign that can be seen.", at));

    /// <summary>What is wrong with a line that may be empty; null for nothing.</summary>
    /// <param name="code">The first part of the problem's code: <c>fixture.opponent</c>.</param>
    /// <param name="what">As in a sentence: <c>opponent's name</c>.</param>
    public static Problem? LineProblem(string? text, int longest, string code, string what, string at) =>
        string.IsNullOrWhiteSpace(text) ? null : NameProblem(text, longest, code, what, at);

    /// <summary>What is wrong with a note, which may be empty and have several lines; null for nothing.</summary>
    /// <param name="code">The first part of the problem's code: <c>plan.note</c>.</param>
    /// <param name="what">As in a sentence: <c>note</c>.</param>
    public static Problem? NoteProblem(string? text, int longest, string code, string what, string at) =>
        string.IsNullOrWhiteSpace(text) ? null : SignProblem(text, code, what, at, lines: true) ?? LengthProblem(text, longest, code, what, at);

    /// <summary>As it is kept. The text must have been checked.</summary>
    public static string Tidy(string text) => text.ReplaceLineEndings("\n").Trim().Normalize(NormalizationForm.FormC);

    /// <summary>How many characters the database counts.</summary>
    public static int Length(string text) => text.EnumerateRunes().Count();

    /// <summary>The first so many characters, none of them cut in half.</summary>
    public static string Start(string text, int most) => Length(text) <= most ? text : string.Concat(text.EnumerateRunes().Take(most));

    private static Problem? SignProblem(string text, string code, string what, string at, bool lines)
    {
        var trimmed = text.ReplaceLineEndings("\n").Trim();
        return trimmed.Any(c => c == '\uFFFE') || IsHalf(trimmed)
                ? new Problem($"{code}-broken", $"The {what} holds a broken character, such as half of an emoji. Remove it and type it again.", at)
            : trimmed.Any(c => char.IsControl(c) && !(lines && c == '\n'))
                ? new Problem($"{code}-control-character", $"The {what} holds a control character{(lines ? ", such as a tab. Remove it." : ", such as a line break. Write it on one line.")}", at)
            : trimmed.Any(c => c is (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069'))
                ? new Problem($"{code}-direction", $"The {what} holds an invisible sign that turns the direction of the text around it. Type it without; right-to-left letters need none.", at)
            : null;
    }

    private static Problem? LengthProblem(string text, int longest, string code, string what, string at)
    {
        var tidy = Tidy(text);
        var (seen, kept) = (new StringInfo(tidy).LengthInTextElements, Length(tidy));
        return kept <= longest ? null : new Problem(
            $"{code}-too-long",
            seen > longest
                ? $"The {what} has {seen} characters; use {longest} at most."
                : $"The {what} has {seen} characters, some of them made of several: it takes the room of {kept}, and there is room for {longest}. Shorten it.",
            at);
    }

    private static bool IsVisible(string text) => text.EnumerateRunes().Any(rune => !Blanks.Contains(rune.Value) && Rune.GetUnicodeCategory(rune) is not (
        UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.SpaceSeparator or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator
        or UnicodeCategory.NonSpacingMark or UnicodeCategory.SpacingCombiningMark or UnicodeCategory.EnclosingMark));

    private static bool IsHalf(string text)
    {
        for (var i = 0; i < text.Length; i++)
        {
            if (char.IsHighSurrogate(text[i]) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]))
            {
                i++;
            }
            else if (char.IsSurrogate(text[i]))
            {
                return true;
            }
        }

        return false;
    }
}
