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
            if (run > most)
            {
                yield return i;
            }
        }
    }

    private static IEnumerable<Finding> LoadRisesByATenthAtMost(Rule rule, CheckedPlan plan)
    {
        var history = new LoadHistory();
        CheckedWeek? before = null;
        foreach (var week in plan.Weeks.Where(w => w.Whole))
        {
            if (history.Reference is { } reference && week.Week.Phase is not (PhaseKind.Recovery or PhaseKind.Restore)
                && RiseClauses(reference, week.Week.PlannedLoadAu) is { Count: > 0 } clauses)
            {
                var percent = ((week.Week.PlannedLoadAu / reference) - 1) * 100;
                yield return rule.Finding(
                    week.Week.First,
                    string.Create(CultureInfo.InvariantCulture, $"The load rises by {percent:0} %, from {reference:0} to {week.Week.PlannedLoadAu} AU{(clauses.Count > 1 ? ", a red flag" : "")}.{Forced(before, week)}"));
            }

            history.Add(week.Week.Loading, week.Week.PlannedLoadAu);
            before = week;
        }
    }

    private static string Forced(CheckedWeek? before, CheckedWeek week) =>
        before is null ? ""
        : week.Practices > before.Practices && week.Matches > before.Matches ? " Practices and matches start again this week."
        : week.Practices > before.Practices ? " Practices start again this week; the added sessions are already at their shortest."
        : week.Matches > before.Matches ? $" There {(week.Matches == 1 ? "is a match" : $"are {week.Matches} matches")} this week."
        : before.Active.Count == 0 ? " Nothing was possible the week before."
        : week.Active.Count > before.Active.Count ? " The week before had fewer sessions (closed days or matches)."
        : " Sessions this short do not get shorter in smaller steps.";

    private static IEnumerable<Finding> BuildingWeeksAreFollowedByAnEasierOne(Rule rule, CheckedPlan plan)
    {
        var building = plan.Weeks.Where(w => w.Whole).ToList();
        var most = RuleLimits.LoadingWeeksInARow(plan.Squad);
        foreach (var i in TooLongRuns([.. building.Select(w => LoadingWave.Builds(w.Week.Phase) && w.Week.Loading == WeekLoading.Loading && w.Active.Count > 0)], most))
        {
            yield return rule.Finding(building[i].Week.First, $"More than {most} loading weeks in a row.");
        }

        var history = new LoadHistory();
        foreach (var week in building)
        {
            var load = week.Week.PlannedLoadAu;
            if (week.Week.Loading == WeekLoading.Unloading && history.MeanOfRun is { } mean && mean >= LoadHistory.TooLittleToJudgeAu && !Unloads(mean, load))
            {
                var forced = week.ContactLoadAu > RuleLimits.UnloadingMost * mean ? " Practices alone hold more than that."
                    : load > RuleLimits.UnloadingMost * mean && week.ContactLoadAu > 0 ? $" Practices hold {week.ContactLoadAu} AU of it, the added sessions are already at their shortest."
                    : load < RuleLimits.UnloadingLeast * mean ? " Closed days took sessions away." : "";
                yield return rule.Finding(
                    week.Week.First,
                    string.Create(CultureInfo.InvariantCulture, $"The unloading week has {load} AU, {load / mean * 100:0} % of the {mean:0} AU of the loading weeks before; 40 to 80 % would unload.{forced}"));
            }

            history.Add(week.Week.Loading, load);
        }
    }
}
