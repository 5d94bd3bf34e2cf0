using ClubCycle.Planning.Phases;
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

    [Theory]
    [InlineData("Masters", "2026-08-07 17:59", 72)]
    [InlineData("Senior", "2026-08-06 17:59", 48)]
    public void The_hours_are_held_against_those_of_the_age(string ages, string second, int limit)
    {
        var finding = Assert.Single(Year.Of(ages).With("sprint-intervals 2026-08-04 18:00 45", $"jumps {second} 45").Check(SpacingRules.R36));

        Assert.Equal((Math.Round(limit - (1 / 60.0), 2), limit, "h"), finding.FiguresOf());
        Assert.Equal(2, finding.Facts!.Sessions.Count);
    }

    [Fact]
    public void Masters_may_play_two_days_after_hard_work() => Assert.Empty(Year.Of("Masters").With("sprint-intervals 2026-08-04 18:00 45", "match 2026-08-06 18:00 60").Check(SpacingRules.R36));

    [Fact]
    public void A_day_that_a_coach_fixed_says_so()
    {
        var finding = Assert.Single(Year.Of("Senior").With("sprint-intervals 2026-08-04 18:00 45", "jumps 2026-08-05 18:00 45").Pinned().Check(SpacingRules.R36));

        Assert.Equal(Cause.Coach, finding.ForcedBy);
        Assert.EndsWith(" A coach fixed that day.", finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2026-08-05", Cause.Past)]
    [InlineData("2026-08-04", null)]
    public void What_happened_before_the_plan_was_made_again_is_history(string from, Cause? cause) =>
        Assert.Equal(cause, Assert.Single(Year.Of("Senior").ReplannedFrom(from).With("sprint-intervals 2026-08-04 18:00 45", "jumps 2026-08-05 18:00 45").Check(SpacingRules.R36)).ForcedBy);
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

    [Fact]
    public void Two_days_before_to_the_minute_a_heavy_lift_passes() => Assert.Empty(Year.Of("Senior").With("heavy-lift 2026-08-06 14:00 45", "match 2026-08-08 14:00 60").Check(SpacingRules.R37));

    [Fact]
    public void Matches_outside_season_and_pre_season_are_not_meant() =>
        Assert.Empty(Year.Of("Senior").Phase(PhaseKind.Mixed, 4).With("sprint-intervals 2026-08-07 10:00 45", "match 2026-08-08 14:00 60").Check(SpacingRules.R37));

    [Fact]
    public void The_hours_are_told() => Assert.Equal((28, 48, "h"), Assert.Single(Year.Of("Senior").With("sprint-intervals 2026-08-07 10:00 45", "match 2026-08-08 14:00 60").Check(SpacingRules.R37)).FiguresOf());
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

    // Two matches 48 hours apart, then hard work after 71:59 and after 72 hours; a minute more between the matches and 48 are enough.
    [Theory]
    [InlineData("2026-08-10 14:00", "2026-08-13 13:59", 72)]
    [InlineData("2026-08-10 14:00", "2026-08-13 14:00", null)]
    [InlineData("2026-08-10 14:01", "2026-08-12 14:00", 48)]
    [InlineData("2026-08-10 14:01", "2026-08-12 14:01", null)]
    public void The_second_match_within_two_days_asks_for_three(string second, string hard, int? limit) =>
        Assert.Equal(limit, Year.Of("Senior").With("match 2026-08-08 14:00 60", $"match {second} 60", $"jumps {hard} 45").Check(SpacingRules.R38).SingleOrDefault()?.Facts!.Limit);

    [Theory]
    [InlineData("2026-08-11", 1)]
    [InlineData("2026-08-12", 0)]
    public void Four_days_are_counted_from_the_first_match(string third, int findings)
    {
        var found = Year.Of("U16").With("match 2026-08-08 10:00 60", "match 2026-08-09 10:00 60", $"match {third} 10:00 60").Check(SpacingRules.R38);

        Assert.Equal(findings, found.Count);
        Assert.All(found, f => Assert.Equal(((3, 2, "matches"), Cause.Fixtures), (f.FiguresOf(), f.ForcedBy)));
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

    [Theory]
    [InlineData(3, Cause.Fixtures)]
    [InlineData(2, null)]
    public void Matches_that_alone_are_too_many_force_it(int matches, Cause? cause)
    {
        var finding = Assert.Single(Year.Of("U14").Every(1, matches, "match 2026-08-03 10:00 50").Every(1, 3 - matches, "sprint-intervals 2026-08-08 10:00 30").Check(SpacingRules.R39));

        Assert.Equal(((3, 2, "sessions"), cause), (finding.FiguresOf(), finding.ForcedBy));
    }
}
