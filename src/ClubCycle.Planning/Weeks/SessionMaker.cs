using System.Globalization;
using ClubCycle.Planning.Loads;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Weeks.Placement;
using ClubCycle.Planning.Workouts;
using NodaTime;

namespace ClubCycle.Planning.Weeks;

/// <summary>Turns what was decided into sessions with their sheets and the reasons why they are there.</summary>
internal sealed class SessionMaker(Squad squad)
{
    private readonly Dictionary<string, int> _turns = new(StringComparer.Ordinal);
    private readonly List<(LocalDate Date, int Contacts)> _jumps = [];

    /// <summary>Remembers what a session of the past holds, so that those to come follow on from it.</summary>
    public void Remember(PlannedSession happened)
    {
        if (happened.Workout is { } workout)
        {
            NextTurn(workout);
            RememberJumps(happened.Date, happened.Steps);
        }
    }

    /// <summary>How often the workout came up before in this cycle.</summary>
    private int NextTurn(string workout) => _turns[workout] = _turns.GetValueOrDefault(workout, -1) + 1;

    private void RememberJumps(LocalDate date, IReadOnlyList<Step> steps)
    {
        var contacts = 0;
        foreach (var step in steps)
        {
            contacts += step.FootContacts ?? 0;
        }

        if (contacts > 0)
        {
            _jumps.Add((date, contacts));
        }
    }

    /// <summary>R32 for the week: what the fullest session of the weeks before allows; null where experience decides.</summary>
    private int? ContactsAtMost(CycleWeek week)
    {
        if (squad.AgeGroup.YoungestAge >= RuleLimits.JumpsLikeAdultsAge)
        {
            return null;
        }

        var fullest = 0;
        foreach (var (date, contacts) in _jumps)
        {
            fullest = date >= week.First.PlusWeeks(-RuleLimits.ChildContactsMemoryWeeks) && date < week.First ? Math.Max(fullest, contacts) : fullest;
        }

        return (int)ChildJumpRules.MostForChildren(fullest);
    }

    public PlannedSession FromContact(Contact contact, CycleWeek week)
    {
        var sheet = contact.IsMatch ? SessionSheets.ForMatch(squad.AgeGroup) : SessionSheets.ForPractice(squad.AgeGroup);
        return new PlannedSession(
            contact.Uid, contact.Slot, contact.Date, contact.Start, contact.Minutes,
            contact.IsMatch ? SessionKind.Match : SessionKind.Practice, null, [],
            contact.IsMatch ? Hardness.Hard : Hardness.Moderate,
            contact.Effort,
            contact.Title,
            [contact.IsMatch ? "From the club's fixtures." : $"The squad's usual practice in {Words(week.Phase)}."],
            sheet.Steps, sheet.Cautions, Place: contact.Place);
    }

    /// <param name="minutes">What the week's load leaves of the slot's minutes.</param>
    /// <param name="why">Why on this day.</param>
    /// <param name="place">Of the practice it is inside of.</param>
    public PlannedSession FromPlaced(Placed placed, WeekSlot slot, int minutes, string why, string? place, CycleWeek week, WeekLoading loading)
    {
        var workout = placed.Wanted.Workout;
        var sheet = SessionSheets.For(workout, new DoseContext(squad.AgeGroup, squad.TrainingAge, week.Phase, week.WeekInPhase, loading, minutes, NextTurn(workout.Name), ContactsAtMost(week)));
        RememberJumps(placed.Date, sheet.Steps);
        return new PlannedSession(
            slot.Uid, slot.Name, placed.Date, placed.Start, minutes, SessionKind.Session,
            workout.Name, workout.Qualities, workout.Hardness, workout.Effort, workout.Title,
            [WhyHere(week, loading), .. WhoAsked(slot), why], sheet.Steps, sheet.Cautions, placed.InsidePractice, placed.Wanted.Pinned, slot.Pin?.Note, place);
    }

    private static IEnumerable<string> WhoAsked(WeekSlot slot) =>
        slot.IsAdded ? ["A coach added it to the week."] : slot.InsteadOf is { } asked ? [$"A coach chose it instead of '{asked.Title}'."] : [];

    /// <param name="number">1-based in its week.</param>
    public PlannedSession ActiveRecovery(CycleWeek week, LocalDate date, int number)
    {
        var sheet = SessionSheets.ForActiveRecovery(squad.AgeGroup, week.WeekInPhase + number);
        var slot = string.Create(CultureInfo.InvariantCulture, $"active-recovery.{number}");
        return new PlannedSession(
            PlannedSession.UidOf(squad.Key, week.First, slot), slot, date, new LocalTime(18, 0), LoadTable.ActiveRecoveryMinutes, SessionKind.ActiveRecovery, null, [],
            Hardness.Easy, LoadTable.ActiveRecoveryEffort, "Active recovery (optional)", ["A rest day: easy movement if you feel like it."], sheet.Steps, sheet.Cautions);
    }

    private static string WhyHere(CycleWeek week, WeekLoading loading)
    {
        var place = $"Week {week.WeekInPhase} of {week.WeeksInPhase} of {Words(week.Phase)}: {Purpose(week.Phase)}";
        return loading switch
        {
            WeekLoading.Unloading => place + " This is an unloading week: less of it, so that the body catches up.",
            WeekLoading.Taper => place + " The matches are near: shorter, just as sharp.",
            _ => place,
        };
    }

    private static string Words(PhaseKind phase) => phase switch
    {
        PhaseKind.InSeason => "the season",
        PhaseKind.AerobicBuild => "the aerobic build",
        PhaseKind.Mixed => "the mixed phase",
        PhaseKind.Break => "the break",
        _ => FileName.Of(phase),
    };

    private static string Purpose(PhaseKind phase) => phase switch
    {
        PhaseKind.InSeason => "stay fresh between matches and keep what was built.",
        PhaseKind.Break => "rest from matches, keep moving.",
        PhaseKind.Recovery or PhaseKind.Restore => "recover and mend weak spots.",
        PhaseKind.AerobicBuild => "build endurance that the rest of the year stands on.",
        PhaseKind.Mixed => "bring in strength and speed while endurance is kept.",
        PhaseKind.PreSeason => "sharpen for the first match.",
        _ => throw new ArgumentOutOfRangeException(nameof(phase), phase, "Unknown phase"),
    };
}
