using System.Globalization;
using ClubCycle.Planning.Loads;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Weeks;

namespace ClubCycle.Planning.Rules;

internal static class LoadRules
{
    public static readonly Rule R09 = new(
        "R09", Strength.Should, "A week's load rises by a tenth at most.",
        "load ≤ 1.10 × reference (warning), ≤ 1.15 × reference (red flag); the reference is last week, after an easier week at least the mean of the loading weeks before (three at most); not judged below 300 AU",
        "everyone, all phases but recovery and restore",
        "Shorten the sessions of this week, or make the weeks before a little fuller.",
        "American Academy of Pediatrics 2007; Soligard et al. 2016; Gabbett 2016 (the 15 % figure is from an abstract)",
        LoadRisesByATenthAtMost);

    public static readonly Rule R13 = new(
        "R13", Strength.Should, "After three building weeks (two for under-16s and new players) comes an easier one.",
        "loading weeks in a row ≤ 3, or ≤ 2 under 16 or new to training; an unloading week has 0.4 to 0.8 of the mean load of the loading weeks before (three at most)",
        "aerobic build, mixed, pre-season",
        "Make every fourth (third) week an unloading week and shorten its sessions.",
        "Bompa and Haff, loading patterns 3:1 and 2:1",
        BuildingWeeksAreFollowedByAnEasierOne);

    /// <summary>The clauses of R09 that a week breaks: none, (a), or (a) and (b).</summary>
    /// <param name="reference">AU.</param>
    internal static IReadOnlyList<char> RiseClauses(double reference, double load) =>
        reference < LoadHistory.TooLittleToJudgeAu || load <= RuleLimits.RiseWarned * reference ? []
        : load <= RuleLimits.RiseFlagged * reference ? ['a']
        : ['a', 'b'];

    /// <summary>R13 (b): true when an unloading week's load fits the mean of the loading weeks before.</summary>
    internal static bool Unloads(double mean, double load) => load >= RuleLimits.UnloadingLeast * mean && load <= RuleLimits.UnloadingMost * mean;

    /// <summary>R13 (a): positions where a run of loading weeks becomes too long.</summary>
    internal static IEnumerable<int> TooLongRuns(IReadOnlyList<bool> loading, int most)
    {
        var run = 0;
        for (var i = 0; i < loading.Count; i++)
        {
            run = loading[i] ? run + 1 : 0;
            if (run == most + 1)
            {
                yield return i;
            }
        }
    }

    private static IEnumerable<Finding> LoadRisesByATenthAtMost(Rule rule, CheckedPlan plan)
    {
        var history = plan.LoadsBefore();
        CheckedWeek? before = null;
        foreach (var week in plan.Weeks.Where(w => w.Whole))
        {
            if (history.Reference is { } reference && week.Week.Phase is not (PhaseKind.Recovery or PhaseKind.Restore)
                && RiseClauses(reference, week.Week.PlannedLoadAu) is { Count: > 0 } clauses)
            {
                var percent = ((week.Week.PlannedLoadAu / reference) - 1) * 100;
                var (forcedBy, why) = WhyItRises(plan, before, week, reference);
                yield return rule.Finding(
                    week.Week.First,
                    string.Create(CultureInfo.InvariantCulture, $"The load rises by {percent:0} %, from {reference:0} to {week.Week.PlannedLoadAu} AU{(clauses.Count > 1 ? ", a red flag" : "")}.{why}"),
                    new(week.Week.PlannedLoadAu, RuleLimits.RiseWarned * reference, "AU", week.Uids, forcedBy));
            }

            history.Add(week.Week.Loading, week.Week.PlannedLoadAu);
            before = week;
        }
    }

