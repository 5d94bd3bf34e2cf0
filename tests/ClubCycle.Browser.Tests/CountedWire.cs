using System.Net;
using System.Net.Sockets;

namespace ClubCycle.Browser.Tests;

/// <summary>Stands between a browser and the app and counts the bytes that go to the browser, headers included, whoever in the browser asked for them.</summary>
internal sealed class CountedWire : IAsyncDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource _stop = new();
    private readonly Uri _app;
    private readonly Task _accepting;
    private long _bytes;

    public CountedWire(string app)
    {
        _app = new Uri(app);
        _listener.Start();
        _accepting = AcceptAsync();
    }

    public long Bytes => Interlocked.Read(ref _bytes);

    /// <summary>The same page by way of this wire.</summary>
    public string Through(string address) => new UriBuilder(address) { Port = ((IPEndPoint)_listener.LocalEndpoint).Port }.ToString();

    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync();
        _listener.Dispose();
        await _accepting;
        _stop.Dispose();
    }

    private async Task AcceptAsync()
    {
        List<Task> open = [];
        try
        {
            while (true)
            {
                open.Add(CarryAsync(await _listener.AcceptTcpClientAsync(_stop.Token)));
            }
        }
        catch (OperationCanceledException)
        {
            await Task.WhenAll(open);
        }
    }

    private async Task CarryAsync(TcpClient browser)
    {
        using var near = browser;
        using var far = new TcpClient();
        try
        {
            await far.ConnectAsync(_app.Host, _app.Port, _stop.Token);
            await Task.WhenAny(near.GetStream().CopyToAsync(far.GetStream(), _stop.Token), CountAsync(far.GetStream(), near.GetStream()));
        }
        catch (Exception broken) when (broken is IOException or OperationCanceledException)
        {
            // Browsers hang up when they like, and so does the test.
        }
    }

    private async Task CountAsync(NetworkStream from, NetworkStream to)
    {
        var buffer = new byte[16 * 1024];
        while (await from.ReadAsync(buffer, _stop.Token) is > 0 and var read)
        {
            Interlocked.Add(ref _bytes, read);
            await to.WriteAsync(buffer.AsMemory(0, read), _stop.Token);
        }
    }
}
