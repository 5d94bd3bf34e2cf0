using ClubCycle.Planning.Phases;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Templates;
using ClubCycle.Planning.Workouts;
using NodaTime;

namespace ClubCycle.Planning.Tests.Weeks;

/// <summary>The last weeks of the cycle before reach into the first ones of the next.</summary>
public sealed class AfterTheCycleBeforeTests
{
    private const string Sprints = "sprint-intervals";

    /// <summary>Four weeks of break from Monday 31 August, then matches.</summary>
    private static Season Season => A.Season("2026-08-30", "2026-09-28/2026-11-29");

    /// <summary>Sessions on Mondays and Tuesdays only.</summary>
    private static Squad EarlyWeek => A.Squad(practices: [], windows: [new TimeWindow([IsoDayOfWeek.Monday, IsoDayOfWeek.Tuesday], A.Time("18:00"), A.Time("20:00"))]);

    /// <summary>The break asks for sprints first.</summary>
    private static Template Sprinting
    {
        get
        {
            var usual = BuiltInTemplates.For(AgeGroup.Senior);
            return usual with { Mixes = [.. usual.Mixes.Select(m => m.Phase == PhaseKind.Break ? m with { Slots = [m.Slots[0] with { Workouts = [Sprints] }] } : m)] };
        }
    }

    [Theory]
    [InlineData("17:00", "2026-09-01")]
    [InlineData("20:00", "2026-09-07")]
    public void The_first_sprints_wait_48_hours_for_the_last_match_of_the_cycle_before(string match, string first) =>
        Assert.Equal(A.Date(first), A.Plan(A.Request(Season, EarlyWeek, Sprinting) with { Before = [Match("2026-08-30", match)] }).Sessions.First(s => s.Workout == Sprints).Date);

    [Theory]
    [InlineData("2026-08-29 18:00", "2026-08-31")]
    [InlineData("2026-08-30 18:30", "2026-09-07")]
    public void Hard_sessions_of_the_cycle_before_count_as_matches_do(string earlier, string first) =>
        Assert.Equal(A.Date(first), A.Plan(A.Request(Season, EarlyWeek with { Windows = [EarlyWeek.Windows[0] with { Days = [IsoDayOfWeek.Monday] }] }, Sprinting) with { Before = [Session(Sprints, earlier, 40, 7)] })
            .Sessions.First(s => s.Workout == Sprints).Date);

    [Theory]
    [InlineData("2026-08-30", "R38")]
    [InlineData("2026-08-28", null)]
    public void A_coach_who_fixes_sprints_right_after_the_last_match_is_told(string match, string? rule)
    {
        var request = A.Request(Season, EarlyWeek, Sprinting);
        var slot = A.Plan(request).Sessions.First(s => s.Workout == Sprints).Slot;
        var plan = A.Plan(request with { Pins = [new Pin(A.Date("2026-08-31"), slot, A.Date("2026-08-31"), A.Time("18:00"))], Before = [Match(match, "14:00")] });

        Assert.Equal(rule, plan.Findings.FirstOrDefault(f => f.Rule is "R36" or "R38" && f.Week == A.Date("2026-08-31"))?.Rule);
    }

    [Fact]
    public void The_first_week_rises_by_a_tenth_at_most_above_the_last_ones_of_the_cycle_before()
    {
        var alone = A.Plan(A.Request(Season, A.Squad(practices: []))).Weeks[0].PlannedLoadAu;
        var plan = A.Plan(A.Request(Season, A.Squad(practices: [])) with { Before = FourWeeks(310) });

        Assert.True(alone > 1.1 * 310);
        Assert.InRange(plan.Weeks[0].PlannedLoadAu, 200, 1.1 * 310);
    }

    [Fact]
    public void After_fuller_weeks_the_first_week_is_as_it_was() => Assert.Equal(
        A.Plan(A.Request(Season, A.Squad(practices: []))).Weeks[0],
        A.Plan(A.Request(Season, A.Squad(practices: [])) with { Before = FourWeeks(600) }).Weeks[0]);

    [Fact]
    public void A_squad_that_stood_still_for_the_last_weeks_starts_gently()
    {
        var request = A.Request(Season, A.Squad(practices: []));

        Assert.True(A.Plan(request with { Before = [Match("2026-08-08", "14:00")] }).Weeks[0].PlannedLoadAu < A.Plan(request).Weeks[0].PlannedLoadAu);
    }

    [Fact]
    public void Nothing_before_changes_nothing() => Assert.Equal(PlanFile.WritePlan(A.Plan(A.Request())), PlanFile.WritePlan(A.Plan(A.Request() with { Before = [] })));

    [Fact]
    public void What_happened_before_stays_out_of_the_plan()
    {
        var plan = A.Plan(A.Request(Season) with { Before = FourWeeks(600) });

        Assert.All(plan.Sessions, s => Assert.True(s.Date >= plan.Cycle.Start));
    }

    [Fact]
    public void A_session_inside_the_cycle_is_not_before_it() =>
        Assert.Equal("before.in-cycle", AnnualPlanner.Plan(A.Request(Season) with { Before = [Match("2026-08-31", "14:00")] }) is Result<SquadPlan>.Failed failed ? failed.First.Code : null);

    [Fact]
    public void It_reads_back_from_a_request_file_as_it_was_written()
    {
        var text = PlanFile.WriteRequest(A.Request(Season) with { Before = FourWeeks(600) });

        Assert.Equal(text, PlanFile.WriteRequest(PlanFile.ReadRequest(text).OrThrow()));
        Assert.Contains("\"before\"", text, StringComparison.Ordinal);
    }

    private static IReadOnlyList<PlannedSession> FourWeeks(int au) =>
        [.. Enumerable.Range(0, 4).Select(i => Session("strength-circuit", $"{A.Date("2026-08-05").PlusWeeks(i):uuuu-MM-dd} 18:00", au / 5, 5))];

    private static PlannedSession Match(string date, string start) =>
        new(NamedId.From("match", date), "match.1", A.Date(date), A.Time(start), 60, SessionKind.Match, null, [], Hardness.Hard, 8, "Match", [], [], []);

    private static PlannedSession Session(string workout, string at, int minutes, int effort)
    {
        var known = WorkoutCatalogue.Find(workout)!;
        return new(NamedId.From("session", at), "in-season.x", A.Date(at.Split(' ')[0]), A.Time(at.Split(' ')[1]), minutes, SessionKind.Session, workout, known.Qualities, known.Hardness, effort, known.Title, [], [], []);
    }
}
