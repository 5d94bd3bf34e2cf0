using ClubCycle.Data.Links;
using ClubCycle.Data.Players;
using ClubCycle.Planning.Players;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Tests.Players;

/// <summary>The club starts on 1 March 2026; thirteen months later is 1 April 2027.</summary>
public sealed class RetentionStoreTests(ClubData data) : IClassFixture<ClubData>
{
    private static readonly LocalDate ThirteenMonthsOn = new(2027, 4, 1);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(0, 0)]
    [InlineData(1, 1)]
    public async Task A_player_of_whom_nothing_was_used_for_thirteen_months_is_erased(int daysAfter, int erased)
    {
        var (club, squad, _) = await PlayerAsync();

        var swept = await SweepAsync(club, ThirteenMonthsOn.PlusDays(daysAfter));

        Assert.Equal(erased, swept.Players);
        Assert.Equal(1 - erased, (await club.Store<PlayerStore>().ListAsync(squad, Cancel)).Count);
        await using var db = await club.OpenAsync();
        Assert.Equal(erased, await db.Erasures.CountAsync(Cancel));
    }

    [Fact]
    public async Task Whoever_used_a_link_or_was_tested_meanwhile_stays()
    {
        var (club, squad, player) = await PlayerAsync();
        var tested = await club.PlayerAsync(squad, "Bo L.");
        var link = (await club.Store<LinkStore>().CreateAsync(squad, player, "phone", ClubData.By, Cancel)).OrThrow();
        await club.Store<LinkStore>().TouchAsync((await club.Store<LinkStore>().FindAsync(link.Token, Cancel))!, new LocalDate(2026, 9, 1), Cancel);
        data.Clock.Now = Instant.FromUtc(2026, 9, 1, 12, 0);
        (await club.Store<TestResultStore>().AddAsync(squad, tested, new FieldTestResult(TestKind.ShuttleRun, new LocalDate(2026, 9, 1), 9), ClubData.By, Cancel)).OrThrow();

        Assert.Equal(0, (await SweepAsync(club, ThirteenMonthsOn.PlusDays(1))).Players);
    }

    [Fact]
    public async Task A_protected_player_is_erased_like_any_other()
    {
        var (club, _, player) = await PlayerAsync();
        (await club.Store<WelfareStore>().ProtectAsync(player, true, ClubData.By, Cancel)).OrThrow();

        await SweepAsync(club, ThirteenMonthsOn.PlusDays(1));

        Assert.Empty(await club.Store<WelfareStore>().ListAsync(Cancel));
    }

    [Fact]
    public async Task Old_tests_and_revoked_links_go_and_the_player_stays()
    {
        var (club, squad, player) = await PlayerAsync();
        var links = club.Store<LinkStore>();
        var link = (await links.CreateAsync(squad, player, "phone", ClubData.By, Cancel)).OrThrow();
        (await links.CreateAsync(squad, player, "tablet", ClubData.By, Cancel)).OrThrow();
        (await links.RevokeAsync(squad, player, link.Id, ClubData.By, Cancel)).OrThrow();
        (await club.Store<TestResultStore>().AddAsync(squad, player, new FieldTestResult(TestKind.ShuttleRun, new LocalDate(2024, 6, 9), 9), ClubData.By, Cancel)).OrThrow();

        Assert.Equal(new Swept(0, 0, 0, 0), await SweepAsync(club, new LocalDate(2026, 5, 30)));
        Assert.Equal(new Swept(0, 1, 1, 0), await SweepAsync(club, new LocalDate(2026, 6, 10)));
        Assert.Equal("tablet", Assert.Single(await links.ListAsync(squad, player, Cancel)).Name);
    }

    [Fact]
    public async Task The_audit_log_reaches_back_two_years()
    {
        var club = await data.NewClubAsync();

        Assert.Equal(0, (await SweepAsync(club, new LocalDate(2028, 3, 1))).AuditRows);
        Assert.True((await SweepAsync(club, new LocalDate(2028, 3, 2))).AuditRows > 0);
    }

    [Fact]
    public async Task One_club_is_swept_and_no_other()
    {
        var (club, _, _) = await PlayerAsync();
        var (other, squad, _) = await PlayerAsync();

        await SweepAsync(club, ThirteenMonthsOn.PlusDays(1));

        Assert.Single(await other.Store<PlayerStore>().ListAsync(squad, Cancel));
    }

    [Fact]
    public async Task Whom_a_restored_backup_brings_back_is_erased_again_with_all_that_is_theirs()
    {
        var (club, squad, player) = await PlayerAsync();
        await using var db = await club.OpenAsync();
        var backup = await db.Players.AsNoTracking().SingleAsync(p => p.Id == player, Cancel);
        (await club.Store<PlayerStore>().RemoveAsync(squad, player, ClubData.By, Cancel)).OrThrow();
        db.Players.Add(backup);
        await db.SaveChangesAsync(Cancel);
        (await club.Store<LinkStore>().CreateAsync(squad, player, "phone", ClubData.By, Cancel)).OrThrow();

        Assert.Equal(1, await club.Store<RetentionStore>().EraseAgainAsync(Cancel));

        Assert.Empty(await club.Store<PlayerStore>().ListAsync(squad, Cancel));
        Assert.False(await db.Links.AnyAsync(l => l.PlayerId == player, Cancel));
    }

    private Task<Swept> SweepAsync(TestClub club, LocalDate day)
    {
        data.Clock.Now = day.At(new LocalTime(3, 0)).InUtc().ToInstant();
        return club.Store<RetentionStore>().SweepAsync(Cancel);
    }

    private async Task<(TestClub Club, Guid Squad, Guid Player)> PlayerAsync()
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        return (club, squad, await club.PlayerAsync(squad));
    }
}
