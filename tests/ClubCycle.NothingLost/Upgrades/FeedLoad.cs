using System.Collections.Concurrent;
using System.Diagnostics;
using System.Net;
using System.Net.Http.Headers;
using ClubCycle.TestKit;

namespace ClubCycle.NothingLost.Upgrades;

/// <param name="Status">0 when there was no answer.</param>
/// <param name="Milliseconds">Since it was due to be asked.</param>
/// <param name="RetryAfter">Seconds that an answer asks to wait: 60 while a feed is rendered, 120 while the database is away; none from the proxy.</param>
internal sealed record FeedAnswer(string Step, int Status, double Milliseconds, double? RetryAfter);

/// <summary>
/// Calendars that poll through the proxy at a steady pace, nine of ten with the ETag that they got last. They do not wait for earlier polls; but where so many are unanswered that the machine
/// cannot keep up, polls are left out and counted, because a queue that only grows measures nothing.
/// </summary>
internal sealed class FeedLoad : IAsyncDisposable
{
    private const int EachSecond = 500;
    private const int Calendars = 64;
    private const int MostUnanswered = 250;

    private readonly ConcurrentBag<FeedAnswer> _answers = [];
    private readonly ConcurrentDictionary<string, EntityTagHeaderValue> _tags = new(StringComparer.Ordinal);
    private readonly CancellationTokenSource _over = new();
    private readonly IReadOnlyList<string> _tokens;
    private readonly HttpClient _http;
    private readonly Task _asking;
    private int _connections;
    private int _unanswered;
    private int _leftOut;

    private FeedLoad(ProxyProgram proxy, IReadOnlyList<string> tokens, string step)
    {
        (_tokens, Step) = (tokens, step);

        // Each connection comes from an address of its own, as the proxy chooses the node by it.
        var handler = proxy.Handler(() => new IPAddress([127, 0, 0, (byte)(2 + (Interlocked.Increment(ref _connections) % Calendars))]));
        handler.MaxConnectionsPerServer = Calendars;
        _http = new HttpClient(handler) { Timeout = TimeSpan.FromSeconds(30) };
        _asking = Task.Run(AskAllAsync);
    }

    public int LeftOut => _leftOut;

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
        var watch = Stopwatch.StartNew();
        for (var number = 0; !_over.IsCancellationRequested; await Task.Delay(4))
        {
            for (; number < watch.Elapsed.TotalSeconds * EachSecond; number++)
            {
                if (Volatile.Read(ref _unanswered) >= MostUnanswered)
                {
                    _leftOut++;
                    continue;
                }

                var due = TimeSpan.FromSeconds((double)number / EachSecond);
                asked.Add(AskAsync(_tokens[Random.Shared.Next(_tokens.Count)], cold: number % 10 == 0, () => (watch.Elapsed - due).TotalMilliseconds));
            }
        }

        await Task.WhenAll(asked);
    }

    private async Task AskAsync(string token, bool cold, Func<double> late)
    {
        Interlocked.Increment(ref _unanswered);
        var step = Step;
        var (status, retry) = (0, (double?)null);
        try
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, $"https://{ProxyProgram.Name}/calendar/{token}.ics");
            request.Headers.AcceptEncoding.ParseAdd("gzip");
            if (!cold && _tags.TryGetValue(token, out var tag))
            {
                request.Headers.IfNoneMatch.Add(tag);
            }

            using var answer = await _http.SendAsync(request);
            (status, retry) = ((int)answer.StatusCode, answer.Headers.RetryAfter?.Delta?.TotalSeconds);
            if (answer.Headers.ETag is { } newer)
            {
                _tags[token] = newer;
            }
        }
        catch (Exception none) when (none is HttpRequestException or OperationCanceledException)
        {
            // Counted as status 0.
        }

        Interlocked.Decrement(ref _unanswered);
        _answers.Add(new FeedAnswer(step, status, late(), retry));
    }
}
