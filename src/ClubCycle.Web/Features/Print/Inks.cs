using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Workouts;
using ClubCycle.Web.Features.Board;
using PdfSharp.Drawing;

namespace ClubCycle.Web.Features.Print;

/// <summary>The screens' colours, patterns and glyphs on paper. Marks are stronger than on screen: a copier without colour must keep them apart.</summary>
internal static class Inks
{
    public static readonly XColor Paper = XColor.FromArgb(0xFF, 0xFF, 0xFF);
    public static readonly XColor Ink = XColor.FromArgb(0x1D, 0x2B, 0x30);
    public static readonly XColor Soft = XColor.FromArgb(0x50, 0x5D, 0x60);
    public static readonly XColor Line = XColor.FromArgb(0xDD, 0xD9, 0xCD);
    public static readonly XColor StrongLine = XColor.FromArgb(0x7F, 0x84, 0x80);
    public static readonly XColor Accent = XColor.FromArgb(0x0B, 0x5F, 0x66);

    private static readonly XColor Dark = XColor.FromArgb(0x3F, 0x78, 0x7A);
    private static readonly XColor GlyphInk = XColor.FromArgb(0x10, 0x17, 0x1A);
    private static readonly XColor Pale = XColor.FromArgb(0xE4, 0xEF, 0xEE);

    /// <summary>A band in its pattern, with the phase's name where there is room for it.</summary>
    public static void Band(Sheet sheet, Box box, PhaseKind phase, double size, string? words = null)
    {
        Pattern(sheet, box, phase);
        size = Math.Min(size, box.Height * 2.4);
        foreach (var (name, smallest, room) in new[] { (words ?? PhaseText.Name(phase), size * 0.75, 4.0), (PhaseText.Name(phase), 5.0, 2.6), (PrintText.ShortPhase(phase), 4.0, 0.8) })
        {
            var type = Math.Max(smallest, size);
            while (type > smallest && FittedText.WidthOf(name, type, true) + room > box.Width)
            {
                type -= 0.25;
            }

            if (FittedText.WidthOf(name, type, true) + room <= box.Width)
            {
                Name(sheet, box, phase, name, type);
                return;
            }
        }
    }

    private static void Name(Sheet sheet, Box box, PhaseKind phase, string name, double type)
    {
        var width = FittedText.WidthOf(name, type, true);
        var (wide, tall) = (Math.Min(width + 1.6, box.Width - 0.3), Math.Min(type * 0.4, box.Height - 0.2));
        if (phase is not (PhaseKind.InSeason or PhaseKind.Recovery))
        {
            sheet.Fill(new Box(box.MiddleX - (wide / 2), box.MiddleY - (tall / 2), wide, tall), phase == PhaseKind.PreSeason ? Accent : Paper);
        }

        sheet.Text(name, box.MiddleX, box.MiddleY + (type * 0.115), type, phase is PhaseKind.InSeason or PhaseKind.PreSeason ? Paper : Ink, true, Side.Middle);
    }

    public static void Pattern(Sheet sheet, Box box, PhaseKind phase)
    {
        sheet.Fill(box, phase switch
        {
            PhaseKind.InSeason => Ink,
            PhaseKind.Break => Paper,
            PhaseKind.Recovery or PhaseKind.Restore => Pale,
            PhaseKind.AerobicBuild => XColor.FromArgb(0xC8, 0xDF, 0xDD),
            PhaseKind.Mixed => XColor.FromArgb(0x93, 0xBF, 0xBF),
            PhaseKind.PreSeason => Accent,
            _ => throw new ArgumentOutOfRangeException(nameof(phase), phase, "Unknown phase"),
        });
        switch (phase)
        {
            case PhaseKind.Break:
                for (var x = box.X + 1; x < box.Right - 0.2; x += 1.8)
                {
                    sheet.Line(x, box.Y, x, box.Bottom, Dark, 0.35);
                }

                break;
            case PhaseKind.Restore:
                for (var y = box.Y + 0.6; y < box.Bottom - 0.1; y += 0.9)
                {
                    sheet.Line(box.X, y, box.Right, y, Dark, 0.22);
                }

                break;
            case PhaseKind.AerobicBuild:
                Slanted(sheet, box, 2.2, rising: true, Dark, 0.35);
                break;
            case PhaseKind.Mixed:
                Slanted(sheet, box, 1.9, rising: true, Accent, 0.2);
                Slanted(sheet, box, 1.9, rising: false, Accent, 0.2);
                break;
            case PhaseKind.PreSeason:
                Slanted(sheet, box, 1.6, rising: false, XColor.FromArgb(0xA6, 0xD3, 0xD2), 0.25);
                break;
        }

        sheet.Frame(box, Ink, 0.15);
    }

