using ClubCycle.Data.Plans;
using ClubCycle.Planning;
using ClubCycle.Planning.Weeks;
using ClubCycle.Web.Features.Board;
using ClubCycle.Web.Features.Weeks;

namespace ClubCycle.Web.Features.Print;

/// <summary>A squad's week with its sessions and steps on one page for the changing room.</summary>
internal static class WeekSheet
{
    private const double Largest = 12;
    private const double SmallestWithSteps = 5;
    private const double DayWidth = 27;

    public static byte[] Draw(PrintHead head, SquadDraft draft, PlanWeek week, CancellationToken cancel)
    {
        var name = draft.Request.Squad.Name;
        var iso = BoardWeek.From(week.First).IsoWeek;
        using var sheet = new Sheet(PaperSize.A4, PrintText.Title(name, PrintText.WeekName(iso)), head.PrintedAt, cancel);
        var top = PageFrame.Head(
            sheet, name, $"{PrintText.WeekName(iso)}: {PrintText.Range(week.First, week.Last)}. {PrintText.StatusSentence(draft.Revision, draft.HasUnpublishedChanges)}", head.Club);
        Inks.Band(sheet, new Box(PageFrame.Margin, top, 62, 7), week.Phase, 10, PrintText.WeekInPhase(PhaseText.Name(week.Phase), week.WeekInPhase));
        sheet.Text(WeekText.Loading(week.Loading), PageFrame.Margin + 65, top + 4.8, 10, Inks.Soft);
        var box = new Box(PageFrame.Margin, top + 10, sheet.Width - (2 * PageFrame.Margin), sheet.Height - PageFrame.Margin - 9 - top - 10);
        var days = SheetDay.Of(draft, week);
        var cautions = SheetDay.Cautions(days);
        var fitting = Fitting(days, cautions, box);
        Draw(sheet, days, cautions, box, fitting);
        PageFrame.Foot(sheet, head, fitting.Steps ? "" : PrintText.WithoutSteps);
        return sheet.Save();
    }

    /// <summary>The largest type in which the page holds everything, and whether steps have to go.</summary>
    private static Setting Fitting(IReadOnlyList<SheetDay> days, IReadOnlyList<string> cautions, Box box)
    {
        for (var size = Largest; size >= SmallestWithSteps; size -= 0.25)
        {
            if (HeightOf(days, cautions, box, new Setting(size, true)) <= box.Height)
            {
                return new Setting(size, true);
            }
        }

        for (var size = Largest; size > FittedText.Smallest / 2; size -= 0.25)
        {
            if (HeightOf(days, cautions, box, new Setting(size, false)) <= box.Height)
            {
                return new Setting(size, false);
            }
        }

        return new Setting(FittedText.Smallest / 2, false);
    }

    private static double HeightOf(IReadOnlyList<SheetDay> days, IReadOnlyList<string> cautions, Box box, Setting setting) =>
        days.Sum(d => HeightOf(d, box, setting)) + Cautions(cautions, box, setting).Sum(t => t.Height) + setting.Gap;

    private static double HeightOf(SheetDay day, Box box, Setting setting) =>
        Math.Max(setting.Line * 2.2, Entries(day, box.Width - DayWidth, setting).Sum(e => e.Lines.Sum(l => l.Height) + (setting.Gap * 0.5))) + (setting.Gap * 0.5);

    private static void Draw(Sheet sheet, IReadOnlyList<SheetDay> days, IReadOnlyList<string> cautions, Box box, Setting setting)
    {
        // Room that is left goes between the days.
        var spare = Math.Min(6, (box.Height - HeightOf(days, cautions, box, setting)) / 8);
        var y = box.Y;
        foreach (var day in days)
        {
            sheet.Line(box.X, y, box.Right, y, Inks.StrongLine, 0.2);
            sheet.Text(PrintText.Weekday(day.Date), box.X, y + (setting.Line * 1.1), setting.Size, Inks.Ink, true);
            sheet.Text(PrintText.ShortDay(day.Date), box.X, y + (setting.Line * 2.05), setting.Size * 0.9, Inks.Soft);
            var at = y + (setting.Gap * 0.4);
            foreach (var entry in Entries(day, box.Width - DayWidth, setting))
            {
                var start = at;
                foreach (var (line, soft) in entry.Lines.Zip(entry.Soft))
                {
                    at = sheet.Lines(line, box.X + DayWidth, at, soft ? Inks.Soft : Inks.Ink);
                }

                if (entry.Session is { Kind: SessionKind.Session } session)
                {
                    Inks.HardnessBar(sheet, new Box(box.X + DayWidth - 3, start + 0.4, 1.5, at - start - 0.6), session.Hardness);
                    Glyphs(sheet, session, box.Right, start, setting);
                }
                else if (entry.Session is { Kind: SessionKind.Match })
                {
                    Inks.Match(sheet, box.X + DayWidth - 2.6, start + (setting.Line * 0.5), Math.Min(1.4, setting.Line * 0.35), 1);
                }

                at += setting.Gap * 0.5;
            }

            y += HeightOf(day, box, setting) + spare;
        }

        sheet.Line(box.X, y, box.Right, y, Inks.StrongLine, 0.2);
        y += setting.Gap;
        foreach (var line in Cautions(cautions, box, setting))
        {
            y = sheet.Lines(line, box.X, y, Inks.Ink);
        }
    }

    private static void Glyphs(Sheet sheet, PlannedSession session, double right, double y, Setting setting)
    {
        foreach (var quality in session.Qualities.Reverse())
        {
            right -= setting.Line;
            Inks.Glyph(sheet, quality, right, y + (setting.Line * 0.08), setting.Line * 0.86);
        }
    }

    private static IEnumerable<Entry> Entries(SheetDay day, double width, Setting setting)
    {
        if (day.Closed is { } why)
        {
            yield return new Entry(null, [FittedText.Wrap(PrintText.Closed(why), width, setting.Size)], [true]);
        }

        foreach (var entry in day.Entries)
        {
            List<FittedText> lines = [FittedText.Wrap(entry.Headline, width - (setting.Line * (entry.Session.Qualities.Count + 0.5)), setting.Size, true)];
            List<bool> soft = [false];
            void Add(string text, bool isSoft)
            {
                lines.Add(FittedText.Wrap(text, width, setting.Size * 0.92));
                soft.Add(isSoft);
            }

            if (entry.Effort is { } effort)
            {
                Add(effort, true);
            }

            if (entry.Session.Note is { Length: > 0 } note)
            {
                Add(note, false);
            }

            foreach (var (title, steps) in setting.Steps ? entry.Parts : [])
            {
                Add($"{title}: {steps}", false);
            }

            yield return new Entry(entry.Session, lines, soft);
        }

        if (day.IsRest)
        {
            yield return new Entry(null, [FittedText.Wrap(PrintText.Rest, width, setting.Size)], [true]);
        }
    }

    private static IEnumerable<FittedText> Cautions(IReadOnlyList<string> cautions, Box box, Setting setting) => cautions.Count == 0
        ? []
        : cautions.Select(c => FittedText.Wrap(SayPlan(c), box.Width, setting.Size * 0.85)).Prepend(FittedText.Wrap(PrintText.TakeCare, box.Width, setting.Size, true));

    private sealed record Entry(PlannedSession? Session, IReadOnlyList<FittedText> Lines, IReadOnlyList<bool> Soft);

    /// <param name="Size">Points of the body text.</param>
    private readonly record struct Setting(double Size, bool Steps)
    {
        public double Line => FittedText.LineHeightOf(Size);

        public double Gap => Line * 0.6;
    }
}
