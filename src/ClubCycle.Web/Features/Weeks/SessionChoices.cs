using ClubCycle.Data.Plans;
using ClubCycle.Planning;
using ClubCycle.Planning.Workouts;
using NodaTime;

namespace ClubCycle.Web.Features.Weeks;

/// <summary>What a session may be.</summary>
internal static class SessionChoices
{
    /// <summary>What the template asks for in this place of the week; null for practices, matches and what a coach added.</summary>
    public static Workout? Asked(SquadDraft draft, LocalDate weekFirst, PlannedSession session) =>
        draft.Plan.Weeks.FirstOrDefault(w => w.First == weekFirst) is { } week && draft.Request.Template.SlotOf(session.Slot) is { } slot
            ? WorkoutCatalogue.Find(slot.WorkoutIn(week.WeekInPhase))
            : null;

    /// <summary>For a session of the template what it may be swapped for; for an added one all that the age allows.</summary>
    /// <param name="session">Null for one that is about to be added.</param>
    public static IReadOnlyList<Workout> For(SquadDraft draft, LocalDate weekFirst, PlannedSession? session)
    {
        var ages = draft.Request.Squad.AgeGroup;
        return session is not null && Asked(draft, weekFirst, session) is { } asked ? [asked, .. WorkoutCatalogue.InsteadOf(asked, ages)] : [.. WorkoutCatalogue.All.Where(w => w.AllowedFor(ages))];
    }
}
