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

    [Theory]
    [InlineData("Senior", 1, 2, "Recovery lasts 1 week; 2 to 5 are usual.")]
    [InlineData("Senior", 6, 5, "Recovery lasts 6 weeks; 2 to 5 are usual.")]
    [InlineData("U18", 3, 4, "Recovery lasts 3 weeks; young players need 4 or more.")]
    public void Its_length_is_held_against_the_nearest_that_passes(string ages, int weeks, int limit, string told)
    {
        var finding = Assert.Single(Year.Of(ages).Phase(PhaseKind.Recovery, weeks).Check(PhaseRules.R14));

        Assert.Equal((weeks, limit, "weeks"), finding.FiguresOf());
        Assert.StartsWith(told, finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(6, Cause.Coach)]
    [InlineData(5, Cause.Template)]
    public void A_length_that_a_coach_fixed_is_the_coachs_doing(int weeks, Cause cause) =>
        Assert.Equal(cause, Assert.Single(Year.Of("Senior").Fixing(PhaseKind.Recovery, weeks).Phase(PhaseKind.Recovery, 6).Check(PhaseRules.R14)).ForcedBy);
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

    // Recovery of two weeks, a build of four and pre-season of three make nine.
    [Theory]
    [InlineData(3, Cause.SeasonDates)]
    [InlineData(4, Cause.Template)]
    public void A_gap_of_nine_weeks_holds_every_phase(int recovery, Cause cause)
    {
        var finding = Assert.Single(Year.Of("Senior").Phase(PhaseKind.Recovery, recovery).Phase(PhaseKind.AerobicBuild, 2).Phase(PhaseKind.PreSeason, 3).Phase(PhaseKind.InSeason, 4).Check(PhaseRules.R15));

        Assert.Equal(((2, 4, "weeks"), cause), (finding.FiguresOf(), finding.ForcedBy));
    }
}

public class PreSeasonLastsThreeWeeksTests
{
    [Theory]
    [InlineData(2, 1)]
    [InlineData(3, 0)]
    public void Three_weeks_pass(int weeks, int findings) => Assert.Equal(findings, Year.Of("Senior").Phase(PhaseKind.PreSeason, weeks).Check(PhaseRules.R16).Count);

    [Fact]
    public void It_is_told_with_its_weeks() => Assert.Equal((1, 3, "weeks"), Assert.Single(Year.Of("Senior").Phase(PhaseKind.PreSeason, 1).Check(PhaseRules.R16)).FiguresOf());
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

    [Fact]
    public void A_torn_start_or_end_is_told_in_days()
    {
        var plan = A.Plan(A.Request());
        var late = plan with { Phases = [plan.Phases[0], plan.Phases[1] with { First = plan.Phases[1].First.PlusDays(2) }, .. plan.Phases.Skip(2)] };
        var shortened = plan with { Phases = [.. plan.Phases.SkipLast(1), plan.Phases[^1] with { Last = plan.Phases[^1].Last.PlusDays(-3) }] };

        Assert.Equal((2, 0, "days"), Assert.Single(Check(late)).FiguresOf());
        Assert.Equal((3, 0, "days"), Check(shortened).Single(f => f.Week is null).FiguresOf());
    }

    [Fact]
    public void The_fixtures_force_a_match_outside_the_season() =>
        Assert.Equal(Cause.Fixtures, Assert.Single(Year.Of("Senior").Phase(PhaseKind.Break, 4).With("match 2026-08-08 14:00 60").Check(PhaseRules.R18)).ForcedBy);

    private static IEnumerable<Finding> Check(SquadPlan plan) => PhaseRules.R18.Check(PhaseRules.R18, new CheckedPlan(A.Request(), plan));
}
