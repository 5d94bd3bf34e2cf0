using ClubCycle.Planning.Workouts;

namespace ClubCycle.Planning.Rules;

internal static class ChildJumpRules
{
    public static readonly Rule R32 = new(
        "R32", Strength.Must, "Children jump low and little, and a little more from week to week.",
        "foot contacts a session ≤ 60 to start with, at most a tenth more than in the six weeks before, never more than 100; ≤ 2 jump sessions a week, never on two days in a row; low jumps only under 12", "youngest player 14 or younger",
        "Take out sets, swap in lower jumps, or move the session by a day.",
        "Johnson et al. 2011 (J Strength Cond Res 25:2623); the cap of 100 from memory; six weeks of memory, age 12 for the growth spurt and that the youngest decides are editorial",
        ChildrenJumpLowAndLittle);

    /// <summary>R32: most foot contacts in a session.</summary>
    /// <param name="fullest">Contacts of the fullest session in the six weeks before this one; 0 when there was none.</param>
    internal static double MostForChildren(int fullest) =>
        Math.Min(RuleLimits.ChildContacts, Math.Max(RuleLimits.ChildFirstContacts, RuleLimits.ChildContactsRise * fullest));

    private static IEnumerable<Finding> ChildrenJumpLowAndLittle(Rule rule, CheckedPlan plan)
    {
        var age = plan.Squad.AgeGroup.YoungestAge;
        if (age >= RuleLimits.JumpsLikeAdultsAge)
        {
            return [];
        }

        var jumps = plan.Sheets.Where(s => s.HasJumps).ToList();
        return
        [
            .. Contacts(rule, plan, jumps),
            .. Frequency.TooManyAWeek(rule, jumps, "jumps", _ => RuleLimits.ChildJumpSessions),
            .. Frequency.DaysInARow(rule, plan, jumps, "jumps"),
            .. rule.OncePerPhase(
                plan,
                sheet => age < RuleLimits.GrowthSpurtAge && sheet.Jumps > JumpClass.Low ? new((int)sheet.Jumps, (int)JumpClass.Low, "class") : null,
                (sheet, _) => $"jumps of the {FileName.Of(sheet.Jumps)} class at age {age}; low ones only before the growth spurt."),
        ];
    }

    private static IEnumerable<Finding> Contacts(Rule rule, CheckedPlan plan, List<CheckedSession> jumps)
    {
        var remembered = 0;
        for (var i = 0; i < jumps.Count; i++)
        {
            var session = jumps[i].Session;
            var weekFirst = plan.WeekOf(session.Date);
            while (jumps[remembered].Session.Date < weekFirst.PlusWeeks(-RuleLimits.ChildContactsMemoryWeeks))
            {
                remembered++;
            }

            var fullest = 0;
            for (var j = remembered; j < i && jumps[j].Session.Date < weekFirst; j++)
            {
                fullest = Math.Max(fullest, jumps[j].FootContacts);
            }

            var most = MostForChildren(fullest);
            if (jumps[i].FootContacts > most)
            {
                yield return rule.Finding(
                    weekFirst,
                    $"'{session.Title}' ({Breaches.Day(session)}): {jumps[i].FootContacts} foot contacts; {(int)most} at most {(fullest == 0 ? "to start with" : $"after {fullest} in the six weeks before")}.",
                    new FindingFacts(jumps[i].FootContacts, most, "contacts", [session.Uid], null));
            }
        }
    }
}
