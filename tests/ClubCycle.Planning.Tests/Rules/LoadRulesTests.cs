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
}
