using System.Globalization;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Workouts;
using NodaTime;

namespace ClubCycle.Planning.Rules;

internal static class SpacingRules
{
    public static readonly Rule R36 = new(
        "R36", Strength.Should, "Hard sessions are at least two days apart.",
        "≥ 48 h from start to start (masters 72 h between sessions); matches count as hard, two matches of one weekend are left to R38", "everyone, across week ends",
        "Move one of the two, or swap it for an easier session.",
        "Haugen et al. 2019 (Sports Med Open 5:44); Issurin; the 72 hours for masters are editorial",
        HardSessionsAreTwoDaysApart);

    public static readonly Rule R37 = new(
        "R37", Strength.Should, "The day before a match holds no hard session; heavy lifts and high jumps keep two days away.",
        "no hard session the day before; heavy lower-body lifting and high jumps ≥ 48 h before", "in season and pre-season",
        "Move the session to an earlier day.",
        "Practice of the trade; the exact cut is editorial",
        HardWorkKeepsAwayFromTheMatchAhead);

    public static readonly Rule R38 = new(
        "R38", Strength.Should, "After a match hard work waits two days, after two matches three; matches do not pile up.",
        "first hard session ≥ 48 h after a match, ≥ 72 h after two matches within 48 h; 3 matches in 4 days at most (2 under 16)", "everyone",
        "Move the hard session later; ask the league or rotate players when matches pile up.",
        "Doeven et al. 2018; Spencer et al. 2005; the cut for youth is editorial",
        HardWorkWaitsAfterMatches);

    public static readonly Rule R39 = new(
        "R39", Strength.Should, "A week holds only so many hard sessions.",
        "matches included: 4 for adults, 3 at age 14 to 17, 2 under 14", "every week",
        "Swap one hard session for an easier one.",
        "Follows from R36; the numbers for youth are editorial",
        WeeksHoldFewHardSessions);

    /// <summary>R36 for two hard sessions: true when far enough apart.</summary>
    internal static bool FarEnough(LocalDateTime earlier, LocalDateTime later, int hours) =>
        Period.Between(earlier, later, PeriodUnits.Minutes).Minutes >= hours * 60L;

    private static IEnumerable<Finding> HardSessionsAreTwoDaysApart(Rule rule, CheckedPlan plan)
    {
        for (var i = 1; i < plan.Hard.Count; i++)
        {
            var (earlier, later) = (plan.Hard[i - 1], plan.Hard[i]);
            if (earlier.Kind == SessionKind.Match)
            {
                continue;
            }

            var hours = plan.Squad.AgeGroup.IsMasters && later.Kind != SessionKind.Match ? RuleLimits.HoursBetweenHardMasters : RuleLimits.HoursBetweenHard;
            if (!FarEnough(earlier.StartsAt, later.StartsAt, hours))
            {
                yield return rule.Finding(plan.WeekOf(later.Date), $"{Hours(earlier, later)} from '{earlier.Title}' ({Day(earlier)}) to '{later.Title}' ({Day(later)}); {hours} h belong between.{Forced(earlier, later)}");
            }
        }
    }

    private static IEnumerable<Finding> HardWorkKeepsAwayFromTheMatchAhead(Rule rule, CheckedPlan plan)
    {
        foreach (var match in plan.Matches.Where(m => PhaseOn(plan, m.Date) is PhaseKind.InSeason or PhaseKind.PreSeason))
        {
            foreach (var session in plan.Hard.Where(s => s.Kind != SessionKind.Match && s.StartsAt < match.StartsAt))
            {
                var workout = session.Workout is { } name ? WorkoutCatalogue.Find(name) : null;
                if (Period.DaysBetween(session.Date, match.Date) == 1)
                {
                    yield return rule.Finding(plan.WeekOf(session.Date), $"'{session.Title}' is hard and stands the day before the match on {Day(match)}.{Forced(session, match)}");
                }
                else if ((workout is { HeavyLift: true } || workout?.Jumps == JumpClass.High) && !FarEnough(session.StartsAt, match.StartsAt, 48))
                {
                    yield return rule.Finding(plan.WeekOf(session.Date), $"'{session.Title}' stands {Hours(session, match)} before the match on {Day(match)}; 48 h belong between.{Forced(session, match)}");
                }
            }
        }
    }

    private static IEnumerable<Finding> HardWorkWaitsAfterMatches(Rule rule, CheckedPlan plan)
    {
        for (var i = 0; i < plan.Matches.Count; i++)
        {
            var match = plan.Matches[i];
            var second = i > 0 && CheckedPlan.HoursBetween(plan.Matches[i - 1], match) <= 48;
            var hours = second ? RuleLimits.HoursAfterTwoMatches : RuleLimits.HoursBetweenHard;
            var next = plan.Hard.FirstOrDefault(s => s.StartsAt > match.StartsAt);
            if (next is { Kind: not SessionKind.Match } && !FarEnough(match.StartsAt, next.StartsAt, hours))
            {
                yield return rule.Finding(plan.WeekOf(next.Date), $"'{next.Title}' is hard and comes {Hours(match, next)} after {(second ? "the second of two matches" : "a match")} ({Day(match)}); {hours} h belong between.{Forced(next, match)}");
            }

            var most = RuleLimits.MatchesInFourDays(plan.Squad.AgeGroup);
            var within = plan.Matches.Skip(i).TakeWhile(m => Period.DaysBetween(match.Date, m.Date) <= 3).Count();
            if (within > most)
            {
                yield return rule.Finding(plan.WeekOf(match.Date), $"{within} matches within four days from {Day(match)}; {most} at most. The fixtures force it.");
            }
        }
    }

    private static IEnumerable<Finding> WeeksHoldFewHardSessions(Rule rule, CheckedPlan plan)
    {
        var most = RuleLimits.HardSessions(plan.Squad.AgeGroup);
        return from week in plan.Weeks
               let hard = week.Active.Count(s => s.Hardness == Hardness.Hard)
               where hard > most
               select rule.Finding(week.Week.First, $"{hard} hard sessions this week, matches included; {most} at most.{(week.Matches > most ? " The matches alone are more." : "")}");
    }

    private static PhaseKind? PhaseOn(CheckedPlan plan, LocalDate date) => plan.Plan.Phases.FirstOrDefault(p => p.First <= date && date <= p.Last)?.Kind;

    private static string Forced(PlannedSession one, PlannedSession other) =>
        one.Pinned || other.Pinned ? " A coach fixed that day." : "";

    private static string Hours(PlannedSession earlier, PlannedSession later) =>
        CheckedPlan.HoursBetween(earlier, later).ToString("0.#", CultureInfo.InvariantCulture) + " h";

    private static string Day(PlannedSession session) => session.StartsAt.ToString("ddd d MMM, HH:mm", CultureInfo.InvariantCulture);
}
