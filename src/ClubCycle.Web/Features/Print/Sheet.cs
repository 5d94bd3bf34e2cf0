using NodaTime;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace ClubCycle.Web.Features.Print;

internal enum Side
{
    Left,
    Middle,
    Right,
}

/// <summary>One page that is drawn on in millimetres of the design; sizes of type are points of the design. Stops when it is asked to.</summary>
internal sealed class Sheet : IDisposable
{
    private static readonly XPdfFontOptions Embedded = new(PdfFontEncoding.Unicode, PdfFontEmbedding.TryComputeSubset);

    private readonly Dictionary<(double Size, bool Bold), XFont> _fonts = [];
    private readonly PdfDocument _document = new();
    private readonly CancellationToken _cancel;
    private readonly XGraphics _graphics;
    private readonly double _unit;

    static Sheet() => PrintFontFiles.Use();

    public Sheet(PaperSize size, string title, Instant printed, CancellationToken cancel)
    {
        _cancel = cancel;
        _unit = size.Unit * PaperSize.PointsPerMillimetre;
        (Width, Height) = (size.Width / size.Unit, size.Height / size.Unit);
        _document.Info.Title = title;
        _document.Info.Creator = "ClubCycle";
        _document.Info.CreationDate = printed.ToDateTimeUtc();
        var page = _document.AddPage();
        page.Width = XUnit.FromPoint(size.Width * PaperSize.PointsPerMillimetre);
        page.Height = XUnit.FromPoint(size.Height * PaperSize.PointsPerMillimetre);
        _graphics = XGraphics.FromPdfPage(page);
    }

    public double Width { get; }

    public double Height { get; }

    /// <summary>Some text held a character that the font lacks.</summary>
    public bool Lacking { get; private set; }

    public void Fill(Box box, XColor colour) => Drawing.DrawRectangle(new XSolidBrush(colour), Rectangle(box));

    public void Frame(Box box, XColor colour, double width = 0.2) => Drawing.DrawRectangle(Pen(colour, width), Rectangle(box));

    public void Line(double x1, double y1, double x2, double y2, XColor colour, double width = 0.2) => Drawing.DrawLine(Pen(colour, width), x1 * _unit, y1 * _unit, x2 * _unit, y2 * _unit);

    public void Disc(double x, double y, double radius, XColor fill, XColor edge, double width = 0.2) =>
        Drawing.DrawEllipse(Pen(edge, width), new XSolidBrush(fill), (x - radius) * _unit, (y - radius) * _unit, 2 * radius * _unit, 2 * radius * _unit);

    public void Polyline(XColor colour, double width, params IReadOnlyList<(double X, double Y)> points) => Drawing.DrawLines(RoundPen(colour, width), [.. points.Select(At)]);

    public void Curve(XColor colour, double width, params IReadOnlyList<(double X, double Y)> points) => Drawing.DrawBeziers(RoundPen(colour, width), [.. points.Select(At)]);

    /// <param name="baseline">Where the letters stand.</param>
    public void Text(string text, double x, double baseline, double size, XColor colour, bool bold = false, Side side = Side.Left)
    {
        var line = Drawable(text, bold);
        if (line.Length > 0)
        {
            var left = side switch { Side.Left => x, Side.Middle => x - (FittedText.WidthOf(line, size, bold) / 2), _ => x - FittedText.WidthOf(line, size, bold) };
            Drawing.DrawString(line, Font(size, bold), new XSolidBrush(colour), left * _unit, baseline * _unit);
        }
    }

    /// <summary>Lines from the top of the box downwards; returns where they end.</summary>
    public double Lines(FittedText text, double x, double y, XColor colour)
    {
        foreach (var line in text.Lines)
        {
            Text(line, x, y + (text.LineHeight * 0.78), text.Size, colour, text.Bold);
            y += text.LineHeight;
        }

        return y;
    }

    /// <summary>Text that reads upwards, its lines side by side from the left.</summary>
    public void Upwards(FittedText text, Box box, XColor colour)
    {
        var state = Drawing.Save();
        _graphics.RotateAtTransform(-90, At((box.X, box.Bottom)));
        Lines(text, box.X, box.Bottom, colour);
        _graphics.Restore(state);
    }

    public string Drawable(string text, bool bold)
    {
        var drawable = PrintFont.Of(bold).Drawable(text);
        Lacking |= drawable.Contains(PrintFont.Missing, StringComparison.Ordinal);
        return drawable;
    }

    public byte[] Save()
    {
        _cancel.ThrowIfCancellationRequested();
        using var bytes = new MemoryStream();
        _document.Save(bytes);
        return bytes.ToArray();
    }

    public void Dispose()
    {
        _graphics.Dispose();
        _document.Dispose();
    }

    private XGraphics Drawing
    {
        get
        {
            _cancel.ThrowIfCancellationRequested();
            return _graphics;
        }
    }

    private XPoint At((double X, double Y) point) => new(point.X * _unit, point.Y * _unit);

    private XRect Rectangle(Box box) => new(box.X * _unit, box.Y * _unit, box.Width * _unit, box.Height * _unit);

    private XPen Pen(XColor colour, double width) => new(colour, width * _unit);

    private XPen RoundPen(XColor colour, double width) => new(colour, width * _unit) { LineCap = XLineCap.Round, LineJoin = XLineJoin.Round };

    private XFont Font(double size, bool bold)
    {
        if (!_fonts.TryGetValue((size, bold), out var font))
        {
            // The font's own size of a design point: pages larger than the design have larger type.
            font = new XFont(PrintFontFiles.Family, size * _unit / PaperSize.PointsPerMillimetre, bold ? XFontStyleEx.Bold : XFontStyleEx.Regular, Embedded);
            _fonts.Add((size, bold), font);
        }

        return font;
    }
}
