using ClubCycle.Planning;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Weeks;
using ClubCycle.Planning.Workouts;
using NodaTime;

namespace ClubCycle.Web.Tests;

/// <summary>Valid inputs, so that a test names only what it is about.</summary>
internal static partial class A
{
    /// <summary>A senior squad with a four-month season and a break in it.</summary>
    public static string PlanRequest() => """
        {
          "club": { "timeZone": "Europe/Lisbon", "firstWeekday": "monday" },
          "squad": {
            "name": "Women 1", "ageGroup": "Senior", "trainingAge": "trained",
            "practices": [ { "day": "tuesday", "start": "19:30", "minutes": 90 }, { "day": "thursday", "start": "19:30", "minutes": 90 } ],
            "matchDay": "saturday"
          },
          "season": {
            "previousLastDay": "2026-02-28",
            "stints": [ { "first": "2026-10-01", "last": "2026-11-30" }, { "first": "2027-01-01", "last": "2027-02-28" } ]
          },
          "template": "senior-standard"
        }
        """;

    private static readonly Lazy<SquadPlan> PlannedYear = new(() => AnnualPlanner.Plan(PlanFile.ReadRequest(PlanRequest()).OrThrow()).OrThrow());

    /// <summary>The year of <see cref="PlanRequest"/>, from March 2026 to February 2027.</summary>
    public static SquadPlan Year() => PlannedYear.Value;

    /// <summary>A plan of just these weeks and what is in them.</summary>
    public static SquadPlan Plan(IReadOnlyList<PlanWeek> weeks, IReadOnlyList<PlannedSession>? sessions = null, IReadOnlyList<Finding>? findings = null) =>
        new(new DateInterval(new LocalDate(2026, 3, 1), new LocalDate(2027, 2, 28)), [], weeks, sessions ?? [], findings ?? [], PlanChanges.None);

    public static PlanWeek Week(LocalDate first, PhaseKind phase = PhaseKind.InSeason, int weekInPhase = 1, int load = 900) =>
        new($"{first.PlusDays(3).Year}-W{NodaTime.Calendars.WeekYearRules.Iso.GetWeekOfWeekYear(first):00}", first, phase, weekInPhase, WeekLoading.Loading, load);

    public static PlannedSession Session(
        LocalDate date,
        SessionKind kind = SessionKind.Session,
        string title = "Strength circuit",
        int minutes = 45,
        int effort = 4,
        Quality quality = Quality.MuscularEndurance,
        bool insidePractice = false,
        bool pinned = false) => new(
            NamedId.From("session", title, date.ToString("uuuu-MM-dd", null)), "mixed.strength.1", date, new LocalTime(18, 0), minutes, kind, null,
            kind == SessionKind.Session ? [quality] : [], Hardness.Moderate, effort, title, [], [], [], insidePractice, pinned);

    public static Finding Finding(Strength strength, LocalDate? week = null) => new("R36", strength, week, "Too much.", "Do less.", "from memory");
}
