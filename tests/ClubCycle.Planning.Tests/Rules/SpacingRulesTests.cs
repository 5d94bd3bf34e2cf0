using ClubCycle.Planning.Rules;

namespace ClubCycle.Planning.Tests.Rules;

public class HardSessionsAreTwoDaysApartTests
{
    // Vector: sprints on Tuesday 19:00, jumps on Thursday 18:30 are 47.5 h apart. Haugen et al. 2019.
    [Fact]
    public void Half_an_hour_short_of_two_days_is_found() =>
        Assert.Contains("47.5 h", Assert.Single(Year.Of("Senior").With("sprint-intervals 2026-08-04 19:00 45", "jumps 2026-08-06 18:30 45").Check(SpacingRules.R36)).Message, StringComparison.Ordinal);

    [Fact]
    public void Two_days_to_the_minute_pass() =>
        Assert.Empty(Year.Of("Senior").With("sprint-intervals 2026-08-04 19:00 45", "jumps 2026-08-06 19:00 45").Check(SpacingRules.R36));

    [Fact]
    public void Sunday_and_Monday_are_seen_across_the_week_end() =>
        Assert.Single(Year.Of("Senior").With("jumps 2026-08-09 18:00 45", "heavy-lift 2026-08-10 18:00 45").Check(SpacingRules.R36));

    [Fact]
    public void Masters_need_three_days() =>
        Assert.Single(Year.Of("Masters").With("heavy-lift 2026-08-04 18:00 45", "sprint-intervals 2026-08-06 18:00 45").Check(SpacingRules.R36));

    [Fact]
    public void Two_matches_of_a_weekend_are_left_alone() =>
        Assert.Empty(Year.Of("Senior").With("match 2026-08-08 14:00 60", "match 2026-08-09 14:00 60").Check(SpacingRules.R36));
}

public class HardWorkKeepsAwayFromTheMatchAheadTests
{
    [Fact]
    public void Sprints_the_day_before_are_found() =>
        Assert.Single(Year.Of("Senior").With("sprint-intervals 2026-08-07 10:00 45", "match 2026-08-08 14:00 60").Check(SpacingRules.R37));

    [Fact]
    public void An_easy_run_the_day_before_passes() =>
        Assert.Empty(Year.Of("Senior").With("easy-run 2026-08-07 10:00 30", "match 2026-08-08 14:00 60").Check(SpacingRules.R37));

    [Fact]
    public void A_heavy_lift_less_than_two_days_before_is_found_and_sprints_then_pass()
    {
        Assert.Single(Year.Of("Senior").With("heavy-lift 2026-08-06 18:00 45", "match 2026-08-08 14:00 60").Check(SpacingRules.R37));
        Assert.Empty(Year.Of("Senior").With("sprint-intervals 2026-08-06 18:00 45", "match 2026-08-08 14:00 60").Check(SpacingRules.R37));
    }
}

public class HardWorkWaitsAfterMatchesTests
{
    [Fact]
    public void Sprints_the_evening_after_are_found_and_two_days_later_pass()
    {
        Assert.Single(Year.Of("Senior").With("match 2026-08-08 14:00 60", "sprint-intervals 2026-08-10 13:00 45").Check(SpacingRules.R38));
        Assert.Empty(Year.Of("Senior").With("match 2026-08-08 14:00 60", "sprint-intervals 2026-08-10 14:00 45").Check(SpacingRules.R38));
    }

    [Fact]
    public void After_two_matches_three_days_are_needed() =>
        Assert.Single(Year.Of("Senior").With("match 2026-08-08 14:00 60", "match 2026-08-09 14:00 60", "jumps 2026-08-11 18:00 45").Check(SpacingRules.R38));

    [Fact]
    public void Three_matches_in_four_days_pass_for_adults_and_not_for_under_sixteens()
    {
        string[] matches = ["match 2026-08-07 14:00 60", "match 2026-08-08 14:00 60", "match 2026-08-10 14:00 60"];

        Assert.Empty(Year.Of("Senior").With(matches).Check(SpacingRules.R38));
        Assert.Single(Year.Of("U14").With(matches).Check(SpacingRules.R38));
    }
}

public class WeeksHoldFewHardSessionsTests
{
    [Theory]
    [InlineData("Senior", 4, 0)]
    [InlineData("Senior", 5, 1)]
    [InlineData("U16", 3, 0)]
    [InlineData("U16", 4, 1)]
    [InlineData("U14", 2, 0)]
    [InlineData("U14", 3, 1)]
    public void Four_for_adults_three_from_fourteen_two_before(string ages, int hard, int findings) =>
        Assert.Equal(findings, Year.Of(ages).With([.. Enumerable.Range(3, hard).Select(d => $"sprint-intervals 2026-08-0{d} 18:00 30")]).Check(SpacingRules.R39).Count);
}
