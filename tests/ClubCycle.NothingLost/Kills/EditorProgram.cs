using System.Diagnostics;
using System.Globalization;
using ClubCycle.TestKit;
using NodaTime;

namespace ClubCycle.NothingLost.Kills;

/// <summary>An editor as a process of its own.</summary>
internal sealed class EditorProgram : IAsyncDisposable
{
    private readonly Process _process;
    private readonly AfterUs _after;
    private readonly Journal _journal;
    private readonly SemaphoreSlim _stopped = new(0);
    private readonly SemaphoreSlim _saved = new(0);
    private readonly TaskCompletionSource _read = new();

    private EditorProgram(Process process, Journal journal)
    {
        (_process, _after, _journal) = (process, AfterUs.EndProgram(process.Id), journal);
        process.OutputDataReceived += Read;
        process.BeginOutputReadLine();
    }

    /// <param name="dll">ClubCycle.NothingLost.dll of another version; null for this one.</param>
    public static EditorProgram Start(string connectionString, Guid club, Instant now, int seed, IReadOnlyList<Guid> squads, Journal journal, string? dll = null)
    {
        var start = new ProcessStartInfo(
            "dotnet",
            [dll ?? typeof(EditorProgram).Assembly.Location, "editor", connectionString, club.ToString(), now.ToUnixTimeMilliseconds().ToString(CultureInfo.InvariantCulture), seed.ToString(CultureInfo.InvariantCulture), .. squads.Select(s => s.ToString())])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
        };
        return new EditorProgram(Process.Start(start)!, journal);
    }

    public void Go() => Order("go");

    /// <summary>Waits until every coach has ended what they were at.</summary>
    public async Task StopAsync(int coaches)
    {
        while (_stopped.Wait(0))
        {
        }

        Order("stop");
        await StoppedAsync(coaches);
    }

    /// <summary>Waits until every coach stands by, as they do from the start.</summary>
    public async Task StoppedAsync(int coaches)
    {
        for (var i = 0; i < coaches; i++)
        {
            await WaitAsync(_stopped, "stop");
        }
    }

    /// <summary>Waits for an acknowledged save that is still to come.</summary>
    public async Task SaveAsync()
    {
        while (_saved.Wait(0))
        {
        }

        await WaitAsync(_saved, "save");
    }

    /// <summary>Ends it after <see cref="StopAsync"/>, as one ends who has nothing in hand.</summary>
    public async Task EndAsync()
    {
        _process.StandardInput.Close();
        await _process.WaitForExitAsync().WaitAsync(TimeSpan.FromMinutes(1));
        await _read.Task;
        if (_process.ExitCode != 0)
        {
            throw new InvalidOperationException("The editor ended with an error, which is above.");
        }
    }

    public async Task KillAsync()
    {
        _process.Kill();
        await _process.WaitForExitAsync();
        await _read.Task;
    }

    public async ValueTask DisposeAsync()
    {
        if (!_process.HasExited)
        {
            await KillAsync();
        }

        _after.Dispose();
        _process.Dispose();
    }

    private async Task WaitAsync(SemaphoreSlim sign, string what)
    {
        if (!await sign.WaitAsync(TimeSpan.FromMinutes(2)))
        {
            throw new InvalidOperationException(_process.HasExited ? "The editor ended by itself; its error is above." : $"The editor did not {what} within two minutes.");
        }
    }

    private void Order(string order)
    {
        _process.StandardInput.WriteLine(order);
        _process.StandardInput.Flush();
    }

    private void Read(object sender, DataReceivedEventArgs line)
    {
        if (line.Data is not { } text)
        {
            _read.TrySetResult();
            return;
        }

        _journal.Read(text);
        if (text.StartsWith("stopped", StringComparison.Ordinal))
        {
            _stopped.Release();
        }
        else if (text.StartsWith("saved", StringComparison.Ordinal))
        {
            _saved.Release();
        }
    }
}
