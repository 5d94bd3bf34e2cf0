using System.Globalization;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Planning.Rules;

internal static class JumpRules
{
    public static readonly Rule R31 = new(
        "R31", Strength.Should, "A jump session keeps to the foot contacts that its players are used to.",
        "foot contacts a session ≤ 100 for new players, ≤ 120 with some training, ≤ 140 when trained", "youngest player 15 or older",
        "Take out sets or an exercise.",
        "Potach and Chu in Haff and Triplett 2016, ch. 18 (per session from memory; one source counts them per week)",
        FootContactsFitExperience);

    public static readonly Rule R33 = new(
        "R33", Strength.Should, "Jump sessions are two days apart and few.",
        "≥ 48 h from start to start, ≥ 72 h when one of them holds high jumps; adults ≤ 3 a week, in season ≤ 2", "everyone",
        "Move one of the two, or leave one out.",
        "Potach and Chu in Haff and Triplett 2016, ch. 18 (from memory)",
        JumpSessionsAreTwoDaysApart);

    public static readonly Rule R34 = new(
        "R34", Strength.Must, "Nobody under sixteen does high or shock jumps.",
        "no jumps of the high class and no depth or drop jumps", "youngest player younger than 16",
        "Swap in low jumps. From 16 on a coach asks for a base of strength first: a squat of one and a half times body mass, and no drop above 46 cm over 100 kg.",
        "Allerheiligen and Rogers 1995 (Strength Cond 17(4):26); Potach and Chu in Haff and Triplett 2016, ch. 18 (body mass from memory); that the high class counts too and that the youngest decides is editorial",
        ShockJumpsWaitUntilSixteen);

    /// <summary>R34 for one class of jump: true when nobody of this age may do it.</summary>
    internal static bool IsRefused(JumpClass jumps, int age) => age < RuleLimits.ShockJumpAge && jumps == JumpClass.High;

    private static IEnumerable<Finding> FootContactsFitExperience(Rule rule, CheckedPlan plan)
    {
        if (plan.Squad.AgeGroup.YoungestAge < RuleLimits.JumpsLikeAdultsAge)
        {
            return [];
        }

        var most = Jumping.MostContacts(plan.Squad.AgeGroup, plan.Squad.TrainingAge);
        return rule.OncePerPhase(
            plan,
            sheet => sheet.FootContacts > most ? new(sheet.FootContacts, most, "contacts") : null,
            (_, worst) => $"{worst.Measured} foot contacts; {most} at most for this training age.");
    }

    private static IEnumerable<Finding> JumpSessionsAreTwoDaysApart(Rule rule, CheckedPlan plan)
    {
        var jumps = plan.Sheets.Where(s => s.HasJumps).ToList();
        for (var i = 1; i < jumps.Count; i++)
        {
            var (earlier, later) = (jumps[i - 1], jumps[i]);
            var limit = earlier.Jumps == JumpClass.High || later.Jumps == JumpClass.High ? RuleLimits.HoursBetweenHighJumps : RuleLimits.HoursBetweenHard;
            var hours = CheckedPlan.HoursBetween(earlier.Session, later.Session);
            if (hours < limit)
            {
                yield return rule.Finding(
                    plan.WeekOf(later.Session.Date),
                    string.Create(CultureInfo.InvariantCulture, $"{hours:0.#} h from the jumps of '{earlier.Session.Title}' ({Breaches.Day(earlier.Session)}) to those of '{later.Session.Title}' ({Breaches.Day(later.Session)}); {limit} h belong between."),
                    new FindingFacts(hours, limit, "h", [earlier.Session.Uid, later.Session.Uid], plan.Decided(earlier.Session, later.Session)));
            }
        }

        foreach (var finding in plan.Squad.AgeGroup.IsYouth ? [] : Frequency.TooManyAWeek(rule, jumps, "jumps", MostForAdults))
        {
            yield return finding;
        }
    }

    private static int MostForAdults(CheckedWeek week) => week.Week.Phase == PhaseKind.InSeason ? RuleLimits.JumpSessionsInSeason : RuleLimits.JumpSessions;

    private static IEnumerable<Finding> ShockJumpsWaitUntilSixteen(Rule rule, CheckedPlan plan)
    {
        var age = plan.Squad.AgeGroup.YoungestAge;
        return age >= RuleLimits.ShockJumpAge ? [] : rule.OncePerPhase(
            plan,
            sheet => sheet.ShockJumps || IsRefused(sheet.Jumps, age) ? new(age, RuleLimits.ShockJumpAge, "years") : null,
            (sheet, _) => $"{(sheet.ShockJumps ? "shock jumps" : "jumps of the high class")} at age {age}; not before {RuleLimits.ShockJumpAge}.");
    }
}
