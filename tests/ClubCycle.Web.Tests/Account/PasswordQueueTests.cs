using ClubCycle.Web.Account;

namespace ClubCycle.Web.Tests.Account;

public sealed class PasswordQueueTests : IDisposable
{
    private static readonly int Turns = Math.Max(1, Environment.ProcessorCount - 1);

    private readonly PasswordQueue _queue = new();
    private readonly TaskCompletionSource _busy = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public void Dispose() => _queue.Dispose();

    [Fact]
    public async Task Whoever_is_known_does_not_wait_for_strangers()
    {
        var strangers = Strangers(Turns + PasswordQueue.MostWaiting);

        var known = await _queue.RunAsync(() => Task.FromResult("in"), Cancel).WaitAsync(TimeSpan.FromSeconds(10), Cancel);

        Assert.Equal("in", known);
        Assert.All(strangers, stranger => Assert.False(stranger.IsCompleted));
        _busy.SetResult();
        await Task.WhenAll(strangers);
    }

    [Fact]
    public async Task When_many_strangers_wait_the_next_is_sent_away_and_later_ones_come_in()
    {
        var strangers = Strangers(Turns + PasswordQueue.MostWaiting);

        Assert.Null(await Strangers(1)[0]);
        Assert.Null(await Strangers(1)[0]);
        _busy.SetResult();

        Assert.All(await Task.WhenAll(strangers), Assert.NotNull);
        Assert.NotNull(await Strangers(1)[0]);
    }

    [Fact]
    public async Task A_stranger_who_gives_up_leaves_the_place_free()
    {
        var strangers = Strangers(Turns + PasswordQueue.MostWaiting - 1);
        using var impatient = new CancellationTokenSource();
        var gone = _queue.ForStrangerAsync(() => Task.FromResult("in"), impatient.Token);
        await impatient.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => gone);

        var next = Strangers(1)[0];

        Assert.False(next.IsCompleted);
        _busy.SetResult();
        Assert.NotNull(await next);
        await Task.WhenAll(strangers);
    }

    private List<Task<string?>> Strangers(int many) => [.. Enumerable.Range(0, many).Select(_ => _queue.ForStrangerAsync(
        async () =>
        {
            await _busy.Task;
            return "in";
        },
        Cancel))];
}
