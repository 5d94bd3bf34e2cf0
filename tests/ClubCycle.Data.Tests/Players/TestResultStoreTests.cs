using ClubCycle.Data.Players;
using ClubCycle.Planning.Players;
using NodaTime;

namespace ClubCycle.Data.Tests.Players;

public sealed class TestResultStoreTests(ClubData data) : IClassFixture<ClubData>
{
    private static readonly FieldTestResult Shuttles = new(TestKind.ShuttleRun, new LocalDate(2026, 2, 20), 9);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Results_are_kept_and_come_latest_first()
    {
        var (results, squad, player) = await PlayerAsync();
        FieldTestResult lift = new(TestKind.Lift, new LocalDate(2026, 2, 25), 42.5, 5, "Goblet squat");
        await results.AddAsync(squad, player, lift, ClubData.By, Cancel);
        await results.AddAsync(squad, player, Shuttles, ClubData.By, Cancel);

        Assert.Equal([lift, Shuttles], (await results.ListAsync(squad, player, Cancel)).Select(r => r.Result));
    }

    [Fact]
    public async Task A_result_that_cannot_be_is_refused_and_not_kept()
    {
        var (results, squad, player) = await PlayerAsync();

        Problems.AssertProblem("test.value", await results.AddAsync(squad, player, Shuttles with { Value = 22 }, ClubData.By, Cancel));

        Assert.Empty(await results.ListAsync(squad, player, Cancel));
    }

    [Theory]
    [InlineData("2026-03-02", false)]
    [InlineData("2026-03-03", true)]
    [InlineData("2016-03-01", false)]
    [InlineData("2016-02-29", true)]
    public async Task A_test_was_taken_in_the_last_ten_years(string day, bool refused)
    {
        var (results, squad, player) = await PlayerAsync();

        var added = await results.AddAsync(squad, player, Shuttles with { On = NodaTime.Text.LocalDatePattern.Iso.Parse(day).Value }, ClubData.By, Cancel);

        Assert.Equal(refused, added is Planning.Result<Guid>.Failed { Problems: [{ Code: "test.date" }] });
    }

    [Fact]
    public async Task A_removed_result_is_gone_and_only_the_squad_s_own_can_be_removed()
    {
        var (results, squad, player) = await PlayerAsync();
        var id = (await results.AddAsync(squad, player, Shuttles, ClubData.By, Cancel)).OrThrow();

        Problems.AssertProblem("test result.not-found", await results.RemoveAsync(NewId.Create(), player, id, ClubData.By, Cancel));
        (await results.RemoveAsync(squad, player, id, ClubData.By, Cancel)).OrThrow();

        Assert.Empty(await results.ListAsync(squad, player, Cancel));
    }

    [Fact]
    public async Task A_player_of_another_squad_or_club_has_no_results_here()
    {
        var (results, squad, player) = await PlayerAsync();
        await results.AddAsync(squad, player, Shuttles, ClubData.By, Cancel);
        var other = (await data.NewClubAsync()).Store<TestResultStore>();

        Assert.Empty(await results.ListAsync(NewId.Create(), player, Cancel));
        Assert.Empty(await other.ListAsync(squad, player, Cancel));
        Problems.AssertProblem("player.not-found", await other.AddAsync(squad, player, Shuttles, ClubData.By, Cancel));
    }

    [Fact]
    public async Task Results_go_with_their_player()
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        var player = await club.PlayerAsync(squad);
        await club.Store<TestResultStore>().AddAsync(squad, player, Shuttles, ClubData.By, Cancel);

        await club.Store<PlayerStore>().RemoveAsync(squad, player, ClubData.By, Cancel);

        await using var db = await club.OpenAsync();
        Assert.Empty(db.TestResults);
    }

    private async Task<(TestResultStore Results, Guid Squad, Guid Player)> PlayerAsync()
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        return (club.Store<TestResultStore>(), squad, await club.PlayerAsync(squad));
    }
}
