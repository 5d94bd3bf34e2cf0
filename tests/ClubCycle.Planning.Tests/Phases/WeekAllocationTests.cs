using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Templates;
using CsCheck;

namespace ClubCycle.Planning.Tests.Phases;

/// <summary>
/// Giving weeks out one by one is exact for separable convex costs: Fox 1966 (Operations Research 14:210, "Discrete optimization via marginal
/// analysis"); Ibaraki and Katoh 1988 ("Resource Allocation Problems", MIT Press). Here it is held against every possible split.
/// </summary>
public class WeekAllocationTests
{
    private static readonly Gen<ChainPhase> AnyPhase =
        from least in Gen.Int[0, 4]
        from width in Gen.Int[0, 6]
        from share in Gen.Int[1, 100]
        from fix in Gen.Int[0, 9]
        select new ChainPhase(PhaseKind.AerobicBuild, least, share / 100.0, least + width, fix == 0 ? least + 1 : null);

    [Fact]
    public void Every_gap_of_every_built_in_chain_gets_the_best_of_all_splits()
    {
        var chains = BuiltInTemplates.All.SelectMany(t => t.Chains).ToList();

        Assert.All(chains, chain =>
        {
            for (var weeks = chain.MinWeeks; weeks <= chain.MaxWeeks; weeks++)
            {
                IsBest(chain.Phases, weeks);
            }
        });
    }

    [Fact]
    public void Any_chain_gets_the_best_of_all_splits() =>
        Gen.Select(AnyPhase.List[1, 5], Gen.Int[1, 40]).Sample((phases, weeks) => IsBest(phases, weeks), iter: 2_000, threads: 1);

    [Fact]
    public void A_tie_goes_to_the_earlier_phase() =>
        Assert.Equal([2, 1, 1], WeekAllocation.Split([Third, Third, Third], 4)!);

    [Fact]
    public void A_fixed_length_stays_and_the_others_share_the_rest() =>
        Assert.Equal([4, 7, 1], WeekAllocation.Split([new(PhaseKind.Recovery, 1, 0.3, 9), new(PhaseKind.AerobicBuild, 1, 0.6, 9, FixedWeeks: 7), new(PhaseKind.PreSeason, 1, 0.1, 2)], 12)!);

    [Fact]
    public void One_week_less_than_the_least_cannot_be_split() => Assert.Null(WeekAllocation.Split([new(PhaseKind.Recovery, 3, 0.5, 5), new(PhaseKind.PreSeason, 4, 0.5, 5)], 6));

    [Fact]
    public void One_week_more_than_the_most_cannot_be_split() => Assert.Null(WeekAllocation.Split([new(PhaseKind.Recovery, 3, 0.5, 5), new(PhaseKind.PreSeason, 4, 0.5, 5)], 11));

    private static ChainPhase Third => new(PhaseKind.Mixed, 0, 1 / 3.0, 9);

    /// <summary>The split costs no more than any other; of equal ones it gives most to the first phase, then to the second, and so on.</summary>
    private static void IsBest(IReadOnlyList<ChainPhase> phases, int weeks)
    {
        var split = WeekAllocation.Split(phases, weeks);
        var (best, least) = (default(int[]), double.PositiveInfinity);
        foreach (var other in Splits(phases, weeks))
        {
            // Enumerated with the most in the earliest phases first, so the first of equals is the expected one.
            var cost = phases.Zip(other, (p, w) => Math.Pow(w - (weeks * p.IdealShare), 2) / p.IdealShare).Sum();
            if (cost < least - 1e-7)
            {
                (best, least) = (other, cost);
            }
        }

        Assert.Equal(best, split);
        if (split is not null)
        {
            Assert.Equal(least, WeekAllocation.Cost(phases, split, weeks), 1e-6);
        }
    }

    private static IEnumerable<int[]> Splits(IReadOnlyList<ChainPhase> phases, int weeks)
    {
        var given = new int[phases.Count];
        return From(0, weeks);

        IEnumerable<int[]> From(int index, int left)
        {
            if (index == phases.Count)
            {
                if (left == 0)
                {
                    yield return [.. given];
                }

                yield break;
            }

            var phase = phases[index];
            for (var w = Math.Min(left, phase.FixedWeeks ?? phase.MaxWeeks); w >= (phase.FixedWeeks ?? phase.MinWeeks); w--)
            {
                given[index] = w;
                foreach (var split in From(index + 1, left - w))
                {
                    yield return split;
                }
            }
        }
    }
}
