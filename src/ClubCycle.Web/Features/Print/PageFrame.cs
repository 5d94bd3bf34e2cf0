using ClubCycle.Planning.Phases;

namespace ClubCycle.Web.Features.Print;

/// <summary>Head and foot of a page.</summary>
internal static class PageFrame
{
    public const double Margin = 10;

    /// <summary>The big words at the top left, the smaller ones beneath; returns where the page below begins.</summary>
    public static double Head(Sheet sheet, string title, string below, string right)
    {
        var width = sheet.Width - (2 * Margin);
        var words = FittedText.Into(title, width * 0.7, 9.5, 20, true);
        var y = sheet.Lines(words, Margin, Margin + Math.Max(0, (9 - words.Height) / 2), Inks.Ink);
        var club = FittedText.Into(right, width * 0.28, 9, 12, true);
        var top = Margin + Math.Max(0, (8 - club.Height) / 2);
        foreach (var line in club.Lines)
        {
            sheet.Text(line, sheet.Width - Margin, top + (club.LineHeight * 0.78), club.Size, Inks.Soft, true, Side.Right);
            top += club.LineHeight;
        }

        y = sheet.Lines(FittedText.Into(below, width, 5, 10), Margin, Math.Max(y, Margin + 9.4), Inks.Soft);
        return y + 1.5;
    }

    /// <summary>The caution and where the page comes from.</summary>
    public static void Foot(Sheet sheet, PrintHead head, params IReadOnlyList<string> notes)
    {
        var y = sheet.Height - Margin;
        sheet.Line(Margin, y - 7.2, sheet.Width - Margin, y - 7.2, Inks.StrongLine);
        var printed = PrintText.Printed(head.Today);
        sheet.Text(PrintText.Caution, Margin, y - 4.2, 8.5, Inks.Ink, true);
        sheet.Text(printed, sheet.Width - Margin, y - 4.2, 8, Inks.Soft, side: Side.Right);
        var below = FittedText.Into(string.Join(' ', notes.Append(sheet.Lacking ? PrintText.Lacking : "").Where(n => n.Length > 0)), sheet.Width - (2 * Margin), 3.7, 8);
        sheet.Lines(below, Margin, y - 3.4, Inks.Soft);
    }

    /// <summary>A swatch and a name for each phase that is on the page; returns where the next key may stand.</summary>
    public static double PhaseKeys(Sheet sheet, double x, double y, IEnumerable<PhaseKind> phases)
    {
        foreach (var phase in phases)
        {
            Inks.Pattern(sheet, new Box(x, y, 11, 4), phase);
            var words = $"{Board.PhaseText.Name(phase)} ({PrintText.ShortPhase(phase)})";
            sheet.Text(words, x + 12.2, y + 3, 8, Inks.Ink);
            x += 12.2 + FittedText.WidthOf(words, 8, false) + 4;
        }

        return x;
    }
}