    private static (Cause? ForcedBy, string Why) WhyItRises(CheckedPlan plan, CheckedWeek? before, CheckedWeek week, double reference)
    {
        var (forcedBy, why) = before is null ? (null, "")
            : week.Practices > before.Practices && week.Matches > before.Matches ? (Cause.Contacts, " Practices and matches start again this week.")
            : week.Practices > before.Practices ? (Cause.Contacts, " Practices start again this week.")
            : week.Matches > before.Matches ? (Cause.Contacts, $" There {(week.Matches == 1 ? "is a match" : $"are {week.Matches} matches")} this week.")
            : week.ContactLoadAu > RuleLimits.RiseWarned * reference ? (Cause.Contacts, " Practices and matches alone are more than that.")
            : plan.ClosedDaysIn(before) > 0 ? (Cause.ClosedDays, " The week before had closed days.")
            : ((Cause?)null, week.Active.Count > before.Active.Count ? " The week before had fewer sessions." : "");
        return forcedBy is not null ? (forcedBy, why)
            : plan.Decided(week.Active) is { } decided ? (decided, why)
            : plan.AtShortest(week) ? (Cause.ShortestSessions, why + " Its sessions are already at their shortest.")
            : (null, why);
    }

    private static IEnumerable<Finding> BuildingWeeksAreFollowedByAnEasierOne(Rule rule, CheckedPlan plan)
    {
        var building = plan.Weeks.Where(w => w.Whole).ToList();
        var most = RuleLimits.LoadingWeeksInARow(plan.Squad);
        foreach (var i in TooLongRuns([.. building.Select(Loads)], most))
        {
            var run = building.Skip(i - most).TakeWhile((w, n) => n <= most || Loads(w)).ToList();
            yield return rule.Finding(
                building[i].Week.First,
                $"{run.Count} loading weeks in a row; {most} at most.",
                new(run.Count, most, "weeks", [], plan.Request.Template.Loading.UnloadEvery > most + 1 ? Cause.Template : plan.Decided(run.SelectMany(w => w.Active))));
        }

        var history = new LoadHistory();
        List<CheckedWeek> loading = [];
        foreach (var week in building)
        {
            var load = week.Week.PlannedLoadAu;
            if (week.Week.Loading == WeekLoading.Unloading && LoadingWave.Builds(week.Week.Phase) && history.MeanOfRun is { } mean && mean >= LoadHistory.TooLittleToJudgeAu && !Unloads(mean, load))
            {
                var tooMuch = load > RuleLimits.UnloadingMost * mean;
                var (forcedBy, why) = tooMuch && week.ContactLoadAu > RuleLimits.UnloadingMost * mean ? (Cause.Contacts, " Practices alone hold more than that.")
                    : !tooMuch && plan.ClosedDaysIn(week) > 0 ? (Cause.ClosedDays, " Closed days took sessions away.")
                    : !tooMuch && loading.TakeLast(LoadHistory.RunWeeks).Average(w => w.ContactLoadAu) > week.ContactLoadAu ? (Cause.Contacts, " The weeks before held more practices and matches.")
                    : tooMuch && plan.AtShortest(week) ? (Cause.ShortestSessions, $" Practices hold {week.ContactLoadAu} AU of it, the added sessions are already at their shortest.")
                    : (plan.Decided(week.Active), "");
                yield return rule.Finding(
                    week.Week.First,
                    string.Create(CultureInfo.InvariantCulture, $"The unloading week has {load} AU, {load / mean * 100:0} % of the {mean:0} AU of the loading weeks before; 40 to 80 % would unload.{why}"),
                    new(load, (tooMuch ? RuleLimits.UnloadingMost : RuleLimits.UnloadingLeast) * mean, "AU", week.Uids, forcedBy));
            }

            history.Add(week.Week.Loading, load);
            if (week.Week.Loading is WeekLoading.Loading or WeekLoading.Match && load > 0)
            {
                loading.Add(week);
            }
        }

        static bool Loads(CheckedWeek week) => LoadingWave.Builds(week.Week.Phase) && week.Week.Loading == WeekLoading.Loading && week.Active.Count > 0;
    }
}