    /// <summary>A match: filled; white in its middle, the number when there are several.</summary>
    public static void Match(Sheet sheet, double x, double y, double radius, int matches)
    {
        sheet.Disc(x, y, radius, Ink, Ink);
        if (matches > 1)
        {
            sheet.Text(PrintText.Number(matches), x, y + (radius * 0.62), radius * 4.6, Paper, true, Side.Middle);
        }
    }

    /// <summary>The quality's chip with its sign, drawn as on screen on a field of 24 by 24.</summary>
    public static void Glyph(Sheet sheet, Quality quality, double x, double y, double size)
    {
        (double X, double Y) At(double gx, double gy) => (x + (gx / 24 * size), y + (gy / 24 * size));
        var stroke = 2.4 / 24 * size;
        sheet.Fill(new Box(x, y, size, size), quality switch
        {
            Quality.AerobicEndurance => XColor.FromArgb(0x56, 0xB4, 0xE9),
            Quality.Speed => XColor.FromArgb(0xD5, 0x5E, 0x00),
            Quality.Agility => XColor.FromArgb(0xE6, 0x9F, 0x00),
            Quality.CoreStrength => XColor.FromArgb(0x00, 0x9E, 0x73),
            Quality.MuscularEndurance => XColor.FromArgb(0xCC, 0x79, 0xA7),
            _ => throw new ArgumentOutOfRangeException(nameof(quality), quality, "Unknown quality"),
        });
        switch (quality)
        {
            case Quality.AerobicEndurance:
                sheet.Curve(GlyphInk, stroke, At(2.5, 14), At(6, 6), At(9, 6), At(12, 12), At(15, 18), At(18, 18), At(21.5, 10));
                break;
            case Quality.Speed:
                sheet.Polyline(GlyphInk, stroke, At(5, 5.5), At(11, 12), At(5, 18.5));
                sheet.Polyline(GlyphInk, stroke, At(13, 5.5), At(19, 12), At(13, 18.5));
                break;
            case Quality.Agility:
                sheet.Polyline(GlyphInk, stroke, At(3.5, 16.5), At(8.5, 7.5), At(12.5, 16.5), At(16.5, 7.5), At(20.5, 16.5));
                break;
            case Quality.CoreStrength:
                sheet.Disc(x + (size / 2), y + (size / 2), 6.5 / 24 * size, XColor.FromArgb(0, 0, 0, 0), GlyphInk, stroke);
                break;
            case Quality.MuscularEndurance:
                foreach (var bar in (double[])[6.5, 12, 17.5])
                {
                    sheet.Polyline(GlyphInk, stroke, At(5, bar), At(19, bar));
                }

                break;
        }
    }

    /// <summary>One, two or three thirds of a bar, filled from below.</summary>
    public static void HardnessBar(Sheet sheet, Box box, Hardness hardness)
    {
        var thirds = hardness switch { Hardness.Easy => 1, Hardness.Moderate => 2, Hardness.Hard => 3, _ => throw new ArgumentOutOfRangeException(nameof(hardness), hardness, "Unknown hardness") };
        sheet.Fill(box, Line);
        sheet.Fill(new Box(box.X, box.Bottom - (box.Height * thirds / 3), box.Width, box.Height * thirds / 3), Ink);
    }

    // Lines of 45 degrees, cut where the box ends.
    private static void Slanted(Sheet sheet, Box box, double step, bool rising, XColor colour, double width)
    {
        for (var at = step / 2; at < box.Width + box.Height; at += step)
        {
            var (fromX, fromY) = (Math.Max(0, at - box.Height), Math.Min(at, box.Height));
            var (toX, toY) = (Math.Min(at, box.Width), Math.Max(0, at - box.Width));
            sheet.Line(box.X + fromX, rising ? box.Y + fromY : box.Bottom - fromY, box.X + toX, rising ? box.Y + toY : box.Bottom - toY, colour, width);
        }
    }
}
