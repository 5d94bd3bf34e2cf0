using ClubCycle.Planning.Workouts;
using NodaTime;

namespace ClubCycle.Planning;

/// <summary>One planned bout, practice, match or optional active recovery.</summary>
/// <param name="Uid">Derived from squad, week and slot; stays when the session moves inside its week.</param>
/// <param name="Slot">Phase and slot such as <c>recovery.muscular-endurance.1</c>; <c>practice.tuesday</c>, <c>match.1</c>, <c>active-recovery.1</c> for the others.</param>
/// <param name="Start">Local to the club's zone.</param>
/// <param name="Workout">Name in <see cref="WorkoutCatalogue"/>; null for practices, matches and active recovery.</param>
/// <param name="PlannedEffort">CR10, 0–10.</param>
/// <param name="Why">Why it is here and why on this day, in a coach's words.</param>
/// <param name="InsidePractice">Takes place inside a practice of that day, so it adds no active day and no separate load.</param>
/// <param name="Pinned">A person decided its day, time or absence.</param>
/// <param name="Note">What the coach tells the players about it; lines may break. Null for nothing.</param>
/// <param name="Place">Where it takes place; null when nobody said.</param>
public sealed record PlannedSession(
    Guid Uid,
    string Slot,
    LocalDate Date,
    LocalTime Start,
    int Minutes,
    SessionKind Kind,
    string? Workout,
    IReadOnlyList<Quality> Qualities,
    Hardness Hardness,
    int PlannedEffort,
    string Title,
    IReadOnlyList<string> Why,
    IReadOnlyList<Step> Steps,
    IReadOnlyList<string> Cautions,
    bool InsidePractice = false,
    bool Pinned = false,
    string? Note = null,
    string? Place = null)
{
    /// <summary>Planned effort × minutes, arbitrary units.</summary>
    public int PlannedLoadAu => PlannedEffort * Minutes;

    public LocalDateTime StartsAt => Date.At(Start);

    /// <summary>Identity of a session: it stays while squad, week and slot do.</summary>
    public static Guid UidOf(Guid squadKey, LocalDate weekFirst, string slot) => NamedId.From("session", squadKey.ToString("N"), NodaTime.Text.LocalDatePattern.Iso.Format(weekFirst), slot);
}
