using ClubCycle.Data.Plans;

namespace ClubCycle.Web.Features.Plans;

/// <summary>Long work behind a screen. Starting again cancels the run before; work that takes longer than a moment says how far it is.</summary>
public sealed class LatestRun : IDisposable
{
    /// <summary>Quicker work would only flicker.</summary>
    public static readonly TimeSpan Moment = TimeSpan.FromMilliseconds(300);

    private CancellationTokenSource? _current;

    public event Action? Changed;

    public bool IsRunning => _current is not null;

    /// <summary>It has run for more than a moment.</summary>
    public bool IsSlow { get; private set; }

    /// <summary>The person stopped the last run.</summary>
    public bool WasStopped { get; private set; }

    public SquadsDone Done { get; private set; }

    /// <summary>True when the work came to its end; false when a person or a later run cancelled it, and its result is not wanted.</summary>
    public async Task<bool> RunAsync(Func<IProgress<SquadsDone>, CancellationToken, Task> work)
    {
        Abandon();
        using var own = new CancellationTokenSource();
        (_current, IsSlow, WasStopped, Done) = (own, false, false, default);
        var slow = TellWhenSlowAsync(own);
        try
        {
            await work(new Progress<SquadsDone>(done => Tell(own, done)), own.Token);
            return _current == own && !own.IsCancellationRequested;
        }
        catch (OperationCanceledException) when (own.IsCancellationRequested)
        {
            return false;
        }
        finally
        {
            if (_current == own)
            {
                (_current, IsSlow) = (null, false);
                Changed?.Invoke();
            }

            await own.CancelAsync();
            await slow;
        }
    }

    /// <summary>For the Cancel button.</summary>
    public void Stop()
    {
        if (_current is { } current)
        {
            WasStopped = true;
            current.Cancel();
        }
    }

    /// <summary>Nobody waits for the result any more.</summary>
    public void Abandon() => _current?.Cancel();

    public void Dispose() => Abandon();

    private async Task TellWhenSlowAsync(CancellationTokenSource own)
    {
        await Task.Delay(Moment, own.Token).ConfigureAwait(ConfigureAwaitOptions.ContinueOnCapturedContext | ConfigureAwaitOptions.SuppressThrowing);
        if (_current == own && !own.IsCancellationRequested)
        {
            IsSlow = true;
            Changed?.Invoke();
        }
    }

    private void Tell(CancellationTokenSource own, SquadsDone done)
    {
        if (_current == own && done.Done > Done.Done)
        {
            Done = done;
            if (IsSlow)
            {
                Changed?.Invoke();
            }
        }
    }
}
