using System.Collections.Concurrent;
using System.Net;
using System.Net.Security;
using System.Net.Sockets;
using System.Security.Authentication;
using System.Security.Cryptography.X509Certificates;
using System.Text;

namespace ClubCycle.Web.Tests.Notices;

/// <summary>A mail server that speaks as much of SMTP (RFC 5321) as it takes to hand a mail over, and refuses as often as it is told.</summary>
internal sealed class MailServer : IAsyncDisposable
{
    private readonly X509Certificate2? _certificate;
    private readonly bool _fromTheFirstByte;
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource _closing = new();
    private readonly Task _serving;

    /// <param name="certificate">What it shows when it speaks TLS; null for a server that does not.</param>
    /// <param name="fromTheFirstByte">TLS at once, not when it is asked for.</param>
    public MailServer(X509Certificate2? certificate = null, bool fromTheFirstByte = false)
    {
        (_certificate, _fromTheFirstByte) = (certificate, fromTheFirstByte);
        _listener.Start();
        _serving = ServeAsync();
    }

    public int Port => ((IPEndPoint)_listener.LocalEndpoint).Port;

    /// <summary>Recipients and text of each mail that was taken.</summary>
    public ConcurrentQueue<(IReadOnlyList<string> To, string Text)> Taken { get; } = [];

    /// <summary>Every line that was said to it.</summary>
    public ConcurrentQueue<string> Heard { get; } = [];

    /// <summary>How often TLS was begun.</summary>
    public int Secured { get; private set; }

    /// <summary>How many recipients are still refused, for a while (450).</summary>
    public int Refusals { get; set; }

    public int Refused { get; private set; }

    public async ValueTask DisposeAsync()
    {
        await _closing.CancelAsync();
        await _serving;
        _listener.Stop();
        _closing.Dispose();
    }

    private async Task ServeAsync()
    {
        try
        {
            while (true)
            {
                using var client = await _listener.AcceptTcpClientAsync(_closing.Token);
                try
                {
                    await TalkAsync(_fromTheFirstByte ? await SecuredAsync(client.GetStream()) : client.GetStream());
                }
                catch (Exception left) when (_certificate is not null && left is IOException or AuthenticationException)
                {
                    // Whoever does not like the certificate hangs up.
                }
            }
        }
        catch (OperationCanceledException)
        {
            // Closed.
        }
    }

    private async Task<Stream> SecuredAsync(Stream stream)
    {
        Secured++;
        SslStream secured = new(stream);
        await secured.AuthenticateAsServerAsync(new SslServerAuthenticationOptions { ServerCertificate = _certificate }, _closing.Token);
        return secured;
    }

    private async Task TalkAsync(Stream stream, bool greets = true)
    {
        using var reader = new StreamReader(stream, Encoding.UTF8);
        await using var writer = new StreamWriter(stream, new UTF8Encoding(false)) { NewLine = "\r\n", AutoFlush = true };
        List<string> to = [];
        if (greets)
        {
            await writer.WriteLineAsync("220 mail.test");
        }

        while (await reader.ReadLineAsync(_closing.Token) is { } line)
        {
            Heard.Enqueue(line);
            switch (line.Split(':')[0].ToUpperInvariant())
            {
                case var hello when hello.StartsWith("EHLO", StringComparison.Ordinal) && _certificate is not null:
                    await writer.WriteLineAsync($"250-mail.test\r\n250 {(stream is SslStream ? "AUTH PLAIN" : "STARTTLS")}");
                    break;
                case "STARTTLS":
                    await writer.WriteLineAsync("220 go on");
                    await TalkAsync(await SecuredAsync(stream), greets: false);
                    return;
                case var signIn when signIn.StartsWith("AUTH", StringComparison.Ordinal):
                    await writer.WriteLineAsync("235 come in");
                    break;
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
