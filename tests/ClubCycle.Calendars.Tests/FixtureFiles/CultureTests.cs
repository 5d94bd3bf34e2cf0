using System.Globalization;
using ClubCycle.Calendars.FixtureFiles;

namespace ClubCycle.Calendars.Tests.FixtureFiles;

/// <summary>What a file says does not depend on the language of the machine that reads it.</summary>
public sealed class CultureTests
{
    [Theory]
    [InlineData("tr-TR")]
    [InlineData("ar-SA")]
    [InlineData("fi-FI")]
    [InlineData("th-TH")]
    [InlineData("fa-IR")]
    public async Task A_file_reads_alike_in_every_culture(string culture)
    {
        CultureInfo.CurrentCulture = new CultureInfo(culture);
        try
        {
            var csv = Files.ReadAsGuessed(Files.Utf8("DATE;TIME;RIVAL\n12/09/2026;7:30 PM;Delta\n30.02.2026;;Echo\n")).OrThrow();
            var ics = (await FixtureIcs.ReadAsync(Files.Entry("RRULE:FREQ=DAILY;COUNT=1;INTERVAL=2", "status:cancelled"), Files.Lisbon, TestContext.Current.CancellationToken)).OrThrow();

            Assert.Equal("12 September 2026 19:30 Delta", $"{csv.Good.Single().Date.ToString("d MMMM uuuu", CultureInfo.InvariantCulture)} {csv.Good.Single().Start?.ToString("HH:mm", CultureInfo.InvariantCulture)} {csv.Good.Single().Opponent}");
            Assert.Equal("30 Feb 2026 does not exist. Correct the date.", csv.Bad.Single().Reason);
            Assert.Equal(("one#2026-09-12T14:00", true), (ics.Good.Single().SourceKey, ics.Good.Single().Cancelled));
        }
        finally
        {
            CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        }
    }
}
