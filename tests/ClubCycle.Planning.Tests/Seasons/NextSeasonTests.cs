using ClubCycle.Planning.Seasons;
using NodaTime;

namespace ClubCycle.Planning.Tests.Seasons;

public sealed class NextSeasonTests
{
    public static TheoryData<string, Season> Seasons => new()
    {
        { "two halves over new year", A.SeasonA },
        { "one stint", A.SeasonB },
        { "two months", A.SeasonC },
        { "outdoor, indoor, outdoor", A.SeasonD },
        { "southern hemisphere", A.SeasonE },
        { "four stints", A.Season("2026-06-30", "2026-09-05/2026-10-18", "2026-11-07/2026-12-13", "2027-01-16/2027-02-28", "2027-03-20/2027-05-30") },
        { "from 29 February", A.Season("2027-11-30", "2028-02-29/2028-05-30") },
        { "in the last days of a year of 53 weeks", A.Season("2025-12-31", "2026-10-01/2026-12-31") },
        { "over the leap day", A.Season("2027-03-31", "2027-10-02/2028-03-31") },
    };

    [Fact]
    public void Matches_are_on_the_same_weekdays_52_weeks_later() => Assert.Equal(
        [A.Stint("2027-09-30/2027-11-29"), A.Stint("2027-12-31/2028-02-27")],
        NextSeason.Propose(A.SeasonA).OrThrow().Stints);

    [Theory]
    [MemberData(nameof(Seasons))]
    public void The_next_cycle_starts_the_day_after_this_ones_last_match(string name, Season season) =>
        Assert.Equal((name, season.Cycle.End.PlusDays(1)), (name, NextSeason.Propose(season).OrThrow().Cycle.Start));

    [Theory]
    [MemberData(nameof(Seasons))]
    public void Over_thirty_years_weekdays_and_lengths_stay_and_the_first_match_keeps_within_four_days_of_its_date(string name, Season first)
    {
        var usual = first.Stints[0].First;
        var season = first;
        HashSet<int> weeks = [];
        for (var year = 1; year <= 30; year++)
        {
            var next = NextSeason.Propose(season, usual).OrThrow();

            Assert.Equal(season.Stints.Select(Shape), next.Stints.Select(Shape));
            Assert.True(Math.Abs(Period.DaysBetween(usual.PlusYears(year), next.Stints[0].First)) <= 4, $"{name}: {next.Stints[0].First} in year {year}");
            weeks.Add(Period.DaysBetween(season.Stints[0].First, next.Stints[0].First) / 7);
            season = next;
        }

        Assert.Equal([52, 53], weeks.Order());
    }

    [Fact]
    public void Dates_that_people_moved_by_more_than_a_week_are_not_drawn_back() =>
        Assert.Equal(A.Date("2027-04-15"), NextSeason.Propose(A.Season("2025-06-30", "2026-04-16/2026-06-30"), A.Date("2020-04-30")).OrThrow().Stints[0].First);

    [Fact]
    public void A_week_too_early_is_made_good_in_the_next_year() =>
        Assert.Equal(A.Date("2027-10-02"), NextSeason.Propose(A.Season("2026-02-28", "2026-09-26/2026-11-28"), A.Date("2020-10-03")).OrThrow().Stints[0].First);

    [Fact]
    public void A_season_beyond_the_last_year_is_a_problem() =>
        Assert.Equal("season.date-out-of-range", NextSeason.Propose(A.Season("2199-11-30", "2200-09-01/2200-11-30")) is Result<Season>.Failed failed ? failed.First.Code : null);

    private static (IsoDayOfWeek, int) Shape(Stint stint) => (stint.First.DayOfWeek, Period.DaysBetween(stint.First, stint.Last));
}
