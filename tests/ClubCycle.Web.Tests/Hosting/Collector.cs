using System.Collections.Concurrent;
using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.Logging;

namespace ClubCycle.Web.Tests.Hosting;

/// <summary>Takes what is sent over OTLP as it comes.</summary>
internal sealed class Collector : IAsyncDisposable
{
    private readonly WebApplication _server;
    private readonly ConcurrentQueue<(string Path, byte[] Body)> _heard = new();

    private Collector(WebApplication server) => _server = server;

    public string Address => _server.Urls.First();

    public IEnumerable<string> Paths => _heard.Select(h => h.Path).Distinct();

    /// <summary>Every byte, one character each: texts stand in it as they are.</summary>
    public string Heard => string.Join('\n', _heard.Select(h => Encoding.Latin1.GetString(h.Body)));

    public static async Task<Collector> StartAsync()
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        var collector = new Collector(builder.Build());
        collector._server.Run(async http =>
        {
            using MemoryStream body = new();
            await http.Request.Body.CopyToAsync(body, http.RequestAborted);
            collector._heard.Enqueue((http.Request.Path.ToString(), body.ToArray()));
            http.Response.ContentType = "application/x-protobuf";
        });
        await collector._server.StartAsync(TestContext.Current.CancellationToken);
        return collector;
    }

    public ValueTask DisposeAsync() => _server.DisposeAsync();
}
