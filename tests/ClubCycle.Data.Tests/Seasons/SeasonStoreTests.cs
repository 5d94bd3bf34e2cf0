using ClubCycle.Data.Seasons;
using ClubCycle.Planning;
using ClubCycle.Planning.Seasons;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Npgsql;

namespace ClubCycle.Data.Tests.Seasons;

public sealed class SeasonStoreTests(ClubData data) : IClassFixture<ClubData>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_season_that_somebody_changed_meanwhile_is_not_removed()
    {
        var club = await data.NewClubAsync();
        var season = await club.SeasonAsync();
        (await club.Store<SeasonStore>().SaveAsync(season, null, [ClubData.Stints[0]], 1, ClubData.By, TestContext.Current.CancellationToken)).OrThrow();

        Problems.AssertProblem("season.changed-meanwhile", await club.Store<SeasonStore>().RemoveAsync(season, 1, ClubData.By, TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_season_comes_back_as_it_was_saved()
    {
        var club = await data.NewClubAsync();
        var id = await club.SeasonAsync();

        var stored = Assert.Single(await club.Store<SeasonStore>().ListAsync(Cancel));

        Assert.Equal((id, null, 1), (stored.Id, stored.SquadId, stored.Version));
        Assert.Equal(ClubData.Stints, stored.Season.Stints);
        Assert.Equal(new LocalDate(2026, 2, 28), stored.Season.PreviousLastDay);
    }

    [Fact]
    public async Task Stints_that_are_moved_across_each_other_are_replaced_as_a_whole()
    {
        var club = await data.NewClubAsync();
        var id = await club.SeasonAsync();
        Stint[] moved = [new(new(2026, 9, 1), new(2026, 10, 15)), new(new(2026, 11, 1), new(2027, 2, 28))];

        Assert.Equal(2, (await club.Store<SeasonStore>().SaveAsync(id, null, moved, 1, ClubData.By, Cancel)).OrThrow());

        Assert.Equal(moved, Assert.Single(await club.Store<SeasonStore>().ListAsync(Cancel)).Season.Stints);
    }

    [Fact]
    public async Task The_database_refuses_stints_that_share_a_day_and_the_answer_is_a_problem()
    {
        var club = await data.NewClubAsync();
        var id = await club.SeasonAsync();

        await using var db = await club.OpenAsync();
        db.Stints.Add(new StintRow { ClubId = club.Id, SeasonId = id, Number = 3, Days = new DateInterval(new(2026, 11, 30), new(2026, 12, 1)) });
        var problem = await db.TrySaveAsync(Refusal.Meanwhile("season"), Cancel);

        Assert.Equal("season.stints-overlap", problem!.Code);
        var refused = await Assert.ThrowsAsync<DbUpdateException>(() => db.SaveChangesAsync(Cancel));
        Assert.Equal(PostgresErrorCodes.ExclusionViolation, Assert.IsType<PostgresException>(refused.InnerException).SqlState);
    }

    [Fact]
    public async Task Stints_of_different_seasons_may_share_days_and_the_day_after_a_stint_is_free()
    {
        var club = await data.NewClubAsync();
        var id = await club.SeasonAsync();
        await club.SeasonAsync(await club.SquadAsync());

        await using var db = await club.OpenAsync();
        db.Stints.Add(new StintRow { ClubId = club.Id, SeasonId = id, Number = 3, Days = new DateInterval(new(2026, 12, 1), new(2026, 12, 5)) });

        Assert.Null(await db.TrySaveAsync(Refusal.Meanwhile("season"), Cancel));
    }

    [Fact]
    public async Task Planning_refuses_what_it_cannot_plan_before_anything_is_stored()
    {
        var club = await data.NewClubAsync();

        Problems.AssertProblem("season.stints-overlap", await club.Store<SeasonStore>().AddAsync(null, null, [new(new(2026, 10, 1), new(2026, 11, 30)), new(new(2026, 11, 30), new(2026, 12, 5))], ClubData.By, Cancel));
        Assert.Empty(await club.Store<SeasonStore>().ListAsync(Cancel));
    }

    [Fact]
    public async Task The_second_of_two_savers_is_told_and_the_firsts_dates_stay()
    {
        var club = await data.NewClubAsync();
        var id = await club.SeasonAsync();
        Stint[] first = [new(new(2026, 10, 1), new(2026, 12, 5))];
        Stint[] second = [new(new(2026, 10, 1), new(2026, 12, 12))];
        (await club.Store<SeasonStore>().SaveAsync(id, null, first, 1, ClubData.By, Cancel)).OrThrow();

        Problems.AssertProblem("season.changed-meanwhile", await club.Store<SeasonStore>().SaveAsync(id, null, second, 1, ClubData.By, Cancel));

        Assert.Equal(first, Assert.Single(await club.Store<SeasonStore>().ListAsync(Cancel)).Season.Stints);
    }

    [Fact]
    public async Task Of_savers_at_the_same_moment_exactly_one_wins()
    {
        var club = await data.NewClubAsync();
        var id = await club.SeasonAsync();

        var results = await Task.WhenAll(Enumerable.Range(1, 4).Select(day =>
            data.TestClub(club.Id).Store<SeasonStore>().SaveAsync(id, null, [new(new(2026, 10, day), new(2026, 12, 5))], 1, ClubData.By, Cancel)));

        Assert.Single(results, r => r is Result<int>.Ok);
        Assert.All(results.OfType<Result<int>.Failed>(), r => Assert.Equal("season.changed-meanwhile", r.First.Code));
    }

    [Theory]
    [InlineData("2026-03-01", "2027-02-28")]
    [InlineData("2027-02-28", "2027-02-28")]
    [InlineData("2027-03-01", "2028-02-29")]
    [InlineData("2029-01-01", "2028-02-29")]
    public async Task The_season_under_way_counts_then_the_next_and_after_all_the_last(string today, string cycleEnds)
    {
        var club = await data.NewClubAsync();
        await club.SeasonAsync();
        (await club.Store<SeasonStore>().AddAsync(null, new LocalDate(2027, 2, 28), [new(new(2027, 10, 1), new(2028, 2, 29))], ClubData.By, Cancel)).OrThrow();

        var season = (await club.Store<SeasonStore>().EffectiveAsync(NewId.Create(), Date(today), Cancel)).OrThrow();

        Assert.Equal(Date(cycleEnds), season.Season.Cycle.End);
    }

    private static LocalDate Date(string iso) => NodaTime.Text.LocalDatePattern.Iso.Parse(iso).Value;
}
