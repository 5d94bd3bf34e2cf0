using System.Globalization;
using ClubCycle.Planning.Phases;

namespace ClubCycle.Planning.Rules;

internal static class TaperRules
{
    public static readonly Rule R46 = new(
        "R46", Strength.Should, "The last week before the first match is about half as full, with nearly as many sessions.",
        "load 40 to 59 % of the mean of the four weeks before; sessions and practices ≥ 80 % of the usual number; not judged without four weeks before, or where they have less than 600 AU, which leaves nothing to taper (editorial)",
        "the last week of a pre-season that leads into matches",
        "Shorten the sessions of this week and keep their number and their pace.",
        "Bosquet et al. 2007 (Med Sci Sports Exerc 39:1358); Wang et al. 2023",
        TheWeekBeforeTheFirstMatchIsHalfAsFull);

    /// <summary>True when a taper's load fits the mean of the four weeks before.</summary>
    internal static bool Tapers(double mean, double load) => load >= RuleLimits.TaperLeast * mean && load <= RuleLimits.TaperMost * mean;

    private static IEnumerable<Finding> TheWeekBeforeTheFirstMatchIsHalfAsFull(Rule rule, CheckedPlan plan)
    {
        for (var i = 4; i + 1 < plan.Weeks.Count; i++)
        {
            List<CheckedWeek> before = [.. plan.Weeks.Skip(i - 4).Take(4)];
            var week = plan.Weeks[i];
            if (week.Week.Phase != PhaseKind.PreSeason || plan.Weeks[i + 1].Week.Phase != PhaseKind.InSeason || !plan.Weeks.Skip(i + 1).TakeWhile(w => w.Week.Phase == PhaseKind.InSeason).Any(w => w.Matches > 0)
                || !week.Whole || !before.TrueForAll(w => w.Whole))
            {
                continue;
            }

            var mean = before.Average(w => w.Week.PlannedLoadAu);
            var load = week.Week.PlannedLoadAu;
            if (mean >= RuleLimits.TaperTooLittleAu && !Tapers(mean, load))
            {
                var tooMuch = load > RuleLimits.TaperMost * mean;
                yield return rule.Finding(
                    week.Week.First,
                    string.Create(CultureInfo.InvariantCulture, $"The last week before the first match has {load} AU, {load / mean * 100:0} % of the {mean:0} AU of the four weeks before; 40 to 59 % freshen up."),
                    new(load, (tooMuch ? RuleLimits.TaperMost : RuleLimits.TaperLeast) * mean, "AU", week.Uids, tooMuch ? WhyTooMuch(plan, week, mean) : WhyTooLittle(plan, week, before)));
            }

            var usual = before.Average(w => w.Active.Count);
            if (mean >= RuleLimits.TaperTooLittleAu && week.Active.Count < RuleLimits.TaperSessionsLeast * usual)
            {
                yield return rule.Finding(
                    week.Week.First,
                    string.Create(CultureInfo.InvariantCulture, $"The last week before the first match has {week.Active.Count} sessions and practices, usual are {usual:0.#}; four fifths keep the pace."),
                    new(week.Active.Count, RuleLimits.TaperSessionsLeast * usual, "sessions", week.Uids, week.ContactLoadAu > RuleLimits.TaperMost * mean ? Cause.Contacts : WhyTooLittle(plan, week, before)));
            }
        }
    }

    private static Cause? WhyTooMuch(CheckedPlan plan, CheckedWeek week, double mean) =>
        week.ContactLoadAu > RuleLimits.TaperMost * mean ? Cause.Contacts
        : plan.Decided(week.Active) is { } decided ? decided
        : plan.AtShortest(week) ? Cause.ShortestSessions
        : null;

    private static Cause? WhyTooLittle(CheckedPlan plan, CheckedWeek week, List<CheckedWeek> before) =>
        plan.ClosedDaysIn(week) > 0 ? Cause.ClosedDays
        : plan.Decided(week.Active) is { } decided ? decided
        : before.Average(w => w.ContactLoadAu) > week.ContactLoadAu ? Cause.Contacts
        : plan.WantedSlots(week.Week.Phase, week.Contacts.Count()).Count() + week.Contacts.Count() < RuleLimits.TaperSessionsLeast * before.Average(w => w.Active.Count) ? Cause.Template
        : null;
}
