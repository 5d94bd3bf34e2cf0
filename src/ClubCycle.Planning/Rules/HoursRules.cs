using System.Globalization;

namespace ClubCycle.Planning.Rules;

internal static class HoursRules
{
    public static readonly Rule R04 = new(
        "R04", Strength.Should, "Young players play or practise hockey on five days a week at most.",
        "hockey days a week ≤ 5", "under 18, every week",
        "Move or leave out a practice in weeks with more matches.",
        "American Academy of Pediatrics 2007 (Pediatrics 119:1242)",
        YoungPlayersHaveFiveHockeyDaysAtMost);

    public static readonly Rule R05 = new(
        "R05", Strength.Must, "A child has no more hours of organised sport a week than years of age.",
        "organised hours a week ≤ age of the youngest player", "under 18, every week",
        "Shorten practices or leave out sessions. Hours in other clubs and at school count too.",
        "Jayanthi et al. 2015 (Am J Sports Med 43:794), one case-control study of 7- to 18-year-olds: a brake, not proof; younger children are held to it too (editorial)",
        ChildrenHaveNoMoreHoursThanYears);

    public static readonly Rule R06 = new(
        "R06", Strength.Must, "Young players have sixteen hours of organised sport a week at most.",
        "organised hours a week ≤ 16", "under 18, every week",
        "Shorten practices or leave out sessions.",
        "Rose, Emery and Meeuwisse 2008 (Med Sci Sports Exerc 40:444); the number is from memory and a secondary citation",
        YoungPlayersHaveSixteenHoursAtMost);

    /// <summary>R05 for one week: true when it holds.</summary>
    /// <param name="age">Completed years.</param>
    internal static bool HoursFitAge(int age, double hours) => hours <= age;

    /// <summary>R06 for one week: true when it holds.</summary>
    internal static bool HoursFitYouth(double hours) => hours <= RuleLimits.YouthHours;

    private static IEnumerable<Finding> YoungPlayersHaveFiveHockeyDaysAtMost(Rule rule, CheckedPlan plan) =>
        from week in plan.Weeks
        where plan.Squad.AgeGroup.IsYouth && week.HockeyDays > RuleLimits.YouthHockeyDays
        select rule.Finding(
            week.Week.First,
            $"{week.HockeyDays} hockey days this week ({week.Practices} practices, {week.Matches} matches); {RuleLimits.YouthHockeyDays} at most.",
            new(week.HockeyDays, RuleLimits.YouthHockeyDays, "days", [.. week.Contacts.Select(s => s.Uid)], Cause.Contacts));

    private static IEnumerable<Finding> ChildrenHaveNoMoreHoursThanYears(Rule rule, CheckedPlan plan) =>
        from week in plan.Weeks
        where plan.Squad.AgeGroup.IsYouth && !HoursFitAge(plan.Squad.AgeGroup.YoungestAge, week.OrganisedHours)
        select TooManyHours(rule, plan, week, plan.Squad.AgeGroup.YoungestAge, $" at age {plan.Squad.AgeGroup.YoungestAge}");

    private static IEnumerable<Finding> YoungPlayersHaveSixteenHoursAtMost(Rule rule, CheckedPlan plan) =>
        from week in plan.Weeks
        where plan.Squad.AgeGroup.IsYouth && !HoursFitYouth(week.OrganisedHours)
        select TooManyHours(rule, plan, week, RuleLimits.YouthHours, "");

    private static Finding TooManyHours(Rule rule, CheckedPlan plan, CheckedWeek week, double most, string whose)
    {
        var contacts = week.Contacts.Sum(s => s.Minutes) / 60.0;
        return rule.Finding(
            week.Week.First,
            $"{Hours(week.OrganisedHours)} of practice, matches and sessions this week; {Hours(most)} at most{whose}.{(contacts > most ? $" Practices and matches alone take {Hours(contacts)}." : "")}",
            new(week.OrganisedHours, most, "h", week.Uids, contacts > most ? Cause.Contacts : plan.Decided(week.Active)));
    }

    private static string Hours(double hours) => hours.ToString("0.#", CultureInfo.InvariantCulture) + " h";
}
