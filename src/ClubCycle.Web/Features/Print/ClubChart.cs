using ClubCycle.Web.Features.Board;

namespace ClubCycle.Web.Features.Print;

/// <summary>The year board on one sheet for the wall: a row a squad, a column a week.</summary>
internal static class ClubChart
{
    private const double NameWidth = 62;
    private const double TallestRow = 22;

    /// <param name="all">So many squads the club has; null when none is left out.</param>
    public static byte[] Draw(PaperSize size, PrintHead head, IReadOnlyList<BoardSquad> squads, CancellationToken cancel, int? all = null)
    {
        using var sheet = new Sheet(size, PrintText.Title(head.Club), head.PrintedAt, cancel);
        var weeks = ChartWeeks.Of(squads.Select(s => s.Plan), head.Today);
        var view = BoardView.From(squads, weeks?.First ?? head.Today, weeks?.Count ?? 0, head.Today);
        var top = PageFrame.Head(sheet, head.Club, weeks is { } shown ? $"{PrintText.WallChart}, {PrintText.Range(shown.First, shown.Last)}" : PrintText.WallChart, all is { } of && of > squads.Count ? PrintText.Of(squads.Count, of) : "");
        if (view.Rows.Count == 0 || weeks is null)
        {
            sheet.Text(all > 0 && squads.Count == 0 ? PrintText.NoSquadFits : squads.Count == 0 ? PrintText.NoSquads : PrintText.NoWeeks, PageFrame.Margin, top + 10, 14, Inks.Ink);
        }

        if (view.Rows.Count > 0)
        {
            var keys = sheet.Height - PageFrame.Margin - 14;
            var axis = new WeekAxis(view, PageFrame.Margin + NameWidth, sheet.Width - PageFrame.Margin);
            var height = Math.Min(TallestRow, (keys - 2 - top - 11.2) / view.Rows.Count);
            var y = top + 11.2;
            if (weeks is not null)
            {
                axis.Draw(sheet, top, y + (height * view.Rows.Count));
            }

            sheet.Text(PrintText.Squad, PageFrame.Margin, top + 7, 7.5, Inks.Ink, true);
            foreach (var row in view.Rows)
            {
                sheet.Line(PageFrame.Margin, y, axis.Right, y, Inks.StrongLine, 0.12);
                Name(sheet, row.Squad, new Box(PageFrame.Margin, y, NameWidth - 2, height).Inside(Math.Min(0.5, height / 20)));
                Year(sheet, row, axis, y, height);
                y += height;
            }

            sheet.Line(PageFrame.Margin, y, axis.Right, y, Inks.StrongLine, 0.12);
            Keys(sheet, view, y + 2 < keys - 30 ? y + 4 : keys);
        }

        PageFrame.Foot(sheet, head, PrintText.AsShown, weeks?.Cut == true ? PrintText.Cut : "");
        return sheet.Save();
    }

    private static void Name(Sheet sheet, BoardSquad squad, Box box)
    {
        var detail = FittedText.Into($"{SayPlan(squad.AgeGroup)}, {PrintText.Status(squad.PublishedRevision, squad.HasUnpublishedChanges)}", box.Width, box.Height * 0.36, 7.5);
        var name = FittedText.Into(squad.Name, box.Width, box.Height - detail.Height, 13, true);
        var y = box.Y + ((box.Height - name.Height - detail.Height) / 2);
        sheet.Lines(detail, box.X, sheet.Lines(name, box.X, y, Inks.Ink), Inks.Soft);
    }

    // Three lanes: the phases, the matches, the load.
    private static void Year(Sheet sheet, BoardRow row, WeekAxis axis, double y, double height)
    {
        if (row.Squad.Plan is null)
        {
            sheet.Lines(FittedText.Into(PrintText.WithoutPlan(row.Squad.Problem ?? ""), axis.Right - axis.Left - 4, height, 8), axis.Left + 2, y, Inks.Soft);
            return;
        }

        var (band, discs, load) = (height * 0.42, height * 0.26, height * 0.26);
        var (discY, floor) = (y + (height * 0.04) + band + (discs / 2), y + height - (height * 0.02));
        foreach (var cell in row.Cells)
        {
            var tall = row.HeaviestLoadAu == 0 ? 0 : load * cell.Week.PlannedLoadAu / row.HeaviestLoadAu;
            if (tall > 0)
            {
                sheet.Fill(new Box(axis.X(cell.Column) + (axis.Step * 0.15), floor - tall, axis.Step * 0.7, tall), Inks.StrongLine);
            }

            if (cell.Matches > 0)
            {
                Inks.Match(sheet, axis.X(cell.Column + 0.5), discY, Math.Min(1.7, Math.Min(discs, axis.Step) * 0.44), cell.Matches);
            }
        }

        foreach (var phase in row.Bands)
        {
            Inks.Band(sheet, new Box(axis.X(phase.Column), y + (height * 0.04), axis.Step * phase.Weeks, band), phase.Phase, Math.Min(9, height * 0.95));
        }
    }

    private static void Keys(Sheet sheet, BoardView view, double y)
    {
        var x = PageFrame.PhaseKeys(sheet, PageFrame.Margin, y, view.Rows.SelectMany(r => r.Bands).Select(b => b.Phase).Distinct().Order());
        Inks.Match(sheet, x + 1.5, y + 2, 1.5, 1);
        sheet.Text(PrintText.MatchKey, x + 4, y + 3, 8, Inks.Ink);
        x += 8 + FittedText.WidthOf(PrintText.MatchKey, 8, false);
        foreach (var (bar, tall) in ((double[])[2, 4, 3]).Index())
        {
            sheet.Fill(new Box(x + (bar * 2), y + 4 - tall, 1.6, tall), Inks.StrongLine);
        }

        sheet.Text(PrintText.LoadKey, x + 7, y + 3, 8, Inks.Ink);
    }
}
