using ClubCycle.Planning.Weeks;
using ClubCycle.Planning.Workouts;
using NodaTime;

namespace ClubCycle.Planning.Rules;

internal static class WarmUpRules
{
    public static readonly Rule R44 = new(
        "R44", Strength.Should, "Players warm up with balance, landing and trunk control twice a week.",
        "warm-ups of 10 to 15 min with balance, landing or trunk control, ≥ 2 and ≥ 30 min a week; practices and matches count", "under 18 with a youngest player of 9 or older; adults and younger children as a note; weeks with a session, practice or match",
        "Lengthen the warm-ups to 10 minutes or more, before practice too.",
        "Steib et al. 2017 (Front Physiol 8:920), players under 22; that children's warm-up games count and that the youngest are only noted is editorial",
        WarmUpsTrainControlTwiceAWeek, TemplateDecides: true);

    /// <summary>R44 for one warm-up with control work: minutes of it that count.</summary>
    internal static int Counted(int minutes) => minutes < RuleLimits.ShortestControl ? 0 : Math.Min(minutes, RuleLimits.LongestControl);

    private static IEnumerable<Finding> WarmUpsTrainControlTwiceAWeek(Rule rule, CheckedPlan plan) =>
        from weeks in ShortWeeks.In(plan, TooLittle)
        select rule.Finding(
            weeks.First.Week.First,
            $"Fewer than {RuleLimits.ControlMinutesAWeek} minutes of warm-ups with balance, landing or trunk control that last {RuleLimits.ShortestControl} minutes or more in {weeks.Weeks.Count} of {weeks.Of} weeks of this phase; the fewest are {weeks.Fewest}.",
            new FindingFacts(weeks.Fewest, RuleLimits.ControlMinutesAWeek, "min", [], CheckedPlan.Together(weeks.Weeks.Select(w => WhyShort(plan, w.Week, w.Sheets)))),
            plan.Squad.AgeGroup is { IsYouth: true, YoungestAge: >= RuleLimits.ControlFromAge } ? null : Strength.Note);

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

    /// <summary>Why a week holds too little of it; null when nothing forced it.</summary>
    private static Cause? WhyShort(CheckedPlan plan, CheckedWeek week, ArraySegment<CheckedSession> sheets)
    {
        if (plan.ClosedDaysIn(week) > 0)
        {
            return Cause.ClosedDays;
        }

        var contacts = 0;
        var minutes = 0;
        foreach (var sheet in sheets)
        {
            if (sheet.Session.Kind is SessionKind.Practice or SessionKind.Match)
            {
                contacts++;
                minutes += Counted(sheet.ControlMinutes);
            }
        }

        foreach (var slot in plan.WantedSlots(week.Week.Phase, contacts))
        {
            minutes += WorkoutCatalogue.Find(slot.Workouts[0]) is { OnlyInsidePractice: true } ? 0 : Counted(SessionMinutes.Of(slot.Minutes, 0).WarmUp);
        }

        return minutes < RuleLimits.ControlMinutesAWeek ? Cause.Template
            : week.Week.Loading is WeekLoading.Unloading or WeekLoading.Taper || plan.Returns.Any(back => back <= week.Week.Last && Period.DaysBetween(back, week.Week.First) < RuleLimits.ReturnDays) ? Cause.EasierWeek
            : plan.Decided(week.Active) is { } decided ? decided
            : contacts > 0 ? Cause.Contacts
            : plan.AtShortest(week) ? Cause.ShortestSessions
            : week.Own.Sum(s => s.Minutes) < plan.WantedSlots(week.Week.Phase, 0).Sum(s => s.Minutes) ? Cause.EasierWeek
            : null;
    }
}
