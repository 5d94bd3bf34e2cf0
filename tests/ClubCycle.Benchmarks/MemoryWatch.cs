using System.Diagnostics;
using System.Globalization;

namespace ClubCycle.Benchmarks;

/// <summary>How much memory a program holds, looked at every ten seconds, so that growth shows.</summary>
internal sealed class MemoryWatch(Process program) : IAsyncDisposable
{
    private static readonly TimeSpan Between = TimeSpan.FromSeconds(10);

    private readonly List<double> _megabytes = [];
    private readonly CancellationTokenSource _over = new();
    private Task _looking = Task.CompletedTask;

    public static MemoryWatch Start(Process program)
    {
        var watch = new MemoryWatch(program);
        watch._looking = watch.LookAsync();
        return watch;
    }

    public async ValueTask DisposeAsync()
    {
        await _over.CancelAsync();
        await _looking;
        _over.Dispose();
    }

    /// <summary>Prints the mean of each tenth of the time; call it when the time is over.</summary>
    public async Task PrintAsync()
    {
        await _over.CancelAsync();
        await _looking;
        var size = Math.Max(1, (_megabytes.Count + 9) / 10);
        Console.WriteLine($"web node MB, by tenths of the time: {string.Join(' ', _megabytes.Chunk(size).Select(c => c.Average().ToString("0", CultureInfo.InvariantCulture)))}");
    }

    private async Task LookAsync()
    {
        using var timer = new PeriodicTimer(Between);
        try
        {
            while (await timer.WaitForNextTickAsync(_over.Token))
            {
                program.Refresh();
                _megabytes.Add(program.WorkingSet64 / 1e6);
            }
        }
        catch (OperationCanceledException)
        {
            // The time is over.
        }
    }
}
