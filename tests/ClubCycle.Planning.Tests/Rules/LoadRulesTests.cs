using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Weeks;

namespace ClubCycle.Planning.Tests.Rules;

public class LoadRisesByATenthAtMostTests
{
    // Vectors: 1,800 to 2,000 (+11.1 %) breaks (a) only, 1,800 to 2,100 (+16.7 %) breaks (a) and (b). AAP 2007, Gabbett 2016.
    [Theory]
    [InlineData(1800, 2000, "a")]
    [InlineData(1800, 2100, "ab")]
    [InlineData(1800, 1980, "")]
    [InlineData(1800, 2070, "a")]
    [InlineData(1800, 2071, "ab")]
    [InlineData(299, 900, "")]
    [InlineData(300, 340, "a")]
    public void Clauses_follow_the_rise(double reference, double load, string clauses) => Assert.Equal(clauses, string.Concat(LoadRules.RiseClauses(reference, load)));

    [Fact]
    public void A_steep_rise_is_found_with_its_figures()
    {
        var finding = Assert.Single(Year.Of("Senior").Phase(PhaseKind.Mixed, 2, WeekLoading.Loading, 1000, 1200).With("easy-run 2026-08-04 18:00 30").Check(LoadRules.R09));

        Assert.Contains("20 %, from 1000 to 1200 AU, a red flag", finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("There is a match this week.", "match 2026-08-15 14:00 60")]
    [InlineData("There are 2 matches this week.", "match 2026-08-12 19:00 60", "match 2026-08-15 14:00 60")]
    public void A_rise_by_matches_counts_them(string told, params string[] matches) =>
        Assert.Contains(told, Assert.Single(Year.Of("Senior").Phase(PhaseKind.Mixed, 2, WeekLoading.Loading, 1000, 1200).With("easy-run 2026-08-04 18:00 30").With(matches).Check(LoadRules.R09)).Message, StringComparison.Ordinal);

    [Fact]
    public void After_an_unloading_week_the_loading_weeks_before_are_the_reference() =>
        Assert.Empty(Year.Of("Senior")
            .Phase(PhaseKind.AerobicBuild, 3, WeekLoading.Loading, 1000)
            .Phase(PhaseKind.AerobicBuild, 1, WeekLoading.Unloading, 600)
            .Phase(PhaseKind.AerobicBuild, 1, WeekLoading.Loading, 1100).Check(LoadRules.R09));

    [Fact]
    public void Recovery_is_not_judged() => Assert.Empty(Year.Of("Senior").Phase(PhaseKind.Recovery, 2, WeekLoading.Loading, 400, 800).Check(LoadRules.R09));

    private static Finding Rise(params string[] sessions) =>
        Assert.Single(Year.Of("Senior").Phase(PhaseKind.Mixed, 2, WeekLoading.Loading, 1000, 1150).With("easy-run 2026-08-04 18:00 30").With(sessions).Check(LoadRules.R09));

    [Fact]
    public void A_rise_is_told_against_the_tenth()
    {
        var finding = Rise("easy-run 2026-08-11 18:00 30");

        Assert.Equal((1150, 1100, "AU"), finding.FiguresOf());
        Assert.Equal((A.Date("2026-08-10"), (Cause?)null), (finding.Week, finding.ForcedBy));
        Assert.EndsWith("from 1000 to 1150 AU.", finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Cause.Contacts, " Practices start again this week.", "practice 2026-08-11 19:30 90")]
    [InlineData(Cause.Contacts, " Practices and matches start again this week.", "practice 2026-08-11 19:30 90", "match 2026-08-15 14:00 60")]
    [InlineData(Cause.Contacts, " Practices and matches alone are more than that.", "practice 2026-08-06 19:30 90", "practice 2026-08-11 19:30 221")]
    [InlineData(null, "AU.", "practice 2026-08-06 19:30 90", "practice 2026-08-11 19:30 220")]
    [InlineData(null, " The week before had fewer sessions.", "easy-run 2026-08-11 18:00 30", "easy-run 2026-08-13 18:00 30")]
    [InlineData(Cause.ShortestSessions, " Its sessions are already at their shortest.", "strides 2026-08-11 18:00 15")]
    public void What_makes_it_rise_is_named(Cause? cause, string told, params string[] sessions)
    {
        var finding = Rise(sessions);

        Assert.EndsWith(told, finding.Message, StringComparison.Ordinal);
        Assert.Equal(cause, finding.ForcedBy);
    }

    [Fact]
    public void Closed_days_in_the_week_before_force_it() =>
        Assert.Equal(
            Cause.ClosedDays,
            Assert.Single(Year.Of("Senior").Phase(PhaseKind.Mixed, 2, WeekLoading.Loading, 1000, 1150).Closed("2026-08-09", "2026-08-09").With("easy-run 2026-08-04 18:00 30", "easy-run 2026-08-11 18:00 30").Check(LoadRules.R09)).ForcedBy);

    [Fact]
    public void A_session_that_a_coach_fixed_forces_it() =>
        Assert.Equal(Cause.Coach, Assert.Single(Year.Of("Senior").Phase(PhaseKind.Mixed, 2, WeekLoading.Loading, 1000, 1150).With("easy-run 2026-08-04 18:00 30", "easy-run 2026-08-11 18:00 30").Pinned().Check(LoadRules.R09)).ForcedBy);
}

public class BuildingWeeksAreFollowedByAnEasierOneTests
{
    // Vectors: four loading weeks of an adult break (a) in week 4; a mean of 2,000 then 1,700 (85 %) breaks (b). Bompa and Haff.
    [Fact]
    public void The_fourth_loading_week_of_an_adult_is_one_too_many()
    {
        Assert.Equal([3], LoadRules.TooLongRuns([true, true, true, true], 3));
        Assert.Empty(LoadRules.TooLongRuns([true, true, true, false, true, true, true], 3));
        Assert.Equal([2], LoadRules.TooLongRuns([true, true, true], 2));
    }

