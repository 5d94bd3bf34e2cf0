using NodaTime;

namespace ClubCycle.Web.Tests;

/// <summary>A clock that a test sets.</summary>
internal sealed class TestClock(Instant now) : IClock
{
    public Instant Now { get; set; } = now;

    public Instant GetCurrentInstant() => Now;
}
