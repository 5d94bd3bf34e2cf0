using System.Text;

namespace ClubCycle.Calendars.Sheets;

/// <summary>A row of a file that could not be used.</summary>
/// <param name="Line">Line of the file on which the row starts, from 1.</param>
/// <param name="Raw">The row's text: at most 80 characters, control characters shown as a middle dot.</param>
/// <param name="Reason">A sentence for a coach that ends in the next step.</param>
public sealed record BadRow(int Line, string Raw, string Reason)
{
    private const int Longest = 80;

    internal static BadRow Of(int line, string raw, string reason) => new(line, Shorten(raw), reason);

    /// <summary>The text as it can be shown: short, on one line, never cut inside a character.</summary>
    internal static string Shorten(string text)
    {
        var shown = new StringBuilder();
        var runes = 0;
        foreach (var rune in text.AsSpan().Trim().EnumerateRunes())
        {
            if (runes++ == Longest - 1)
            {
                return shown.Append('…').ToString();
            }

            shown.Append(Rune.IsControl(rune) ? "·" : rune.ToString());
        }

        return shown.ToString();
    }
}