    [Theory]
    [InlineData(1700, false)]
    [InlineData(1600, true)]
    [InlineData(800, true)]
    [InlineData(799, false)]
    public void An_unloading_week_has_forty_to_eighty_percent(double load, bool unloads) => Assert.Equal(unloads, LoadRules.Unloads(2000, load));

    [Fact]
    public void Both_clauses_are_found_in_a_plan()
    {
        var year = Year.Of("Senior")
            .Phase(PhaseKind.Mixed, 4, WeekLoading.Loading, 2000).Phase(PhaseKind.Mixed, 1, WeekLoading.Unloading, 1700)
            .With([.. Enumerable.Range(0, 5).Select(w => $"easy-run {A.Date("2026-08-04").PlusWeeks(w):uuuu-MM-dd} 18:00 30")]);

        Assert.Equal(2, year.Check(LoadRules.R13).Count);
    }

    [Fact]
    public void An_easy_week_in_season_is_no_unloading_week_of_a_building_phase() =>
        Assert.Empty(Year.Of("Senior").Phase(PhaseKind.InSeason, 3, WeekLoading.Match, 2000).Phase(PhaseKind.InSeason, 1, WeekLoading.Unloading, 500).Check(LoadRules.R13));

    [Fact]
    public void New_players_unload_after_two_weeks()
    {
        string[] runs = [.. Enumerable.Range(0, 3).Select(w => $"easy-run {A.Date("2026-08-04").PlusWeeks(w):uuuu-MM-dd} 18:00 30")];

        Assert.Single(Year.Of("Senior").New().Phase(PhaseKind.Mixed, 3, WeekLoading.Loading, 500).With(runs).Check(LoadRules.R13));
        Assert.Empty(Year.Of("Senior").Phase(PhaseKind.Mixed, 3, WeekLoading.Loading, 500).With(runs).Check(LoadRules.R13));
    }

    /// <summary>Three loading weeks of 1,000 AU, then an unloading one; a run of 60 minutes each week.</summary>
    private static Year Unloading(int load, int weeks = 4) =>
        Year.Of("Senior").Phase(PhaseKind.Mixed, 3, WeekLoading.Loading, 1000).Phase(PhaseKind.Mixed, 1, WeekLoading.Unloading, load).Every(7, weeks, "easy-run 2026-08-04 18:00 60");

    [Theory]
    [InlineData(801, 800)]
    [InlineData(399, 400)]
    public void An_unloading_week_is_held_against_the_limit_that_it_misses(int load, double limit)
    {
        var finding = Assert.Single(Unloading(load).Check(LoadRules.R13));

        Assert.Equal((load, limit, "AU"), finding.FiguresOf());
        Assert.Equal((A.Date("2026-08-24"), (Cause?)null), (finding.Week, finding.ForcedBy));
    }

    [Theory]
    [InlineData(800)]
    [InlineData(400)]
    public void At_the_limits_it_unloads(int load) => Assert.Empty(Unloading(load).Check(LoadRules.R13));

    [Theory]
    [InlineData(161, Cause.Contacts)]
    [InlineData(160, null)]
    public void Practices_that_alone_are_too_much_force_it(int minutes, Cause? cause) =>
        Assert.Equal(cause, Assert.Single(Unloading(900).With($"practice 2026-08-25 19:30 {minutes}").Check(LoadRules.R13)).ForcedBy);

    [Fact]
    public void Closed_days_or_fewer_practices_make_it_too_easy()
    {
        Assert.Equal(Cause.ClosedDays, Assert.Single(Unloading(300).Closed("2026-08-27", "2026-08-27").Check(LoadRules.R13)).ForcedBy);
        Assert.Equal(Cause.Contacts, Assert.Single(Unloading(300).Every(7, 3, "practice 2026-08-06 19:30 90").Check(LoadRules.R13)).ForcedBy);
        Assert.Null(Assert.Single(Unloading(300).Every(7, 4, "practice 2026-08-06 19:30 90").Check(LoadRules.R13)).ForcedBy);
    }

    [Fact]
    public void Four_loading_weeks_are_told_with_the_most()
    {
        var finding = Assert.Single(Year.Of("Senior").Phase(PhaseKind.Mixed, 5, WeekLoading.Loading, 1000).Every(7, 5, "easy-run 2026-08-04 18:00 30").Check(LoadRules.R13));

        Assert.Equal((5, 3, "weeks"), finding.FiguresOf());
        Assert.Equal((A.Date("2026-08-24"), (Cause?)null), (finding.Week, finding.ForcedBy));
    }
}
