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
        for (var i = 1; i < plan.HardSinceBefore.Count; i++)
        {
            var (earlier, later) = (plan.HardSinceBefore[i - 1], plan.HardSinceBefore[i]);
            if (earlier.Kind == SessionKind.Match || later.Date < plan.Plan.Cycle.Start)
            {
                continue;
            }

            var hours = plan.Squad.AgeGroup.IsMasters && later.Kind != SessionKind.Match ? RuleLimits.HoursBetweenHardMasters : RuleLimits.HoursBetweenHard;
            if (!FarEnough(earlier.StartsAt, later.StartsAt, hours))
            {
                yield return TooClose(rule, plan, earlier, later, later, $"{Hours(earlier, later)} from '{earlier.Title}' ({Day(earlier)}) to '{later.Title}' ({Day(later)}); {hours} h belong between.", hours);
            }
        }
    }

    private static IEnumerable<Finding> HardWorkKeepsAwayFromTheMatchAhead(Rule rule, CheckedPlan plan)
    {
        foreach (var match in plan.Matches.Where(m => plan.PhaseOn(m.Date)?.Kind is PhaseKind.InSeason or PhaseKind.PreSeason))
        {
            foreach (var session in plan.Hard.Where(s => s.Kind != SessionKind.Match && s.StartsAt < match.StartsAt))
            {
                var workout = CheckedPlan.WorkoutOf(session);
                if (Period.DaysBetween(session.Date, match.Date) == 1)
                {
                    yield return TooClose(rule, plan, session, match, session, $"'{session.Title}' is hard and stands the day before the match on {Day(match)}.", 48);
                }
                else if ((workout is { HeavyLift: true } || workout?.Jumps == JumpClass.High) && !FarEnough(session.StartsAt, match.StartsAt, 48))
                {
                    yield return TooClose(rule, plan, session, match, session, $"'{session.Title}' stands {Hours(session, match)} before the match on {Day(match)}; 48 h belong between.", 48);
                }
            }
        }
    }

    private static IEnumerable<Finding> HardWorkWaitsAfterMatches(Rule rule, CheckedPlan plan)
    {
        List<PlannedSession> matches = [.. plan.HardSinceBefore.Where(s => s.Kind == SessionKind.Match)];
        for (var i = 0; i < matches.Count; i++)
        {
            var match = matches[i];
            var second = i > 0 && CheckedPlan.HoursBetween(matches[i - 1], match) <= 48;
            var hours = second ? RuleLimits.HoursAfterTwoMatches : RuleLimits.HoursBetweenHard;
            var next = plan.HardSinceBefore.FirstOrDefault(s => s.StartsAt > match.StartsAt || (s.StartsAt == match.StartsAt && s.Kind != SessionKind.Match));
            if (next is { Kind: not SessionKind.Match } && next.Date >= plan.Plan.Cycle.Start && !FarEnough(match.StartsAt, next.StartsAt, hours))
            {
                yield return TooClose(rule, plan, match, next, next, $"'{next.Title}' is hard and comes {Hours(match, next)} after {(second ? "the second of two matches" : "a match")} ({Day(match)}); {hours} h belong between.", hours);
            }

            var most = RuleLimits.MatchesInFourDays(plan.Squad.AgeGroup);
            var within = matches.Skip(i).TakeWhile(m => Period.DaysBetween(match.Date, m.Date) <= 3).ToList();
            if (within.Count > most && within[^1].Date >= plan.Plan.Cycle.Start)
            {
                yield return rule.Finding(
                    plan.WeekOf(LocalDate.Max(match.Date, plan.Plan.Cycle.Start)),
                    $"{within.Count} matches within four days from {Day(match)}; {most} at most. The fixtures force it.",
                    new(within.Count, most, "matches", [.. within.Select(m => m.Uid)], Cause.Fixtures));
            }
        }
    }

    private static IEnumerable<Finding> WeeksHoldFewHardSessions(Rule rule, CheckedPlan plan)
    {
        var most = RuleLimits.HardSessions(plan.Squad.AgeGroup);
        return from week in plan.Weeks
               let hard = week.Active.Where(s => s.Hardness == Hardness.Hard).ToList()
               where hard.Count > most
               select rule.Finding(
                   week.Week.First,
                   $"{hard.Count} hard sessions this week, matches included; {most} at most.{(week.Matches > most ? " The matches alone are more." : "")}",
                   new(hard.Count, most, "sessions", [.. hard.Select(s => s.Uid)], week.Matches > most ? Cause.Fixtures : plan.Decided(hard)));
    }

    /// <param name="meant">The one that could move; the finding stands in its week.</param>
    private static Finding TooClose(Rule rule, CheckedPlan plan, PlannedSession earlier, PlannedSession later, PlannedSession meant, string message, int hours)
    {
        var forcedBy = plan.Decided(earlier, later);
        var why = forcedBy switch
        {
            Cause.Coach => " A coach fixed that day.",
            Cause.Past => " It is history and stays as it was.",
            _ => "",
        };
        return rule.Finding(plan.WeekOf(meant.Date), message + why, new(CheckedPlan.HoursBetween(earlier, later), hours, "h", [earlier.Uid, later.Uid], forcedBy));
    }

    private static string Hours(PlannedSession earlier, PlannedSession later) =>
        CheckedPlan.HoursBetween(earlier, later).ToString("0.#", CultureInfo.InvariantCulture) + " h";

    private static string Day(PlannedSession session) => session.StartsAt.ToString("ddd d MMM, HH:mm", CultureInfo.InvariantCulture);
}
