using ClubCycle.Planning.Templates;

namespace ClubCycle.Planning.Phases;

/// <summary>
/// Splits the whole weeks of a gap over the phases of a chain: integers within each phase's bounds that sum to the gap and minimise
/// Σ (wᵢ − G·sᵢ)² / sᵢ. The sum is separable and convex, so giving the weeks out one by one, each to the phase whose cost grows least, is exact
/// (Fox 1966; Ibaraki and Katoh 1988).
/// </summary>
public static class WeekAllocation
{
    /// <summary>Whole weeks for each phase of the chain, or null when the bounds cannot sum to the gap. Ties go to the earlier phase.</summary>
    /// <param name="weeks">The gap, 1 or more.</param>
    public static int[]? Split(IReadOnlyList<ChainPhase> phases, int weeks)
    {
        var given = new int[phases.Count];
        var total = 0;
        var most = 0;
        for (var i = 0; i < phases.Count; i++)
        {
            given[i] = phases[i].FixedWeeks ?? phases[i].MinWeeks;
            total += given[i];
            most += phases[i].FixedWeeks ?? phases[i].MaxWeeks;
        }

        if (total > weeks || most < weeks)
        {
            return null;
        }

        for (; total < weeks; total++)
        {
            var best = -1;
            var least = double.PositiveInfinity;
            for (var i = 0; i < phases.Count; i++)
            {
                if (given[i] >= (phases[i].FixedWeeks ?? phases[i].MaxWeeks))
                {
                    continue;
                }

                var share = phases[i].IdealShare;
                var ideal = weeks * share;
                var marginal = (((2 * given[i]) + 1) - (2 * ideal)) / share;
                if (marginal < least - 1e-9)
                {
                    (best, least) = (i, marginal);
                }
            }

            given[best]++;
        }

        return given;
    }

    /// <summary>The cost that <see cref="Split"/> minimises, week² units.</summary>
    public static double Cost(IReadOnlyList<ChainPhase> phases, IReadOnlyList<int> given, int weeks)
    {
        var cost = 0.0;
        for (var i = 0; i < phases.Count; i++)
        {
            var off = given[i] - (weeks * phases[i].IdealShare);
            cost += off * off / phases[i].IdealShare;
        }

        return cost;
    }
}
