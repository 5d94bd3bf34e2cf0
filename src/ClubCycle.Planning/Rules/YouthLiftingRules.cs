using System.Globalization;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Weeks;
using ClubCycle.Planning.Workouts;
using NodaTime;

namespace ClubCycle.Planning.Rules;

internal static class YouthLiftingRules
{
    public static readonly Rule R29 = new(
        "R29", Strength.Must, "Young players lift no more than their age allows, and never try for a maximum.",
        "age 6–8 body weight only, 9–11 ≤ 60 % of maximum, 12–14 ≤ 70 %, 15–17 ≤ 80 %", "under 18, every step with a load",
        "Take the load down to the age's ceiling.",
        "Australian Strength and Conditioning Association 2007/2017 (loads from memory); Faigenbaum et al. 2009 (J Strength Cond Res 23(5 Suppl)); that the youngest decides is editorial",
        YoungPlayersLiftWithinTheirAge);

    public static readonly Rule R30 = new(
        "R30", Strength.Should, "Young players lift in small doses with days between.",
        "≤ 3 sessions a week with lifting, circuits or body weight, never on two days in a row; loads new players' first 8 weeks 1–2 × 8–12 at ≤ 60 %, later 2–4 × 6–12 (one set passes in lighter weeks)", "under 18",
        "Move a session by a day, leave one out, or change the sets.",
        "Lloyd et al. 2014 (Br J Sports Med 48:498); Faigenbaum et al. 2009 (from memory)",
        YoungPlayersLiftInSmallDoses);

    /// <summary>R30 for one lift: null when it fits.</summary>
    /// <param name="first">In the first eight weeks of a new player.</param>
    /// <param name="lighter">In an unloading week, a taper or a week of matches.</param>
    internal static Breach? MissesYouthDose(int sets, int reps, int percent, bool first, bool lighter) =>
        first && percent > 60 ? new(percent, 60, "%")
        : sets > (first ? 2 : 4) ? new(sets, first ? 2 : 4, "sets")
        : sets < (first || lighter ? 1 : 2) ? new(sets, 2, "sets")
        : reps > 12 ? new(reps, 12, "reps")
        : reps < (first ? 8 : 6) ? new(reps, first ? 8 : 6, "reps")
        : null;

    private static IEnumerable<Finding> YoungPlayersLiftWithinTheirAge(Rule rule, CheckedPlan plan)
    {
        if (!plan.Squad.AgeGroup.IsYouth)
        {
            return [];
        }

        var ceiling = RepetitionTable.Ceiling(plan.Squad.AgeGroup);
        return rule.OncePerPhase(
            plan,
            sheet => LoadedStep.Worst(sheet, step => step.PercentOfMaximum > ceiling ? new(step.PercentOfMaximum.Value, ceiling, "%")
                : ceiling == 0 && KnownExercise.Find(step.Name) is { Exercise.Loaded: true } ? new(1, 0, "loads") : null),
            (sheet, worst) => $"{LoadedStep.Words(sheet, worst)}; {(ceiling == 0 ? "body weight only" : string.Create(CultureInfo.InvariantCulture, $"{ceiling} % at most"))} at age {plan.Squad.AgeGroup.YoungestAge}.");
    }

    private static IEnumerable<Finding> YoungPlayersLiftInSmallDoses(Rule rule, CheckedPlan plan)
    {
        if (!plan.Squad.AgeGroup.IsYouth)
        {
            return [];
        }

        var lifting = plan.Sheets.Where(s => s.HasResistance).ToList();
        return lifting.Count == 0 ? [] :
        [
            .. Frequency.TooManyAWeek(rule, lifting, "lifting, circuits or body weight", _ => RuleLimits.YouthResistanceSessions),
            .. Frequency.DaysInARow(rule, plan, lifting, "strength work"),
            .. Doses(rule, plan, lifting[0].Session.Date),
        ];
    }

    private static IEnumerable<Finding> Doses(Rule rule, CheckedPlan plan, LocalDate firstLifting)
    {
        var familiarFrom = plan.Squad.TrainingAge == TrainingAge.New ? firstLifting.PlusWeeks(RuleLimits.FirstLiftingWeeks) : firstLifting;
        return rule.OncePerPhase(
            plan,
            sheet => LoadedStep.Worst(sheet, step => step is { PercentOfMaximum: { } percent, Sets: { } sets, Reps: { } reps }
                ? MissesYouthDose(sets, reps, percent, sheet.Session.Date < familiarFrom, sheet.Week?.Week.Loading is not WeekLoading.Loading)
                : null),
            (sheet, worst) => string.Create(CultureInfo.InvariantCulture, $"{LoadedStep.Words(sheet, worst)}; {(sheet.Session.Date < familiarFrom ? "the first weeks take 1–2 × 8–12 at 60 % or less" : "2–4 × 6–12 is the window")}."));
    }
}
