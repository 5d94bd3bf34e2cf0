using ClubCycle.Data.Outbox;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Data.Tests.Outbox;

/// <summary>A database of its own for each test: the outbox is taken from across clubs.</summary>
public sealed class OutboxStoreTests : IAsyncLifetime
{
    private readonly ClubData data = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public ValueTask InitializeAsync() => data.InitializeAsync();

    public ValueTask DisposeAsync() => data.DisposeAsync();

    [Fact]
    public async Task Work_from_before_the_clock_was_put_back_by_days_is_not_left_lying()
    {
        var work = await WorkAsync(await data.NewClubAsync(), 0);

        data.Clock.Now = ClubData.Start - Duration.FromDays(3);

        Assert.Equal(work, (await Store.TakeAsync(OutboxKinds.RenderFeeds, Cancel))?.Id);
    }

    [Fact]
    public async Task Work_of_all_clubs_is_handed_out_once_and_oldest_first()
    {
        var first = await WorkAsync(await data.NewClubAsync("First"), 0);
        var second = await WorkAsync(await data.NewClubAsync("Second"), 1);
        data.Clock.Now = ClubData.Start + Duration.FromMinutes(1);

        Assert.Equal(first, (await Store.TakeAsync(OutboxKinds.RenderFeeds, Cancel))!.Id);
        Assert.Equal(second, (await Store.TakeAsync(OutboxKinds.RenderFeeds, Cancel))!.Id);
        Assert.Null(await Store.TakeAsync(OutboxKinds.RenderFeeds, Cancel));
    }

    [Fact]
    public async Task Workers_that_reach_at_once_get_different_work()
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        for (var i = 0; i < 8; i++)
        {
            await WorkAsync(club, 0, squad);
        }

        var taken = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => Store.TakeAsync(OutboxKinds.RenderFeeds, Cancel)));

        // A worker may also go away empty when it looks while all that is left is in others' hands; none gets what another has.
        var ids = taken.Where(t => t is not null).Select(t => t!.Id).ToList();
        Assert.NotEmpty(ids);
        Assert.Equal(ids.Count, ids.Distinct().Count());
    }

    [Fact]
    public async Task A_worker_of_one_kind_leaves_work_of_others_alone()
    {
        await WorkAsync(await data.NewClubAsync(), 0);

        Assert.Null(await Store.TakeAsync(OutboxKinds.SendNotice, Cancel));
        Assert.NotNull(await Store.TakeAsync(OutboxKinds.RenderFeeds, Cancel));
    }

    [Fact]
    public async Task Done_work_is_gone_and_undone_work_comes_back_when_its_worker_is_silent()
    {
        var club = await data.NewClubAsync();
        var squad = await club.SquadAsync();
        await WorkAsync(club, 0, squad);
        var taken = (await Store.TakeAsync(OutboxKinds.RenderFeeds, Cancel))!;
        Assert.Equal(1, taken.Attempts);

        data.Clock.Now += OutboxStore.Patience + Duration.FromSeconds(1);
        var again = (await Store.TakeAsync(OutboxKinds.RenderFeeds, Cancel))!;
        Assert.Equal((taken.Id, 2), (again.Id, again.Attempts));

        await Store.CompleteAsync(again, Cancel);
        data.Clock.Now += Duration.FromDays(1);
        Assert.Null(await Store.TakeAsync(OutboxKinds.RenderFeeds, Cancel));
    }

    [Fact]
    public async Task Failed_work_waits_longer_each_time_and_an_hour_at_most()
    {
        var club = await data.NewClubAsync();
        await WorkAsync(club, 0);
        List<Duration> waits = [];
        for (var i = 0; i < 12; i++)
        {
            var taken = (await Store.TakeAsync(OutboxKinds.RenderFeeds, Cancel))!;
            await Store.PutBackAsync(taken, Cancel);
            await using var db = await club.OpenAsync();
            var due = (await db.Outbox.SingleAsync(Cancel)).NotBefore;
            waits.Add(due - data.Clock.Now);
            data.Clock.Now = due;
        }

        Assert.Equal(Duration.FromSeconds(5), waits[0]);
        Assert.Equal(Duration.FromSeconds(10), waits[1]);
        Assert.Equal(waits.Order(), waits);
        Assert.Equal(Duration.FromHours(1), waits[^1]);
    }

    private OutboxStore Store => new(data.Contexts, data.Clock);

    private static async Task<Guid> WorkAsync(TestClub club, int seconds, Guid? squad = null)
    {
        var at = ClubData.Start + Duration.FromSeconds(seconds);
        squad ??= await club.SquadAsync();
        await using var db = await club.OpenAsync();
        var row = new OutboxRow { ClubId = club.Id, Id = NewId.Create(), Kind = OutboxKinds.RenderFeeds, SquadId = squad.Value, CreatedAt = at, NotBefore = at };
        db.Outbox.Add(row);
        await db.SaveChangesAsync(Cancel);
        return row.Id;
    }
}
