using System.Collections.Concurrent;
using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using ClubCycle.TestKit;

namespace ClubCycle.Browser.Tests;

/// <summary>The real program with a private PostgreSQL in a folder of its own, started the way a person starts it.</summary>
public sealed class RunningApp : IAsyncDisposable
{
    private const string CertificatePassword = "test";

    private readonly Process _process;
    private readonly string _folder;
    private readonly ConcurrentQueue<string> _lines = new();

    private RunningApp(Process process, string folder) => (_process, _folder) = (process, folder);

    public string Address { get; private set; } = "";

    public string Output => string.Join('\n', _lines);

    /// <summary>What the program printed behind a word, such as <c>Player feed</c>.</summary>
    public string Printed(string word) => _lines.Select(l => l.Split(": ", 2)).First(l => l.Length == 2 && l[0] == word)[1];

    /// <param name="mode"><c>--demo</c> or <c>--empty</c>.</param>
    /// <param name="database">Of a database of its own, which is brought up to date; null for a private PostgreSQL.</param>
    /// <param name="https">With a certificate that nobody has signed.</param>
    /// <param name="like">Another that was stopped: begins with a copy of its data.</param>
    public static async Task<RunningApp> StartAsync(string mode, TestDatabase? database = null, bool https = false, RunningApp? like = null)
    {
        var tests = new DirectoryInfo(AppContext.BaseDirectory);
        var program = Path.Combine(tests.Parent!.Parent!.FullName, "ClubCycle.Web", tests.Name, "ClubCycle.Web.dll");
        var folder = Path.Combine(Path.GetTempPath(), "clubcycle-browser-" + Path.GetRandomFileName());
        if (like is not null)
        {
            // Owners and rights go along: PostgreSQL looks at them.
            using var copy = Process.Start("cp", ["-a", like._folder, folder]);
            await copy.WaitForExitAsync();
        }

        var start = new ProcessStartInfo("dotnet", [program, "serve", mode, .. database is null ? [] : (string[])["--migrate"]]) { RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["ASPNETCORE_URLS"] = $"{(https ? "https" : "http")}://127.0.0.1:{FreePort()}";
        if (https)
        {
            Directory.CreateDirectory(folder);
            start.Environment["Kestrel__Certificates__Default__Path"] = Certificate(folder);
            start.Environment["Kestrel__Certificates__Default__Password"] = CertificatePassword;
        }

        start.Environment["CLUBCYCLE_DATA"] = folder;
        if (database is not null)
        {
            start.Environment["ConnectionStrings__ClubCycle"] = database.ConnectionString;
            start.Environment["ConnectionStrings__ClubCycleOwner"] = database.OwnerConnectionString;
        }

        var app = new RunningApp(Process.Start(start)!, folder);
        app._process.OutputDataReceived += app.Read;
        app._process.ErrorDataReceived += app.Read;
        app._process.BeginOutputReadLine();
        app._process.BeginErrorReadLine();
        for (var waited = Stopwatch.StartNew(); waited.Elapsed < TimeSpan.FromMinutes(4); await Task.Delay(100))
        {
            if (app._process.HasExited)
            {
                break;
            }

            if (app._lines.Any(l => l.StartsWith("Stop with", StringComparison.Ordinal)))
            {
                app.Address = start.Environment["ASPNETCORE_URLS"]!;
                return app;
            }
        }

        throw new InvalidOperationException("The app did not start:\n" + app.Output);
    }

    /// <summary>True when the program ended by itself and took its PostgreSQL with it.</summary>
    /// <param name="signal"><c>INT</c> is Ctrl-C, which programs that a shell starts in the background do not hear.</param>
    public async Task<bool> StopAsync(string signal = "TERM")
    {
        if (_process.HasExited)
        {
            return true;
        }

        using var ask = Process.Start("kill", ["-" + signal, _process.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)]);
        await ask.WaitForExitAsync();
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(60));
        try
        {
            await _process.WaitForExitAsync(patience.Token);
        }
        catch (OperationCanceledException)
        {
            _process.Kill(entireProcessTree: true);
            return false;
        }

        return !Directory.Exists(_folder) || !Directory.EnumerateFiles(_folder, "postmaster.pid", SearchOption.AllDirectories).Any();
    }

    public async ValueTask DisposeAsync()
    {
        await StopAsync();
        _process.Dispose();
        if (Directory.Exists(_folder))
        {
            Directory.Delete(_folder, recursive: true);
        }
    }

    private void Read(object sender, DataReceivedEventArgs line)
    {
        if (line.Data is { } text)
        {
            _lines.Enqueue(text);
        }
    }

    private static string Certificate(string folder)
    {
        using var key = RSA.Create(2048);
        var now = TimeProvider.System.GetUtcNow();
        using var certificate = new CertificateRequest("CN=127.0.0.1", key, HashAlgorithmName.SHA256, RSASignaturePadding.Pkcs1).CreateSelfSigned(now.AddDays(-1), now.AddDays(1));
        var path = Path.Combine(folder, "certificate.pfx");
        File.WriteAllBytes(path, certificate.Export(X509ContentType.Pfx, CertificatePassword));
        return path;
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
