using ClubCycle.Planning.Seasons;
using CsCheck;
using NodaTime;

namespace ClubCycle.Planning.Tests.Seasons;

public class SeasonCreateTests
{
    [Fact]
    public void The_cycle_runs_from_the_day_after_the_last_season_to_the_last_match_day() =>
        Assert.Equal(new DateInterval(A.Date("2026-03-01"), A.Date("2027-02-28")), A.SeasonA.Cycle);

    [Fact]
    public void Without_a_season_before_the_same_dates_a_year_earlier_stand_in() =>
        Assert.Equal(A.Date("2025-11-30"), A.Season(null, "2026-09-01/2026-11-30").PreviousLastDay);

    // 2027 and 2100 have no 29 February; the last day of the month stands in (ISO 8601 calendar, as NodaTime counts).
    [Theory]
    [InlineData("2027-09-01/2028-02-29", "2027-02-28")]
    [InlineData("2028-09-01/2029-02-28", "2028-02-28")]
    [InlineData("2100-09-01/2101-02-28", "2100-02-28")]
    public void A_season_may_end_in_February_of_any_year(string stint, string previous) =>
        Assert.Equal(A.Date(previous), A.Season(null, stint).PreviousLastDay);

    [Fact]
    public void A_season_of_one_day_and_stints_on_neighbouring_days_are_fine()
    {
        Assert.Single(A.Season(null, "2027-06-12/2027-06-12").Stints);
        Assert.Equal(2, A.Season(null, "2026-09-01/2026-11-30", "2026-12-01/2027-02-28").Stints.Count);
    }

    [Fact]
    public void The_first_match_may_be_the_day_after_the_season_before() => Assert.Equal(A.Date("2026-09-01"), A.Season("2026-08-31", "2026-09-01/2026-11-30").Cycle.Start);

    [Theory]
    [InlineData("2026-08-31", "season.no-stints", "season.stints")]
    [InlineData("2026-08-31", "season.stint-reversed", "season.stints[0].last", "2026-11-30/2026-09-01")]
    [InlineData("2026-08-31", "season.stints-overlap", "season.stints[1].first", "2026-09-01/2026-10-31", "2026-10-31/2026-11-30")]
    [InlineData("2026-05-31", "season.stints-overlap", "season.stints[1].first", "2026-09-01/2026-10-31", "2026-07-01/2026-07-31")]
    [InlineData("2026-09-01", "season.starts-before-cycle", "season.stints[0].first", "2026-09-01/2026-11-30")]
    [InlineData(null, "season.starts-before-cycle", "season.stints[0].first", "2026-09-01/2026-09-30", "2027-08-01/2027-09-05")]
    [InlineData("2025-10-06", "season.cycle-too-long", "season.previousLastDay", "2026-09-01/2026-12-01")]
    [InlineData("2026-06-30", "season.stints-too-long", "season.stints", "2026-07-01/2027-05-12")]
    [InlineData("1899-12-31", "season.date-out-of-range", "season.previousLastDay", "1900-01-01/1900-03-01")]
    [InlineData(null, "season.date-out-of-range", "season.stints[0].first", "1899-12-31/1900-03-01")]
    [InlineData(null, "season.date-out-of-range", "season.stints[0].last", "2200-12-01/2201-01-01")]
    [InlineData(null, "season.date-out-of-range", "season.stints[0].first", "9999-12-01/9999-12-31")]
    [InlineData("2026-08-31", "season.too-many-stints", "season.stints", "2026-09-01/2026-09-02", "2026-09-04/2026-09-05", "2026-09-07/2026-09-08",
        "2026-09-10/2026-09-11", "2026-09-13/2026-09-14", "2026-09-16/2026-09-17", "2026-09-19/2026-09-20")]
    public void Dates_that_cannot_be_planned_are_refused_at_their_place(string? previous, string code, string at, params string[] stints)
    {
        var failed = Assert.IsType<Result<Season>.Failed>(Season.Create(previous is null ? null : A.Date(previous), [.. stints.Select(A.Stint)]));

        var problem = Assert.Single(failed.Problems);
        Assert.Equal((code, at), (problem.Code, problem.At));
    }

    [Theory]
    [InlineData("2026-09-05", "The first match day 2026-09-01 is not after the season before, which ended on 2026-09-05.", "2026-09-01/2026-11-30")]
    [InlineData(null, "it starts on 2026-09-01 and the season before would have ended on 2026-09-05.", "2026-09-01/2026-09-30", "2027-08-01/2027-09-05")]
    [InlineData("2026-05-31", "This stint starts on 2026-10-31, but the one before it lasts until 2026-11-01.", "2026-09-01/2026-11-01", "2026-10-31/2026-11-30")]
    public void Dates_that_clash_are_both_told(string? previous, string told, params string[] stints)
    {
        var failed = Assert.IsType<Result<Season>.Failed>(Season.Create(previous is null ? null : A.Date(previous), [.. stints.Select(A.Stint)]));

        Assert.Contains(told, Assert.Single(failed.Problems).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Limits_are_inclusive()
    {
        // 60 weeks are 420 days; 45 weeks of matches.
        Assert.IsType<Result<Season>.Ok>(Season.Create(A.Date("2025-10-07"), [A.Stint("2026-09-01/2026-12-01")]));
        Assert.IsType<Result<Season>.Ok>(Season.Create(A.Date("2026-06-30"), [A.Stint("2026-07-01/2027-05-11")]));
        Assert.IsType<Result<Season>.Ok>(Season.Create(A.Date("1900-01-01"), [A.Stint("1900-09-01/1900-12-01")]));
        Assert.IsType<Result<Season>.Ok>(Season.Create(null, [A.Stint("2200-10-01/2200-12-31")]));
    }

    [Fact]
    public void Every_stint_that_is_wrong_is_named()
    {
        var failed = Assert.IsType<Result<Season>.Failed>(Season.Create(null, [A.Stint("2026-09-30/2026-09-01"), A.Stint("2026-11-30/2026-11-01")]));

        Assert.Equal(["season.stints[0].last", "season.stints[1].last"], failed.Problems.Select(p => p.At));
    }

    [Fact]
    public void A_season_that_is_accepted_can_be_planned_from_its_cycle()
    {
        var day = Gen.Int[0, 900].Select(d => A.Date("2026-01-01").PlusDays(d));
        Gen.Select(Gen.Select(day, Gen.Int[0, 2]).Select((date, n) => n == 0 ? (LocalDate?)null : date), Gen.Select(day, Gen.Int[-3, 150]).Select((first, days) => new Stint(first, first.PlusDays(days))).Array[0, 7]).Sample(
            (previous, stints) =>
            {
                switch (Season.Create(previous, stints))
                {
                    case Result<Season>.Ok(var season):
                        Assert.InRange(season.Cycle.Length, 1, 420);
                        Assert.True(season.Stints.All(s => s.First <= s.Last && season.Cycle.Contains(s.First) && season.Cycle.Contains(s.Last)));
                        Assert.True(season.Stints.Zip(season.Stints.Skip(1)).All(pair => pair.First.Last < pair.Second.First));
                        Assert.Equal(season.Cycle.End, season.Stints[^1].Last);
                        break;
                    case Result<Season>.Failed failed:
                        Assert.All(failed.Problems, p => Assert.True(p.Code.StartsWith("season.", StringComparison.Ordinal) && p.At.StartsWith("season.", StringComparison.Ordinal)));
                        break;
                }
            },
            iter: 20_000);
    }
}
