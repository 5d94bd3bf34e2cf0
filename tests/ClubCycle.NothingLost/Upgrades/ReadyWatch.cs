using System.Diagnostics;
using System.Net;

namespace ClubCycle.NothingLost.Upgrades;

/// <summary>Asks each node again and again whether it is ready.</summary>
internal sealed class ReadyWatch : IAsyncDisposable
{
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromMilliseconds(100);

    private readonly HttpClient _http = new() { Timeout = TimeSpan.FromSeconds(2) };
    private readonly CancellationTokenSource _over = new();
    private readonly IReadOnlyList<string> _nodes;
    private readonly Task _watching;
    private TimeSpan _none;

    private ReadyWatch(IReadOnlyList<string> nodes)
    {
        _nodes = nodes;
        _watching = Task.Run(WatchAsync);
    }

    public static ReadyWatch Start(params IReadOnlyList<string> nodes) => new(nodes);

    /// <summary>How long no node was ready, to a tenth of a second.</summary>
    public async Task<TimeSpan> StopAsync()
    {
        await _over.CancelAsync();
        await _watching;
        return _none;
    }

    public async ValueTask DisposeAsync()
    {
        await StopAsync();
        _http.Dispose();
        _over.Dispose();
    }

    public static async Task<bool> IsReadyAsync(HttpClient http, string node)
    {
        try
        {
            using var answer = await http.GetAsync($"{node}/health/ready");
            return answer.StatusCode == HttpStatusCode.OK;
        }
        catch (Exception away) when (away is HttpRequestException or OperationCanceledException)
        {
            return false;
        }
    }

    private async Task WatchAsync()
    {
        for (var looked = Stopwatch.GetTimestamp(); !_over.IsCancellationRequested;)
        {
            var ready = await Task.WhenAll(_nodes.Select(node => IsReadyAsync(_http, node)));
            var since = Stopwatch.GetElapsedTime(looked);
            looked = Stopwatch.GetTimestamp();
            if (!ready.Contains(true))
            {
                _none += since;
            }

            await Task.Delay(BetweenLooks);
        }
    }
}
