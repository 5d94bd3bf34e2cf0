using ClubCycle.Data.Plans;
using ClubCycle.Planning;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Weeks;
using NodaTime;

namespace ClubCycle.Web.Features.Board;

/// <summary>The club's year as the board shows it: a row a squad, a column a week.</summary>
/// <param name="Today">Column of today's week, or null when today is outside the board.</param>
public sealed record BoardView(IReadOnlyList<BoardWeek> Weeks, IReadOnlyList<BoardMonth> Months, IReadOnlyList<BoardRow> Rows, int? Today)
{
    public const int MostWeeks = 60;

    /// <param name="first">First day of the first column: a first weekday of the club.</param>
    public static BoardView From(IReadOnlyList<BoardSquad> squads, LocalDate first, int weeks, LocalDate today)
    {
        var columns = Enumerable.Range(0, weeks).Select(i => BoardWeek.From(first.PlusWeeks(i))).ToList();
        var todayColumn = ColumnOf(today, first);
        return new BoardView(
            columns,
            [.. MonthsOf(columns)],
            [.. squads.Select(squad => RowOf(squad, first, weeks))],
            todayColumn >= 0 && todayColumn < weeks ? todayColumn : null);
    }

    private static int ColumnOf(LocalDate date, LocalDate first) =>
        (int)Math.Floor(Period.DaysBetween(first, date) / 7.0);

    private static IEnumerable<BoardMonth> MonthsOf(List<BoardWeek> weeks)
    {
        // A week belongs to the month of its fourth day, as ISO 8601 does for years.
        var start = 0;
        for (var i = 1; i <= weeks.Count; i++)
        {
            if (i == weeks.Count || weeks[i].Middle.Month != weeks[start].Middle.Month)
            {
                yield return new BoardMonth(weeks[start].Middle, start, i - start);
                start = i;
            }
        }
    }

    private static BoardRow RowOf(BoardSquad squad, LocalDate first, int weeks)
    {
        if (squad.Plan is not { } plan)
        {
            return new BoardRow(squad, [], [], 0, 0, 0);
        }

        var cells = new List<BoardCell>();
        foreach (var week in plan.Weeks)
        {
            var column = ColumnOf(week.First, first);
            if (column >= 0 && column < weeks)
            {
                var matches = plan.Sessions.Count(s => s.Kind == SessionKind.Match && s.Date >= week.First && s.Date <= week.Last);
                cells.Add(new BoardCell(column, week, matches, [.. plan.Findings.Where(f => f.Week == week.First).OrderBy(f => f.Strength)]));
            }
        }

        return new BoardRow(
            squad,
            [.. BandsOf(cells)],
            cells,
            plan.Findings.Count(f => f.Strength == Strength.Must),
            plan.Findings.Count(f => f.Strength == Strength.Should),
            plan.Findings.Count(f => f.Strength == Strength.Note));
    }

    private static IEnumerable<BoardBand> BandsOf(List<BoardCell> cells)
    {
        for (var i = 0; i < cells.Count;)
        {
            var start = i;
            while (++i < cells.Count && cells[i].Week.Phase == cells[start].Week.Phase && cells[i].Week.WeekInPhase == cells[i - 1].Week.WeekInPhase + 1)
            {
            }

            yield return new BoardBand(cells[start].Week.Phase, cells[start].Column, i - start, cells[start].Week.First, cells[i - 1].Week.Last);
        }
    }
}

/// <summary>What the board needs to know of a squad; the plan is null when its inputs have problems.</summary>
public sealed record BoardSquad(Guid Id, string Name, string AgeGroup, SquadPlan? Plan, string? Problem, int? PublishedRevision, bool HasUnpublishedChanges)
{
    public static BoardSquad Of(BoardDraft row) => row.Draft.TryGet(out var draft, out var problems)
        ? Of(row.SquadId, draft)
        : new(row.SquadId, row.Name, row.AgeGroup.Name, null, problems[0].Message, null, false);

    public static BoardSquad Of(Guid id, SquadDraft draft) =>
        new(id, draft.Request.Squad.Name, draft.Request.Squad.AgeGroup.Name, draft.Plan, null, draft.Revision, draft.HasUnpublishedChanges);
}

public sealed record BoardWeek(LocalDate First, int IsoWeek)
{
    public LocalDate Middle => First.PlusDays(3);

    public static BoardWeek From(LocalDate first) =>
        new(first, NodaTime.Calendars.WeekYearRules.Iso.GetWeekOfWeekYear(first.PlusDays(3)));
}

/// <param name="Column">0-based.</param>
public sealed record BoardMonth(LocalDate Day, int Column, int Weeks);

public sealed record BoardBand(PhaseKind Phase, int Column, int Weeks, LocalDate First, LocalDate Last);

/// <param name="Findings">Of this week, gravest first.</param>
public sealed record BoardCell(int Column, PlanWeek Week, int Matches, IReadOnlyList<Finding> Findings)
{
    public Strength? Strongest => Findings.Count == 0 ? null : Findings[0].Strength;
}

public sealed record BoardRow(BoardSquad Squad, IReadOnlyList<BoardBand> Bands, IReadOnlyList<BoardCell> Cells, int Musts, int Shoulds, int Notes)
{
    /// <summary>Null outside the squad's year.</summary>
    public BoardCell? CellAt(int column) => Cells.FirstOrDefault(c => c.Column == column);

    public int HeaviestLoadAu => Cells.Count == 0 ? 0 : Cells.Max(c => c.Week.PlannedLoadAu);
}
