using ClubCycle.Calendars;
using ClubCycle.Planning;
using ClubCycle.Planning.Workouts;
using ClubCycle.Web.Features.Board;

namespace ClubCycle.Web.Features.Print;

/// <summary>A squad's year on one sheet: phases, matches, load and the sessions of each week.</summary>
internal static class SquadChart
{
    private const double LabelWidth = 40;
    private const double BandHeight = 12;
    private const double MatchHeight = 7;
    private const double QualityHeight = 9.5;
    private const double WordsHeight = 66;

    private static readonly Quality[] Qualities = [Quality.MuscularEndurance, Quality.CoreStrength, Quality.AerobicEndurance, Quality.Speed, Quality.Agility];

    /// <param name="numbers">Off for the youngest squads: no numbers of load are shown to children.</param>
    public static byte[] Draw(PaperSize size, PrintHead head, BoardSquad squad, bool numbers, CancellationToken cancel)
    {
        using var sheet = new Sheet(size, PrintText.Title(squad.Name, PrintText.Year), head.PrintedAt, cancel);
        var weeks = ChartWeeks.Of([squad.Plan], head.Today);
        var status = PrintText.StatusSentence(squad.PublishedRevision ?? 0, squad.HasUnpublishedChanges);
        var top = PageFrame.Head(sheet, squad.Name, weeks is { } shown ? $"{SayPlan(squad.AgeGroup)}, {PrintText.Range(shown.First, shown.Last)}. {status}" : $"{SayPlan(squad.AgeGroup)}. {status}", head.Club);
        if (weeks is not { } axisWeeks || squad.Plan is not { } plan)
        {
            sheet.Text(PrintText.NoWeeks, PageFrame.Margin, top + 10, 14, Inks.Ink);
            PageFrame.Foot(sheet, head);
            return sheet.Save();
        }

        var view = BoardView.From([squad], axisWeeks.First, axisWeeks.Count, head.Today);
        var axis = new WeekAxis(view, PageFrame.Margin + LabelWidth, sheet.Width - PageFrame.Margin);
        var keys = sheet.Height - PageFrame.Margin - 21;
        var y = axis.Draw(sheet, top, keys - 2);
        var lanes = new Lanes(sheet, axis, view.Rows[0], plan);
        y = lanes.Phases(y);
        y = lanes.Matches(y);
        y = lanes.Load(y, keys - 5 - y - (QualityHeight * Qualities.Length) - WordsHeight, numbers);
        y = lanes.Qualities(y, Qualities);
        lanes.Words(y + 1, WordsHeight);
        Keys(sheet, view, keys);
        PageFrame.Foot(sheet, head, axisWeeks.Cut ? PrintText.Cut : "");
        return sheet.Save();
    }

    private static void Keys(Sheet sheet, BoardView view, double y)
    {
        var x = PageFrame.PhaseKeys(sheet, PageFrame.Margin, y, view.Rows[0].Bands.Select(b => b.Phase).Distinct().Order());
        Inks.Match(sheet, x + 1.5, y + 2, 1.5, 1);
        sheet.Text(PrintText.MatchKey, x + 4, y + 3, 8, Inks.Ink);
        x += 8 + FittedText.WidthOf(PrintText.MatchKey, 8, false);
        Hockey(sheet, new Box(x, y, 4, 4));
        sheet.Text(PrintText.HockeyKey, x + 5.2, y + 3, 8, Inks.Ink);
        x += 9 + FittedText.WidthOf(PrintText.HockeyKey, 8, false);
        Training(sheet, new Box(x, y, 4, 4));
        sheet.Text(PrintText.TrainingKey, x + 5.2, y + 3, 8, Inks.Ink);
        Inks.HardnessBar(sheet, new Box(PageFrame.Margin, y + 6.2, 0.9, 4), Hardness.Moderate);
        Inks.Glyph(sheet, Quality.Speed, PageFrame.Margin + 1.2, y + 6.2, 4);
        sheet.Text(PrintText.HardnessKey, PageFrame.Margin + 6.6, y + 9.2, 8, Inks.Ink);
    }

    private static void Hockey(Sheet sheet, Box box) => sheet.Fill(box, Inks.Soft);

    private static void Training(Sheet sheet, Box box)
    {
        sheet.Fill(box, Inks.Paper);
        for (var y = box.Bottom - 0.7; y > box.Y + 0.2; y -= 0.9)
        {
            sheet.Line(box.X, y, box.Right, y, Inks.Accent, 0.2);
        }

        sheet.Frame(box, Inks.Accent, 0.2);
    }

    /// <summary>What lies under the weeks, from the top down; each lane returns where the next begins.</summary>
    private sealed class Lanes(Sheet sheet, WeekAxis axis, BoardRow row, SquadPlan plan)
    {
        private readonly Dictionary<int, List<PlannedSession>> _sessions = row.Cells.ToDictionary(
            c => c.Column, c => plan.Sessions.Where(s => s.Date >= c.Week.First && s.Date <= c.Week.Last).ToList());

