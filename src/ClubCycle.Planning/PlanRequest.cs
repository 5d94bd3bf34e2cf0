using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Templates;
using NodaTime;

namespace ClubCycle.Planning;

/// <summary>Everything a squad's year depends on. The same request gives the same plan, byte for byte.</summary>
/// <param name="Zone">The club's zone; only the calendar edge needs it.</param>
/// <param name="FirstWeekday">Weeks start on this day.</param>
/// <param name="Fixtures">Null means: every match day inside a stint is a match. An empty list means none.</param>
/// <param name="PlanFrom">Nothing new is planned before this day; null plans the whole cycle.</param>
/// <param name="Published">The plan players see, to stay close to; its past is kept as it is.</param>
/// <param name="Lengths">Phase lengths that a coach set for this cycle.</param>
/// <param name="Before">What happened in the last weeks of the cycle before, when this one follows it; null when that is not known.</param>
public sealed record PlanRequest(
    DateTimeZone Zone,
    IsoDayOfWeek FirstWeekday,
    Squad Squad,
    Season Season,
    IReadOnlyList<Fixture>? Fixtures,
    IReadOnlyList<ClosedDays> Closed,
    Template Template,
    LocalDate? PlanFrom = null,
    SquadPlan? Published = null,
    IReadOnlyList<Pin>? Pins = null,
    IReadOnlyList<PhaseLength>? Lengths = null,
    IReadOnlyList<PlannedSession>? Before = null);
