using System.Globalization;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Workouts;
using NodaTime;

namespace ClubCycle.Planning.Rules;

/// <summary>What was built fades when nothing keeps it up.</summary>
internal static class ResidualRules
{
    private const string Scope = "all phases but recovery and restore, after which the count starts afresh; children under 11 play, they are not judged (editorial)";

    public static readonly Rule R20 = new(
        "R20", Strength.Should, "Speed is touched every five to eight days.",
        "days since the last fast running ≤ 8 (> 5 is a note); sprints, strides, games of tag, practices and matches count (editorial: the source asks for 95 % of own maximum)", Scope,
        "Add a few strides to an easy run or a short set of sprints.",
        "Issurin 2008 (5 ± 3 days, from a secondary page); Malone et al. 2017",
        SpeedIsTouchedEveryWeek, TemplateDecides: true);

    public static readonly Rule R21 = new(
        "R21", Strength.Should, "What was built is touched before it fades.",
        "days since the last stimulus, note and warning: muscular endurance 15 and 20, anaerobic endurance (maximal sprints repeated) 18 and 22, maximal strength (heavy lifts, upkeep) 30 and 35, aerobic endurance 30 and 35, agility 8 and trunk 15 (both editorial, warning from the same day); practices and matches count for agility and aerobic endurance (editorial)",
        Scope + "; a quality that no session for the age group trains is not judged",
        "Add a session or a short touch of it to the phase's weekly mix.",
        "Issurin 2008 and 2010 (Sports Med 40:189), estimates for trained adults, partly from memory",
        WhatWasBuiltIsTouchedBeforeItFades, TemplateDecides: true);

    private static readonly Residual Speed = new("fast running", 5, 8, true, w => w is { HeavyLift: false, Jumps: JumpClass.None } && w.Qualities.Contains(Quality.Speed));

    private static readonly IReadOnlyList<Residual> Others =
    [
        new("agility work", 8, 8, true, w => w.Qualities.Contains(Quality.Agility)),
        new("work for muscular endurance", 15, 20, false, w => w.Qualities.Contains(Quality.MuscularEndurance)),
        new("trunk work", 15, 15, false, w => w.Qualities.Contains(Quality.CoreStrength)),
        new("repeated sprints", 18, 22, false, w => w.Sprint),
        new("heavy lifting", 30, 35, false, w => w.HeavyLift || w.Name == "strength-upkeep"),
        new("endurance work", 30, 35, true, w => w.Qualities.Contains(Quality.AerobicEndurance)),
    ];

    /// <param name="Noted">Days without it that are a note when passed.</param>
    /// <param name="Warned">Days without it that are a warning when passed.</param>
    /// <param name="InHockey">Practices and matches are a stimulus too.</param>
    private sealed record Residual(string Name, int Noted, int Warned, bool InHockey, Func<Workout, bool> Trains)
    {
        public bool TrainedIn(PlannedSession session, Workout? workout) =>
            session.Kind == SessionKind.Session ? workout is not null && Trains(workout) : InHockey;

        public Strength? Of(int days) => days > Warned ? Strength.Should : days > Noted ? Strength.Note : null;
    }

    /// <param name="Last">Last day with the stimulus, or the day before the count starts.</param>
    /// <param name="End">Day of the next one, or the last day of the count.</param>
    private readonly record struct Stretch(LocalDate Last, LocalDate End)
    {
        public int Days => Period.DaysBetween(Last, End);
    }

    /// <summary>R20 by clause: null up to 5 days, a note up to 8, then a warning.</summary>
    internal static Strength? SpeedAfter(int days) => Speed.Of(days);

    private static IEnumerable<Finding> SpeedIsTouchedEveryWeek(Rule rule, CheckedPlan plan) => Faded(rule, plan, Speed);

    private static IEnumerable<Finding> WhatWasBuiltIsTouchedBeforeItFades(Rule rule, CheckedPlan plan) => Others.SelectMany(residual => Faded(rule, plan, residual));

