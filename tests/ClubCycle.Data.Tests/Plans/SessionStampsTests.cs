using ClubCycle.Data.Plans;
using ClubCycle.Planning;
using ClubCycle.Planning.Workouts;
using NodaTime;

namespace ClubCycle.Data.Tests.Plans;

public sealed class SessionStampsTests
{
    private static readonly Instant Later = ClubData.Start + Duration.FromHours(1);

    public static TheoryData<string, Func<PlannedSession, PlannedSession>, bool> Changes => new()
    {
        { "day", s => s with { Date = s.Date.PlusDays(1) }, true },
        { "start", s => s with { Start = new LocalTime(19, 0) }, true },
        { "length", s => s with { Minutes = 30 }, true },
        { "title", s => s with { Title = "Hill run" }, true },
        { "place", s => s with { Place = "Pitch 2" }, true },
        { "note", s => s with { Note = "Bring a mat." }, false },
        { "reason", s => s with { Why = ["Because."] }, false },
        { "effort", s => s with { PlannedEffort = 2, Hardness = Hardness.Easy }, false },
        { "cautions", s => s with { Cautions = ["Drink."] }, false },
        { "pin", s => s with { Pinned = true }, false },
        { "nothing", s => s, false },
    };

    [Theory]
    [MemberData(nameof(Changes))]
    public void A_calendar_is_told_again_when_time_length_place_or_title_change_and_for_nothing_else(string what, Func<PlannedSession, PlannedSession> change, bool told)
    {
        var row = SessionStamps.New(Guid.Empty, Guid.Empty, Session, ClubData.Start);

        Assert.True(SessionStamps.Update(row, change(Session), Later) == told, what);
        Assert.Equal(told ? (1, Later) : (0, ClubData.Start), (row.Sequence, row.ChangedAt));
    }

    [Fact]
    public void Calling_off_and_coming_back_each_raise_the_sequence_once()
    {
        var row = SessionStamps.New(Guid.Empty, Guid.Empty, Session, ClubData.Start);

        Assert.Equal((true, false), (SessionStamps.Cancel(row, Later), SessionStamps.Cancel(row, Later)));
        Assert.Equal((true, false), (SessionStamps.Update(row, Session, Later), SessionStamps.Update(row, Session, Later)));
        Assert.Equal(2, row.Sequence);
    }

    private static PlannedSession Session { get; } = new(
        NamedId.From("test", "session"), "recovery.core.1", new LocalDate(2026, 3, 3), new LocalTime(18, 0), 45, SessionKind.Session, null, [], Hardness.Moderate, 4, "Core circuit", [], [], []);
}
