using System.Globalization;
using System.IO.Compression;
using System.Text;
using ClubCycle.Calendars;
using ClubCycle.Data.Feeds;
using ClubCycle.Data.Plans;
using ClubCycle.Planning;
using ClubCycle.Planning.Feeds;
using ClubCycle.Web.Features.Feeds;
using CsCheck;
using Ical.Net.CalendarComponents;
using NodaTime;
using NodaTime.Text;
using Calendar = Ical.Net.Calendar;

namespace ClubCycle.Web.Tests.Feeds;

public sealed class FeedRenderingTests
{
    private const int MostBytes = 900_000;

    private static readonly FeedOptions Everything = new(Places: true, ReminderMinutes: 60);

    [Fact]
    public void Every_variant_has_a_name_of_its_own_of_at_most_forty_characters()
    {
        var names = PublishedSquad.AllOptions.SelectMany(o => new[] { FeedRendering.VariantOf(o, false), FeedRendering.VariantOf(o, true) }).ToList();

        Assert.Equal(2 * PublishedSquad.AllOptions.Count, names.Distinct(StringComparer.Ordinal).Count());
        Assert.InRange(names.Count, 1_000, int.MaxValue);
        Assert.All(names, name => Assert.InRange(name.Length, 0, 40));
        Assert.Equal("spml-r60-w", FeedRendering.VariantOf(Everything, waiting: true));
    }

