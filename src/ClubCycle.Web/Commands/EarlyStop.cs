using System.Runtime.InteropServices;

namespace ClubCycle.Web.Commands;

/// <summary>Ctrl-C before the app listens: the host does not hear it yet, but a private PostgreSQL must stop all the same.</summary>
internal sealed class EarlyStop : IDisposable
{
    private readonly CancellationTokenSource _stop = new();
    private readonly PosixSignalRegistration[] _signals;

    public EarlyStop() => _signals = [.. new[] { PosixSignal.SIGINT, PosixSignal.SIGTERM }.Select(signal => PosixSignalRegistration.Create(signal, Stop))];

    public CancellationToken Token => _stop.Token;

    public void Dispose()
    {
        Array.ForEach(_signals, signal => signal.Dispose());
        _stop.Dispose();
    }

    private void Stop(PosixSignalContext context)
    {
        context.Cancel = true;
        _stop.Cancel();
    }
}
