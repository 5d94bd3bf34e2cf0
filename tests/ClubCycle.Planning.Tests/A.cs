using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Templates;
using NodaTime;

namespace ClubCycle.Planning.Tests;

/// <summary>Valid defaults; a test names only what it is about.</summary>
internal static class A
{
    public static readonly Guid SquadKey = NamedId.From("squad", "test");

    public static LocalDate Date(string iso) => NodaTime.Text.LocalDatePattern.Iso.Parse(iso).Value;

    public static LocalTime Time(string text) => NodaTime.Text.LocalTimePattern.CreateWithInvariantCulture("HH:mm").Parse(text).Value;

    /// <summary>Stints as <c>2026-10-01/2026-11-30</c>.</summary>
    public static Season Season(string? previousLastDay, params string[] stints) =>
        Planning.Seasons.Season.Create(previousLastDay is null ? null : Date(previousLastDay), [.. stints.Select(Stint)]).OrThrow();

    public static Stint Stint(string range) => new(Date(range.Split('/')[0]), Date(range.Split('/')[1]));

    public static Practice Practice(IsoDayOfWeek day, string start = "19:30", int minutes = 90) => new(day, Time(start), minutes, Planning.Squads.Practice.UsualPhases);

    public static Squad Squad(
        AgeGroup? ages = null,
        TrainingAge trainingAge = TrainingAge.Trained,
        IReadOnlyList<Practice>? practices = null,
        IsoDayOfWeek matchDay = IsoDayOfWeek.Saturday,
        IReadOnlyList<TimeWindow>? windows = null) =>
        new(SquadKey, "Women 1", ages ?? AgeGroup.Senior, trainingAge,
            practices ?? [Practice(IsoDayOfWeek.Tuesday), Practice(IsoDayOfWeek.Thursday)], matchDay, Time("14:00"), windows ?? []);

    /// <summary>Four months in two halves, from March to the end of February.</summary>
    public static Season SeasonA => Season("2026-02-28", "2026-10-01/2026-11-30", "2027-01-01/2027-02-28");

    public static Season SeasonB => Season("2025-11-30", "2026-09-01/2026-11-30");

    public static Season SeasonC => Season("2026-05-31", "2027-04-01/2027-05-31");

    /// <summary>Outdoor, indoor, outdoor.</summary>
    public static Season SeasonD => Season("2026-06-30", "2026-09-01/2026-11-30", "2026-12-01/2027-02-28", "2027-03-01/2027-06-30");

    /// <summary>Southern hemisphere with a July break.</summary>
    public static Season SeasonE => Season("2026-09-15", "2027-04-01/2027-06-30", "2027-08-01/2027-09-15");

    public static PlanRequest Request(
        Season? season = null,
        Squad? squad = null,
        Template? template = null,
        IReadOnlyList<Fixture>? fixtures = null,
        IReadOnlyList<ClosedDays>? closed = null,
        LocalDate? planFrom = null,
        SquadPlan? published = null,
        IReadOnlyList<Pin>? pins = null,
        string zone = "Europe/Lisbon",
        IsoDayOfWeek firstWeekday = IsoDayOfWeek.Monday,
        IReadOnlyList<PhaseLength>? lengths = null)
    {
        squad ??= Squad();
        return new PlanRequest(
            DateTimeZoneProviders.Tzdb[zone], firstWeekday, squad, season ?? SeasonA, fixtures, closed ?? [],
            template ?? BuiltInTemplates.For(squad.AgeGroup), planFrom, published, pins, lengths);
    }

    public static SquadPlan Plan(PlanRequest request) => AnnualPlanner.Plan(request).OrThrow();
}
