using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Templates;
using NodaTime;
using NodaTime.Text;

namespace ClubCycle.Planning.Phases;

/// <summary>
/// Lengths that the planner does not choose: those that a coach set, and those of phases that players have lived through. A boundary in the past stays where it
/// was published while its gap starts on the same day and has the same chain.
/// </summary>
internal sealed class GivenPhases(IReadOnlyList<PhaseLength> lengths, IReadOnlyList<Phase> published, LocalDate? planFrom)
{
    public static GivenPhases? Of(PlanRequest request) =>
        request is { Lengths: null or [], Published: null } ? null : new(request.Lengths ?? [], request.Published?.Phases ?? [], request.PlanFrom);

    /// <summary>The chain's weeks with what is given, and a finding when a coach's lengths cannot hold.</summary>
    /// <param name="chosen">What the planner would choose.</param>
    /// <param name="firstWeek">First day of the gap's first week.</param>
    /// <param name="firstDay">First day of the gap, which in a cycle's first week may come before it.</param>
    public (int[] Split, Finding? Ignored) Split(int gap, Chain chain, int[] chosen, LocalDate firstWeek, LocalDate firstDay, int weeks)
    {
        var lived = LivedOf(chain, firstWeek, firstDay);
        var kept = WeekAllocation.Split([.. lived.Select(l => l.Phase)], weeks) ?? chosen;
        var ofGap = lengths.Where(l => l.Gap == gap).ToList();
        if (ofGap.Count == 0)
        {
            return (kept, null);
        }

        var dates = $"the {weeks} weeks from {Iso(firstDay)} to {Iso(firstWeek.PlusWeeks(weeks).PlusDays(-1))}";
        var set = ofGap.Where(l => l.Chain == chain.Name && l.Phase < chain.Phases.Count).ToDictionary(l => l.Phase, l => l.Weeks);
        if (set.Count == 0)
        {
            return (kept, Ignored(firstWeek, $"The lengths that a coach set were for other phases than those of {dates}, so the planner chose.", ofGap.Sum(l => l.Weeks), weeks));
        }

        ChainPhase[] asked = [.. lived.Select((l, i) => !l.Over && set.TryGetValue(i, out var own) ? l.Phase with { FixedWeeks = Math.Max(own, l.Begun) } : l.Phase)];
        var words = string.Join(", ", set.OrderBy(s => s.Key).Select(s => $"{FileName.Of(chain.Phases[s.Key].Kind).Replace('-', ' ')} {s.Value}"));
        return WeekAllocation.Split(asked, weeks) is { } split
            ? (split, null)
            : (kept, Ignored(firstWeek, $"The lengths that a coach set ({words} weeks) do not fit {dates}, so the planner chose.", set.Values.Sum(), weeks));
    }

    /// <summary>Lengths for gaps that the season no longer has.</summary>
    /// <param name="gaps">How many it has.</param>
    public IEnumerable<Finding> WithoutGap(int gaps) =>
        from gap in lengths.Where(l => l.Gap >= gaps).GroupBy(l => l.Gap).OrderBy(g => g.Key)
        select Ignored(null, $"The lengths that a coach set for a pause in the season no longer count: the season has {gaps} of them now.", gap.Sum(l => l.Weeks), 0);

    /// <summary>The chain with what is over as it was, and with the phase under way no shorter than it has lasted.</summary>
    private Lived[] LivedOf(Chain chain, LocalDate firstWeek, LocalDate firstDay)
    {
        Lived[] lived = [.. chain.Phases.Select(p => new Lived(p))];
        var at = published.TakeWhile(p => p.First != firstDay).Count();
        if (planFrom is not { } from)
        {
            return lived;
        }

        var first = firstWeek;
        for (var i = 0; i < lived.Length && at < published.Count && published[at].Chain == chain.Name && first < from; i++)
        {
            var phase = lived[i].Phase;
            if (published[at].Kind != phase.Kind)
            {
                lived[i] = new Lived(phase with { FixedWeeks = 0 }, Over: true);
                continue;
            }

            var (next, begun) = (first.PlusWeeks(published[at].Weeks), (Period.DaysBetween(first, from) + 6) / 7);
            lived[i] = next <= from
                ? new Lived(phase with { FixedWeeks = published[at].Weeks }, Over: true)
                : new Lived(phase with { MinWeeks = Math.Max(phase.MinWeeks, begun), MaxWeeks = Math.Max(phase.MaxWeeks, begun), FixedWeeks = phase.FixedWeeks is { } own ? Math.Max(own, begun) : null }, Begun: begun);
            (first, at) = (next, at + 1);
        }

        return lived;
    }

    private static Finding Ignored(LocalDate? week, string message, int measured, int limit) => new(
        "lengths-ignored", Strength.Should, week, message,
        "Set the lengths again on the squad's year page, or let the planner choose there.",
        "The season's dates and the template's chains",
        new FindingFacts(measured, limit, "weeks", [], Cause.SeasonDates));

    private static string Iso(LocalDate date) => LocalDatePattern.Iso.Format(date);

    /// <param name="Over">All of it is past.</param>
    /// <param name="Begun">Weeks of it that have begun.</param>
    private sealed record Lived(ChainPhase Phase, bool Over = false, int Begun = 0);
}
