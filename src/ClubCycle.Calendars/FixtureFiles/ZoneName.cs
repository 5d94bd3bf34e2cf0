using System.Collections.Frozen;
using NodaTime;
using NodaTime.TimeZones;

namespace ClubCycle.Calendars.FixtureFiles;

/// <summary>The zone a TZID means. What the file itself says about the zone is not read: it is often wrong, and could be made so.</summary>
internal static class ZoneName
{
    // "UTC+05:30" is a zone to NodaTime, but not to the library that expands repeats.
    private static readonly FrozenSet<string> Ids = DateTimeZoneProviders.Tzdb.Ids.ToFrozenSet(StringComparer.Ordinal);

    /// <summary>By its name in the zone database, by the name Windows gives it, or by the last parts of a path such as <c>/example.org/2026/Europe/London</c>.</summary>
    public static DateTimeZone? Find(string id)
    {
        var name = TzdbDateTimeZoneSource.Default.WindowsMapping.PrimaryMapping.TryGetValue(id, out var mapped) ? mapped : id;
        if (Known(name) is { } zone)
        {
            return zone;
        }

        var parts = id.Split('/');
        return id.StartsWith('/') ? Enumerable.Range(1, parts.Length - 1).Reverse().Take(3).Reverse().Select(at => Known(string.Join('/', parts[at..]))).FirstOrDefault(found => found is not null) : null;
    }

    private static DateTimeZone? Known(string id) =>
        Ids.Contains(id) ? DateTimeZoneProviders.Tzdb[id] : null;
}
