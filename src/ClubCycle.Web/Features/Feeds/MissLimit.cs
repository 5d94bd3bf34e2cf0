using System.Buffers.Binary;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Threading.RateLimiting;
using ClubCycle.Web.Hosting;
using Microsoft.Extensions.Options;

namespace ClubCycle.Web.Features.Feeds;

/// <summary>How many wrong addresses a network address may try. Right ones never count, so that those who fetch for many are not stopped.</summary>
internal sealed partial class MissLimit : IDisposable
{
    private static readonly TimeSpan Window = TimeSpan.FromMinutes(1);

    private readonly PartitionedRateLimiter<IPAddress?> _limiter;

    private readonly OnceAMinute _told = new();
    private readonly ILogger<MissLimit> _log;

    public MissLimit(IOptions<FeedLimits> limits, ILogger<MissLimit> log)
    {
        _log = log;
        var most = limits.Value.MissesPerMinute;
        _limiter = PartitionedRateLimiter.Create<IPAddress?, ulong>(from => RateLimitPartition.GetFixedWindowLimiter(
            NetworkOf(from), _ => new FixedWindowRateLimiterOptions { PermitLimit = most, Window = Window }));
    }

    /// <summary>Counts a miss. How long to wait when there were too many; null when there were not.</summary>
    public TimeSpan? Count(IPAddress? from)
    {
        using var lease = _limiter.AttemptAcquire(from);
        if (!lease.IsAcquired && _told.IsFirst(NetworkOf(from).ToString(CultureInfo.InvariantCulture)))
        {
            TooMany(from);
        }

        return lease.IsAcquired ? null : lease.TryGetMetadata(MetadataName.RetryAfter, out var wait) ? wait : Window;
    }

    public void Dispose()
    {
        _limiter.Dispose();
        _told.Dispose();
    }

    /// <summary>The whole of an IPv4 address, and the first 64 bits of an IPv6 address: the rest is the household's to choose.</summary>
    private static ulong NetworkOf(IPAddress? from)
    {
        Span<byte> bytes = stackalloc byte[16];
        return from is null || !from.TryWriteBytes(bytes, out _) ? 0
            : from.AddressFamily == AddressFamily.InterNetwork ? BinaryPrimitives.ReadUInt32BigEndian(bytes)
            : from.IsIPv4MappedToIPv6 ? BinaryPrimitives.ReadUInt32BigEndian(bytes[12..])
            : BinaryPrimitives.ReadUInt64BigEndian(bytes);
    }

    [LoggerMessage(LogLevel.Warning, "{Address} tried more calendar addresses that lead nowhere than one may in a minute and is told to wait.")]
    private partial void TooMany(IPAddress? address);
}
