using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using CsCheck;
using NodaTime;

namespace ClubCycle.Planning.Tests;

/// <summary>Random valid inputs, as wild as the checks let through.</summary>
internal static class Any
{
    private static readonly Gen<IsoDayOfWeek> Weekday = Gen.Int[1, 7].Select(d => (IsoDayOfWeek)d);

    private static readonly Gen<LocalTime> Evening = Gen.Int[0, 12].Select(q => new LocalTime(17, 0).PlusMinutes(q * 15));

    /// <summary>Last match day of the season before, then free days and match days in turn; up to four stints.</summary>
    public static readonly Gen<Season> Season =
        from previous in Gen.Int[0, 4_000]
        from first in Gen.Int[1, 330]
        from lengths in Gen.Int[1, 150].Array[1, 4]
        from pauses in Gen.Int[2, 120].Array[4]
        select Of(new LocalDate(2023, 6, 1).PlusDays(previous), first, lengths, pauses) into made
        where made is Result<Season>.Ok
        select made.OrThrow();

    public static readonly Gen<Squad> Squad =
        from ages in OneOf(AgeGroup.All)
        from training in OneOf(Enum.GetValues<TrainingAge>())
        from days in Weekday.Array[0, 3]
        from start in Evening
        from minutes in Gen.Int[3, 7].Select(q => q * 15)
        from match in Weekday
        from windows in Windows
        from places in Gen.Int[0, 7]
        select A.Squad(ages, training, [.. days.Distinct().Select((d, n) => new Practice(d, start, minutes, Practice.UsualPhases, (places >> n & 1) == 1 ? $"Pitch {n}" : null))], match, windows);

    private static Gen<IReadOnlyList<TimeWindow>> Windows =>
        from some in Gen.Bool
        from days in Weekday.Array[2, 5]
        from time in Evening
        select some ? (IReadOnlyList<TimeWindow>)[new TimeWindow([.. days.Distinct()], time, time.PlusMinutes(120))] : [];

    /// <summary>Some weeks off, fixtures of its own or every match day, any first weekday. No published plan, no pins.</summary>
    public static readonly Gen<PlanRequest> Request =
        from season in Season
        from squad in Squad
        from firstWeekday in Weekday
        from off in Gen.Select(Gen.Int[0, 400], Gen.Int[0, 17]).Array[0, 2]
        from matches in Gen.Select(Gen.Int[0, 419], Gen.Int[10, 18]).Array[0, 20]
        from own in Gen.Bool
        from zone in OneOf<string>(["Europe/Lisbon", "Australia/Lord_Howe", "America/Santiago", "Asia/Kolkata"])
        select A.Request(
            season, squad, zone: zone, firstWeekday: firstWeekday,
            closed: [.. off.Select(o => new ClosedDays(season.Cycle.Start.PlusDays(o.Item1), season.Cycle.Start.PlusDays(o.Item1 + o.Item2), "closed"))],
            fixtures: own ? [.. matches.Select(m => new Fixture(season.Cycle.Start.PlusDays(m.Item1 % season.Cycle.Length), new LocalTime(m.Item2, 0)))] : null);

    /// <summary>A request that can be planned, with its plan.</summary>
    public static readonly Gen<(PlanRequest Request, SquadPlan Plan)> Planned =
        from request in Request
        select (request, AnnualPlanner.Plan(request)) into made
        where made.Item2 is Result<SquadPlan>.Ok
        select (made.request, made.Item2.OrThrow());

    private static Gen<T> OneOf<T>(IReadOnlyList<T> all) => Gen.Int[0, all.Count - 1].Select(i => all[i]);

    private static Result<Season> Of(LocalDate previous, int first, int[] lengths, int[] pauses)
    {
        List<Stint> stints = [];
        var day = previous.PlusDays(first);
        for (var i = 0; i < lengths.Length; i++)
        {
            stints.Add(new Stint(day, day.PlusDays(lengths[i] - 1)));
            day = day.PlusDays(lengths[i] + pauses[i] - 1);
        }

        return Planning.Seasons.Season.Create(previous, stints);
    }
}
