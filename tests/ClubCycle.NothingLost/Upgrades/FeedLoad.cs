using System.Collections.Concurrent;
using System.Diagnostics;
using System.Net;
using System.Net.Http.Headers;
using ClubCycle.TestKit;

namespace ClubCycle.NothingLost.Upgrades;

/// <param name="Status">0 when there was no answer.</param>
/// <param name="Milliseconds">Since it was due to be asked.</param>
internal sealed record FeedAnswer(string Step, int Status, double Milliseconds);

/// <summary>Calendars that poll through the proxy at a steady pace, whether earlier polls were answered or not: nine of ten with the ETag that they got last.</summary>
internal sealed class FeedLoad : IAsyncDisposable
{
    private const int EachSecond = 500;
    private const int Calendars = 64;

    private readonly ConcurrentBag<FeedAnswer> _answers = [];
    private readonly ConcurrentDictionary<string, EntityTagHeaderValue> _tags = new(StringComparer.Ordinal);
    private readonly CancellationTokenSource _over = new();
    private readonly IReadOnlyList<string> _tokens;
    private readonly HttpClient _http;
    private readonly Task _asking;
    private int _connections;

    private FeedLoad(ProxyProgram proxy, IReadOnlyList<string> tokens, string step)
    {
        (_tokens, Step) = (tokens, step);

        // Each connection comes from an address of its own, as the proxy chooses the node by it.
        var handler = proxy.Handler(() => new IPAddress([127, 0, 0, (byte)(2 + (Interlocked.Increment(ref _connections) % Calendars))]));
        handler.MaxConnectionsPerServer = Calendars;
        _http = new HttpClient(handler) { Timeout = TimeSpan.FromSeconds(30) };
        _asking = Task.Run(AskAllAsync);
    }

    /// <summary>What is being done meanwhile.</summary>
    public string Step { get; set; }

    public static FeedLoad Start(ProxyProgram proxy, IReadOnlyList<string> tokens, string step) => new(proxy, tokens, step);

    /// <summary>Asks no more, and waits for what was asked.</summary>
    public async Task<IReadOnlyCollection<FeedAnswer>> StopAsync()
    {
        await _over.CancelAsync();
        await _asking;
        return _answers;
    }

    public async ValueTask DisposeAsync()
    {
        await StopAsync();
        _http.Dispose();
        _over.Dispose();
    }

    private async Task AskAllAsync()
    {
        List<Task> asked = [];
        for (var watch = Stopwatch.StartNew(); !_over.IsCancellationRequested; await Task.Delay(4))
        {
            for (; asked.Count < watch.Elapsed.TotalSeconds * EachSecond;)
            {
                var number = asked.Count;
                asked.Add(AskAsync(_tokens[Random.Shared.Next(_tokens.Count)], cold: number % 10 == 0, () => watch.Elapsed.TotalMilliseconds - (number * 1000.0 / EachSecond)));
            }
        }

        await Task.WhenAll(asked);
    }

    private async Task AskAsync(string token, bool cold, Func<double> late)
    {
        var step = Step;
        var status = 0;
        try
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, $"https://{ProxyProgram.Name}/calendar/{token}.ics");
            request.Headers.AcceptEncoding.ParseAdd("gzip");
            if (!cold && _tags.TryGetValue(token, out var tag))
            {
                request.Headers.IfNoneMatch.Add(tag);
            }

            using var answer = await _http.SendAsync(request);
            status = (int)answer.StatusCode;
            if (answer.Headers.ETag is { } newer)
            {
                _tags[token] = newer;
            }
        }
        catch (Exception none) when (none is HttpRequestException or OperationCanceledException)
        {
            Console.WriteLine($"no answer, {step}: {none.GetBaseException().Message}");
        }

        _answers.Add(new FeedAnswer(step, status, late()));
    }
}
