namespace ClubCycle.Web.Features.Print;

/// <summary>Text broken into lines that fit a width.</summary>
/// <param name="Size">Points of the design.</param>
internal sealed record FittedText(IReadOnlyList<string> Lines, double Size, bool Bold)
{
    private const double MillimetresPerPoint = 1 / PaperSize.PointsPerMillimetre;
    private const double Leading = 1.26;

    /// <summary>Smaller type than this is not tried.</summary>
    public const double Smallest = 4;

    public double LineHeight => LineHeightOf(Size);

    public double Height => Lines.Count * LineHeight;

    public static double LineHeightOf(double size) => size * MillimetresPerPoint * Leading;

    public static double WidthOf(string text, double size, bool bold) => PrintFont.Of(bold).Width(text) * size * MillimetresPerPoint;

    /// <summary>In the largest type that fits; cut with an ellipsis when even the smallest does not.</summary>
    public static FittedText Into(string text, double width, double height, double size, bool bold = false, double smallest = Smallest)
    {
        for (; size > smallest; size -= 0.25)
        {
            if (Wrap(text, width, size, bold) is var fitted && fitted.Height <= height && !fitted.BreaksWords(text))
            {
                return fitted;
            }
        }

        var least = Wrap(text, width, smallest, bold);
        var room = Math.Max(1, (int)(height / least.LineHeight));
        return least.Lines.Count <= room ? least : least with { Lines = [.. least.Lines.Take(room - 1), Cut(least.Lines[room - 1] + "…", width, smallest, bold)] };
    }

    public static FittedText Wrap(string text, double width, double size, bool bold = false)
    {
        List<string> lines = [];
        var line = "";
        foreach (var word in PrintFont.Of(bold).Drawable(text).Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (WidthOf(longer, size, bold) <= width)
            {
                line = longer;
                continue;
            }

            if (line.Length > 0)
            {
                lines.Add(line);
            }

            line = word;
            while (WidthOf(line, size, bold) > width && line.Length > 1)
            {
                var start = Start(line, width, size, bold);
                lines.Add(line[..start]);
                line = line[start..];
            }
        }

        if (line.Length > 0)
        {
            lines.Add(line);
        }

        return new FittedText(lines, size, bold);
    }

    /// <summary>One line, cut with an ellipsis where it must be.</summary>
    public static string Cut(string text, double width, double size, bool bold)
    {
        var line = PrintFont.Of(bold).Drawable(text);
        return WidthOf(line, size, bold) <= width ? line : line[..Start(line, width - WidthOf("…", size, bold), size, bold)].TrimEnd('…', ' ') + "…";
    }

    private bool BreaksWords(string text) => Lines.Count > 1 && string.Join(' ', Lines).Length != string.Join(' ', PrintFont.Of(Bold).Drawable(text).Split(' ', StringSplitOptions.RemoveEmptyEntries)).Length;

    private static int Start(string line, double width, double size, bool bold)
    {
        var length = 1;
        while (length < line.Length && WidthOf(line[..(length + 1)], size, bold) <= width)
        {
            length++;
        }

        return length < line.Length && char.IsLowSurrogate(line[length]) ? length + 1 : length;
    }
}
