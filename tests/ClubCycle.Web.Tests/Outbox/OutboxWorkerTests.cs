using System.Collections.Concurrent;
using System.Diagnostics;
using ClubCycle.Data;
using ClubCycle.Data.Clubs;
using ClubCycle.Data.Outbox;
using ClubCycle.Data.Squads;
using ClubCycle.Planning.Squads;
using ClubCycle.TestKit;
using ClubCycle.Web.Features.Outbox;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using NodaTime;
using Npgsql;

namespace ClubCycle.Web.Tests.Outbox;

/// <summary>Workers that die, meet, fail and lose the database. A database and a clock of its own for each test.</summary>
public sealed class OutboxWorkerTests : IAsyncLifetime
{
    private readonly TestClock _clock = new(Instant.FromUtc(2026, 3, 3, 12, 0));
    private readonly ConcurrentQueue<Guid> _done = [];
    private TestDatabase _database = null!;
    private ServiceProvider _services = null!;
    private Guid _club;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private IDbContextFactory<ClubCycleDb> Contexts => _services.GetRequiredService<IDbContextFactory<ClubCycleDb>>();

    public async ValueTask InitializeAsync()
    {
        _database = await TestDatabase.CreateAsync(owner => DataSetup.MigrateAsync(owner, Cancel));
        _services = new ServiceCollection().AddSingleton<IClock>(_clock).AddClubCycleData(_database.ConnectionString).BuildServiceProvider();
        using var scope = _services.CreateScope();
        _club = (await scope.ServiceProvider.GetRequiredService<ClubStore>().CreateAsync("Sandhaven", "Europe/Lisbon", IsoDayOfWeek.Monday, Cancel)).OrThrow();
    }

    public async ValueTask DisposeAsync()
    {
        await _services.DisposeAsync();
        await _database.DisposeAsync();
    }

    [Fact]
    public async Task Work_whose_worker_was_killed_is_done_by_another_after_a_while()
    {
        var squad = await WorkAsync();
        Assert.NotNull(await new OutboxStore(Contexts, _clock).TakeAsync(OutboxKinds.RenderFeeds, Cancel));
        Assert.Equal(1, await LeftAsync());

        _clock.Now += OutboxStore.Patience + Duration.FromSeconds(1);
        await DoneByAsync(1, Worker(Done));

        Assert.Equal([squad], _done);
        Assert.Equal(0, await LeftAsync());
    }

    [Fact]
    public async Task Work_of_a_worker_that_is_stopped_is_done_by_another_at_once()
    {
        var squad = await WorkAsync();
        var reached = new TaskCompletionSource();
        var first = Worker(async (_, cancel) =>
        {
            reached.SetResult();
            await Task.Delay(Timeout.Infinite, cancel);
        });
        await first.StartAsync(Cancel);
        await reached.Task.WaitAsync(Cancel);
        await first.StopAsync(Cancel);

        await DoneByAsync(1, Worker(Done));

        Assert.Equal([squad], _done);
    }

    [Fact]
    public async Task Work_that_is_done_while_its_worker_is_stopped_is_ticked_off()
    {
        await WorkAsync();
        var (reached, stopped) = (new TaskCompletionSource(), new TaskCompletionSource());
        var worker = Worker(async (_, _) =>
        {
            reached.SetResult();
            await stopped.Task;
        });
        await worker.StartAsync(Cancel);
        await reached.Task.WaitAsync(Cancel);
        var stopping = worker.StopAsync(Cancel);
        stopped.SetResult();
        await stopping;

        Assert.Equal(0, await LeftAsync());
    }

    [Fact]
    public async Task Work_that_was_done_but_not_ticked_off_is_done_again()
    {
        await WorkAsync();
        var killed = (await new OutboxStore(Contexts, _clock).TakeAsync(OutboxKinds.RenderFeeds, Cancel))!;
        await Done(killed, Cancel);

        _clock.Now += OutboxStore.Patience + Duration.FromSeconds(1);
        await DoneByAsync(2, Worker(Done));

        Assert.Equal([killed.SquadId, killed.SquadId], _done);
    }

