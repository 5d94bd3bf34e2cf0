using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Rules;

namespace ClubCycle.Planning.Tests.Phases;

/// <summary>Lengths that a coach sets; season A has a gap of 31 weeks with the chain <c>long</c>: recovery, aerobic build, mixed, pre-season.</summary>
public class PhaseLengthTests
{
    [Theory]
    [InlineData(1, 16)]
    [InlineData(3, 6)]
    [InlineData(2, 0)]
    public void A_phase_takes_the_weeks_that_the_coach_gave_and_the_others_share_the_rest(int phase, int weeks)
    {
        var plan = A.Plan(A.Request(lengths: [Long(phase, weeks)]));

        Assert.Equal(weeks, Gap(plan).Where(p => p.Kind == Kinds[phase]).Sum(p => p.Weeks));
        Assert.Equal(Gap(A.Plan(A.Request())).Sum(p => p.Weeks), Gap(plan).Sum(p => p.Weeks));
        Assert.DoesNotContain(plan.Findings, f => f.Rule == "lengths-ignored");
    }

    [Fact]
    public void Lengths_that_no_longer_sum_to_the_gap_are_ignored_and_reported()
    {
        var plan = A.Plan(A.Request(lengths: [Long(0, 20), Long(1, 20)]));

        Assert.Equal(A.Plan(A.Request()).Phases, plan.Phases);
        var finding = Assert.Single(plan.Findings, f => f.Rule == "lengths-ignored");
        Assert.Equal((Strength.Should, 40.0, Cause.SeasonDates), (finding.Strength, finding.Facts!.Measured, finding.ForcedBy!.Value));
        Assert.Contains("recovery 20, aerobic build 20", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Lengths_of_another_chain_are_ignored_in_silence_while_some_count()
    {
        var plan = A.Plan(A.Request(lengths: [Long(1, 15), new PhaseLength(0, "short", 1, 3)]));

        Assert.Equal(15, Gap(plan).Single(p => p.Kind == PhaseKind.AerobicBuild).Weeks);
        Assert.DoesNotContain(plan.Findings, f => f.Rule == "lengths-ignored");
    }

    [Theory]
    [InlineData(0, "short", 1)]
    [InlineData(0, "long", 9)]
    [InlineData(7, "long", 1)]
    public void Lengths_of_which_none_counts_are_reported(int gap, string chain, int phase) =>
        Assert.Single(A.Plan(A.Request(lengths: [new PhaseLength(gap, chain, phase, 4)])).Findings, f => f.Rule == "lengths-ignored");

    [Fact]
    public void A_short_phase_says_that_a_coach_fixed_it() =>
        Assert.Equal(Cause.Coach, Assert.Single(A.Plan(A.Request(lengths: [Long(3, 2)])).Findings, f => f.Rule == "R16").ForcedBy);

    [Fact]
    public void A_boundary_that_is_over_stays_where_it_was_whatever_is_set_later()
    {
        var request = A.Request();
        var plan = A.Plan(request);
        var from = Gap(plan)[1].First.PlusWeeks(2);

        var again = A.Plan(request with { Published = plan, PlanFrom = from, Lengths = [Long(0, 2), Long(3, 12)] });

        Assert.Equal(Gap(plan)[0], Gap(again)[0]);
        Assert.Equal(12, Gap(again)[3].Weeks);
    }

    [Fact]
    public void A_phase_under_way_is_not_cut_to_less_than_it_has_lasted()
    {
        var request = A.Request();
        var plan = A.Plan(request);

        var again = A.Plan(request with { Published = plan, PlanFrom = Gap(plan)[1].First.PlusDays(50), Lengths = [Long(1, 3)] });

        Assert.Equal(8, Gap(again)[1].Weeks);
    }

    internal static readonly PhaseKind[] Kinds = [PhaseKind.Recovery, PhaseKind.AerobicBuild, PhaseKind.Mixed, PhaseKind.PreSeason];

    internal static PhaseLength Long(int phase, int weeks) => new(0, "long", phase, weeks);

    internal static IReadOnlyList<Phase> Gap(SquadPlan plan) => [.. plan.Phases.TakeWhile(p => p.Kind != PhaseKind.InSeason)];
}
