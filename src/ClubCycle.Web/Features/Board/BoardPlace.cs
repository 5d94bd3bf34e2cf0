using Microsoft.AspNetCore.Components;
using NodaTime.Text;

namespace ClubCycle.Web.Features.Board;

/// <summary>A place of the board's grid: a row with its squad's name, its findings, or one of the weeks.</summary>
/// <param name="Row">0-based, without the heads.</param>
/// <param name="Column">0-based week, or <see cref="Name"/> or <see cref="Findings"/>.</param>
public readonly record struct BoardPlace(int Row, int Column)
{
    public const int Name = -2;
    public const int Findings = -1;

    private const int Page = 5;

    /// <summary>Where a key leads, as in any grid; null when it leads nowhere.</summary>
    public BoardPlace? After(string key, bool control, BoardView view) => (key, control) switch
    {
        ("ArrowRight", _) => Inside(this with { Column = Column + 1 }, view),
        ("ArrowLeft", _) => Inside(this with { Column = Column - 1 }, view),
        ("ArrowDown", _) => Inside(this with { Row = Row + 1 }, view),
        ("ArrowUp", _) => Inside(this with { Row = Row - 1 }, view),
        ("PageDown", _) => Inside(this with { Row = Row + Page }, view),
        ("PageUp", _) => Inside(this with { Row = Row - Page }, view),
        ("Home", false) => Inside(this with { Column = Name }, view),
        ("End", false) => Inside(this with { Column = view.Weeks.Count - 1 }, view),
        ("Home", true) => Inside(new BoardPlace(0, Name), view),
        ("End", true) => Inside(new BoardPlace(view.Rows.Count - 1, view.Weeks.Count - 1), view),
        _ => null,
    };

    public bool IsOn(BoardView view) => Row >= 0 && Row < view.Rows.Count && Column >= Name && Column < view.Weeks.Count;

    /// <summary>What Enter and a press open; null in a week that the squad's year does not have.</summary>
    public string? Href(BoardView view)
    {
        var row = view.Rows[Row];
        return Column switch
        {
            Name => $"/squads/{row.Squad.Id}/year",
            Findings => $"/check?squad={row.Squad.Id}",
            _ => row.CellAt(Column) is { } cell ? WeekHref(row.Squad.Id, cell) : null,
        };
    }

    public static string WeekHref(Guid squad, BoardCell cell) => $"/squads/{squad}/week/{LocalDatePattern.Iso.Format(cell.Week.First)}";

    private static BoardPlace? Inside(BoardPlace place, BoardView view) => view.Rows.Count == 0 || view.Weeks.Count == 0
        ? null
        : new(Math.Clamp(place.Row, 0, view.Rows.Count - 1), Math.Clamp(place.Column, Name, view.Weeks.Count - 1));
}

/// <summary>The pointer came over another place of the board, or pressed it; told by <c>board.js</c>.</summary>
public sealed class BoardPointEventArgs : EventArgs
{
    public int Row { get; set; }

    public int Column { get; set; }

    /// <summary>Pressed with a mouse. A finger cannot hover: it looks first, and opens by the link in the details.</summary>
    public bool Open { get; set; }
}

[EventHandler("onboardpoint", typeof(BoardPointEventArgs), enableStopPropagation: true, enablePreventDefault: true)]
public static class EventHandlers;
