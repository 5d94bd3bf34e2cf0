using ClubCycle.Data.Audit;
using ClubCycle.Data.Clubs;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace ClubCycle.Data.Tests.Clubs;

public sealed class ClubStoreTests : IAsyncLifetime
{
    private readonly ClubData data = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public ValueTask InitializeAsync() => data.InitializeAsync();

    public ValueTask DisposeAsync() => data.DisposeAsync();

    [Fact]
    public async Task An_instance_knows_whether_it_has_a_club_and_an_unused_one_can_be_taken_back()
    {
        _ = data.ConnectionString;
        using var scope = data.Services.CreateScope();
        var store = scope.ServiceProvider.GetRequiredService<ClubStore>();
        Assert.False(await store.AnyAsync(Cancel));

        var club = await data.NewClubAsync();
        await club.PublishAsync(await club.PlannedSquadAsync());
        Assert.True(await store.AnyAsync(Cancel));

        await store.RemoveUnusedAsync(club.Id, Cancel);
        Assert.False(await store.AnyAsync(Cancel));
    }

    [Fact]
    public async Task A_club_in_use_is_not_taken_back()
    {
        var club = await data.NewClubAsync();
        await using (var db = await data.Contexts.CreateDbContextAsync(Cancel))
        {
            db.Users.Add(new() { Id = NewId.Create(), ClubId = club.Id, UserName = "coach", NormalizedUserName = "COACH", DisplayName = "Coach" });
            await db.SaveChangesAsync(Cancel);
        }

        await club.Store<ClubStore>().RemoveUnusedAsync(club.Id, Cancel);

        Assert.Equal("Test club", (await club.Store<ClubStore>().FindAsync(Cancel)).OrThrow().Name);
    }

    [Fact]
    public async Task Settings_are_checked_saved_and_noted_with_who_changed_them()
    {
        var club = await data.NewClubAsync();
        var store = club.Store<ClubStore>();

        Problems.AssertProblem("club.unknown-time-zone", await store.SaveAsync("Larkmere", "Europe/Atlantis", IsoDayOfWeek.Monday, 1, ClubData.By, Cancel));
        Assert.Equal(2, (await store.SaveAsync(" Larkmere ", "America/New_York", IsoDayOfWeek.Sunday, 1, ClubData.By, Cancel)).OrThrow());
        Problems.AssertProblem("club.changed-meanwhile", await store.SaveAsync("Other", "Europe/Lisbon", IsoDayOfWeek.Monday, 1, ClubData.By, Cancel));

        var stored = (await store.FindAsync(Cancel)).OrThrow();
        Assert.Equal(("Larkmere", "America/New_York", IsoDayOfWeek.Sunday), (stored.Name, stored.TimeZone, stored.FirstWeekday));
        Assert.Equal([("club.changed", ClubData.By), ("club.created", (Guid?)null)], (await club.Store<AuditStore>().LatestAsync(10, Cancel)).Select(a => (a.What, a.By)));
    }
}