    /// <summary>One finding for each stretch; stretches of one phase and strength share one.</summary>
    private static IEnumerable<Finding> Faded(Rule rule, CheckedPlan plan, Residual residual)
    {
        if (plan.Squad.AgeGroup.YoungestAge < RuleLimits.QualitiesFromAge || !WorkoutCatalogue.All.Any(w => residual.Trains(w) && w.AllowedFor(plan.Squad.AgeGroup)))
        {
            return [];
        }

        return from stretch in Stretches(plan, residual)
               let strength = residual.Of(stretch.Days)
               where strength is not null
               group stretch by (Strength: strength.Value, Phase: plan.PhaseOn(stretch.Last.PlusDays(1)))
               into stretches
               select Told(rule, plan, residual, stretches.Key.Strength, [.. stretches]);
    }

    private static Finding Told(Rule rule, CheckedPlan plan, Residual residual, Strength strength, List<Stretch> stretches)
    {
        var limit = strength == Strength.Should ? residual.Warned : residual.Noted;
        var longest = stretches.MaxBy(s => s.Days);
        var phases = plan.Plan.Phases.Where(p => p.First < longest.End && p.Last > longest.Last).Select(p => FileName.Of(p.Kind)).Distinct();
        var where = $"{longest.Days} days without {residual.Name} from {Day(longest.Last.PlusDays(1))} ({string.Join(", ", phases)}); it fades after {limit}.";
        return rule.Finding(
            plan.PlanningWeekOf(stretches[0].Last.PlusDays(1)),
            stretches.Count == 1 ? where : $"{stretches.Count} times in this phase, at the longest {where}",
            new(longest.Days, limit, "days", [], CheckedPlan.Together(stretches.Select(s => WhyFaded(plan, residual, s)))),
            strength);
    }

    private static IEnumerable<Stretch> Stretches(CheckedPlan plan, Residual residual)
    {
        foreach (var (first, last) in Judged(plan))
        {
            var since = first.PlusDays(-1);
            for (var i = 0; i < plan.Active.Count; i++)
            {
                var session = plan.Active[i];
                if (session.Date > since && session.Date <= last && residual.TrainedIn(session, plan.Workouts[i]))
                {
                    yield return new(since, session.Date);
                    since = session.Date;
                }
            }

            yield return new(since, last);
        }
    }

    /// <summary>Runs of days outside recovery and restore that are known.</summary>
    private static IEnumerable<(LocalDate First, LocalDate Last)> Judged(CheckedPlan plan)
    {
        LocalDate? first = null;
        foreach (var phase in plan.Plan.Phases)
        {
            if (phase.Kind is PhaseKind.Recovery or PhaseKind.Restore)
            {
                if (first is { } from && from < phase.First)
                {
                    yield return (from, phase.First.PlusDays(-1));
                }

                first = null;
            }
            else if (phase.Last >= plan.KnownFrom)
            {
                first ??= LocalDate.Max(phase.First, plan.KnownFrom);
            }
        }

        if (first is { } open)
        {
            yield return (open, plan.Plan.Phases[^1].Last);
        }
    }

    private static Cause? WhyFaded(CheckedPlan plan, Residual residual, Stretch stretch)
    {
        List<CheckedWeek> without = [.. plan.Weeks.Where(w => w.Week.First > stretch.Last && w.Week.Last < stretch.End)];
        if (without.Count > 0)
        {
            return CheckedPlan.Together(without.Select(w => plan.WhyFewer(w, residual.Trains, 1)));
        }

        // Between two weekly sessions: once a week is all that the mix asks for.
        List<CheckedWeek> around = [.. plan.Weeks.Where(w => w.Week.First <= stretch.End && w.Week.Last >= stretch.Last)];
        return around.Any(w => plan.ClosedDaysIn(w) > 0) ? Cause.ClosedDays
            : plan.Decided(around.SelectMany(w => w.Active)) ?? Cause.Template;
    }

    private static string Day(LocalDate date) => date.ToString("d MMM", CultureInfo.InvariantCulture);
}
