using System.Globalization;
using ClubCycle.Planning.Loads;
using NodaTime;

namespace ClubCycle.Planning.Rules;

internal static class StrainRules
{
    public static readonly Rule R11 = new(
        "R11", Strength.Should, "Days of a week differ: hard ones, easy ones, days off.",
        "monotony (mean ÷ sample standard deviation of the seven day loads) ≤ 2.0; seven equal days have no variation at all", "weeks with at least 3 sessions",
        "Make one day harder and another one easier or free.",
        "Foster 1998 (Med Sci Sports Exerc 30:1164); the alarm at 2.0 is from memory",
        DaysOfAWeekDiffer);

    public static readonly Rule R12 = new(
        "R12", Strength.Note, "No week strains far more than the weeks before.",
        "strain (week load × monotony) ≤ mean + 1.5 standard deviations of the last 12 whole weeks, at least 8 of them with load; weeks of one phase share a finding", "everyone",
        "Look at how players feel; shorten a session or spread the week more unevenly.",
        "Foster 1998 for personal thresholds; the squad's planned weeks stand for the player's own, and the factor 1.5 is editorial",
        NoWeekStrainsFarMoreThanBefore);

    /// <summary>Mean ÷ sample standard deviation; null when the days do not differ.</summary>
    /// <param name="days">Load of each day, AU; a day off is 0.</param>
    internal static double? Monotony(IReadOnlyList<double> days) => Deviation(days) is > 0 and var deviation ? days.Average() / deviation : null;

    /// <summary>Weekly load × monotony, AU; null when the days do not differ.</summary>
    internal static double? Strain(IReadOnlyList<double> days) => days.Sum() * Monotony(days);

    private static double Deviation(IReadOnlyList<double> values)
    {
        var mean = values.Average();
        return Math.Sqrt(values.Sum(v => (v - mean) * (v - mean)) / (values.Count - 1));
    }

    /// <param name="Most">What would be usual, AU.</param>
    private readonly record struct StrainedWeek(CheckedWeek Week, double Strain, double Most, Cause? ForcedBy);

    private static IEnumerable<Finding> DaysOfAWeekDiffer(Rule rule, CheckedPlan plan)
    {
        foreach (var week in plan.Weeks.Where(w => w.Whole && w.Active.Count >= RuleLimits.SessionsForMonotony))
        {
            var days = Days(week, week.Active);
            var monotony = Monotony(days);
            if (monotony <= RuleLimits.Monotony || days.Sum() == 0)
            {
                continue;
            }

            var forcedBy = Monotony(Days(week, week.Contacts)) > RuleLimits.Monotony ? Cause.Contacts
                : plan.Decided(week.Active) is { } decided ? decided
                : plan.WantedSlots(week.Week.Phase, week.Contacts.Count()).Count() + week.HockeyDays >= 6 ? Cause.Template
                : (Cause?)null;
            yield return monotony is { } figure
                ? rule.Finding(
                    week.Week.First,
                    string.Create(CultureInfo.InvariantCulture, $"The days are much alike: monotony {figure:0.00}; {RuleLimits.Monotony:0.0} at most."),
                    new(figure, RuleLimits.Monotony, "monotony", week.Uids, forcedBy))
                : rule.Finding(
                    week.Week.First,
                    "No variation: all seven days have the same load.",
                    new(0, days.Average() / RuleLimits.Monotony, "AU from day to day", week.Uids, forcedBy));
        }
    }

    private static IEnumerable<Finding> NoWeekStrainsFarMoreThanBefore(Rule rule, CheckedPlan plan)
    {
        foreach (var phase in Straining(plan).GroupBy(s => plan.PhaseOn(s.Week.Week.Last)))
        {
            List<StrainedWeek> weeks = [.. phase];
            var most = weeks.MaxBy(s => s.Strain / s.Most);
            yield return rule.Finding(
                most.Week.Week.First,
                string.Create(CultureInfo.InvariantCulture, $"The strain of this week is {most.Strain:0} AU; {most.Most:0} would be usual after the weeks before.{(weeks.Count > 1 ? $" {weeks.Count} weeks of this phase strain more than usual, this one the most." : "")}"),
                new(most.Strain, most.Most, "AU", most.Week.Uids, CheckedPlan.Together(weeks.Select(s => s.ForcedBy))));
        }
    }

    private static IEnumerable<StrainedWeek> Straining(CheckedPlan plan)
    {
        List<CheckedWeek> whole = [.. plan.Weeks.Where(w => w.Whole)];
        List<double?> strains = [.. whole.Select(w => Strain(Days(w, w.Active)))];
        for (var i = RuleLimits.StrainWeeksLeast; i < whole.Count; i++)
        {
            var from = Math.Max(0, i - RuleLimits.StrainWeeks);
            List<double> known = [.. strains.GetRange(from, i - from).OfType<double>()];
            if (strains[i] is { } strain && known.Count >= RuleLimits.StrainWeeksLeast && known.Average() + (RuleLimits.StrainDeviations * Deviation(known)) is var most && strain > most)
            {
                yield return new(whole[i], strain, most, WhyItStrains(plan, whole.GetRange(from, i - from), whole[i], most));
            }
        }
    }

    private static Cause? WhyItStrains(CheckedPlan plan, List<CheckedWeek> before, CheckedWeek week, double most) =>
        Strain(Days(week, week.Contacts)) > most || !(Strain(Days(week, week.Own)) > most) ? Cause.Contacts
        : plan.Decided(week.Active) is { } decided ? decided
        : before.Any(w => plan.ClosedDaysIn(w) > 0) ? Cause.ClosedDays
        : LoadingWave.Builds(week.Week.Phase) && before[^1].Active.Count > 0 ? Cause.Template
        : null;

    private static double[] Days(CheckedWeek week, IEnumerable<PlannedSession> sessions)
    {
        var days = new double[7];
        foreach (var session in sessions.Where(s => !s.InsidePractice))
        {
            days[Period.DaysBetween(week.Week.First, session.Date)] += session.PlannedLoadAu;
        }

        return days;
    }
}
