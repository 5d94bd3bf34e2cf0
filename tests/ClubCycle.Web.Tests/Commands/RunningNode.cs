using System.Collections.Concurrent;
using System.Diagnostics;
using System.Net;
using System.Net.Sockets;

namespace ClubCycle.Web.Tests.Commands;

/// <summary>The program serving a database that is there already: one more node.</summary>
internal sealed class RunningNode : IAsyncDisposable
{
    private readonly Process _process;
    private readonly ConcurrentQueue<string> _lines = new();

    private RunningNode(Process process, Uri address) => (_process, Address) = (process, address);

    public Uri Address { get; }

    /// <summary>All that was written to the console so far.</summary>
    public string Output => string.Join('\n', _lines);

    public static async Task<RunningNode> StartAsync(string connectionString, IReadOnlyDictionary<string, string>? environment = null)
    {
        Uri address = new($"http://127.0.0.1:{FreePort()}");
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "ClubCycle.Web.dll"), "serve"]) { RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["ConnectionStrings__ClubCycle"] = connectionString;
        start.Environment["ASPNETCORE_URLS"] = address.ToString();
        foreach (var (name, value) in environment ?? new Dictionary<string, string>())
        {
            start.Environment[name] = value;
        }

        var node = new RunningNode(Process.Start(start)!, address);
        node._process.OutputDataReceived += node.Read;
        node._process.ErrorDataReceived += node.Read;
        node._process.BeginOutputReadLine();
        node._process.BeginErrorReadLine();
        for (var waited = Stopwatch.StartNew(); waited.Elapsed < TimeSpan.FromMinutes(2) && !node._process.HasExited; await Task.Delay(100, TestContext.Current.CancellationToken))
        {
            if (node._lines.Any(l => l.StartsWith("Stop with", StringComparison.Ordinal)))
            {
                return node;
            }
        }

        await node.DisposeAsync();
        throw new InvalidOperationException("The node did not start:\n" + node.Output);
    }

    /// <summary>Ends it and waits until all that it wrote is read.</summary>
    public async Task StopAsync()
    {
        if (!_process.HasExited)
        {
            using var interrupt = Process.Start("kill", ["-INT", _process.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)]);
            await interrupt.WaitForExitAsync();
        }

        await _process.WaitForExitAsync();
    }

    public async ValueTask DisposeAsync()
    {
        await StopAsync();
        _process.Dispose();
    }

    private void Read(object sender, DataReceivedEventArgs line)
    {
        if (line.Data is { } text)
        {
            _lines.Enqueue(text);
        }
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
