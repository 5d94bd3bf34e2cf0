using System.Globalization;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Workouts;
using CsCheck;
using NodaTime;

namespace ClubCycle.Planning.Tests.Replanning;

public class ChangeNoticeTests
{
    private static readonly DateTimeZone Lisbon = DateTimeZoneProviders.Tzdb["Europe/Lisbon"];

    /// <summary>Monday noon.</summary>
    private static readonly Instant Now = At("2026-03-02T12:00");

    [Fact]
    public void Players_read_what_moved_what_is_new_and_what_is_called_off_in_the_order_of_the_days() => Assert.Equal(
        """
        Women 1: what changed in the next seven days
        Called off: Strength circuit on Tuesday 3 March at 18:00.
        New: Short sprints on Wednesday 4 March at 18:00, 40 minutes.
        Moved: Easy run from Tuesday 3 March at 18:00 to Thursday 5 March at 18:30.
        """,
        Text(
            [Session("Easy run", "2026-03-03T18:00"), Session("Strength circuit", "2026-03-03T18:00"), Session("Core circuit", "2026-03-06T18:00")],
            [Session("Short sprints", "2026-03-04T18:00"), Session("Easy run", "2026-03-05T18:30"), Session("Core circuit", "2026-03-06T18:00")]));

    [Fact]
    public void Another_workout_and_another_length_are_told() => Assert.Equal(
        """
        Women 1: what changed in the next seven days
        Changed: Hill run instead of Easy run on Tuesday 3 March at 18:00.
        Changed: Hill run on Tuesday 3 March at 18:00 takes 30 minutes instead of 40.
        """,
        Text([Session("Easy run", "2026-03-03T18:00")], [Session("Easy run", "2026-03-03T18:00") with { Title = "Hill run", Minutes = 30 }]));

    [Fact]
    public void Another_place_is_told() => Assert.Equal(
        """
        Women 1: what changed in the next seven days
        Changed: Easy run on Tuesday 3 March at 18:00 is at Pitch 2.
        Changed: the place of Core circuit on Wednesday 4 March at 18:00 is open.
        """,
        Text(
            [Session("Easy run", "2026-03-03T18:00"), Session("Core circuit", "2026-03-04T18:00") with { Place = "Hall" }],
            [Session("Easy run", "2026-03-03T18:00") with { Place = "Pitch 2" }, Session("Core circuit", "2026-03-04T18:00")]));

    [Fact]
    public void A_first_plan_is_all_new() =>
        Assert.EndsWith("New: Easy run on Tuesday 3 March at 18:00, 40 minutes.", Text(null, [Session("Easy run", "2026-03-03T18:00")]), StringComparison.Ordinal);

    [Fact]
    public void The_same_plan_says_nothing() => Assert.Equal("", Text([Session("Easy run", "2026-03-03T18:00")], [Session("Easy run", "2026-03-03T18:00")]));

    [Theory]
    [InlineData("2026-03-02T11:59", false)]
    [InlineData("2026-03-02T12:00", true)]
    [InlineData("2026-03-09T11:59", true)]
    [InlineData("2026-03-09T12:00", false)]
    public void It_looks_from_now_to_the_same_time_in_seven_days(string start, bool told)
    {
        Assert.Equal(told, Text([], [Session("Easy run", start)]).Length > 0);
        Assert.Equal(told, Text([Session("Easy run", start)], []).Length > 0);
    }

    [Theory]
    [InlineData("2026-03-03T18:00", "2026-03-20T18:00")]
    [InlineData("2026-03-20T18:00", "2026-03-03T18:00")]
    public void A_session_that_moves_into_the_days_ahead_or_out_of_them_is_told(string from, string to) =>
        Assert.Contains("Moved: Easy run from ", Text([Session("Easy run", from)], [Session("Easy run", to)]), StringComparison.Ordinal);

    [Fact]
    public void Optional_active_recovery_is_not_news() =>
        Assert.Equal("", Text([Session("Walk", "2026-03-03T18:00") with { Kind = SessionKind.ActiveRecovery }], []));

