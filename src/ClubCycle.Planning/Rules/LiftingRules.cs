using System.Globalization;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Planning.Rules;

internal static class LiftingRules
{
    public static readonly Rule R25 = new(
        "R25", Strength.Should, "Heavy lifting for the legs comes back after two to four days.",
        "≥ 48 h from start to start between sessions with ≥ 80 % of maximum on hips and legs; ≤ 96 h in building phases whose template asks for two or more a week", "everyone",
        "Move one of the two sessions.",
        "Haff and Triplett 2016 (Essentials of Strength Training and Conditioning, 4th ed., ch. 17)",
        HeavyLegsComeBackAfterTwoToFourDays);

    public static readonly Rule R26 = new(
        "R26", Strength.Must, "A load allows the repetitions that the sheet asks for.",
        "repetitions ≤ table: 95 % → 2, 93 → 3, 90 → 4, 87 → 5, 85 → 6, 83 → 7, 80 → 8, 77 → 9, 75 → 10, 70 → 11, 67 → 12, 65 and less → 15; between two rows the heavier decides", "everyone, every step with a load",
        "Take fewer repetitions or less load.",
        "Haff and Triplett 2016, ch. 17; the rows 70, 67 and 65 from memory",
        LoadsAllowTheirRepetitions);

    public static readonly Rule R27 = new(
        "R27", Strength.Should, "Load, repetitions and rest of a lift serve one goal.",
        "strength ≥ 85 %, ≤ 6 repetitions, rest ≥ 120 s; or power 75–85 %, 3–5 repetitions, rest ≥ 120 s; or muscular endurance ≤ 67 %, ≥ 12 repetitions, rest ≤ 30 s (up to 90 s passes)", "youngest player 16 or older; players new to training as a note",
        "Move the load, the repetitions or the rest into one of the three windows.",
        "Haff and Triplett 2016, ch. 17; 90 s from the American College of Sports Medicine 2009 (from memory); that new players learn at lighter loads first is editorial",
        LiftsServeOneGoal);

    /// <summary>R26 for one lift: most repetitions; none above the maximum.</summary>
    internal static int MostReps(int percent) => percent > 100 ? 0 : RepetitionTable.MostReps(percent);

    /// <summary>R27 for one lift: null when it fits a window, else what it misses of the window that its load is nearest to.</summary>
    /// <param name="rest">Seconds; null when there is none or the sheet does not say.</param>
    internal static Breach? Misses(int percent, int reps, int? rest) => percent switch
    {
        >= 85 => reps > 6 ? new(reps, 6, "reps") : rest < 120 ? new(rest.Value, 120, "s") : null,
        >= 75 => reps > 5 ? new(reps, 5, "reps") : reps < 3 ? new(reps, 3, "reps") : rest < 120 ? new(rest.Value, 120, "s") : null,
        > 67 => new(percent, percent > 70 ? 75 : 67, "%"),
        _ => reps < 12 ? new(reps, 12, "reps") : rest > 90 ? new(rest.Value, 90, "s") : null,
    };

    private static IEnumerable<Finding> HeavyLegsComeBackAfterTwoToFourDays(Rule rule, CheckedPlan plan)
    {
        CheckedSession? before = null;
        foreach (var sheet in plan.Sheets)
        {
            if (sheet.HeaviestOnLegs < RuleLimits.HeavyPercent)
            {
                continue;
            }

            if (before is not null && Gap(plan, before, sheet) is var (hours, limit))
            {
                yield return rule.Finding(
                    plan.WeekOf(sheet.Session.Date),
                    string.Create(CultureInfo.InvariantCulture, $"{hours:0.#} h from '{before.Session.Title}' ({Breaches.Day(before.Session)}) to '{sheet.Session.Title}' ({Breaches.Day(sheet.Session)}), both heavy for the legs; {(hours < limit ? "at least" : "at most")} {limit} h belong between."),
                    new FindingFacts(hours, limit, "h", [before.Session.Uid, sheet.Session.Uid], plan.Decided(before.Session, sheet.Session)));
            }

            before = sheet;
        }
    }

    private static (double Hours, int Limit)? Gap(CheckedPlan plan, CheckedSession before, CheckedSession sheet)
    {
        var hours = CheckedPlan.HoursBetween(before.Session, sheet.Session);
        return hours < RuleLimits.HoursBetweenHard ? (hours, RuleLimits.HoursBetweenHard)
            : hours > RuleLimits.HoursBetweenHeavyAtMost && ReferenceEquals(before.Phase, sheet.Phase) && AsksForTwoHeavyAWeek(plan, sheet.Phase) ? (hours, RuleLimits.HoursBetweenHeavyAtMost)
            : null;
    }

    private static bool AsksForTwoHeavyAWeek(CheckedPlan plan, Phase? phase) =>
        phase?.Kind is PhaseKind.AerobicBuild or PhaseKind.Mixed or PhaseKind.PreSeason
        && plan.Request.Template.Mixes.FirstOrDefault(m => m.Phase == phase.Kind) is { } mix
        && mix.Slots.Count(slot => slot.Workouts.All(name => WorkoutCatalogue.Find(name) is { HeavyLift: true })) >= 2;

    private static IEnumerable<Finding> LoadsAllowTheirRepetitions(Rule rule, CheckedPlan plan) => rule.OncePerPhase(
        plan,
        sheet => LoadedStep.Worst(sheet, static step => step is { PercentOfMaximum: { } percent, Reps: { } reps } && reps > MostReps(percent) ? new(reps, MostReps(percent), "reps") : null),
        (sheet, worst) => $"{LoadedStep.Words(sheet, worst)}; that load allows {worst.Limit} repetitions at most.");

    private static IEnumerable<Finding> LiftsServeOneGoal(Rule rule, CheckedPlan plan) => plan.Squad.AgeGroup.YoungestAge < 16 ? [] : rule.OncePerPhase(
        plan,
        sheet => LoadedStep.Worst(sheet, static step => step is { PercentOfMaximum: { } percent, Reps: { } reps } ? Misses(percent, reps, step.RestSeconds) : null),
        (sheet, worst) => $"{LoadedStep.Words(sheet, worst)}: {Window(sheet.Steps[worst.Step!.Value].PercentOfMaximum!.Value)}.",
        plan.Squad.AgeGroup.IsYouth ? Cause.AgeGroup : null,
        plan.Squad.TrainingAge == TrainingAge.New ? Strength.Note : null);

    private static string Window(int percent) => percent switch
    {
        >= 85 => "strength asks for 6 repetitions or fewer and 120 s of rest or more",
        >= 75 => "power asks for 3 to 5 repetitions and 120 s of rest or more",
        > 67 => "muscular endurance ends at 67 %, power starts at 75 %",
        _ => "muscular endurance asks for 12 repetitions or more and 90 s of rest or less",
    };
}
