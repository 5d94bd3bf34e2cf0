using System.Diagnostics;
using NodaTime;

namespace ClubCycle.NothingLost;

/// <summary>Goes on from a day that the seasons here lie after, whatever day it is.</summary>
public sealed class RunningClock(Instant from) : IClock
{
    private readonly Stopwatch _since = Stopwatch.StartNew();

    /// <summary>Noon on the first Sunday of March 2026.</summary>
    public static Instant Start { get; } = Instant.FromUtc(2026, 3, 1, 12, 0);

    public Instant GetCurrentInstant() => from + Duration.FromTimeSpan(_since.Elapsed);
}
