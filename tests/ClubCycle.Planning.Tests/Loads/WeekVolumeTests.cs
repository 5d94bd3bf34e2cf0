using ClubCycle.Planning.Loads;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Templates;
using ClubCycle.Planning.Weeks;
using ClubCycle.Planning.Workouts;
using static ClubCycle.Planning.Weeks.WeekLoading;

namespace ClubCycle.Planning.Tests.Loads;

/// <summary>
/// Minutes of one week at a time. An easy run counts 3 AU a minute, sprint intervals 8, a practice 5; a session is written <c>easy-run 60</c>, with
/// <c>fixed</c> or <c>inside</c> behind it.
/// </summary>
public class WeekVolumeTests
{
    [Theory]
    [InlineData(1, 80)]
    [InlineData(2, 85)]
    [InlineData(3, 90)]
    [InlineData(4, 100)]
    public void A_building_phase_starts_at_four_fifths_and_rises_to_its_full_minutes(int week, int minutes) =>
        Assert.Equal([minutes], Minutes(Week(PhaseKind.Mixed, week), Loading, [], "easy-run 100"));

    [Theory]
    [InlineData(PhaseKind.Recovery, 1, 70)]
    [InlineData(PhaseKind.Recovery, 2, 100)]
    [InlineData(PhaseKind.Break, 1, 70)]
    [InlineData(PhaseKind.InSeason, 1, 100)]
    public void Other_phases_start_at_seven_tenths_and_the_season_at_once(PhaseKind phase, int week, int minutes) =>
        Assert.Equal([minutes], Minutes(Week(phase, week), Loading, [], "easy-run 100"));

    // A tenth more than 1,000 AU, 500 of it in a practice: 600 AU are 200 minutes.
    [Theory]
    [InlineData(PhaseKind.Mixed, 9, 200)]
    [InlineData(PhaseKind.Break, 2, 200)]
    [InlineData(PhaseKind.InSeason, 8, 200)]
    [InlineData(PhaseKind.InSeason, 9, 300)]
    [InlineData(PhaseKind.Restore, 2, 300)]
    public void A_week_rises_by_a_tenth_at_most_while_building_and_for_eight_weeks_of_a_stint(PhaseKind phase, int week, int minutes) =>
        Assert.Equal([minutes], Minutes(Week(phase, week), Loading, [1_000], ["easy-run 300"], practices: [100]));

    [Theory]
    [InlineData(299, 300)]
    [InlineData(300, 150)]
    public void A_rise_from_next_to_nothing_is_not_held_back(int before, int minutes) =>
        Assert.Equal([minutes], Minutes(Week(PhaseKind.InSeason, 2), Loading, [before], "easy-run 300"));

    [Theory]
    [InlineData("easy-run 60", 30)]
    [InlineData("easy-run 45", 20)]
    [InlineData("easy-run 20", 15)]
    [InlineData("easy-run 10", 10)]
    [InlineData("sprint-intervals 40", 25)]
    [InlineData("sprint-intervals 60", 30)]
    public void To_keep_a_rise_small_no_session_shrinks_below_half_or_below_its_shortest(string session, int minutes) =>
        Assert.Equal([minutes], Minutes(Week(PhaseKind.Mixed, 9), Loading, [500], [session], practices: [200]));

    [Fact]
    public void An_unloading_week_has_its_share_of_every_session() =>
        Assert.Equal([30, 30, 30, 30, 30], Minutes(Week(PhaseKind.Mixed, 4), Unloading, [2_000], "easy-run 50", "easy-run 50", "easy-run 50", "easy-run 50", "easy-run 50"));

    // 60 % of 1,000 AU less 450 in the practice are 150.
    [Fact]
    public void Practices_take_their_part_of_an_unloading_week() =>
        Assert.Equal([25, 25], Minutes(Week(PhaseKind.Mixed, 4), Unloading, [1_000], ["easy-run 50", "easy-run 50"], practices: [90]));

    [Fact]
    public void Outside_the_building_phases_nothing_unloads() => Assert.Equal([50], Minutes(Week(PhaseKind.Restore, 4), Unloading, [1_000], "easy-run 50"));

