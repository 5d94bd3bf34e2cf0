using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Workouts;
using CsCheck;
using NodaTime;

namespace ClubCycle.Planning.Tests.Replanning;

[Trait(Cases.Trait, Cases.Random)]
public class ChangeNoticeTests
{
    private static readonly DateTimeZone Lisbon = DateTimeZoneProviders.Tzdb["Europe/Lisbon"];

    /// <summary>Monday noon.</summary>
    private static readonly Instant Now = At("2026-03-02T12:00");

    [Fact]
    public void What_moved_what_is_new_and_what_is_called_off_comes_in_the_order_of_the_days() => Assert.Equal(
        ["Strength circuit: Tuesday to nothing", "Short sprints: nothing to Wednesday", "Easy run: Tuesday to Thursday"],
        Changes(
                [Session("Easy run", "2026-03-03T18:00"), Session("Strength circuit", "2026-03-03T18:00"), Session("Core circuit", "2026-03-06T18:00")],
                [Session("Short sprints", "2026-03-04T18:00"), Session("Easy run", "2026-03-05T18:30"), Session("Core circuit", "2026-03-06T18:00")])
            .Select(c => $"{(c.Is ?? c.Was)!.Title}: {Day(c.Was)} to {Day(c.Is)}"));

    public static readonly TheoryData<Func<PlannedSession, PlannedSession>> SeenByPlayers = new()
    {
        s => s with { Title = "Hill run" },
        s => s with { Minutes = 30 },
        s => s with { Place = "Pitch 2" },
        s => s with { Start = new LocalTime(18, 30) },
    };

    [Theory]
    [MemberData(nameof(SeenByPlayers))]
    public void Whatever_players_see_of_a_session_is_told(Func<PlannedSession, PlannedSession> changed) =>
        Assert.Single(Changes([Session("Easy run", "2026-03-03T18:00")], [changed(Session("Easy run", "2026-03-03T18:00"))]));

    [Fact]
    public void What_they_do_not_see_is_not_told() =>
        Assert.Empty(Changes([Session("Easy run", "2026-03-03T18:00")], [Session("Easy run", "2026-03-03T18:00") with { Why = ["Because."] }]));

    [Fact]
    public void A_first_plan_is_all_new() => Assert.Null(Assert.Single(Changes(null, [Session("Easy run", "2026-03-03T18:00")])).Was);

    [Fact]
    public void The_same_plan_says_nothing() => Assert.Empty(Changes([Session("Easy run", "2026-03-03T18:00")], [Session("Easy run", "2026-03-03T18:00")]));

    [Theory]
    [InlineData("2026-03-02T11:59", false)]
    [InlineData("2026-03-02T12:00", true)]
    [InlineData("2026-03-09T11:59", true)]
    [InlineData("2026-03-09T12:00", false)]
    public void It_looks_from_now_to_the_same_time_in_seven_days(string start, bool told)
    {
        Assert.Equal(told, Changes([], [Session("Easy run", start)]).Count > 0);
        Assert.Equal(told, Changes([Session("Easy run", start)], []).Count > 0);
    }

    [Theory]
    [InlineData("2026-03-03T18:00", "2026-03-20T18:00")]
    [InlineData("2026-03-20T18:00", "2026-03-03T18:00")]
    public void A_session_that_moves_into_the_days_ahead_or_out_of_them_is_told(string from, string to) =>
        Assert.Single(Changes([Session("Easy run", from)], [Session("Easy run", to)]));

    [Fact]
    public void Optional_active_recovery_is_not_news() =>
        Assert.Empty(Changes([Session("Walk", "2026-03-03T18:00") with { Kind = SessionKind.ActiveRecovery }], []));

    [Theory]
    [InlineData(SessionKind.Practice)]
    [InlineData(SessionKind.Match)]
    public void Practices_and_matches_are_told_like_sessions(SessionKind kind) =>
        Assert.Single(Changes([Session("Blue", "2026-03-03T18:00") with { Kind = kind }], []));

    /// <summary>Clocks in Lisbon go forward on 29 March 2026, 01:00: seven days from Sunday 22 March, 12:00 end on Sunday at 13:00.</summary>
    [Theory]
    [InlineData("2026-03-29T12:59", true)]
    [InlineData("2026-03-29T13:00", false)]
    public void Seven_days_are_hours_and_the_club_s_zone_says_when_a_session_starts(string start, bool told) =>
        Assert.Equal(told, ChangeNotice.Of(null, Plan(Session("Easy run", start)), At("2026-03-22T12:00"), Lisbon).Count > 0);

    [Fact]
    public void For_any_two_plans_it_holds_what_changed_ahead_and_nothing_else() =>
        Gen.Select(Hours, Hours).Array[0, 12].Sample(
            pairs =>
            {
                var before = pairs.Index().Where(p => p.Item.Item1 is not null).Select(p => Session(Title(p.Index), p.Item.Item1!.Value)).ToList();
                var after = pairs.Index().Where(p => p.Item.Item2 is not null).Select(p => Session(Title(p.Index), p.Item.Item2!.Value)).ToList();

                Assert.Equal(
                    pairs.Index().Where(p => p.Item.Item1 != p.Item.Item2 && (IsAhead(p.Item.Item1) || IsAhead(p.Item.Item2))).Select(p => Title(p.Index)),
                    Changes(before, after).Select(c => (c.Is ?? c.Was)!.Title).Order(StringComparer.Ordinal));
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

    private static string Day(PlannedSession? session) => session is null ? "nothing" : session.Date.DayOfWeek.ToString();

    private static IReadOnlyList<ChangedSession> Changes(IReadOnlyList<PlannedSession>? before, IReadOnlyList<PlannedSession> after) =>
        ChangeNotice.Of(before is null ? null : Plan([.. before]), Plan([.. after]), Now, Lisbon);

    private static SquadPlan Plan(params PlannedSession[] sessions) =>
        new(new DateInterval(new LocalDate(2026, 3, 1), new LocalDate(2027, 2, 28)), [], [], sessions, [], PlanChanges.None);

    private static Instant At(string local) => NodaTime.Text.LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm").Parse(local).Value.InZoneLeniently(Lisbon).ToInstant();
}
