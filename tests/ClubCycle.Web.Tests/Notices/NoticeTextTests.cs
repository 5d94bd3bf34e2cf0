using System.Globalization;
using ClubCycle.Planning;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Workouts;
using ClubCycle.Web.Features.Notices;
using NodaTime;

namespace ClubCycle.Web.Tests.Notices;

public sealed class NoticeTextTests : IDisposable
{
    private readonly (CultureInfo, CultureInfo) _before = (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture);

    [Fact]
    public void Players_read_what_moved_what_is_new_and_what_is_called_off() => Assert.Equal(
        """
        Women 1: what changed in the next seven days
        Called off: Strength circuit on Tuesday 3 March at 18:00.
        New: Short sprints on Wednesday 4 March at 18:00, 40 minutes.
        Moved: Easy run from Tuesday 3 March at 18:00 to Thursday 5 March at 18:30.
        """,
        In("en-GB", new(Session("Strength circuit", 3), null), new(null, Session("Short sprints", 4)), new(Session("Easy run", 3), Session("Easy run", 5) with { Start = new LocalTime(18, 30) })));

    [Fact]
    public void Each_change_of_a_session_has_a_line() => Assert.Equal(
        """
        Women 1: what changed in the next seven days
        Changed: Hill run instead of Easy run on Tuesday 3 March at 18:00.
        Changed: Hill run on Tuesday 3 March at 18:00 takes 30 minutes instead of 40.
        Changed: Hill run on Tuesday 3 March at 18:00 is here: Pitch 2.
        Changed: the place of Core circuit on Wednesday 4 March at 18:00 is open.
        """,
        In("en-GB", new(Session("Easy run", 3), Session("Hill run", 3) with { Minutes = 30, Place = "Pitch 2" }), new(Session("Core circuit", 4) with { Place = "Hall" }, Session("Core circuit", 4))));

    [Theory]
    [InlineData("de-DE", "Women 1: Das ändert sich in den nächsten sieben Tagen", "Abgesagt: Spiel: Easy Town am Dienstag, 3. März um 18:00.")]
    [InlineData("nl-NL", "Women 1: dit verandert in de komende zeven dagen", "Vervalt: Wedstrijd: Easy Town op dinsdag 3 maart om 18:00.")]
    [InlineData("es-ES", "Women 1: qué cambia en los próximos siete días", "Cancelado: Partido: Easy Town, martes, 3 de marzo a las 18:00.")]
    public void It_is_in_the_reader_s_language_and_opponents_keep_their_names(string culture, string heading, string line) =>
        Assert.Equal($"{heading}\n{line}", In(culture, new ChangedSession(Session("Match: Easy Town", 3) with { Kind = SessionKind.Match }, null)));

    [Fact]
    public void Without_changes_it_is_empty() => Assert.Equal("", In("en-GB"));

    public void Dispose() => (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = _before;

    private static string In(string culture, params ChangedSession[] changes)
    {
        CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(culture);
        return NoticeText.Of("Women 1", changes);
    }

    private static PlannedSession Session(string title, int day) => new(
        NamedId.From("test", title), title, new LocalDate(2026, 3, day), new LocalTime(18, 0), 40, SessionKind.Session, "easy-run", [], Hardness.Easy, 3, title, [], [], []);
}
