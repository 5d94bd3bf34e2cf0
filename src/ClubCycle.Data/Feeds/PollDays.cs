using System.Collections.Concurrent;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using NodaTime;

namespace ClubCycle.Data.Feeds;

/// <summary>Notes the day on which a link was last in use, behind the answer and many at a time. A crash loses what was not written yet.</summary>
public sealed partial class PollDays(PollStore polls, ILogger<PollDays> log) : BackgroundService
{
    /// <summary>More than this are not remembered: their next poll notes them.</summary>
    public const int Most = 100_000;

    private const int AtOnce = 2_000;
    private static readonly TimeSpan Rest = TimeSpan.FromSeconds(2);

    private readonly ConcurrentDictionary<(Guid ClubId, Guid LinkId), LocalDate> _days = new();
    private int _count;

    public void Note(Guid clubId, Guid linkId, LocalDate day)
    {
        if (Volatile.Read(ref _count) < Most && _days.TryAdd((clubId, linkId), day))
        {
            Interlocked.Increment(ref _count);
        }
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            await Task.Delay(Rest, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            await WriteAsync(CancellationToken.None);
        }
    }

    private async Task WriteAsync(CancellationToken cancel)
    {
        foreach (var some in _days.ToArray().Chunk(AtOnce))
        {
            try
            {
                await polls.NoteAsync(some, cancel);
            }
            catch (Exception away)
            {
                // Kept for the next round.
                Waiting(away.Message);
                return;
            }

            foreach (var (link, day) in some)
            {
                if (_days.TryRemove(new KeyValuePair<(Guid, Guid), LocalDate>(link, day)))
                {
                    Interlocked.Decrement(ref _count);
                }
            }
        }
    }

    [LoggerMessage(LogLevel.Warning, "Days of last use wait for the database: {Reason}")]
    private partial void Waiting(string reason);
}
