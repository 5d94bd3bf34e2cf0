using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Rules;

namespace ClubCycle.Planning.Tests.Rules;

public class RecoveryLastsLongEnoughTests
{
    [Theory]
    [InlineData("Senior", 1, 1)]
    [InlineData("Senior", 2, 0)]
    [InlineData("Senior", 5, 0)]
    [InlineData("Senior", 6, 1)]
    [InlineData("U16", 3, 1)]
    [InlineData("U16", 4, 0)]
    [InlineData("U16", 9, 0)]
    public void Adults_take_two_to_five_weeks_and_youth_four_or_more(string ages, int weeks, int findings) =>
        Assert.Equal(findings, Year.Of(ages).Phase(PhaseKind.Recovery, weeks).Check(PhaseRules.R14).Count);
}

public class AerobicBuildLastsFourWeeksTests
{
    [Theory]
    [InlineData(3, 1)]
    [InlineData(4, 0)]
    public void Four_weeks_pass(int weeks, int findings) => Assert.Equal(findings, Year.Of("Senior").Phase(PhaseKind.AerobicBuild, weeks).Check(PhaseRules.R15).Count);

    // Koral et al. 2018: six interval sessions in two to three weeks raised aerobic speed.
    [Theory]
    [InlineData(5, 1)]
    [InlineData(6, 0)]
    public void Three_weeks_pass_with_six_interval_sessions(int sessions, int findings)
    {
        string[] intervals = [.. Enumerable.Range(0, sessions).Select(i => $"sprint-intervals {A.Date("2026-08-03").PlusDays(3 * i):uuuu-MM-dd} 18:00 45")];

        Assert.Equal(findings, Year.Of("Senior").Phase(PhaseKind.AerobicBuild, 3).With(intervals).Check(PhaseRules.R15).Count);
    }

    [Fact]
    public void A_gap_too_short_for_every_phase_is_the_season_dates_doing() =>
        Assert.Equal(
            Cause.SeasonDates,
            Assert.Single(Year.Of("Senior").Phase(PhaseKind.Recovery, 2).Phase(PhaseKind.AerobicBuild, 2).Phase(PhaseKind.PreSeason, 3).Phase(PhaseKind.InSeason, 4).Check(PhaseRules.R15)).ForcedBy);

    [Fact]
    public void A_gap_long_enough_leaves_it_to_the_template() =>
        Assert.Equal(
            Cause.Template,
            Assert.Single(Year.Of("Senior").Phase(PhaseKind.Recovery, 4).Phase(PhaseKind.AerobicBuild, 2).Phase(PhaseKind.PreSeason, 3).Phase(PhaseKind.InSeason, 4).Check(PhaseRules.R15)).ForcedBy);
}

public class PreSeasonLastsThreeWeeksTests
{
    [Theory]
    [InlineData(2, 1)]
    [InlineData(3, 0)]
    public void Three_weeks_pass(int weeks, int findings) => Assert.Equal(findings, Year.Of("Senior").Phase(PhaseKind.PreSeason, weeks).Check(PhaseRules.R16).Count);
}

public class PhasesTileTheCycleAndHoldTheMatchesTests
{
    [Fact]
    public void A_match_in_the_aerobic_build_is_a_must_finding() =>
        Assert.Equal(Strength.Must, Assert.Single(Year.Of("Senior").Phase(PhaseKind.AerobicBuild, 4).With("match 2026-08-08 14:00 60").Check(PhaseRules.R18)).Strength);

    [Fact]
    public void Matches_in_season_and_in_pre_season_pass() =>
        Assert.Empty(Year.Of("Senior").Phase(PhaseKind.PreSeason, 1).Phase(PhaseKind.InSeason, 1).With("match 2026-08-08 14:00 60", "match 2026-08-15 14:00 60").Check(PhaseRules.R18));

    [Fact]
    public void A_gap_between_phases_is_found()
    {
        var plan = A.Plan(A.Request());
        var torn = plan with { Phases = [plan.Phases[0] with { Last = plan.Phases[0].Last.PlusDays(-1) }, .. plan.Phases.Skip(1)] };

        Assert.Empty(PhaseRules.R18.Check(PhaseRules.R18, new CheckedPlan(A.Request(), plan)));
        Assert.Single(PhaseRules.R18.Check(PhaseRules.R18, new CheckedPlan(A.Request(), torn)));
    }
}
