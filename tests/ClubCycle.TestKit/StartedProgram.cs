using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;

namespace ClubCycle.TestKit;

/// <summary>A server as a process of its own, on a free port.</summary>
public sealed class StartedProgram : IAsyncDisposable
{
    private readonly Process _process;
    private readonly AfterUs _after;

    private StartedProgram(Process process, string address) => (_process, _after, Address) = (process, AfterUs.EndProgram(process.Id), address);

    public string Address { get; }

    public int Id => _process.Id;

    public static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    /// <param name="arguments">Of the program, given its address.</param>
    /// <param name="ready">Answers, whatever it is, when the program is up.</param>
    /// <param name="port">Null for any free one.</param>
    public static async Task<StartedProgram> StartAsync(
        string dll, Func<string, IReadOnlyList<string>> arguments, string ready, IReadOnlyDictionary<string, string>? environment = null, int? port = null)
    {
        var address = $"http://127.0.0.1:{(port ?? FreePort()).ToString(CultureInfo.InvariantCulture)}";
        var start = new ProcessStartInfo("dotnet", [dll, .. arguments(address)]) { RedirectStandardOutput = true };
        foreach (var (name, value) in environment ?? new Dictionary<string, string>())
        {
            start.Environment[name] = value;
        }

        var program = new StartedProgram(Process.Start(start)!, address);
        program._process.OutputDataReceived += (_, _) => { };
        program._process.BeginOutputReadLine();
        using var http = new HttpClient();
        for (var watch = Stopwatch.StartNew(); !await program.AnswersAsync(http, ready); await Task.Delay(200))
        {
            if (program._process.HasExited || watch.Elapsed > TimeSpan.FromMinutes(2))
            {
                throw new InvalidOperationException($"{dll} did not start.");
            }
        }

        return program;
    }

    /// <summary>Asks it to end, as a process watch does, and waits until it has.</summary>
    public async Task<int> StopAsync()
    {
        using var ask = Process.Start("kill", ["-TERM", Id.ToString(CultureInfo.InvariantCulture)]);
        await _process.WaitForExitAsync().WaitAsync(TimeSpan.FromMinutes(2));
        return _process.ExitCode;
    }

    public async ValueTask DisposeAsync()
    {
        if (!_process.HasExited)
        {
            _process.Kill();
            await _process.WaitForExitAsync();
        }

        _after.Dispose();
        _process.Dispose();
    }

    private async Task<bool> AnswersAsync(HttpClient http, string path)
    {
        try
        {
            using var answer = await http.GetAsync(Address + path);
            return true;
        }
        catch (HttpRequestException)
        {
            return false;
        }
    }
}
