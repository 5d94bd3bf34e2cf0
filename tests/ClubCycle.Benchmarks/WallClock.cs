using NodaTime;

namespace ClubCycle.Benchmarks;

internal sealed class WallClock : IClock
{
    public Instant GetCurrentInstant() => Instant.FromDateTimeOffset(TimeProvider.System.GetUtcNow());
}
