using ClubCycle.Web.Features.Board;

namespace ClubCycle.Web.Features.Print;

/// <summary>Weeks from left to right, a column each.</summary>
internal sealed record WeekAxis(BoardView View, double Left, double Right)
{
    public double Step => (Right - Left) / View.Weeks.Count;

    public double X(double column) => Left + (column * Step);

    /// <summary>Months, ISO weeks and first days, with rules down the page where months begin; returns where the rows begin.</summary>
    public double Draw(Sheet sheet, double top, double bottom)
    {
        foreach (var month in View.Months)
        {
            sheet.Line(X(month.Column), top, X(month.Column), bottom, month.Column == 0 ? Inks.StrongLine : Inks.Line, 0.15);
            var words = PrintText.Month(month.Day, month.Column == 0 || month.Day.Month == 1);
            words = FittedText.WidthOf(words, 8.5, true) + 1 <= Step * month.Weeks ? words : PrintText.Month(month.Day, false);
            if (FittedText.WidthOf(words, 8.5, true) + 1 <= Step * month.Weeks)
            {
                sheet.Text(words, X(month.Column) + 0.7, top + 3.2, 8.5, Inks.Ink, true);
            }
        }

        foreach (var (week, column) in View.Weeks.Select((w, i) => (w, i)))
        {
            sheet.Text(PrintText.Number(week.IsoWeek), X(column + 0.5), top + 7, 7.5, Inks.Ink, true, Side.Middle);
            sheet.Text(PrintText.DayOfMonth(week.First), X(column + 0.5), top + 10, 6.5, Inks.Soft, side: Side.Middle);
        }

        sheet.Text(PrintText.Week, Left - 1.5, top + 7, 7.5, Inks.Ink, true, Side.Right);
        sheet.Text(PrintText.FirstDay, Left - 1.5, top + 10, 6.5, Inks.Soft, side: Side.Right);
        return top + 11.2;
    }
}