        public double Phases(double y)
        {
            Label(PrintText.Phase, y + (BandHeight / 2));
            foreach (var band in row.Bands)
            {
                Inks.Band(sheet, new Box(axis.X(band.Column), y, axis.Step * band.Weeks, BandHeight), band.Phase, 11, $"{PhaseText.Name(band.Phase)}, {PhaseText.Weeks(band.Weeks)}");
            }

            return y + BandHeight + 1;
        }

        public double Matches(double y)
        {
            Label(PrintText.Matches, y + (MatchHeight / 2));
            foreach (var cell in row.Cells.Where(c => c.Matches > 0))
            {
                Inks.Match(sheet, axis.X(cell.Column + 0.5), y + (MatchHeight / 2), Math.Min(2.3, axis.Step * 0.42), cell.Matches);
            }

            return Rule(y + MatchHeight);
        }

        public double Load(double y, double height, bool numbers)
        {
            var (top, floor) = (y + 4, y + height - 1);
            var most = Math.Max(400, (row.HeaviestLoadAu + 399) / 400 * 400);
            for (var i = 0; i <= 4; i++)
            {
                var at = floor - ((floor - top) * i / 4);
                sheet.Line(axis.Left, at, axis.Right, at, i == 0 ? Inks.StrongLine : Inks.Line, 0.15);
                if (numbers)
                {
                    sheet.Text(i == 4 ? PrintText.Au(most) : PrintText.Number(most * i / 4), axis.Left - 1.5, at + 0.9, 7.5, Inks.Soft, side: Side.Right);
                }
            }

            Label(PrintText.Load, y + (height / 2));
            foreach (var cell in row.Cells)
            {
                var (x, width) = (axis.X(cell.Column) + (axis.Step * 0.15), axis.Step * 0.7);
                var counted = _sessions[cell.Column].Where(s => s.Kind != SessionKind.ActiveRecovery && !s.InsidePractice).ToList();
                var hockey = (floor - top) * counted.Where(s => s.Kind != SessionKind.Session).Sum(s => s.PlannedLoadAu) / most;
                var training = (floor - top) * counted.Where(s => s.Kind == SessionKind.Session).Sum(s => s.PlannedLoadAu) / most;
                if (hockey > 0)
                {
                    Hockey(sheet, new Box(x, floor - hockey, width, hockey));
                }

                if (training > 0)
                {
                    Training(sheet, new Box(x, floor - hockey - training, width, training));
                }
            }

            return Rule(y + height + 1);
        }

        public double Qualities(double y, IReadOnlyList<Quality> qualities)
        {
            foreach (var quality in qualities)
            {
                Label(SessionText.WordFor(quality, PlanBook), y + (QualityHeight / 2));
                foreach (var cell in row.Cells)
                {
                    if (_sessions[cell.Column].Where(s => s.Kind == SessionKind.Session && s.Qualities.Contains(quality)).ToList() is { Count: > 0 } sessions)
                    {
                        Sign(quality, sessions, axis.X(cell.Column + 0.5), y);
                    }
                }

                y = Rule(y + QualityHeight);
            }

            return y;
        }

        /// <summary>The week's sessions in words that read upwards, the earliest at the left.</summary>
        public void Words(double y, double height)
        {
            Label(PrintText.Sessions, y + (height / 2));
            foreach (var cell in row.Cells)
            {
                var words = string.Join(" · ", _sessions[cell.Column].Where(s => s.Kind == SessionKind.Session).GroupBy(s => s.Title).Select(g => g.Count() == 1 ? SayPlan(g.Key) : $"{SayPlan(g.Key)} ({g.Count()})"));
                if (words.Length > 0)
                {
                    // Columns of type: the box on its side.
                    var text = FittedText.Into(words, height - 2, axis.Step - 0.3, 8);
                    sheet.Upwards(text, new Box(axis.X(cell.Column + 0.5) - (text.Height / 2), y, text.Height, height - 0.5), Inks.Ink);
                }
            }
        }

        private void Sign(Quality quality, List<PlannedSession> sessions, double middle, double y)
        {
            var glyph = Math.Min(4.4, axis.Step * 0.66);
            var bar = glyph * 0.22;
            var x = middle - ((glyph + bar + 0.3) / 2);
            var top = y + (sessions.Count > 1 ? 0.6 : (QualityHeight - glyph) / 2);
            Inks.HardnessBar(sheet, new Box(x, top, bar, glyph), sessions.Max(s => s.Hardness));
            Inks.Glyph(sheet, quality, x + bar + 0.3, top, glyph);
            if (sessions.Count > 1)
            {
                sheet.Text(PrintText.Number(sessions.Count), x + bar + 0.3 + (glyph / 2), y + QualityHeight - 1, 7.5, Inks.Ink, true, Side.Middle);
            }
        }

        private void Label(string words, double middle) => sheet.Text(FittedText.Cut(words, LabelWidth - 12, 9, true), PageFrame.Margin, middle + 1.1, 9, Inks.Ink, true);

        private double Rule(double y)
        {
            sheet.Line(PageFrame.Margin, y, axis.Right, y, Inks.StrongLine, 0.1);
            return y;
        }
    }
}