    [Theory]
    [InlineData(SessionKind.Practice)]
    [InlineData(SessionKind.Match)]
    public void Practices_and_matches_are_told_like_sessions(SessionKind kind) =>
        Assert.Contains("Called off: Blue", Text([Session("Blue", "2026-03-03T18:00") with { Kind = kind }], []), StringComparison.Ordinal);

    /// <summary>Clocks in Lisbon go forward on 29 March 2026, 01:00: seven days from Sunday 22 March, 12:00 end on Sunday at 13:00.</summary>
    [Theory]
    [InlineData("2026-03-29T12:59", true)]
    [InlineData("2026-03-29T13:00", false)]
    public void Seven_days_are_hours_and_the_club_s_zone_says_when_a_session_starts(string start, bool told) =>
        Assert.Equal(told, ChangeNotice.Text("Women 1", null, Plan(Session("Easy run", start)), At("2026-03-22T12:00"), Lisbon, CultureInfo.InvariantCulture).Length > 0);

    [Fact]
    public void Weekdays_and_months_are_written_as_the_culture_says() => Assert.Contains(
        "terça-feira 3 março at 18:00",
        ChangeNotice.Text("Women 1", null, Plan(Session("Easy run", "2026-03-03T18:00")), Now, Lisbon, CultureInfo.GetCultureInfo("pt-PT")),
        StringComparison.Ordinal);

    /// <summary>Titles are unique, so that a title in the text is that session.</summary>
    [Fact]
    public void For_any_two_plans_it_names_what_changed_ahead_and_nothing_else() =>
        Gen.Select(Hours, Hours).Array[0, 12].Sample(
            pairs =>
            {
                var before = pairs.Index().Where(p => p.Item.Item1 is not null).Select(p => Session(Title(p.Index), p.Item.Item1!.Value)).ToList();
                var after = pairs.Index().Where(p => p.Item.Item2 is not null).Select(p => Session(Title(p.Index), p.Item.Item2!.Value)).ToList();

                var text = Text(before, after);

                var told = pairs.Index().Where(p => p.Item.Item1 != p.Item.Item2 && (IsAhead(p.Item.Item1) || IsAhead(p.Item.Item2))).Select(p => Title(p.Index)).ToList();
                Assert.Equal(told, pairs.Index().Select(p => Title(p.Index)).Where(t => text.Contains(t, StringComparison.Ordinal)));
                Assert.Equal(told.Count == 0 ? 0 : told.Count + 1, text.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length);
            },
            iter: Cases.Count);

    /// <summary>A start in hours from now, in winter time; null when the plan has no such session.</summary>
    private static Gen<int?> Hours =>
        from there in Gen.Int[0, 3]
        from hours in Gen.Int[-48, 240]
        select there == 0 ? null : (int?)hours;

    private static bool IsAhead(int? hours) => hours is >= 0 and < 7 * 24;

    private static string Title(int index) => $"Session {(char)('A' + index)}";

    private static PlannedSession Session(string name, int hours) => Session(name, new LocalDateTime(2026, 3, 2, 12, 0).PlusHours(hours));

    private static PlannedSession Session(string name, string start) => Session(name, NodaTime.Text.LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm").Parse(start).Value);

    private static PlannedSession Session(string name, LocalDateTime start) => new(
        NamedId.From("test", name), name, start.Date, start.TimeOfDay, 40, SessionKind.Session, "easy-run", [], Hardness.Easy, 3, name, [], [], []);

    private static string Text(IReadOnlyList<PlannedSession>? before, IReadOnlyList<PlannedSession> after) =>
        ChangeNotice.Text("Women 1", before is null ? null : Plan([.. before]), Plan([.. after]), Now, Lisbon, CultureInfo.InvariantCulture);

    private static SquadPlan Plan(params PlannedSession[] sessions) =>
        new(new DateInterval(new LocalDate(2026, 3, 1), new LocalDate(2027, 2, 28)), [], [], sessions, [], PlanChanges.None);

    private static Instant At(string local) => NodaTime.Text.LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm").Parse(local).Value.InZoneLeniently(Lisbon).ToInstant();
}