    [Fact]
    public async Task Two_workers_share_the_work_and_do_each_piece_once()
    {
        List<Guid> squads = [];
        for (var i = 0; i < 20; i++)
        {
            squads.Add(await WorkAsync());
        }

        await DoneByAsync(20, Worker(Done), Worker(Done));

        Assert.Equal(squads.Order(), _done.Order());
    }

    [Fact]
    public async Task Work_that_always_fails_holds_up_no_other()
    {
        var poison = await WorkAsync();
        var fine = await WorkAsync();

        await DoneByAsync(1, Worker((message, cancel) => message.SquadId == poison ? throw new InvalidOperationException("It cannot be done.") : Done(message, cancel)));

        Assert.Equal([fine], _done);
        Assert.Equal(1, await LeftAsync());
    }

    [Fact]
    public async Task A_worker_goes_on_when_the_database_is_back()
    {
        var squad = await WorkAsync();
        var away = new AwayAtFirst(Contexts, times: 1);

        await DoneByAsync(1, Worker(new OutboxStore(away, _clock), Done));

        Assert.Equal([squad], _done);
    }

    private OutboxWorker Worker(Func<OutboxMessage, CancellationToken, Task> work) => Worker(new OutboxStore(Contexts, _clock), work);

    private static OutboxWorker Worker(OutboxStore outbox, Func<OutboxMessage, CancellationToken, Task> work) => new(outbox, [new Work(work)], NullLogger<OutboxWorker>.Instance);

    private Task Done(OutboxMessage message, CancellationToken cancel)
    {
        _done.Enqueue(message.SquadId);
        return Task.CompletedTask;
    }

    /// <summary>Lets the workers run until so much is done, and stops them.</summary>
    private async Task DoneByAsync(int count, params OutboxWorker[] workers)
    {
        await Task.WhenAll(workers.Select(w => w.StartAsync(Cancel)));
        for (var watch = Stopwatch.StartNew(); _done.Count < count; await Task.Delay(20, Cancel))
        {
            Assert.True(watch.Elapsed < TimeSpan.FromSeconds(60), $"{_done.Count} of {count} were done within 60 seconds.");
        }

        // Time to tick off what was done, and to do it twice if it were so.
        await Task.Delay(1_500, Cancel);
        await Task.WhenAll(workers.Select(w => w.StopAsync(Cancel)));
    }

    /// <summary>A new squad with work for it, older than the next.</summary>
    private async Task<Guid> WorkAsync()
    {
        using var scope = _services.CreateScope();
        scope.ServiceProvider.GetRequiredService<CurrentClub>().Use(_club);
        var by = NewId.Create();
        var squad = (await scope.ServiceProvider.GetRequiredService<SquadStore>().AddAsync(
            new Squad(Guid.Empty, $"Squad {by:N}", AgeGroup.Senior, TrainingAge.Some, [], IsoDayOfWeek.Saturday, new LocalTime(14, 0), []), null, by, Cancel)).OrThrow();
        await using var db = await scope.ServiceProvider.GetRequiredService<IClubDbFactory>().OpenAsync(Cancel);
        db.Outbox.Add(new OutboxRow { ClubId = _club, Id = NewId.Create(), Kind = OutboxKinds.RenderFeeds, SquadId = squad, CreatedAt = _clock.Now, NotBefore = _clock.Now });
        await db.SaveChangesAsync(Cancel);
        return squad;
    }

    private async Task<int> LeftAsync()
    {
        using var scope = _services.CreateScope();
        scope.ServiceProvider.GetRequiredService<CurrentClub>().Use(_club);
        await using var db = await scope.ServiceProvider.GetRequiredService<IClubDbFactory>().OpenAsync(Cancel);
        return await db.Outbox.CountAsync(Cancel);
    }

    private sealed class Work(Func<OutboxMessage, CancellationToken, Task> work) : IOutboxWork
    {
        public string Kind => OutboxKinds.RenderFeeds;

        public Task DoAsync(OutboxMessage message, CancellationToken cancel) => work(message, cancel);
    }

    private sealed class AwayAtFirst(IDbContextFactory<ClubCycleDb> contexts, int times) : IDbContextFactory<ClubCycleDb>
    {
        private int _left = times;

        public ClubCycleDb CreateDbContext() => Interlocked.Decrement(ref _left) >= 0 ? throw new NpgsqlException("The database is away.") : contexts.CreateDbContext();
    }
}
