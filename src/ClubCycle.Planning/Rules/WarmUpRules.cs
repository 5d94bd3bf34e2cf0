namespace ClubCycle.Planning.Rules;

internal static class WarmUpRules
{
    public static readonly Rule R44 = new(
        "R44", Strength.Should, "Players warm up with balance, landing and trunk control twice a week.",
        "warm-ups of 10 to 15 min with balance, landing or trunk control, ≥ 2 and ≥ 30 min a week; practices and matches count", "under 18; adults as a note; weeks with a session, practice or match",
        "Lengthen the warm-ups to 10 minutes or more, before practice too.",
        "Steib et al. 2017 (Front Physiol 8:920), players of 10 to 22 years or so; that children's warm-up games count is editorial",
        WarmUpsTrainControlTwiceAWeek);

    /// <summary>R44 for one warm-up with control work: minutes of it that count.</summary>
    internal static int Counted(int minutes) => minutes < RuleLimits.ShortestControl ? 0 : Math.Min(minutes, RuleLimits.LongestControl);

    private static IEnumerable<Finding> WarmUpsTrainControlTwiceAWeek(Rule rule, CheckedPlan plan) =>
        from weeks in ShortWeeks.In(plan, TooLittle)
        select rule.Finding(
            weeks.First.Week.First,
            $"Fewer than {RuleLimits.ControlMinutesAWeek} minutes of warm-ups with balance, landing or trunk control that last {RuleLimits.ShortestControl} minutes or more in {weeks.Count} of {weeks.Of} weeks of this phase; the fewest are {weeks.Fewest}.",
            new FindingFacts(weeks.Fewest, RuleLimits.ControlMinutesAWeek, "min", [], weeks.MostSessions < 2 ? Cause.Template : null),
            plan.Squad.AgeGroup.IsYouth ? null : Strength.Note);

    /// <summary>A session inside practice shares the practice's warm-up. Thirty minutes of at most fifteen each are two warm-ups or more.</summary>
    private static int? TooLittle(ArraySegment<CheckedSession> week)
    {
        var minutes = 0;
        foreach (var sheet in week)
        {
            minutes += sheet.Session.InsidePractice ? 0 : Counted(sheet.ControlMinutes);
        }

        return minutes < RuleLimits.ControlMinutesAWeek ? minutes : null;
    }
}
