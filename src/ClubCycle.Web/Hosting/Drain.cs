using System.Runtime.InteropServices;
using Microsoft.Extensions.Options;

namespace ClubCycle.Web.Hosting;

/// <summary>How a node ends, settings <c>Stop:…</c>.</summary>
public sealed class StopSettings
{
    public const string Section = "Stop";
    public const int Most = 300;

    /// <summary>How long a node that is told to stop goes on answering, while it says that it is not ready.</summary>
    public int DrainSeconds { get; set; }
}

/// <summary>Told to stop, a node first says that it is not ready and goes on answering, so that a proxy that asks sends it nothing more. Told twice, it waits no longer.</summary>
internal sealed class Drain(IHostApplicationLifetime app, IOptions<StopSettings> settings) : IHostLifetime, IDisposable
{
    private PosixSignalRegistration[] _signals = [];
    private int _told;

    public bool HasBegun => Volatile.Read(ref _told) > 0;

    public Task WaitForStartAsync(CancellationToken cancellationToken)
    {
        _signals = [.. new[] { PosixSignal.SIGINT, PosixSignal.SIGQUIT, PosixSignal.SIGTERM }.Select(signal => PosixSignalRegistration.Create(signal, Told))];
        return Task.CompletedTask;
    }

    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public void Dispose() => Array.ForEach(_signals, signal => signal.Dispose());

    private async void Told(PosixSignalContext context)
    {
        context.Cancel = true;
        if (Interlocked.Increment(ref _told) == 1)
        {
            await Task.Delay(TimeSpan.FromSeconds(settings.Value.DrainSeconds));
        }

        app.StopApplication();
    }
}
