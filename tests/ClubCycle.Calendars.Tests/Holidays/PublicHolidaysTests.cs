using System.Globalization;
using ClubCycle.Calendars.Holidays;
using ClubCycle.Planning;
using NodaTime;

namespace ClubCycle.Calendars.Tests.Holidays;

public sealed class PublicHolidaysTests
{
    /// <summary>Days by the laws that are named, worked out by hand; the laws are quoted from memory.</summary>
    public static TheoryData<string, string?, int, string> Laws => new()
    {
        // Organisation of Working Time Act 1997, second schedule, with the February holiday of 2022; from memory.
        { "Ireland", null, 2027, "01-01 02-01 03-17 03-29 05-03 06-07 08-02 10-25 12-25 12-26" },
        // Algemene termijnenwet, article 3, with 5 May; from memory.
        { "Netherlands", null, 2026, "01-01 04-06 04-27 05-05 05-14 05-25 12-25 12-26" },
        // Bayerisches Feiertagsgesetz, article 1, Assumption as in most places; from memory.
        { "Germany", "Bavaria", 2027, "01-01 01-06 03-26 03-29 05-01 05-06 05-17 05-27 08-15 10-03 11-01 12-25 12-26" },
        // Estatuto de los Trabajadores, article 37.2, and Real Decreto 2001/1983, article 45: the national days; from memory.
        { "Spain", null, 2027, "01-01 01-06 03-26 05-01 08-15 10-12 11-01 12-06 12-08 12-25" },
        // Holidays Act 2003, section 44, and Te Kāhui o Matariki Public Holiday Act 2022, schedule 1 (25 June 2027), moved from week ends by sections 45 and 45A; from memory.
        { "New Zealand", null, 2027, "01-01 01-04 02-08 03-26 03-29 04-26 06-07 06-25 10-25 12-27 12-28" },
        // Public Holidays Act 36 of 1994, schedule 1, Sundays moved to Monday by section 2; from memory.
        { "South Africa", null, 2027, "01-01 03-22 03-26 03-29 04-27 05-01 06-16 08-09 09-24 12-16 12-25 12-27" },
    };

    [Theory]
    [MemberData(nameof(Laws))]
    public void A_years_holidays_are_those_of_the_law(string country, string? region, int year, string days) =>
        Assert.Equal(days, string.Join(' ', Year(country, region, year).Select(h => h.Date.ToString("MM-dd", CultureInfo.InvariantCulture))));

    [Theory]
    [InlineData("Australia", "Victoria", 2026, 11, 3, "Melbourne")]
    [InlineData("Germany", "Thuringia", 2026, 9, 20, "Kindertag")]
    [InlineData("United Kingdom", "Scotland", 2026, 11, 30, "Andrew")]
    public void A_region_has_days_that_the_whole_country_has_not(string country, string region, int year, int month, int day, string name)
    {
        var date = new LocalDate(year, month, day);

        Assert.Contains(name, Assert.Single(Year(country, region, year), h => h.Date == date).Name, StringComparison.Ordinal);
        Assert.DoesNotContain(Year(country, null, year), h => h.Date == date);
    }

    [Fact]
    public void A_cycle_over_new_year_gets_the_holidays_of_both_years_and_only_its_own_days() => Assert.Equal(
        [new(2026, 12, 16), new(2026, 12, 25), new(2026, 12, 26), new(2027, 1, 1)],
        PublicHolidays.Of("South Africa", null, new(2026, 12, 1), new(2027, 1, 1)).OrThrow().Select(h => h.Date));

    [Fact]
    public void Countries_come_by_name_and_none_twice()
    {
        var names = PublicHolidays.Countries.Select(c => c.Name).ToList();

        Assert.Equal(names.Distinct().Order(StringComparer.Ordinal), names);
        Assert.True(names.Count >= 38);
    }

    [Fact]
    public void Every_country_and_region_has_named_days_inside_each_coming_year()
    {
        foreach (var country in PublicHolidays.Countries)
        {
            foreach (var region in country.Regions.Prepend(null))
            {
                for (var year = 2026; year <= 2029; year++)
                {
                    var days = Year(country.Name, region, year);

                    Assert.InRange(days.Count, 4, 30);
                    Assert.Equal(days.OrderBy(d => d.Date).DistinctBy(d => d.Date), days);
                    Assert.All(days, day => Assert.False(string.IsNullOrWhiteSpace(day.Name)));
                }
            }
        }
    }

    [Fact]
    public void The_language_of_the_server_changes_nothing()
    {
        var before = CultureInfo.CurrentCulture;
        var here = Year("Germany", "Saxony", 2027);
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo("ar-SA");
            Assert.Equal(here, Year("Germany", "Saxony", 2027));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Theory]
    [InlineData("Atlantis", null, 2027, "holidays.unknown-country")]
    [InlineData("Ireland", "Bavaria", 2027, "holidays.unknown-region")]
    [InlineData("Turkey", null, 2150, "holidays.unknown-year")]
    [InlineData("Canada", "Newfoundland and Labrador", 2038, "holidays.unknown-year")]
    public void What_is_not_known_is_said(string country, string? region, int year, string code) =>
        Assert.Equal(code, PublicHolidays.Of(country, region, new(year, 1, 1), new(year, 12, 31)) is Result<IReadOnlyList<Holiday>>.Failed failed ? failed.First.Code : null);

    private static IReadOnlyList<Holiday> Year(string country, string? region, int year) => PublicHolidays.Of(country, region, new(year, 1, 1), new(year, 12, 31)).OrThrow();
}
