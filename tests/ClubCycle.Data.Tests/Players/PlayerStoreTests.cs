using ClubCycle.Data.Players;
using ClubCycle.Planning;
using NodaTime;

namespace ClubCycle.Data.Tests.Players;

public sealed class PlayerStoreTests(ClubData data) : IClassFixture<ClubData>
{
    private static readonly PlayerLimits Limits = new(2011, true, new LocalDate(2026, 2, 1), new LocalDate(2026, 1, 15));

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_limits_a_player_is_kept_and_read_back()
    {
        var (players, squad, player) = await PlayerAsync();

        (await players.LimitAsync(squad, player.Id, Limits, player.Version, ClubData.By, Cancel)).OrThrow();

        Assert.Equal(Limits, Assert.Single(await players.ListAsync(squad, Cancel)).Limits);
    }

    [Theory]
    [InlineData(1925, "player.birth-year")]
    [InlineData(1926, null)]
    [InlineData(2021, null)]
    [InlineData(2022, "player.birth-year")]
    public async Task A_year_of_birth_is_that_of_somebody_between_5_and_100(int year, string? code)
    {
        var (players, squad, player) = await PlayerAsync();

        var saved = await players.LimitAsync(squad, player.Id, Limits with { BirthYear = year }, player.Version, ClubData.By, Cancel);

        Assert.Equal(code, (saved as Result<int>.Failed)?.Problems[0].Code);
    }

    [Fact]
    public async Task Days_to_come_are_refused()
    {
        var (players, squad, player) = await PlayerAsync();

        Problems.AssertProblem("player.date-ahead", await players.LimitAsync(squad, player.Id, Limits with { HealthSettledOn = new LocalDate(2026, 3, 4) }, player.Version, ClubData.By, Cancel));
        Problems.AssertProblem("player.date-ahead", await players.LimitAsync(squad, player.Id, Limits with { GrowingFastSince = new LocalDate(2026, 3, 4) }, player.Version, ClubData.By, Cancel));
    }

    [Fact]
    public async Task Of_two_coaches_who_save_the_second_is_told()
    {
        var (players, squad, player) = await PlayerAsync();
        (await players.LimitAsync(squad, player.Id, Limits, player.Version, ClubData.By, Cancel)).OrThrow();

        Problems.AssertProblem("player.changed-meanwhile", await players.LimitAsync(squad, player.Id, Limits, player.Version, ClubData.By, Cancel));
    }

    [Fact]
    public async Task A_player_of_another_squad_or_club_is_not_there()
    {
        var (players, squad, player) = await PlayerAsync();
        var other = await data.NewClubAsync();

        Problems.AssertProblem("player.not-found", await players.LimitAsync(NewId.Create(), player.Id, Limits, player.Version, ClubData.By, Cancel));
        Problems.AssertProblem("player.not-found", await other.Store<PlayerStore>().LimitAsync(squad, player.Id, Limits, player.Version, ClubData.By, Cancel));
        Problems.AssertProblem("player.not-found", await other.Store<PlayerStore>().SettleHealthQuestionsAsync(squad, player.Id, new LocalDate(2026, 3, 1), Cancel));
    }

    [Fact]
    public async Task Of_the_health_questions_only_the_day_is_kept_and_nobody_signed_in_did_it()
    {
        var (players, squad, player, club) = await PlayerOfClubAsync();

        (await players.SettleHealthQuestionsAsync(squad, player.Id, new LocalDate(2026, 3, 1), Cancel)).OrThrow();

        Assert.Equal(new LocalDate(2026, 3, 1), Assert.Single(await players.ListAsync(squad, Cancel)).Limits.HealthSettledOn);
        await using var db = await club.OpenAsync();
        var note = Assert.Single(db.Audit, a => a.What == "player.health-questions-answered");
        Assert.Equal((null, ""), (note.By, note.Details));
    }

    private async Task<(PlayerStore Players, Guid Squad, StoredPlayer Player)> PlayerAsync()
    {
        var (players, squad, player, _) = await PlayerOfClubAsync();
        return (players, squad, player);
    }

    private async Task<(PlayerStore Players, Guid Squad, StoredPlayer Player, TestClub Club)> PlayerOfClubAsync()
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        await club.PlayerAsync(squad);
        var players = club.Store<PlayerStore>();
        return (players, squad, Assert.Single(await players.ListAsync(squad, Cancel)), club);
    }
}
