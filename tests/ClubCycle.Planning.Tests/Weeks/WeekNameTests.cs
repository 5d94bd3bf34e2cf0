using System.Globalization;
using ClubCycle.Planning.Weeks;
using NodaTime;

namespace ClubCycle.Planning.Tests.Weeks;

public class WeekNameTests
{
    /// <summary>Held against the runtime's own ISO 8601 calendar, which is not the one the planner uses.</summary>
    [Fact]
    public void Monday_weeks_have_their_ISO_8601_names_for_three_centuries()
    {
        for (var monday = new LocalDate(1900, 1, 1); monday.Year <= 2200; monday = monday.PlusWeeks(1))
        {
            var day = new DateTime(monday.Year, monday.Month, monday.Day, 0, 0, 0, DateTimeKind.Unspecified);
            var expected = string.Create(CultureInfo.InvariantCulture, $"{ISOWeek.GetYear(day):0000}-W{ISOWeek.GetWeekOfYear(day):00}");

            Assert.Equal(expected, WeekCalendar.Name(monday));
        }
    }

    /// <summary>Long years of ISO 8601: those that start on a Thursday, and leap years that start on a Wednesday.</summary>
    [Theory]
    [InlineData("2020-12-28", "2020-W53")]
    [InlineData("2026-12-28", "2026-W53")]
    [InlineData("2027-01-04", "2027-W01")]
    [InlineData("2032-12-27", "2032-W53")]
    [InlineData("2037-12-28", "2037-W53")]
    [InlineData("2028-02-28", "2028-W09")]
    public void Long_years_and_leap_days_keep_the_count(string monday, string expected) =>
        Assert.Equal(expected, WeekCalendar.Name(A.Date(monday)));

    [Theory]
    [InlineData("2026-03-01", "2026-W10")]
    [InlineData("2027-01-03", "2027-W01")]
    [InlineData("2026-12-27", "2026-W53")]
    public void A_week_from_Sunday_is_named_for_the_ISO_week_of_its_middle(string sunday, string expected) =>
        Assert.Equal(expected, WeekCalendar.Name(A.Date(sunday)));

    [Theory]
    [InlineData(IsoDayOfWeek.Monday)]
    [InlineData(IsoDayOfWeek.Sunday)]
    [InlineData(IsoDayOfWeek.Saturday)]
    public void A_cycle_over_a_long_year_names_no_week_twice(IsoDayOfWeek first)
    {
        var weeks = A.Plan(A.Request(A.SeasonA, firstWeekday: first)).Weeks;

        Assert.Equal(weeks.Count, weeks.Select(w => w.Name).Distinct().Count());
        Assert.Contains(weeks, w => w.Name == "2026-W53");
        Assert.Equal(weeks.Select(w => w.Name), weeks.Select(w => w.Name).Order(StringComparer.Ordinal));
    }
}
