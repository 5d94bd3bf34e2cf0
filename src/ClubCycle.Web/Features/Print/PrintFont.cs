using System.Buffers.Binary;
using System.Globalization;
using System.Text;
using PdfSharp.Fonts;

namespace ClubCycle.Web.Features.Print;

/// <summary>A face of the bundled font: what it can draw, and how wide. Widths are read from the file, so that text can be fitted before it is drawn.</summary>
internal sealed class PrintFont
{
    /// <summary>Stands for what the font cannot draw.</summary>
    public const string Missing = "□";

    private readonly Dictionary<int, double> _widths = [];

    private PrintFont(string file)
    {
        File = file;
        using var stream = typeof(PrintFont).Assembly.GetManifestResourceStream(file) ?? throw new InvalidOperationException($"The font {file} is not in the program.");
        Bytes = new byte[stream.Length];
        stream.ReadExactly(Bytes);
        ReadWidths();
    }

    public static PrintFont Regular { get; } = new("SourceSans3-Regular.ttf");

    public static PrintFont Semibold { get; } = new("SourceSans3-Semibold.ttf");

    public static PrintFont Of(bool bold) => bold ? Semibold : Regular;

    public string File { get; }

    public byte[] Bytes { get; }

    /// <summary>In ems, without kerning: as it is drawn.</summary>
    public double Width(string text) => text.EnumerateRunes().Sum(rune => _widths.GetValueOrDefault(rune.Value));

    /// <summary>One line that the font can draw whole: what it lacks is replaced, a grapheme by one sign.</summary>
    public string Drawable(string text)
    {
        var drawable = new StringBuilder(text.Length);
        var graphemes = StringInfo.GetTextElementEnumerator(text.Normalize(NormalizationForm.FormC));
        while (graphemes.MoveNext())
        {
            var seen = graphemes.GetTextElement().EnumerateRunes().Where(r => Rune.GetUnicodeCategory(r) is not (UnicodeCategory.Format or UnicodeCategory.NonSpacingMark)).ToList();
            drawable.Append(
                seen.Count == 0 ? ""
                : seen.All(r => Rune.IsWhiteSpace(r) || Rune.IsControl(r)) ? " "
                : seen.All(r => _widths.ContainsKey(r.Value)) ? string.Concat(seen)
                : Missing);
        }

        return drawable.ToString();
    }

    // OpenType: tables cmap (formats 4 and 12), head, hhea and hmtx.
    private void ReadWidths()
    {
        double em = U16(Table("head") + 18);
        var (metrics, measured) = (Table("hmtx"), U16(Table("hhea") + 34));
        foreach (var (rune, glyph) in Glyphs(Table("cmap")))
        {
            _widths[rune] = U16(metrics + (4 * Math.Min(glyph, measured - 1))) / em;
        }
    }

    private IEnumerable<(int Rune, int Glyph)> Glyphs(int cmap)
    {
        var tables = Enumerable.Range(0, U16(cmap + 2)).Select(i => cmap + (int)U32(cmap + 4 + (8 * i) + 4)).ToList();
        var format = tables.Any(t => U16(t) == 12) ? 12 : 4;
        var table = tables.First(t => U16(t) == format);
        return (format == 12 ? Groups(table) : Segments(table)).Where(g => g.Glyph != 0);
    }

    private IEnumerable<(int Rune, int Glyph)> Groups(int table)
    {
        for (var group = table + 16; group < table + 16 + (12 * U32(table + 12)); group += 12)
        {
            for (var rune = U32(group); rune <= U32(group + 4); rune++)
            {
                yield return ((int)rune, (int)(U32(group + 8) + rune - U32(group)));
            }
        }
    }

    private IEnumerable<(int Rune, int Glyph)> Segments(int table)
    {
        var length = U16(table + 6);
        var (ends, starts, deltas, offsets) = (table + 14, table + 16 + length, table + 16 + (2 * length), table + 16 + (3 * length));
        for (var i = 0; i < length; i += 2)
        {
            for (int rune = U16(starts + i); rune <= U16(ends + i) && rune != 0xFFFF; rune++)
            {
                var offset = U16(offsets + i);
                var glyph = offset == 0 ? rune : U16(offsets + i + offset + (2 * (rune - U16(starts + i))));
                yield return (rune, glyph == 0 ? 0 : (glyph + U16(deltas + i)) & 0xFFFF);
            }
        }
    }

    private int Table(string name)
    {
        for (var entry = 12; entry < 12 + (16 * U16(4)); entry += 16)
        {
            if (Encoding.ASCII.GetString(Bytes, entry, 4) == name)
            {
                return (int)U32(entry + 8);
            }
        }

        throw new InvalidOperationException($"The font {File} has no table {name}.");
    }

    private ushort U16(int at) => BinaryPrimitives.ReadUInt16BigEndian(Bytes.AsSpan(at));

    private uint U32(int at) => BinaryPrimitives.ReadUInt32BigEndian(Bytes.AsSpan(at));
}

/// <summary>Gives the PDF library the bundled font; no font of the machine is ever used.</summary>
internal sealed class PrintFontFiles : IFontResolver
{
    public const string Family = "ClubCycle print";

    private static readonly Lock Once = new();

    /// <summary>The library keeps one resolver for the whole process.</summary>
    public static void Use()
    {
        lock (Once)
        {
            GlobalFontSettings.FontResolver ??= new PrintFontFiles();
        }
    }

    public FontResolverInfo ResolveTypeface(string familyName, bool isBold, bool isItalic) => new(PrintFont.Of(isBold).File);

    public byte[] GetFont(string faceName) => PrintFont.Of(bold: faceName == PrintFont.Semibold.File).Bytes;
}