    // Sprints of 25 minutes, their shortest, hold 200 AU each; 80 % of 1,000 AU is the most.
    [Theory]
    [InlineData(120, 25, 0, 0, 0)]
    [InlineData(121, 0, 0, 0, 0)]
    [InlineData(160, 0, 0, 0, 0)]
    public void An_unloading_week_of_practices_leaves_out_the_least_valuable_sessions(int practice, params int[] minutes) =>
        Assert.Equal(minutes, Minutes(Week(PhaseKind.Mixed, 4), Unloading, [1_000], FourSprints, practices: [practice]));

    [Theory]
    [InlineData(4, 25, 25, 0, 0)]
    [InlineData(5, 25, 25, 25, 0)]
    [InlineData(6, 25, 25, 25, 0)]
    public void Half_of_what_is_asked_stays_where_practices_alone_are_too_much(int asked, params int[] minutes) =>
        Assert.Equal(minutes, Minutes(Week(PhaseKind.Mixed, 4), Unloading, [1_000], FourSprints, practices: [161], asked: asked));

    [Fact]
    public void Half_of_what_is_asked_stays_without_practices() =>
        Assert.Equal([30, 30, 0, 0], Minutes(Week(PhaseKind.Mixed, 4), Unloading, [400], "sprint-intervals 100", "sprint-intervals 100", "sprint-intervals 100", "sprint-intervals 100"));

    [Fact]
    public void What_a_coach_fixed_and_what_is_part_of_practice_is_never_left_out()
    {
        var minutes = Minutes(Week(PhaseKind.Mixed, 4), Unloading, [1_000], ["sprint-intervals 50", "reactive-agility 30 inside", "sprint-intervals 50 fixed"], practices: [160]);

        Assert.Equal([true, false, false], minutes.Select(m => m == 0));
    }

    [Theory]
    [InlineData(600, 100)]
    [InlineData(599, 115)]
    public void A_taper_halves_the_mean_of_four_weeks_that_hold_enough_and_else_unloads(int load, int minutes) =>
        Assert.Equal([minutes], Minutes(Week(PhaseKind.PreSeason, 4), Taper, [load, load, load, load], "easy-run 200"));

    [Fact]
    public void Three_weeks_are_too_few_to_taper() => Assert.Equal([115], Minutes(Week(PhaseKind.PreSeason, 4), Taper, [600, 600, 600], "easy-run 195"));

    [Theory]
    [InlineData("sprint-intervals 40", 20)]
    [InlineData("easy-run 40", 15)]
    [InlineData("easy-run 100", 30)]
    public void In_a_taper_hard_sessions_get_as_short_as_twenty_minutes(string session, int minutes) =>
        Assert.Equal([minutes], Minutes(Week(PhaseKind.PreSeason, 4), Taper, [1_000, 1_000, 1_000, 1_000], [session], practices: [100]));

    // Sprints of 20 minutes hold 160 AU; 59 % of 1,000 AU is the most.
    [Theory]
    [InlineData(7, 2)]
    [InlineData(6, 1)]
    [InlineData(8, 1)]
    public void A_taper_keeps_four_fifths_of_sessions_and_practices(int asked, int leftOut)
    {
        var sessions = Enumerable.Repeat("sprint-intervals 40", Math.Min(asked, 7)).ToArray();
        var minutes = Minutes(Week(PhaseKind.PreSeason, 4), Taper, [1_000, 1_000, 1_000, 1_000], sessions, practices: [30, 30, 30], asked: asked);

        Assert.Equal([.. Enumerable.Repeat(20, sessions.Length - leftOut), .. Enumerable.Repeat(0, leftOut)], minutes);
    }

    [Theory]
    [InlineData(18, 20)]
    [InlineData(19, 0)]
    public void A_taper_of_fifty_nine_percent_leaves_nothing_out(int practice, int minutes) =>
        Assert.Equal([minutes], Minutes(Week(PhaseKind.PreSeason, 4), Taper, [1_000, 1_000, 1_000, 1_000], ["sprint-intervals 40"], practices: [practice, 17, 17, 17, 17]));

