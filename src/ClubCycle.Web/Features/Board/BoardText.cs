using ClubCycle.Planning.Rules;
using ClubCycle.Web.Parts;

namespace ClubCycle.Web.Features.Board;

/// <summary>What the board says about a place.</summary>
internal static class BoardText
{
    /// <summary>All of it in one breath, for those who hear it.</summary>
    public static string Describe(BoardView view, BoardPlace place) => string.Join(". ", (string[])[Title(view, place), .. Lines(view, place)]);

    public static string Title(BoardView view, BoardPlace place)
    {
        var squad = view.Rows[place.Row].Squad;
        return place.Column switch
        {
            BoardPlace.Name => Say($"{squad.Name}, {SayPlan(squad.AgeGroup)}"),
            BoardPlace.Findings => Say($"{squad.Name}: findings"),
            var column => Say($"{squad.Name}: week {view.Weeks[column].IsoWeek}, from {Dates.Full(view.Weeks[column].First)}"),
        };
    }

    public static IReadOnlyList<string> Lines(BoardView view, BoardPlace place)
    {
        var row = view.Rows[place.Row];
        return place.Column switch
        {
            BoardPlace.Name when row.Squad.Plan is null => [SayPlan(row.Squad.Problem ?? "")],
            BoardPlace.Name => [Published(row.Squad)],
            BoardPlace.Findings => [Counts(row)],
            var column when row.CellAt(column) is { } cell => Lines(cell),
            _ => [Say("Outside this squad's year")],
        };
    }

    /// <summary>What there is to know about a week besides its date.</summary>
    public static IReadOnlyList<string> Lines(BoardCell cell) =>
    [
        Say($"{PhaseText.Name(cell.Week.Phase)}, week {cell.Week.WeekInPhase}"),
        $"{Matches(cell.Matches)}, {Say($"planned load {cell.Week.PlannedLoadAu} AU")}",
        .. cell.Findings.Where(f => f.Strength != Strength.Note).Take(2).Select(f => $"{StrengthText.Of(f.Strength)}: {SayPlan(f.Message)}"),
    ];

    public static string Matches(int matches) => matches switch { 0 => Say("no match"), 1 => Say("one match"), var n => Say($"{n} matches") };

    public static string Musts(int count) => Say($"{count} must");

    public static string Shoulds(int count) => Say($"{count} should");

    private static string Counts(BoardRow row) => (row.Musts, row.Shoulds) switch
    {
        (0, 0) => Say("No finding asks for a change"),
        (0, var shoulds) => Shoulds(shoulds),
        (var musts, 0) => Musts(musts),
        var (musts, shoulds) => $"{Musts(musts)}, {Shoulds(shoulds)}",
    };

    private static string Published(BoardSquad squad) => (squad.PublishedRevision, squad.HasUnpublishedChanges) switch
    {
        (null or 0, _) => Say("Nothing has been published yet"),
        (_, true) => Say("Players do not see the latest changes yet"),
        _ => Say("Players see it as it is"),
    };
}
