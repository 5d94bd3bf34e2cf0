using ClubCycle.Planning.Templates;
using NodaTime;

namespace ClubCycle.Planning.Phases;

/// <summary>Where one phase of a chain gives way to the next: a coach may move it, week by week.</summary>
/// <param name="Index">Number of the phase before it among the plan's phases.</param>
/// <param name="Gap">As in <see cref="PhaseLength"/>.</param>
/// <param name="Least">Fewest weeks that <paramref name="Before"/> may have: one, and all that have begun.</param>
/// <param name="Most">Most weeks that <paramref name="Before"/> may have: <paramref name="After"/> keeps one.</param>
public sealed record PhaseBoundary(int Index, int Gap, Phase Before, Phase After, int Least, int Most)
{
    /// <summary>The boundaries that can be moved, in date order.</summary>
    public static IReadOnlyList<PhaseBoundary> Of(PlanRequest request, SquadPlan plan) =>
        [.. Enumerable.Range(0, Math.Max(0, plan.Phases.Count - 1)).Select(i => Find(request, plan, i)).OfType<Result<PhaseBoundary>.Ok>().Select(found => found.Value)];

    /// <summary>What moving a boundary does: the coach's lengths for its gap, with new ones for the two phases beside it. The others stay as they are.</summary>
    /// <param name="weeks">Weeks that the phase before the boundary should have; kept between <see cref="Least"/> and <see cref="Most"/>.</param>
    public static Result<IReadOnlyList<PhaseLength>> Move(PlanRequest request, SquadPlan plan, int index, int weeks)
    {
        if (!Find(request, plan, index).TryGet(out var boundary, out var problems))
        {
            return new Result<IReadOnlyList<PhaseLength>>.Failed(problems);
        }

        var (before, after) = (NumberInChain(request.Template, plan, index), NumberInChain(request.Template, plan, index + 1));
        var length = Math.Clamp(weeks, boundary.Least, boundary.Most);
        var chain = boundary.Before.Chain;
        return new Result<IReadOnlyList<PhaseLength>>.Ok(
        [
            .. (request.Lengths ?? []).Where(l => l.Gap == boundary.Gap && l.Chain == chain && l.Phase != before && l.Phase != after)
                .Append(new PhaseLength(boundary.Gap, chain, before!.Value, length))
                .Append(new PhaseLength(boundary.Gap, chain, after!.Value, boundary.Before.Weeks + boundary.After.Weeks - length))
                .OrderBy(l => l.Phase),
        ]);
    }

    private static Result<PhaseBoundary> Find(PlanRequest request, SquadPlan plan, int index)
    {
        if (index < 0 || index + 1 >= plan.Phases.Count)
        {
            return new Problem("phase.no-boundary", "There is no such boundary. Reload the year and try again.", "boundary");
        }

        var (before, after) = (plan.Phases[index], plan.Phases[index + 1]);
        if (before.Kind == PhaseKind.InSeason || after.Kind == PhaseKind.InSeason)
        {
            return new Problem("phase.season-date", "This boundary is a season date. Change the season's dates to move it.", "boundary");
        }

        var firstWeek = plan.Weeks.FirstOrDefault(w => w.Last >= before.First)?.First ?? before.First;
        var begun = request.PlanFrom is { } from && from > firstWeek ? (Period.DaysBetween(firstWeek, from) + 6) / 7 : 0;
        if (before.Chain != after.Chain || after.First <= request.PlanFrom
            || NumberInChain(request.Template, plan, index) is null || NumberInChain(request.Template, plan, index + 1) is null)
        {
            return new Problem("phase.over", "This boundary lies in weeks that are over. Move one that is still to come.", "boundary");
        }

        var gap = plan.Phases.Take(index + 1).Where((p, i) => p.Kind != PhaseKind.InSeason && (i == 0 || plan.Phases[i - 1].Kind == PhaseKind.InSeason)).Count() - 1;
        return new PhaseBoundary(index, gap, before, after, Math.Max(1, begun), before.Weeks + after.Weeks - 1);
    }

    /// <summary>Which phase of its chain a phase of the plan is; phases without a week are not in the plan. Null when the template has changed.</summary>
    private static int? NumberInChain(Template template, SquadPlan plan, int index)
    {
        var phase = plan.Phases[index];
        var from = index;
        while (from > 0 && plan.Phases[from - 1].Kind != PhaseKind.InSeason && plan.Phases[from - 1].Chain == phase.Chain)
        {
            from--;
        }

        var kinds = template.Chains.FirstOrDefault(c => c.Name == phase.Chain)?.Phases ?? [];
        var number = -1;
        for (var i = from; i <= index; i++)
        {
            do
            {
                number++;
            }
            while (number < kinds.Count && kinds[number].Kind != plan.Phases[i].Kind);
        }

        return number < kinds.Count ? number : null;
    }
}
