using ClubCycle.Planning.Seasons;
using NodaTime;

namespace ClubCycle.Planning.Rules;

internal static class HockeyFreeRules
{
    public static readonly Rule R07 = new(
        "R07", Strength.Must, "Young players have two to three months a year away from hockey, in blocks of four weeks or more.",
        "days in hockey-free blocks of ≥ 28 days: ≥ 56 (must), ≥ 84 (should)", "under 18, the whole cycle",
        "Lengthen a phase without practice, start practice later in pre-season, or leave weeks free between stints.",
        "American Academy of Pediatrics 2007 and 2024 (two to three months); 2016 (three blocks of a month, from memory)",
        YoungPlayersHaveMonthsAwayFromHockey);

    public static readonly Rule R08 = new(
        "R08", Strength.Should, "Up to fourteen, hockey takes eight months of the year at most.",
        "calendar months with a practice or match ≤ 8", "youngest player 14 or younger, the whole cycle",
        "Start practice later, or give a month to other sports and free play.",
        "Jayanthi et al. 2013 (Sports Health 5:251), a marker of early specialisation; counting a month with a single practice is editorial",
        HockeyTakesEightMonthsAtMost);

    /// <summary>Days in blocks of at least 28 days without practice or match.</summary>
    internal static int DaysInBlocks(IEnumerable<int> blocks) => blocks.Where(days => days >= RuleLimits.HockeyFreeBlockDays).Sum();

    /// <summary>Null when enough; else how strongly the shortage counts.</summary>
    internal static Strength? Shortage(int days) =>
        days < RuleLimits.HockeyFreeDaysMust ? Strength.Must : days < RuleLimits.HockeyFreeDaysShould ? Strength.Should : null;

    private static IEnumerable<Finding> YoungPlayersHaveMonthsAwayFromHockey(Rule rule, CheckedPlan plan)
    {
        // A squad that joins in mid-year may have had its free months before.
        if (!plan.Squad.AgeGroup.IsYouth || plan.KnownFrom > plan.Plan.Cycle.Start)
        {
            yield break;
        }

        var days = DaysInBlocks(Blocks(plan));
        if (Shortage(days) is { } strength)
        {
            var inSeason = plan.Weeks.Count(w => w.Week.Phase == Phases.PhaseKind.InSeason);
            var least = strength == Strength.Must ? RuleLimits.HockeyFreeDaysMust : RuleLimits.HockeyFreeDaysShould;
            yield return rule.Finding(
                null,
                $"{days} days in hockey-free blocks of four weeks or more this year; {least} belong there. The season itself takes {inSeason} of {plan.Weeks.Count} weeks.",
                new(days, least, "days", [], DaysInBlocks(Gaps(plan.Request.Season)) < least ? Cause.SeasonDates : OutsideSeason(plan) ? Cause.Fixtures : Cause.Contacts),
                strength);
        }
    }

    private static IEnumerable<Finding> HockeyTakesEightMonthsAtMost(Rule rule, CheckedPlan plan)
    {
        if (plan.Squad.AgeGroup is not { IsYouth: true, YoungestAge: <= RuleLimits.MonthsWithHockeyUpToAge })
        {
            yield break;
        }

        var months = Months(plan.Active.Where(s => s.Kind is SessionKind.Practice or SessionKind.Match));
        if (months > RuleLimits.MonthsWithHockey)
        {
            var matches = Months(plan.Matches);
            yield return rule.Finding(
                null,
                $"{months} months of the year hold hockey, {matches} of them matches; {RuleLimits.MonthsWithHockey} at most up to {RuleLimits.MonthsWithHockeyUpToAge}.",
                new(months, RuleLimits.MonthsWithHockey, "months", [], matches > RuleLimits.MonthsWithHockey ? Cause.SeasonDates : Cause.Contacts));
        }
    }

    /// <summary>January to December, so that a cycle of a year has twelve whatever its first day.</summary>
    private static int Months(IEnumerable<PlannedSession> hockey) => hockey.Select(s => s.Date.Month).Distinct().Count();

    private static IEnumerable<int> Gaps(Season season)
    {
        var since = season.PreviousLastDay;
        foreach (var stint in season.Stints)
        {
            yield return Period.DaysBetween(since, stint.First) - 1;
            since = stint.Last;
        }
    }

    private static bool OutsideSeason(CheckedPlan plan) =>
        plan.Matches.Any(m => !plan.Request.Season.Stints.Any(s => s.First <= m.Date && m.Date <= s.Last));

    private static IEnumerable<int> Blocks(CheckedPlan plan)
    {
        var since = plan.Plan.Cycle.Start.PlusDays(-1);
        foreach (var day in plan.Active.Where(s => s.Kind is SessionKind.Practice or SessionKind.Match).Select(s => s.Date).Distinct().Order())
        {
            yield return Period.DaysBetween(since, day) - 1;
            since = day;
        }

        yield return Period.DaysBetween(since, plan.Plan.Cycle.End);
    }
}
