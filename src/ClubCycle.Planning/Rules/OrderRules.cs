using System.Globalization;

namespace ClubCycle.Planning.Rules;

internal static class OrderRules
{
    public static readonly Rule R40 = new(
        "R40", Strength.Should, "Fast work comes before heavy, heavy before long; strength and endurance on one day stand apart.",
        "inside a session: sprints, jumps and agility, then strength, then trunk and muscular endurance, then steady running; as two sessions of one day: strength first, ≥ 3 h from start to start (under 6 h is noted)", "everyone; two sessions of one day where the youngest player is 15 or older",
        "Change the order of the sheet, or move one of the two sessions.",
        "Haff and Triplett 2016; Robineau et al. 2016 (J Strength Cond Res 30:672); Schumann et al. 2022 (Sports Med 52:601); Wilson et al. 2012",
        FastComesBeforeHeavyAndHeavyBeforeLong);

    private static IEnumerable<Finding> FastComesBeforeHeavyAndHeavyBeforeLong(Rule rule, CheckedPlan plan)
    {
        foreach (var finding in rule.OncePerPhase(
            plan,
            sheet => sheet.OutOfPlace is { } step ? new(step + 1, step, "step", step) : null,
            (sheet, worst) => $"{sheet.Steps[worst.Step!.Value].Name} comes as step {worst.Measured}, after slower work."))
        {
            yield return finding;
        }

        if (plan.Squad.AgeGroup.YoungestAge < RuleLimits.PairedSessionsAge)
        {
            yield break;
        }

        for (var i = 1; i < plan.Sheets.Count; i++)
        {
            var (first, second) = (plan.Sheets[i - 1], plan.Sheets[i]);
            if (first.Session.Date == second.Session.Date && Pair(first, second) is var (strengthFirst, hours)
                && (!strengthFirst || hours < RuleLimits.HoursBetweenPairedPreferred))
            {
                var close = hours < RuleLimits.HoursBetweenPaired;
                yield return rule.Finding(
                    plan.WeekOf(second.Session.Date),
                    string.Create(CultureInfo.InvariantCulture, $"'{first.Session.Title}' ({Breaches.Day(first.Session)}) and '{second.Session.Title}' ({Breaches.Day(second.Session)}) on one day: {(strengthFirst ? "" : "endurance comes before strength, ")}{hours:0.#} h apart; strength first, {RuleLimits.HoursBetweenPaired} h at least, {RuleLimits.HoursBetweenPairedPreferred} h are better."),
                    new FindingFacts(hours, close ? RuleLimits.HoursBetweenPaired : RuleLimits.HoursBetweenPairedPreferred, "h", [first.Session.Uid, second.Session.Uid], plan.Decided(first.Session, second.Session)),
                    close || !strengthFirst ? Strength.Should : Strength.Note);
            }
        }
    }

    /// <summary>Null when the two are not strength and endurance.</summary>
    private static (bool StrengthFirst, double Hours)? Pair(CheckedSession first, CheckedSession second) =>
        first.HasResistance && second.HasSteadyRun ? (true, CheckedPlan.HoursBetween(first.Session, second.Session))
        : first.HasSteadyRun && second.HasResistance ? (false, CheckedPlan.HoursBetween(first.Session, second.Session))
        : null;
}