    [Theory]
    [InlineData("s", SessionKind.Session)]
    [InlineData("p", SessionKind.Practice)]
    [InlineData("m", SessionKind.Match)]
    public void A_feed_shows_the_kinds_it_is_asked_for(string code, SessionKind kind)
    {
        var published = PublishedSquad.Of(PublishedSquad.Seasons[0]).Publish();

        Assert.Equal(
            published.Plan.Sessions.Where(s => s.Kind == kind).Select(s => s.Uid.ToString()).Order(StringComparer.Ordinal),
            Read(published, FeedOptions.Of(code)!).Select(e => e.Uid!).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Places_are_told_only_when_asked_for()
    {
        var published = PublishedSquad.Of(PublishedSquad.Seasons[0]).Publish();

        Assert.DoesNotContain("LOCATION", Text(published, new FeedOptions()), StringComparison.Ordinal);
        Assert.Contains("Sandhaven, Tuesday", Read(published, new FeedOptions(Places: true)).Select(e => e.Location));
        Assert.DoesNotContain("Sandhaven\\, Tuesday", Text(published, new FeedOptions()), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Africa/Cairo", "2026-04-24", "00:00")]
    [InlineData("America/Santiago", "2026-09-06", "00:15")]
    [InlineData("Pacific/Auckland", "2026-09-27", "07:00")]
    [InlineData("Pacific/Auckland", "2026-04-05", "23:00")]
    [InlineData("Australia/Lord_Howe", "2026-10-04", "02:15")]
    [InlineData("Europe/Dublin", "2026-10-25", "01:30")]
    [InlineData("Africa/Casablanca", "2026-02-15", "02:30")]
    [InlineData("Asia/Kolkata", "2026-03-29", "00:30")]
    public void A_day_without_times_is_the_clubs_day_even_where_midnight_is_missing(string zone, string day, string start)
    {
        var squad = PublishedSquad.Of(PublishedSquad.Seasons[4]);
        var date = LocalDatePattern.Iso.Parse(day).Value;
        var session = squad.Plan.Sessions.First(s => s.Kind == SessionKind.Match) with { Date = date, Start = LocalTimePattern.CreateWithInvariantCulture("HH:mm").Parse(start).Value };
        var published = squad.Publish([session]) with { Zone = DateTimeZoneProviders.Tzdb[zone] };

        var text = Text(published with { PublishedAt = date.PlusDays(-1).AtStartOfDayInZone(published.Zone).ToInstant() }, new FeedOptions(DayOnly: true));

        Assert.Contains($"DTSTART;VALUE=DATE:{day.Replace("-", "", StringComparison.Ordinal)}\r\n", text, StringComparison.Ordinal);
        Assert.Contains($"DTEND;VALUE=DATE:{date.PlusDays(1).ToString("uuuuMMdd", CultureInfo.InvariantCulture)}\r\n", text, StringComparison.Ordinal);
        Assert.Contains("TRANSP:TRANSPARENT", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(15, "15 minutes")]
    [InlineData(60, "1 hour")]
    [InlineData(120, "2 hours")]
    [InlineData(1440, "1 day")]
    public void A_reminder_shows_in_plain_words_what_starts_when(int minutes, string ahead)
    {
        var one = Read(PublishedSquad.Of(PublishedSquad.Seasons[0]).Publish(), new FeedOptions(ReminderMinutes: minutes))[0];

        var alarm = Assert.Single(one.Alarms);
        Assert.Equal(("DISPLAY", $"{one.Summary} starts in {ahead}"), (alarm.Action, alarm.Description));
        Assert.Equal(TimeSpan.FromMinutes(-minutes), alarm.Trigger!.Duration!.Value.ToTimeSpan(one.DtStart!));
    }

    [Fact]
    public void A_day_without_times_and_a_session_called_off_remind_of_nothing()
    {
        var squad = PublishedSquad.Of(PublishedSquad.Seasons[0]);
        squad.Publish();
        squad.Now += Duration.FromHours(1);
        var published = squad.Publish([.. squad.Plan.Sessions.Skip(1)]);

        Assert.DoesNotContain("VALARM", Text(published, new FeedOptions(DayOnly: true, ReminderMinutes: 60)), StringComparison.Ordinal);
        Assert.All(Read(published, Everything), e => Assert.Equal(e.Status == "CANCELLED" ? 0 : 1, e.Alarms.Count));
        Assert.Single(Read(published, Everything), e => e.Status == "CANCELLED");
    }

    [Fact]
    public void What_is_over_for_more_than_thirty_days_when_the_plan_is_published_leaves_the_feed()
    {
        var squad = PublishedSquad.Of(PublishedSquad.Seasons[0]);
        squad.Now += Duration.FromDays(120);
        var today = squad.Now.InZone(squad.Request.Zone).Date;

        var days = Read(squad.Publish(), new FeedOptions(DayOnly: true)).Select(e => LocalDate.FromDateTime(e.DtStart!.Value)).ToList();

        Assert.InRange(days.Min(), today.PlusDays(-30), today);
        Assert.Equal(squad.Plan.Sessions.Where(s => s.Kind != SessionKind.ActiveRecovery).Max(s => s.Date), days.Max());
    }

    [Fact]
    public void A_session_called_off_stays_as_cancelled_for_fourteen_days_and_goes_with_the_next_publishing()
    {
        var squad = PublishedSquad.Of(PublishedSquad.Seasons[0]);
        squad.Publish();
        var gone = squad.Plan.Sessions.First(s => s.Kind == SessionKind.Match);
        squad.Now += Duration.FromDays(1);
        Assert.Equal("CANCELLED", Status(squad.Publish([.. squad.Plan.Sessions.Where(s => s.Uid != gone.Uid)])));
        squad.Now += Duration.FromDays(13);
        Assert.Equal("CANCELLED", Status(squad.Publish()));
        squad.Now += Duration.FromDays(2);
        Assert.Null(Status(squad.Publish()));

        string? Status(PublishedPlan published) => Read(published, Everything).SingleOrDefault(e => e.Uid == gone.Uid.ToString())?.Status;
    }

    [Fact]
    public void Any_feed_holds_exactly_what_is_published_and_asked_for() => AnyPlanAndOptions(iterations: 60, (published, options, waiting) =>
    {
        Assert.Equal(Expected(published, options).Order(StringComparer.Ordinal), Read(published, options, waiting).Select(Found).Order(StringComparer.Ordinal));
        return true;
    });

    [Fact]
    public void The_bytes_change_exactly_when_what_is_shown_changes()
    {
        Dictionary<string, string> etagOf = new(StringComparer.Ordinal);
        Dictionary<string, string> shownOf = new(StringComparer.Ordinal);
        var shown = 0;
        AnyPlanAndOptions(iterations: 60, (published, options, waiting) =>
        {
            var body = FeedRendering.Render(published, options, waiting);
            var content = string.Join('\n', Shown(published, options, waiting).Prepend($"in {options.Language}"));
            Assert.Equal(body.Etag, etagOf.GetValueOrDefault(content, body.Etag));
            Assert.Equal(content, shownOf.GetValueOrDefault(body.Etag, content));
            (etagOf[content], shownOf[body.Etag], shown) = (body.Etag, content, shown + 1);
            return true;
        });

        // Some changes are not seen by some options, some are: both must have come up.
        Assert.InRange(etagOf.Count, 2, shown - 1);
    }

    [Fact]
    public void The_largest_feed_of_the_demo_club_is_small_and_quick()
    {
        var plans = PublishedSquad.Demo.Select(r => PublishedSquad.Of(r).Publish()).ToList();
        var sizes = plans.ConvertAll(p => (Plan: p, FeedRendering.Render(p, Everything, false).Length));
        var largest = sizes.MaxBy(s => s.Length);
        var watch = System.Diagnostics.Stopwatch.StartNew();
        FeedRendering.Render(largest.Plan, Everything, false);
        var calendar = FeedRendering.Calendar(largest.Plan, Everything, false);
        var write = System.Diagnostics.Stopwatch.StartNew();
        IcsWriter.Write(calendar);

        TestContext.Current.TestOutputHelper?.WriteLine(
            $"{largest.Plan.SquadName}: {calendar.Events.Count} events, {largest.Length} bytes; written in {write.ElapsedMilliseconds} ms; rendered and packed twice in {(watch.Elapsed - write.Elapsed).TotalMilliseconds:0} ms");
        Assert.InRange(largest.Length, 10_000, MostBytes);
        Assert.InRange(watch.Elapsed.TotalSeconds, 0, 5);
    }

    private static readonly IReadOnlyList<PublishedSquad> Squads = [.. PublishedSquad.Seasons.Concat(PublishedSquad.Demo).Select(PublishedSquad.Of)];

    /// <summary>Random squads that publish, edit and publish again, each state seen with random options; the same options before and after an edit.</summary>
    private static void AnyPlanAndOptions(int iterations, Func<PublishedPlan, FeedOptions, bool, bool> holds) => Gen.Int[0, int.MaxValue].Sample(
        seed =>
        {
            var random = new Random(seed);
            var of = Squads[random.Next(Squads.Count)];
            var squad = new PublishedSquad(of.Request, of.Plan);
            var (options, waiting) = (PublishedSquad.AllOptions[random.Next(PublishedSquad.AllOptions.Count)], random.Next(2) == 0);
            squad.Now += Duration.FromDays(random.Next(0, 200));
            var held = holds(squad.Publish(), options, waiting);
            for (var n = 0; n < 3; n++)
            {
                squad.Now += Duration.FromHours(random.Next(1, 24 * 20));
                held &= holds(squad.Publish(random.Edit(squad.Plan.Sessions, of.Plan.Sessions, squad.Now.InZone(squad.Request.Zone).Date)), options, waiting);
            }

            return held;
        },
        iter: iterations,
        threads: 1);

    private static IEnumerable<string> Expected(PublishedPlan published, FeedOptions options)
    {
        var planned = published.Plan.Sessions.Where(s => s.Date >= published.ShownFrom).Select(s => (s.Uid, s.Kind, s.StartsAt, s.Minutes));
        var gone = published.Cancelled.Select(c => (c.Uid, c.Kind, StartsAt: c.Date.At(c.Start), c.Minutes));
        foreach (var (uid, kind, startsAt, minutes) in planned.Concat(gone))
        {
            if ((kind == SessionKind.Session && options.Sessions) || (kind == SessionKind.Practice && options.Practices) || (kind == SessionKind.Match && options.Matches))
            {
                var start = startsAt.InZoneLeniently(published.Zone).ToInstant();
                yield return options.DayOnly
                    ? $"{uid} {LocalDatePattern.Iso.Format(startsAt.Date)} {LocalDatePattern.Iso.Format(startsAt.Date.PlusDays(1))}"
                    : $"{uid} {start} {start + Duration.FromMinutes(minutes)}";
            }
        }
    }

    private static string Found(CalendarEvent one) => one.DtStart!.HasTime
        ? $"{one.Uid} {Instant.FromDateTimeUtc(one.DtStart.AsUtc)} {Instant.FromDateTimeUtc(one.DtEnd!.AsUtc)}"
        : $"{one.Uid} {LocalDatePattern.Iso.Format(LocalDate.FromDateTime(one.DtStart.Value))} {LocalDatePattern.Iso.Format(LocalDate.FromDateTime(one.DtEnd!.Value))}";

    /// <summary>All that a subscriber can tell apart, the stamps included.</summary>
    private static IEnumerable<string> Shown(PublishedPlan published, FeedOptions options, bool waiting) =>
        FeedRendering.Calendar(published, options, waiting).Events.Select(e => string.Join('\u001f',
            e.Uid, e.DayOnly ? e.Start.Date.ToString() : $"{e.StartsAt} {e.Minutes}", e.Title, e.Description, string.Join('|', e.Categories), e.Place, e.Cancelled, e.ReminderMinutes, e.Sequence, e.LastChanged))
            .Prepend(published.SquadName);

    internal static string Text(PublishedPlan published, FeedOptions options, bool waiting = false) => Text(FeedRendering.Render(published, options, waiting));

    internal static string Text(FeedBody body)
    {
        using var packed = new GZipStream(new MemoryStream(body.Gzip), CompressionMode.Decompress);
        using var reader = new StreamReader(packed, new UTF8Encoding(false, throwOnInvalidBytes: true));
        return reader.ReadToEnd();
    }

    private static List<CalendarEvent> Read(PublishedPlan published, FeedOptions options, bool waiting = false) =>
        [.. Calendar.Load(Text(published, options, waiting))!.Events];
}
