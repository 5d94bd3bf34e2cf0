namespace ClubCycle.Planning.Rules;

internal static class RestRules
{
    public static readonly Rule R01 = new(
        "R01", Strength.Must, "Young players have at least one day a week without any organised activity.",
        "rest days a week ≥ 1", "under 18, every week",
        "Take a session, practice or match out of the week.",
        "American Academy of Pediatrics 2007 (Pediatrics 119:1242) and 2024 (Pediatrics 153:e2023065129)",
        YoungPlayersRestOneDayAWeek);

    public static readonly Rule R02 = new(
        "R02", Strength.Should, "Players of twelve and younger rest two days a week.",
        "rest days a week ≥ 2", "youngest player 12 or younger, every week",
        "Put a session inside practice, or leave one out.",
        "American Academy of Pediatrics 2024 asks for one to two days; the split by age is editorial",
        YoungerChildrenRestTwoDaysAWeek);

    public static readonly Rule R03 = new(
        "R03", Strength.Should, "Adults have at least one day a week off.",
        "rest days a week ≥ 1", "adults, every week",
        "Take a session out of the week or join two on one day.",
        "Editorial, from the reasoning behind training monotony (Foster 1998, Med Sci Sports Exerc 30:1164)",
        AdultsRestOneDayAWeek);

    private static IEnumerable<Finding> YoungPlayersRestOneDayAWeek(Rule rule, CheckedPlan plan) =>
        plan.Squad.AgeGroup.IsYouth ? TooFewRestDays(rule, plan, 1) : [];

    private static IEnumerable<Finding> YoungerChildrenRestTwoDaysAWeek(Rule rule, CheckedPlan plan) =>
        RuleLimits.RestDays(plan.Squad.AgeGroup) == 2 ? TooFewRestDays(rule, plan, 2) : [];

    private static IEnumerable<Finding> AdultsRestOneDayAWeek(Rule rule, CheckedPlan plan) =>
        plan.Squad.AgeGroup.IsYouth ? [] : TooFewRestDays(rule, plan, 1);

    private static IEnumerable<Finding> TooFewRestDays(Rule rule, CheckedPlan plan, int least) =>
        from week in plan.Weeks
        where week.RestDays < least
        let contacts = week.HockeyDays > 7 - least
        select rule.Finding(
            week.Week.First,
            $"{week.RestDays} rest days this week; at least {least} belong there.{(contacts ? $" Practices and matches alone take {week.HockeyDays} days." : "")}",
            new(week.RestDays, least, "days", week.Uids, contacts ? Cause.Contacts : plan.Decided(week.Active)));
}
