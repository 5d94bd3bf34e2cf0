using System.Threading.RateLimiting;

namespace ClubCycle.Web.Hosting;

/// <summary>So that whoever runs into a limit again and again fills no log: the first time in a minute is told.</summary>
public sealed class OnceAMinute : IDisposable
{
    private readonly PartitionedRateLimiter<string> _told = PartitionedRateLimiter.Create<string, string>(who => RateLimitPartition.GetFixedWindowLimiter(
        who, _ => new FixedWindowRateLimiterOptions { PermitLimit = 1, Window = TimeSpan.FromMinutes(1) }));

    public bool IsFirst(string who)
    {
        using var lease = _told.AttemptAcquire(who);
        return lease.IsAcquired;
    }

    public void Dispose() => _told.Dispose();
}
