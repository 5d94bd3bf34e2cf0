using ClubCycle.Planning;
using ClubCycle.Planning.Replanning;
using ClubCycle.Web.Features.Weeks;
using NodaTime;

namespace ClubCycle.Web.Tests.Features;

/// <summary>Only what a coach changed becomes a decision.</summary>
public sealed class SessionFormTests
{
    private static readonly LocalDate Monday = new(2026, 10, 5);
    private static readonly PlannedSession Session = A.Session(Monday.PlusDays(2)) with { Workout = "strength-circuit" };

    [Fact]
    public void A_form_that_was_not_touched_decides_nothing() => Assert.Equal(Empty, Pin(_ => { }));

    [Fact]
    public void Other_minutes_are_decided_and_the_day_stays_with_the_planner() => Assert.Equal(Empty with { Minutes = 30 }, Pin(f => f.Minutes = 30));

    [Fact]
    public void Another_day_leaves_the_time_to_the_planner() => Assert.Equal(Empty with { Date = Monday }, Pin(f => f.Date = Monday));

    [Fact]
    public void Another_time_fixes_the_day_too() => Assert.Equal(Empty with { Date = Session.Date, Start = new LocalTime(7, 0) }, Pin(f => f.Start = new LocalTime(7, 0)));

    [Fact]
    public void A_note_alone_keeps_what_was_decided_before()
    {
        var known = Empty with { Date = Session.Date, Start = Session.Start, Minutes = Session.Minutes, Workout = "strength-circuit" };

        Assert.Equal(known with { Note = "Indoors" }, Pin(f => f.Note = "Indoors", known));
    }

    [Fact]
    public void Emptied_minutes_are_the_planners_again() => Assert.Equal(Empty, Pin(f => f.Minutes = null, Empty with { Minutes = Session.Minutes }));

    [Fact]
    public void The_templates_workout_is_no_swap() => Assert.Null(Pin(f => f.Workout = "easy-run", Empty with { Workout = "strength-circuit" }, "easy-run").Workout);

    [Fact]
    public void An_added_session_keeps_all_that_it_is()
    {
        var added = Session with { Slot = "added.1" };
        var known = new Pin(Monday, "added.1", added.Date, null, Workout: "strength-circuit", Minutes: 45);
        var form = SessionForm.Of(added);
        form.Note = "Indoors";

        Assert.Equal(known with { Note = "Indoors" }, form.ToPin(Monday, added, known, null));
    }

    private static Pin Empty { get; } = new(Monday, Session.Slot, null, null, Note: "");

    private static Pin Pin(Action<SessionForm> fill, Pin? known = null, string asked = "easy-run")
    {
        var form = SessionForm.Of(Session);
        fill(form);
        return form.ToPin(Monday, Session, known, asked);
    }
}
