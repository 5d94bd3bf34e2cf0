using NodaTime;

namespace ClubCycle.Web.Features.Print;

/// <summary>What every printed page says of its origin.</summary>
/// <param name="Zone">The club's, for the day of printing.</param>
internal sealed record PrintHead(string Club, Instant PrintedAt, DateTimeZone Zone)
{
    public LocalDate Today => PrintedAt.InZone(Zone).Date;
}
