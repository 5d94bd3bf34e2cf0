using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography.X509Certificates;

namespace ClubCycle.TestKit;

/// <summary>nginx as a process of its own, with deploy/nginx.conf as it is but for ports, files, the certificate and the nodes behind it.</summary>
public sealed class ProxyProgram : IAsyncDisposable
{
    public const string Name = "club.example.org";

    private const string Node = "server 127.0.0.1:8080";

    private static readonly string? Program = new[] { "/usr/sbin/nginx", "/usr/local/sbin/nginx", "/usr/bin/nginx" }.FirstOrDefault(System.IO.File.Exists);

    private readonly TemporaryFolder _folder = TemporaryFolder.ReachableByAll("clubcycle-proxy-");
    private readonly X509Certificate2 _certificate = TestCertificate.Make(Name);
    private Process? _nginx;
    private AfterUs? _after;

    private ProxyProgram()
    {
    }

    public static bool IsInstalled => Program is not null;

    public static string File { get; } = System.IO.File.ReadAllText(Path.Combine(RootOf(AppContext.BaseDirectory), "deploy", "nginx.conf"));

    public int Https { get; } = StartedProgram.FreePort();

    public int Http { get; } = StartedProgram.FreePort();

    /// <param name="ports">Of the nodes, on this machine.</param>
    public static async Task<ProxyProgram> StartAsync(params IReadOnlyList<int> ports)
    {
        var proxy = new ProxyProgram();
        try
        {
            await proxy.RunAsync(ports);
            return proxy;
        }
        catch
        {
            await proxy.DisposeAsync();
            throw;
        }
    }

    public bool IsOwn(X509Certificate? shown) => shown?.GetCertHashString() == _certificate.GetCertHashString();

    /// <summary>Comes to this proxy whatever the name in the address is.</summary>
    /// <param name="from">Where the next connection comes from; null leaves it to the machine.</param>
    public SocketsHttpHandler Handler(Func<IPAddress>? from = null) => new()
    {
        AllowAutoRedirect = false,
        UseCookies = false,
        AutomaticDecompression = DecompressionMethods.None,
        SslOptions = { RemoteCertificateValidationCallback = (_, shown, _, _) => IsOwn(shown) },
        ConnectCallback = async (to, cancel) =>
        {
            Socket socket = new(SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
            try
            {
                if (from is not null)
                {
                    socket.Bind(new IPEndPoint(from(), 0));
                }

                await socket.ConnectAsync(new IPEndPoint(IPAddress.Loopback, to.DnsEndPoint.Port == 443 ? Https : Http), cancel);
                return new NetworkStream(socket, ownsSocket: true);
            }
            catch
            {
                socket.Dispose();
                throw;
            }
        },
    };

    /// <summary>What it wrote, with what it complained about.</summary>
    public async Task<string> LogAsync() => await System.IO.File.ReadAllTextAsync(In("access.log")) + await System.IO.File.ReadAllTextAsync(In("error.log"));

    public async ValueTask DisposeAsync()
    {
        if (_nginx is not null)
        {
            await OutputOfAsync("kill", "-TERM", _nginx.Id.ToString(CultureInfo.InvariantCulture));
            await _nginx.WaitForExitAsync();
            _after?.Dispose();
            _nginx.Dispose();
        }

        _certificate.Dispose();
        _folder.Dispose();
    }

    /// <summary>Output and errors of a short command.</summary>
    public static async Task<string> OutputOfAsync(string program, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true })!;
        process.StandardInput.Close();
        var output = process.StandardOutput.ReadToEndAsync();
        var errors = process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        return await output + await errors;
    }

    private async Task RunAsync(IReadOnlyList<int> ports)
    {
        var program = Program ?? throw new InvalidOperationException("nginx is not installed");
        await System.IO.File.WriteAllTextAsync(In("fullchain.pem"), _certificate.ExportCertificatePem());
        await System.IO.File.WriteAllTextAsync(In("privkey.pem"), _certificate.GetRSAPrivateKey()!.ExportPkcs8PrivateKeyPem());
        (string Old, string New)[] changes =
        [
            ("/etc/ssl/club.example.org/", _folder.Path + "/"), ("/run/nginx.pid", In("nginx.pid")), ("/dev/stdout", In("access.log")), ("/dev/stderr", In("error.log")),
            ("listen 80 ", $"listen 127.0.0.1:{Http} "), ("listen 443 ", $"listen 127.0.0.1:{Https} "),
        ];
        var file = changes.Aggregate(File, (text, change) => Changed(text, change.Old, change.New));
        var line = file.Split('\n').Single(l => l.TrimStart().StartsWith(Node, StringComparison.Ordinal));
        file = file.Replace(line, string.Join('\n', ports.Select(port => line.Replace(Node, $"server 127.0.0.1:{port}", StringComparison.Ordinal))), StringComparison.Ordinal);
        await System.IO.File.WriteAllTextAsync(In("nginx.conf"), file);

        var check = await OutputOfAsync(program, "-t", "-c", In("nginx.conf"));
        if (!check.Contains("test is successful", StringComparison.Ordinal))
        {
            throw new InvalidOperationException(check);
        }

        _nginx = Process.Start(program, ["-c", In("nginx.conf"), "-g", "daemon off;"]);
        _after = AfterUs.Run("kill \"$1\"; rm -rf \"$2\"", _nginx.Id.ToString(CultureInfo.InvariantCulture), _folder.Path);
        for (var i = 0; i < 200 && !await ListensAsync(Https); i++)
        {
            await Task.Delay(50);
        }
    }

    private static async Task<bool> ListensAsync(int port)
    {
        try
        {
            using TcpClient client = new();
            await client.ConnectAsync("127.0.0.1", port);
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }

    /// <summary>What is changed must be there.</summary>
    private static string Changed(string text, string old, string @new) =>
        text.Contains(old, StringComparison.Ordinal) ? text.Replace(old, @new, StringComparison.Ordinal) : throw new InvalidOperationException($"deploy/nginx.conf holds no {old}");

    private string In(string name) => Path.Combine(_folder.Path, name);

    private static string RootOf(string folder) =>
        System.IO.File.Exists(Path.Combine(folder, "ClubCycle.sln")) ? folder : RootOf(Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("This does not run below ClubCycle.sln"));
}