    [Theory]
    [InlineData(0, 50)]
    [InlineData(1, 70)]
    [InlineData(2, 80)]
    [InlineData(3, 90)]
    [InlineData(4, 100)]
    public void After_time_off_training_comes_back_in_four_steps(int back, int minutes) =>
        Assert.Equal([minutes], Minutes(Week(PhaseKind.Recovery, 2), Loading, [], ["easy-run 100"], weeksBack: back));

    // Three runs get no shorter than 15 minutes each; the first week back holds half of the usual minutes.
    [Theory]
    [InlineData(0, 90, 15, 15, 15)]
    [InlineData(0, 89, 15, 15, 0)]
    [InlineData(0, 0, 15, 0, 0)]
    [InlineData(4, 0, 20, 20, 20)]
    [InlineData(null, 0, 20, 20, 20)]
    public void The_way_back_leaves_out_what_is_too_much_but_never_everything(int? back, int usual, params int[] minutes) =>
        Assert.Equal(minutes, Minutes(Week(PhaseKind.Recovery, 2), Loading, [], ["easy-run 20", "easy-run 20", "easy-run 20"], weeksBack: back, usual: usual));

    [Fact]
    public void Minutes_inside_practice_are_no_part_of_the_way_back() =>
        Assert.Equal([15, 15], Minutes(Week(PhaseKind.Recovery, 2), Loading, [], ["easy-run 20", "easy-run 20", "reactive-agility 30 inside"], weeksBack: 0, usual: 60).Take(2));

    [Theory]
    [InlineData("easy-run", Loading, 60, 30)]
    [InlineData("easy-run", Match, 60, 30)]
    [InlineData("easy-run", Loading, 59, 25)]
    [InlineData("easy-run", Loading, 20, 15)]
    [InlineData("easy-run", Loading, 10, 10)]
    [InlineData("easy-run", Unloading, 100, 30)]
    [InlineData("easy-run", Unloading, 45, 15)]
    [InlineData("easy-run", Taper, 100, 30)]
    [InlineData("sprint-intervals", Loading, 40, 25)]
    [InlineData("sprint-intervals", Unloading, 60, 25)]
    [InlineData("sprint-intervals", Taper, 60, 20)]
    public void The_shortest_length_that_rules_ask_for_is_the_planners(string workout, WeekLoading loading, int full, int shortest) =>
        Assert.Equal(shortest, WeekVolume.ShortestMinutes(WorkoutCatalogue.Find(workout)!, loading, full));

    private static readonly string[] FourSprints = ["sprint-intervals 50", "sprint-intervals 50", "sprint-intervals 50", "sprint-intervals 50"];

    private static CycleWeek Week(PhaseKind phase, int week) => new(A.Date("2026-08-03"), phase, 0, week, 12);

    private static int[] Minutes(CycleWeek week, WeekLoading loading, int[] before, params string[] sessions) => Minutes(week, loading, before, sessions, []);

    /// <param name="before">Loads of the loading weeks right before, AU.</param>
    /// <param name="practices">Minutes of each.</param>
    private static int[] Minutes(
        CycleWeek week, WeekLoading loading, int[] before, string[] sessions, int[]? practices = null, int? asked = null, int? weeksBack = null, double usual = 1_000)
    {
        var history = new LoadHistory();
        foreach (var load in before)
        {
            history.Add(Loading, load);
        }

        return new WeekVolume(new LoadingPattern(4, 0.6, 0.8, 0.08), history).Minutes(
            week, loading, [.. (practices ?? []).Select(m => new Contact(Guid.Empty, "practice", week.First, A.Time("19:30"), m, false, ""))],
            [.. sessions.Select(Session)], asked ?? sessions.Length, weeksBack, usual);
    }

    private static SessionVolume Session(string text)
    {
        var parts = text.Split(' ');
        return new(WorkoutCatalogue.Find(parts[0])!, int.Parse(parts[1], System.Globalization.CultureInfo.InvariantCulture), text.EndsWith("inside", StringComparison.Ordinal), text.EndsWith("fixed", StringComparison.Ordinal));
    }
}
