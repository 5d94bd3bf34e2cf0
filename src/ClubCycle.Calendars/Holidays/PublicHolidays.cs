using ClubCycle.Planning;
using NodaTime;

namespace ClubCycle.Calendars.Holidays;

/// <summary>Public holidays by country. No list of this kind knows what a government decides at short notice: people check it against their own calendar.</summary>
public static class PublicHolidays
{
    private const string WithoutName = "Public holiday";

    /// <summary>In the order of their names.</summary>
    public static IReadOnlyList<HolidayCountry> Countries { get; } =
        [.. HolidaySources.All.Select(s => new HolidayCountry(s.Country, [.. s.Regions.Keys.Order(StringComparer.Ordinal)])).OrderBy(c => c.Name, StringComparer.Ordinal)];

    /// <summary>The holidays of these days in date order, one for each day.</summary>
    /// <param name="region">Null for what the whole country has.</param>
    /// <param name="last">Inclusive.</param>
    public static Result<IReadOnlyList<Holiday>> Of(string country, string? region, LocalDate first, LocalDate last)
    {
        if (HolidaySources.All.FirstOrDefault(s => s.Country == country) is not { } source)
        {
            return new Problem("holidays.unknown-country", $"The public holidays of '{country}' are not known. Take them from a file, or enter them by hand.", "country");
        }

        if (region is not null && !source.Regions.ContainsKey(region))
        {
            return new Problem("holidays.unknown-region", $"{country} has no '{region}' with holidays of its own. Choose another region, or none.", "region");
        }

        List<Holiday> holidays = [];
        for (var year = first.Year; year <= last.Year; year++)
        {
            if (InYear(region is null ? source.Whole() : source.Regions[region](), year) is not { } days)
            {
                return new Problem("holidays.unknown-year", $"The public holidays of {country} are not known for {year}. Take them from a file, or enter them by hand.", "country");
            }

            holidays.AddRange(days.Where(h => h.Date >= first && h.Date <= last));
        }

        return new Result<IReadOnlyList<Holiday>>.Ok([.. holidays.DistinctBy(h => h.Date).OrderBy(h => h.Date)]);
    }

    /// <summary>Null where the library does not know the year.</summary>
    private static List<Holiday>? InYear(global::PublicHoliday.IPublicHolidays source, int year) =>
        Known(() => source.PublicHolidayNames(year).Select(h => new Holiday(LocalDate.FromDateTime(h.Key), h.Value)).ToList())
        ?? Known(() => source.PublicHolidays(year).Select(day => new Holiday(LocalDate.FromDateTime(day), WithoutName)).ToList());

    /// <remarks>The library throws where two holidays share a day, and where holidays by the moon are known for some decades only.</remarks>
    private static List<Holiday>? Known(Func<List<Holiday>> read)
    {
        try
        {
            return read();
        }
        catch (ArgumentException)
        {
            return null;
        }
    }
}
