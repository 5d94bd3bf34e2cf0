using BenchmarkDotNet.Attributes;
using ClubCycle.Planning;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Templates;
using NodaTime;

namespace ClubCycle.Benchmarks;

/// <summary>One squad's whole year: phases, weeks, placement, sheets, findings.</summary>
[MemoryDiagnoser]
public class SquadYear
{
    public PlanRequest Request => _request;

    private readonly PlanRequest _request = new(
        DateTimeZoneProviders.Tzdb["Europe/Lisbon"], IsoDayOfWeek.Monday,
        new Squad(
            NamedId.From("squad", "benchmark"), "Women 1", AgeGroup.Senior, TrainingAge.Trained,
            [
                new Practice(IsoDayOfWeek.Tuesday, new LocalTime(19, 30), 90, Practice.UsualPhases),
                new Practice(IsoDayOfWeek.Thursday, new LocalTime(19, 30), 90, Practice.UsualPhases),
            ],
            IsoDayOfWeek.Saturday, null, []),
        Season.Create(
            new LocalDate(2026, 2, 28),
            [new Stint(new LocalDate(2026, 10, 1), new LocalDate(2026, 11, 30)), new Stint(new LocalDate(2027, 1, 1), new LocalDate(2027, 2, 28))]).OrThrow(),
        null, [], BuiltInTemplates.For(AgeGroup.Senior));

    [Benchmark]
    public SquadPlan Plan() => AnnualPlanner.Plan(_request).OrThrow();
}
