using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;
using System.Text;

namespace ClubCycle.Web.Tests.Notices;

/// <summary>A mail server that speaks as much of SMTP (RFC 5321) as it takes to hand a mail over, and refuses as often as it is told.</summary>
internal sealed class MailServer : IAsyncDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource _closing = new();
    private readonly Task _serving;

    public MailServer()
    {
        _listener.Start();
        _serving = ServeAsync();
    }

    public int Port => ((IPEndPoint)_listener.LocalEndpoint).Port;

    /// <summary>Recipients and text of each mail that was taken.</summary>
    public ConcurrentQueue<(IReadOnlyList<string> To, string Text)> Taken { get; } = [];

    /// <summary>How many recipients are still refused, for a while (450).</summary>
    public int Refusals { get; set; }

    public int Refused { get; private set; }

    public async ValueTask DisposeAsync()
    {
        await _closing.CancelAsync();
        _listener.Stop();
        await _serving;
        _closing.Dispose();
    }

    private async Task ServeAsync()
    {
        try
        {
            while (true)
            {
                using var client = await _listener.AcceptTcpClientAsync(_closing.Token);
                await TalkAsync(client.GetStream());
            }
        }
        catch (OperationCanceledException)
        {
            // Closed.
        }
    }

    private async Task TalkAsync(NetworkStream stream)
    {
        using var reader = new StreamReader(stream, Encoding.UTF8);
        await using var writer = new StreamWriter(stream, new UTF8Encoding(false)) { NewLine = "\r\n", AutoFlush = true };
        List<string> to = [];
        await writer.WriteLineAsync("220 mail.test");
        while (await reader.ReadLineAsync(_closing.Token) is { } line)
        {
            switch (line.Split(':')[0].ToUpperInvariant())
            {
                case "RCPT TO" when Refusals > 0:
                    (Refusals, Refused) = (Refusals - 1, Refused + 1);
                    await writer.WriteLineAsync($"450 {line} has no room just now");
                    break;
                case "RCPT TO":
                    to.Add(line.Split('<', '>')[1]);
                    await writer.WriteLineAsync("250 ok");
                    break;
                case "DATA":
                    await writer.WriteLineAsync("354 go on");
                    var text = new StringBuilder();
                    while (await reader.ReadLineAsync(_closing.Token) is { } part and not ".")
                    {
                        text.Append(part).Append('\n');
                    }

                    Taken.Enqueue(([.. to], text.ToString()));
                    await writer.WriteLineAsync("250 taken");
                    break;
                case "QUIT":
                    await writer.WriteLineAsync("221 bye");
                    return;
                default:
                    await writer.WriteLineAsync("250 ok");
                    break;
            }
        }
    }
}
