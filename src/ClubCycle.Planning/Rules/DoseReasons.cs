using System.Globalization;
using ClubCycle.Planning.Loads;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Weeks;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Planning.Rules;

/// <summary>One reason for how much a session holds.</summary>
/// <param name="Rule">Id of the rule that sets the limit; null when no rule does.</param>
public sealed record DoseReason(string Text, string? Rule = null);

/// <summary>Says why a session holds as much as it does, in a coach's words and with its own figures.</summary>
public static class DoseReasons
{
    /// <summary>Players younger than this get no numbers but minutes.</summary>
    private const int YoungestWithNumbers = 11;

    /// <summary>Empty for practices, matches and active recovery.</summary>
    public static IReadOnlyList<DoseReason> Of(PlanRequest request, SquadPlan plan, PlannedSession session) =>
        session.Kind != SessionKind.Session ? [] : [.. Reasons(request, plan, session)];

    private static IEnumerable<DoseReason> Reasons(PlanRequest request, SquadPlan plan, PlannedSession session)
    {
        var (ages, trainingAge) = (request.Squad.AgeGroup, request.Squad.TrainingAge);
        var week = plan.Weeks.LastOrDefault(w => w.First <= session.Date);
        var full = request.Template.SlotOf(session.Slot)?.Minutes ?? session.Minutes;
        yield return new(Given(request, session) ? $"{session.Minutes} minutes, as a coach set them." : Minutes(session, full, week, plan.Sessions.Count(s => week is not null && s.Kind == SessionKind.Match && week.First <= s.Date && s.Date <= week.Last)));
        if (ages.YoungestAge < YoungestWithNumbers)
        {
            yield return new("Games and movement only: minutes are all that is counted at this age.");
            yield break;
        }

        if (week is not null && Progress(week) is { } progress)
        {
            yield return new(progress);
        }

        yield return new(trainingAge switch
        {
            TrainingAge.New => "For players new to training: the lightest doses, two loading weeks before each easier one.",
            TrainingAge.Some => "For players with one to three years of training: doses between the beginner's and the trained player's.",
            _ => "For players with more than three years of training: the full doses.",
        });

        foreach (var limit in Limits(new CheckedSession(session, null, null), ages, trainingAge))
        {
            yield return limit;
        }
    }

    private static bool Given(PlanRequest request, PlannedSession session) => session.Slot.StartsWith(Pin.AddedSlot, StringComparison.Ordinal)
        || request.Pins?.Any(p => p.Minutes == session.Minutes && p.Slot == session.Slot && p.WeekFirst <= session.Date && session.Date < p.WeekFirst.PlusWeeks(1)) == true;

    private static string Minutes(PlannedSession session, int full, PlanWeek? week, int matches) =>
        session.Minutes >= full ? $"{session.Minutes} minutes, as the weekly mix asks for."
        : $"{session.Minutes} of {full} minutes: " + week?.Loading switch
        {
            WeekLoading.Unloading => "an unloading week holds about 60 % of the weeks before.",
            WeekLoading.Taper => "in the taper the week holds about half, at full sharpness.",
            WeekLoading.Match when matches > 1 => $"{matches} matches hold much of the week's load already.",
            _ => "the week's load climbs from the week before by a tenth at most, or gently after time off.",
        };

    private static string? Progress(PlanWeek week) => week.Loading switch
    {
        WeekLoading.Unloading => "Sets, runs and jumps step back; how fast and how heavy each of them is does not.",
        WeekLoading.Taper => "Fewer sets, runs and jumps, each as fast and as heavy as before.",
        WeekLoading.Loading when week.WeekInPhase > 1 && LoadingWave.Builds(week.Phase) => $"Week {week.WeekInPhase} of the phase: a little more than in the loading week before.",
        WeekLoading.Loading when LoadingWave.Builds(week.Phase) => "First week of the phase: where the dose starts.",
        _ => null,
    };

    private static IEnumerable<DoseReason> Limits(CheckedSession sheet, AgeGroup ages, TrainingAge trainingAge)
    {
        if (sheet.FootContacts > 0)
        {
            var child = ages.YoungestAge < RuleLimits.JumpsLikeAdultsAge;
            yield return new(Line($"{sheet.FootContacts} foot contacts; at most {Jumping.MostContacts(ages, trainingAge)} {(child ? "at this age, and a tenth more a week at most" : "for this training age")}."), child ? "R32" : "R31");
        }

        if (sheet.AccelerationMetres + sheet.TopSpeedMetres is > 0 and var metres)
        {
            var half = ages.YoungestAge < 16 ? 2 : 1;
            yield return new(Line($"{metres} m at full effort; at most {RuleLimits.AccelerationMetres / half} m of accelerations and {RuleLimits.TopSpeedMetres / half} m at top speed. Full rest between: at least twelve times the work, never under two minutes."), "R35");
        }

        if (sheet.AgilityMinutes > 0)
        {
            yield return new(Line($"{sheet.CuedMinutes} of {sheet.AgilityMinutes} minutes of agility answer a cue nobody knows beforehand; half is the least."), "R43");
        }

        if (sheet.Steps.Where(s => s.PercentOfMaximum is not null).MaxBy(s => s.PercentOfMaximum) is { PercentOfMaximum: { } percent, Reps: { } reps } heaviest)
        {
            yield return new(Line($"{heaviest.Name} at {percent} % of the maximum: {RepetitionTable.MostReps(percent)} repetitions would be possible, {reps} are planned."), "R26");
            if (ages.IsYouth)
            {
                yield return new(Line($"At this age {RepetitionTable.Ceiling(ages)} % is the heaviest load, and a qualified adult watches."), "R29");
            }
        }

        if (sheet.HasSteadyRun)
        {
            yield return new("The run stays below the first threshold: comfortable talk first, then the own ceiling where it is known.", "R41");
        }

        if (sheet.ControlMinutes > 0)
        {
            yield return new(Line($"{sheet.ControlMinutes} minutes of warm-up with balance, landing or trunk control; two such a week, half an hour together, protect best."), "R44");
        }
    }

    private static string Line(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
