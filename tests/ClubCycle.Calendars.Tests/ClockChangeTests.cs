using Ical.Net;
using NodaTime;
using NodaTime.Text;

namespace ClubCycle.Calendars.Tests;

/// <summary>
/// Expected instants are worked out by hand from each zone's published rules (IANA tz database: Dublin and London
/// UTC+0/+1; Casablanca UTC+1, UTC+0 in Ramadan; Lord Howe UTC+10:30/+11; Auckland UTC+12/+13; Kolkata UTC+5:30).
/// </summary>
public sealed class ClockChangeTests
{
    /// <summary>Half past six in the evening on both sides of both changes of a year, local and in UTC.</summary>
    public static TheoryData<string, string, string> Evenings => new()
    {
        { "Europe/Dublin", "2026-03-28T18:30", "2026-03-28T18:30:00Z" },
        { "Europe/Dublin", "2026-03-29T18:30", "2026-03-29T17:30:00Z" },
        { "Europe/Dublin", "2026-10-24T18:30", "2026-10-24T17:30:00Z" },
        { "Europe/Dublin", "2026-10-25T18:30", "2026-10-25T18:30:00Z" },
        { "Europe/London", "2026-03-28T18:30", "2026-03-28T18:30:00Z" },
        { "Europe/London", "2026-03-29T18:30", "2026-03-29T17:30:00Z" },
        { "Europe/London", "2026-10-24T18:30", "2026-10-24T17:30:00Z" },
        { "Europe/London", "2026-10-25T18:30", "2026-10-25T18:30:00Z" },
        { "Africa/Casablanca", "2025-02-22T18:30", "2025-02-22T17:30:00Z" },
        { "Africa/Casablanca", "2025-02-24T18:30", "2025-02-24T18:30:00Z" },
        { "Africa/Casablanca", "2025-04-05T18:30", "2025-04-05T18:30:00Z" },
        { "Africa/Casablanca", "2025-04-07T18:30", "2025-04-07T17:30:00Z" },
        { "Australia/Lord_Howe", "2026-04-04T18:30", "2026-04-04T07:30:00Z" },
        { "Australia/Lord_Howe", "2026-04-05T18:30", "2026-04-05T08:00:00Z" },
        { "Australia/Lord_Howe", "2026-10-03T18:30", "2026-10-03T08:00:00Z" },
        { "Australia/Lord_Howe", "2026-10-04T18:30", "2026-10-04T07:30:00Z" },
        { "Pacific/Auckland", "2026-04-04T18:30", "2026-04-04T05:30:00Z" },
        { "Pacific/Auckland", "2026-04-05T18:30", "2026-04-05T06:30:00Z" },
        { "Pacific/Auckland", "2026-09-26T18:30", "2026-09-26T06:30:00Z" },
        { "Pacific/Auckland", "2026-09-27T18:30", "2026-09-27T05:30:00Z" },
        { "Asia/Kolkata", "2026-03-29T18:30", "2026-03-29T13:00:00Z" },
        { "Asia/Kolkata", "2026-10-25T18:30", "2026-10-25T13:00:00Z" },
    };

    /// <summary>The days on which the clocks change; in Kolkata, which never does, those of Europe.</summary>
    public static TheoryData<string, string> Days => new()
    {
        { "Europe/Dublin", "2026-03-29" }, { "Europe/Dublin", "2026-10-25" },
        { "Europe/London", "2026-03-29" }, { "Europe/London", "2026-10-25" },
        { "Africa/Casablanca", "2025-02-23" }, { "Africa/Casablanca", "2025-04-06" },
        { "Australia/Lord_Howe", "2026-04-05" }, { "Australia/Lord_Howe", "2026-10-04" },
        { "Pacific/Auckland", "2026-04-05" }, { "Pacific/Auckland", "2026-09-27" },
        { "Asia/Kolkata", "2026-03-29" }, { "Asia/Kolkata", "2026-10-25" },
    };

    [Theory]
    [MemberData(nameof(Evenings))]
    public void A_local_start_is_the_right_moment_on_both_sides_of_a_clock_change(string zone, string local, string utc)
    {
        var read = WriteAndRead(zone, local, minutes: 60);

        Assert.Equal((At(utc), At(utc) + Duration.FromHours(1)), read);
    }

    [Theory]
    [InlineData("Europe/London", "2026-03-29T01:30", "2026-03-29T01:30:00Z")]
    [InlineData("Australia/Lord_Howe", "2026-10-04T02:15", "2026-10-03T15:45:00Z")]
    public void A_start_that_the_clocks_skip_moves_on_by_the_length_of_the_skip(string zone, string local, string utc) =>
        Assert.Equal(At(utc), WriteAndRead(zone, local, minutes: 60).Start);

    [Theory]
    [InlineData("Europe/London", "2026-10-25T01:30", "2026-10-25T00:30:00Z")]
    [InlineData("Europe/Dublin", "2026-10-25T01:30", "2026-10-25T00:30:00Z")]
    public void Of_a_repeated_hour_the_first_counts(string zone, string local, string utc) =>
        Assert.Equal(At(utc), WriteAndRead(zone, local, minutes: 60).Start);

    [Fact]
    public void A_session_across_a_clock_change_keeps_its_real_length()
    {
        var (start, end) = WriteAndRead("Europe/London", "2026-03-29T00:30", minutes: 90);

        Assert.Equal(Duration.FromMinutes(90), end - start);
    }

    [Theory]
    [MemberData(nameof(Days))]
    public void An_entry_without_a_time_lies_on_the_club_s_own_day_around_a_clock_change(string zone, string change)
    {
        var events = AllDay(zone, change).ToList();

        var read = Calendar.Load(IcsWriter.Write(A.Feed([.. events.Select(e => e.Event)])))!.Events;

        Assert.Equal(
            events.Select(e => (e.Event.Uid.ToString(), e.Day, e.Next, false)).Order(),
            read.Select(e => (e.Uid!, Iso(e.DtStart!), Iso(e.DtEnd!), e.DtStart!.HasTime || e.DtEnd!.HasTime)).Order());
    }

    /// <summary>Entries that tell no time, early, in the hour that changes and late, on the days around a change, each with its day and the next.</summary>
    internal static IEnumerable<(FeedEvent Event, string Day, string Next)> AllDay(string zone, string change) =>
        from days in Enumerable.Range(-2, 5)
        let day = LocalDatePattern.Iso.Parse(change).Value.PlusDays(days)
        from start in (LocalTime[])[LocalTime.Midnight, new(0, 30), new(1, 30), new(2, 15), LocalTime.Noon, new(23, 30)]
        select (A.Event(uid: $"{zone} {day} {start}", start: day.At(start), zone: zone, minutes: 90) with { DayOnly = true }, LocalDatePattern.Iso.Format(day), LocalDatePattern.Iso.Format(day.PlusDays(1)));

    private static string Iso(Ical.Net.DataTypes.CalDateTime date) => LocalDatePattern.Iso.Format(LocalDate.FromDateTime(date.Value));

    private static (Instant Start, Instant End) WriteAndRead(string zone, string local, int minutes)
    {
        var text = IcsWriter.Write(A.Feed(A.Event(start: LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm").Parse(local).Value, zone: zone, minutes: minutes)));
        var read = Calendar.Load(text)!.Events.Single();
        return (Instant.FromDateTimeUtc(read.DtStart!.AsUtc), Instant.FromDateTimeUtc(read.DtEnd!.AsUtc));
    }

    private static Instant At(string utc) => InstantPattern.General.Parse(utc).Value;
}
