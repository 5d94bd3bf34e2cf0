namespace ClubCycle.Web.Account;

/// <summary>
/// Hashing a password costs a core for a while on purpose. One lane is for those whom this node knows, the cores that are left are for strangers, and few strangers wait:
/// a flood of wrong passwords leaves the pages quick and lets the club's people in.
/// </summary>
internal sealed class PasswordQueue : IDisposable
{
    /// <summary>As many strangers wait; the next is told to come again.</summary>
    public const int MostWaiting = 20;

    private static readonly int Turns = Math.Max(1, Environment.ProcessorCount - 1);

    private readonly SemaphoreSlim _known = new(1);
    private readonly SemaphoreSlim _strangers = new(Turns);
    private int _here;

    /// <summary>For somebody who is signed in, or whose browser is known.</summary>
    public Task<T> RunAsync<T>(Func<Task<T>> work, CancellationToken cancel) => InTurnAsync(_known, work, cancel);

    /// <summary>For anybody; null when too many wait already.</summary>
    public async Task<T?> ForStrangerAsync<T>(Func<Task<T>> work, CancellationToken cancel)
        where T : class
    {
        try
        {
            return Interlocked.Increment(ref _here) <= Turns + MostWaiting ? await InTurnAsync(_strangers, work, cancel) : null;
        }
        finally
        {
            Interlocked.Decrement(ref _here);
        }
    }

    private static async Task<T> InTurnAsync<T>(SemaphoreSlim lane, Func<Task<T>> work, CancellationToken cancel)
    {
        await lane.WaitAsync(cancel);
        try
        {
            return await work();
        }
        finally
        {
            lane.Release();
        }
    }

    public void Dispose()
    {
        _known.Dispose();
        _strangers.Dispose();
    }
}
