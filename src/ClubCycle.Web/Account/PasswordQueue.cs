namespace ClubCycle.Web.Account;

/// <summary>Hashing a password costs a core for a while on purpose. Only as many at a time as there are cores, so that pages stay quick.</summary>
internal sealed class PasswordQueue : IDisposable
{
    private readonly SemaphoreSlim _turns = new(Environment.ProcessorCount);

    public async Task<T> RunAsync<T>(Func<Task<T>> work, CancellationToken cancel)
    {
        await _turns.WaitAsync(cancel);
        try
        {
            return await work();
        }
        finally
        {
            _turns.Release();
        }
    }

    public void Dispose() => _turns.Dispose();
}
