using ClubCycle.Planning;
using ClubCycle.Planning.Workouts;
using NodaTime;

namespace ClubCycle.Calendars.Tests;

public sealed class FeedGoldenTests
{
    [Fact]
    public void A_week_of_a_squad_is_written_as_reviewed() =>
        GoldenFile.AssertSame("squad-week.ics", IcsWriter.Write(SquadWeek()));

    [Fact]
    public void An_empty_feed_is_a_calendar_without_events() =>
        GoldenFile.AssertSame("empty.ics", IcsWriter.Write(new FeedCalendar("Under 10", null, [])));

    [Fact]
    public void A_called_off_session_is_written_as_reviewed() =>
        GoldenFile.AssertSame("called-off.ics", IcsWriter.Write(A.Feed(A.Event(sequence: 3, cancelled: true))));

    [Fact]
    public void The_same_feed_gives_the_same_bytes() =>
        Assert.Equal(IcsWriter.Write(SquadWeek()), IcsWriter.Write(SquadWeek()));

    [Fact]
    public void Feeds_written_at_the_same_time_do_not_disturb_each_other()
    {
        var expected = IcsWriter.Write(SquadWeek());

        var written = new string[64];
        Parallel.For(0, written.Length, i => written[i] = IcsWriter.Write(SquadWeek()));

        Assert.All(written, text => Assert.Equal(expected, text));
    }

    internal static FeedCalendar SquadWeek()
    {
        var circuit = A.Session(
            steps:
            [
                new Step("warm-up", "Jog and joint circles", "Until you feel warm.", Minutes: 8),
                new Step("main", "Squat with own weight", "Knees over toes; stop if it hurts.", Sets: 3, Reps: 12, RestSeconds: 30),
                new Step("cool-down", "Walk", "", Minutes: 5),
            ],
            cautions: ["Stop when something hurts and tell your coach.", "Follow your club's rules and your doctor's advice first."]);
        var practice = A.Session("practice.tuesday", new LocalDate(2026, 3, 3), SessionKind.Practice, "Practice", qualities: [], why: []);
        var match = A.Session("match.1", new LocalDate(2026, 3, 7), SessionKind.Match, "Match; home, 2:00 pm", Hardness.Hard, [], []);
        return FeedBuilder.From(A.Plan(circuit, practice, match), A.Zone("Europe/Lisbon"), "Women 1, Sandhaven", _ => (2, A.Changed));
    }
}
