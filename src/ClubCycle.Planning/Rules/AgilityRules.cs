using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Templates;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Planning.Rules;

internal static class AgilityRules
{
    public static readonly Rule R43 = new(
        "R43", Strength.Should, "Agility answers something that nobody can foresee.",
        "at least one block with an unpredictable stimulus, and at least half of the agility minutes; pre-season and season: 15 minutes or more, in one or two sessions a week (noted)", "everyone, every session with agility",
        "Swap planned turns for a partner, a call or a small game. For the weekly minutes small games in practice count; the coach knows.",
        "Sheppard and Young 2006 (J Sports Sci 24:919); Young and Rogers 2014 (J Sports Sci 32:307); half of the minutes is editorial",
        AgilityAnswersTheUnforeseen);

    private static IEnumerable<Finding> AgilityAnswersTheUnforeseen(Rule rule, CheckedPlan plan) =>
    [
        .. rule.OncePerPhase(
            plan,
            sheet => 2 * sheet.CuedMinutes < sheet.AgilityMinutes ? new(100.0 * sheet.CuedMinutes / sheet.AgilityMinutes, 50, "%") : null,
            (sheet, _) => $"{sheet.CuedMinutes} of {sheet.AgilityMinutes} agility minutes answer an unpredictable stimulus; half belongs there."),
        .. from weeks in ShortWeeks.In(plan, sheets => sheets[0].Phase?.Kind is PhaseKind.PreSeason or PhaseKind.InSeason ? TooLittleOrTooOften(sheets) : null)
           select rule.Finding(
               weeks.First.Week.First,
               $"Fewer than {RuleLimits.AgilityMinutesAWeek} minutes of agility, or more than {RuleLimits.AgilitySessionsAWeek} sessions of it, in {weeks.Weeks.Count} of {weeks.Of} weeks of this phase; the fewest are {weeks.Fewest} minutes.",
               new FindingFacts(weeks.Fewest, RuleLimits.AgilityMinutesAWeek, "min", [], AsksForAgility(plan.Request.Template, weeks.Phase.Kind) ? null : Cause.Template),
               Strength.Note),
    ];

    private static int? TooLittleOrTooOften(ArraySegment<CheckedSession> week)
    {
        var (minutes, sessions) = (0, 0);
        foreach (var sheet in week)
        {
            minutes += sheet.AgilityMinutes;
            sessions += sheet.AgilityMinutes > 0 ? 1 : 0;
        }

        return minutes < RuleLimits.AgilityMinutesAWeek || sessions > RuleLimits.AgilitySessionsAWeek ? minutes : null;
    }

    private static bool AsksForAgility(Template template, PhaseKind phase) =>
        template.Mixes.Any(m => m.Phase == phase && m.Slots.Any(s => s.Workouts.Any(w => WorkoutCatalogue.Find(w) is { } workout && workout.Qualities.Contains(Quality.Agility))));
}
