using ClubCycle.Planning;
using ClubCycle.Planning.Replanning;
using NodaTime;

namespace ClubCycle.Web.Features.Weeks;

/// <summary>What a coach fills in about a session. Only what differs from the plan becomes a decision; the rest stays with the planner.</summary>
public sealed record SessionForm
{
    public const int UsualMinutes = 40;

    public LocalDate Date { get; set; }

    /// <summary>Null leaves it to the planner.</summary>
    public LocalTime? Start { get; set; }

    /// <summary>Null leaves it to the planner.</summary>
    public int? Minutes { get; set; }

    public string Workout { get; set; } = "";

    public string Note { get; set; } = "";

    public static SessionForm New(LocalDate date) => new() { Date = date, Minutes = UsualMinutes };

    public static SessionForm Of(PlannedSession session) =>
        new() { Date = session.Date, Start = session.Start, Minutes = session.Minutes, Workout = session.Workout ?? "", Note = session.Note ?? "" };

    /// <param name="known">What was decided about the session before; null for nothing.</param>
    /// <param name="asked">The template's workout; null when a coach added the session.</param>
    public Pin ToPin(LocalDate weekFirst, PlannedSession session, Pin? known, string? asked)
    {
        var moved = Date != session.Date || Start != session.Start || session.Slot.StartsWith(Pin.AddedSlot, StringComparison.Ordinal);
        var workout = Workout == session.Workout ? known?.Workout : Workout;
        return new Pin(
            weekFirst, session.Slot,
            moved ? Date : known?.Date,
            moved ? StartOf(session, known) : known?.Start,
            false,
            workout == asked ? null : workout,
            Minutes == session.Minutes ? known?.Minutes : Minutes,
            Note);
    }

    /// <summary>A time that was the planner's stays so while only the day changes.</summary>
    private LocalTime? StartOf(PlannedSession session, Pin? known) => Start == session.Start ? known?.Start : Start;
}
