using System.Globalization;
using ClubCycle.Planning.Feeds;
using ClubCycle.Web.Features.Feeds;

namespace ClubCycle.Web.Tests.Feeds;

/// <summary>Changes the time zone of the whole process, so nothing else may run meanwhile.</summary>
[CollectionDefinition(nameof(FeedsOnAnyNodeTests), DisableParallelization = true)]
[Collection(nameof(FeedsOnAnyNodeTests))]
public sealed class FeedsOnAnyNodeTests
{
    [Theory]
    [InlineData("tr-TR", "Europe/Istanbul")]
    [InlineData("ar-SA", "Asia/Riyadh")]
    [InlineData("fa-IR", "Asia/Tehran")]
    [InlineData("th-TH", "Asia/Bangkok")]
    [InlineData("de-DE", "Australia/Lord_Howe")]
    [InlineData("es-CL", "America/Santiago")]
    public void Any_culture_and_time_zone_of_the_node_give_the_same_bytes(string culture, string zone)
    {
        var published = PublishedSquad.Of(PublishedSquad.Seasons[2]).Publish();
        FeedOptions[] options = [new(Places: true, ReminderMinutes: 1440), new(DayOnly: true)];
        var expected = options.Select(o => FeedRendering.Render(published, o, false).Etag).ToList();
        var (cultureBefore, zoneBefore) = (CultureInfo.CurrentCulture, Environment.GetEnvironmentVariable("TZ"));
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(culture);
            SetZone(zone);
            Assert.Equal(zone, TimeZoneInfo.Local.Id);

            var again = PublishedSquad.Of(PublishedSquad.Seasons[2]).Publish();
            Assert.Equal(expected, options.Select(o => FeedRendering.Render(again, o, false).Etag));
        }
        finally
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = cultureBefore;
            SetZone(zoneBefore);
        }
    }

    private static void SetZone(string? zone)
    {
        Environment.SetEnvironmentVariable("TZ", zone);
        TimeZoneInfo.ClearCachedData();
    }
}
