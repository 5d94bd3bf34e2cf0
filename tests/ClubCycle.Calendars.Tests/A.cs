using ClubCycle.Planning;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Workouts;
using NodaTime;

namespace ClubCycle.Calendars.Tests;

/// <summary>Valid feeds and sessions, so that a test names only what it is about.</summary>
internal static class A
{
    public static readonly Instant Changed = Instant.FromUtc(2026, 6, 1, 9, 30);

    public static DateTimeZone Zone(string id) => DateTimeZoneProviders.Tzdb[id];

    public static FeedEvent Event(
        string? uid = null,
        LocalDateTime? start = null,
        int minutes = 60,
        string zone = "Europe/Lisbon",
        string title = "Easy run",
        string description = "How hard: easy.",
        IReadOnlyList<string>? categories = null,
        int sequence = 0,
        Instant? lastChanged = null,
        bool cancelled = false) => new(
            NamedId.From("test", uid ?? "1"),
            start ?? new LocalDateTime(2026, 8, 4, 18, 30),
            minutes,
            Zone(zone),
            title,
            description,
            categories ?? ["Aerobic endurance"],
            sequence,
            lastChanged ?? Changed,
            cancelled);

    public static FeedCalendar Feed(params FeedEvent[] events) => new("Women 1", "en", events);

    public static PlannedSession Session(
        string slot = "recovery.muscular-endurance.1",
        LocalDate? date = null,
        SessionKind kind = SessionKind.Session,
        string title = "Strength circuit",
        Hardness hardness = Hardness.Moderate,
        IReadOnlyList<Quality>? qualities = null,
        IReadOnlyList<string>? why = null,
        IReadOnlyList<Step>? steps = null,
        IReadOnlyList<string>? cautions = null,
        bool insidePractice = false,
        int effort = 4) => new(
            NamedId.From("session", slot, (date ?? new LocalDate(2026, 3, 3)).ToString("uuuu-MM-dd", null)),
            slot,
            date ?? new LocalDate(2026, 3, 3),
            new LocalTime(18, 0),
            45,
            kind,
            "strength-circuit",
            qualities ?? [Quality.MuscularEndurance, Quality.CoreStrength],
            hardness,
            effort,
            title,
            why ?? ["Rebuilds general strength after the season."],
            steps ?? [],
            cautions ?? [],
            insidePractice);

    public static SquadPlan Plan(params PlannedSession[] sessions) => new(
        new DateInterval(new LocalDate(2026, 3, 1), new LocalDate(2027, 2, 28)), [], [], sessions, [], PlanChanges.None);
}
