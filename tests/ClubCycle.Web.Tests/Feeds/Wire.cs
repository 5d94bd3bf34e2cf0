using System.Net.Sockets;
using System.Text;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;

namespace ClubCycle.Web.Tests.Feeds;

/// <summary>Sends bytes as they are to an application that listens, and reads all that comes back.</summary>
internal static class Wire
{
    /// <param name="request">Line ends as LF; the last request says <c>Connection: close</c> or is HTTP/1.0.</param>
    /// <param name="toTheEnd">False takes what comes first and hangs up.</param>
    public static async Task<string> SendAsync(TestApp app, string request, bool toTheEnd = true)
    {
        var cancel = TestContext.Current.CancellationToken;
        var address = new Uri(app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First());
        using var client = new TcpClient();
        await client.ConnectAsync("127.0.0.1", address.Port, cancel);
        var stream = client.GetStream();
        await stream.WriteAsync(Encoding.Latin1.GetBytes(request.ReplaceLineEndings("\r\n")), cancel);
        if (!toTheEnd)
        {
            var first = new byte[4_096];
            return Encoding.Latin1.GetString(first, 0, await stream.ReadAsync(first, cancel));
        }

        var answer = new MemoryStream();
        await stream.CopyToAsync(answer, cancel);
        return Encoding.Latin1.GetString(answer.ToArray());
    }

    /// <summary>A GET with these headers, each on a line.</summary>
    public static Task<string> GetAsync(TestApp app, string path, params string[] headers) => AskAsync(app, "GET", path, headers);

    public static Task<string> AskAsync(TestApp app, string method, string path, params string[] headers) =>
        SendAsync(app, $"{method} {path} HTTP/1.1\nHost: localhost\nConnection: close\n{string.Concat(headers.Select(h => h + "\n"))}\n");

    public static int Status(string answer) => int.Parse(answer.AsSpan(9, 3), System.Globalization.CultureInfo.InvariantCulture);

    public static string? Header(string answer, string name) =>
        answer.Split("\r\n\r\n")[0].Split("\r\n").Skip(1).Select(line => line.Split(": ", 2)).FirstOrDefault(pair => pair[0].Equals(name, StringComparison.OrdinalIgnoreCase))?[1];

    public static string Body(string answer) => answer[(answer.IndexOf("\r\n\r\n", StringComparison.Ordinal) + 4)..];
}
