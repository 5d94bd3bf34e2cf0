using NodaTime;

namespace ClubCycle.Data.Tests;

/// <summary>A clock that stands until it is set.</summary>
internal sealed class SetClock(Instant now) : IClock
{
    public Instant Now { get; set; } = now;

    public Instant GetCurrentInstant() => Now;
}
