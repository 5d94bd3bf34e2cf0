using ClubCycle.Calendars.FixtureFiles;
using ClubCycle.Calendars.Sheets;

namespace ClubCycle.Calendars.Tests.FixtureFiles;

public sealed class FixtureIcsTests
{
    [Theory]
    [InlineData("DTSTART:20260912T140000", "2026-09-12 14:00")]
    [InlineData("DTSTART:20260912T140000Z", "2026-09-12 15:00")]
    [InlineData("DTSTART:20261212T140000Z", "2026-12-12 14:00")]
    [InlineData("DTSTART:20260912T233000Z", "2026-09-13 00:30")]
    [InlineData("DTSTART;TZID=Europe/Berlin:20260912T140000", "2026-09-12 13:00")]
    [InlineData("DTSTART;TZID=\"Europe/Berlin\":20260912T140000", "2026-09-12 13:00")]
    [InlineData("DTSTART;TZID=W. Europe Standard Time:20260912T140000", "2026-09-12 13:00")]
    [InlineData("DTSTART;TZID=/example.org/2026/Europe/Berlin:20260912T140000", "2026-09-12 13:00")]
    [InlineData("DTSTART;TZID=/example.org/2026/America/Argentina/Salta:20260912T140000", "2026-09-12 18:00")]
    [InlineData("DTSTART;VALUE=DATE:20260912", "2026-09-12")]
    public async Task Times_are_turned_to_the_clubs_zone(string start, string said) => Assert.Equal($"{said} HC Delta", await Said(Files.Entry(start)));

    [Theory]
    [InlineData("DTSTART;TZID=Europe/Lisbon:20260329T013000", "2026-03-29 02:30")]
    [InlineData("DTSTART;TZID=Europe/Dublin:20261025T013000", "2026-10-25 01:30")]
    public async Task Times_in_a_gap_or_an_overlap_of_the_clock_still_read(string start, string said) => Assert.Equal($"{said} HC Delta", await Said(Files.Entry(start)));

    [Fact]
    public async Task The_title_is_the_opponent_and_the_identifier_is_kept()
    {
        var read = (await Read(Files.Calendar("BEGIN:VEVENT", "UID:a1@example.org", @"SUMMARY: Delta\, Lower Town\; away ", "DTSTART:20260912T140000", "END:VEVENT"))).Good.Single();

        Assert.Equal("Delta, Lower Town; away", read.Opponent);
        Assert.Equal("a1@example.org", read.SourceKey);
        Assert.Equal(3, read.Line);
    }

    [Fact]
    public async Task An_entry_without_an_identifier_has_no_source_key() =>
        Assert.Null((await Read(Files.Calendar("BEGIN:VEVENT", "SUMMARY:Delta", "DTSTART:20260912T140000", "END:VEVENT"))).Good.Single().SourceKey);

    [Fact]
    public async Task A_cancelled_match_is_listed_as_such() => Assert.Equal("2026-09-12 14:00 HC Delta cancelled", await Said(Files.Entry("STATUS:CANCELLED")));

    [Fact]
    public async Task A_series_gives_a_match_a_date_each_with_its_own_key()
    {
        var file = await Read(Files.Entry("RRULE:FREQ=WEEKLY;COUNT=3", "EXDATE:20260919T140000"));

        Assert.Equal(["one#2026-09-12T14:00", "one#2026-09-26T14:00"], file.Good.Select(read => read.SourceKey));
    }

    [Fact]
    public async Task A_series_keeps_its_wall_clock_time_over_a_clock_change() =>
        Assert.Equal("2026-10-24 13:00 HC Delta; 2026-10-31 13:00 HC Delta", await Said(Files.Entry("DTSTART;TZID=Europe/Berlin:20261024T140000", "RRULE:FREQ=WEEKLY;COUNT=2")));

    [Fact]
    public async Task One_changed_date_replaces_that_of_its_series()
    {
        var file = await Read(Files.Calendar(
            "BEGIN:VEVENT", "UID:one", "SUMMARY:Delta", "DTSTART:20260912T140000", "RRULE:FREQ=WEEKLY;COUNT=2", "END:VEVENT",
            "BEGIN:VEVENT", "UID:one", "SUMMARY:Delta", "RECURRENCE-ID:20260919T140000", "DTSTART:20260920T160000", "END:VEVENT"));

        Assert.Equal(["2026-09-12 14:00 Delta", "2026-09-20 16:00 Delta"], file.Good.Select(Files.Said));
        Assert.Equal("one#2026-09-19T14:00", file.Good[1].SourceKey);
        Assert.Empty(file.Bad);
    }

    [Fact]
    public async Task Of_two_entries_with_one_identifier_the_later_version_is_read() =>
        Assert.Equal(
            "2026-09-13 Delta; 9: The same entry stands in the file again on line 3, and that one was read. Delete the older one if both are meant to be one match; else give each an identifier (UID) of its own.",
            await Said(Files.Calendar(
                "BEGIN:VEVENT", "UID:one", "SEQUENCE:2", "SUMMARY:Delta", "DTSTART;VALUE=DATE:20260913", "END:VEVENT",
                "BEGIN:VEVENT", "UID:one", "SEQUENCE:1", "SUMMARY:Delta", "DTSTART;VALUE=DATE:20260912", "END:VEVENT")));

    [Fact]
    public async Task Good_entries_stay_beside_bad_ones()
    {
        var file = await Read(Files.Calendar(
            "BEGIN:VEVENT", "UID:1", "SUMMARY:Delta", "DTSTART:20260631T140000", "END:VEVENT",
            "BEGIN:VEVENT", "UID:2", "SUMMARY:Echo", "DTSTART:20260912T140000", "END:VEVENT"));

        Assert.Equal("Echo", file.Good.Single().Opponent);
        Assert.Equal([new BadRow(3, "SUMMARY:Delta", "\"20260631T140000\" is not a date between 2000 and 2099. Correct it in the calendar and export again.")], file.Bad);
    }

    [Fact]
    public async Task A_series_of_many_years_is_read_for_two_and_it_is_said()
    {
        var file = await Read(Files.Entry("RRULE:FREQ=WEEKLY"));

        Assert.Equal(105, file.Good.Count);
        Assert.Equal(["Line 3: the entry repeats for more than 2 years or 1000 dates; the later ones were left out. Enter those you need by hand."], file.Remarks);
    }

    [Fact]
    public async Task Our_own_feed_reads_back()
    {
        var written = A.Event(title: "Delta; Lower Town, " + string.Concat(Enumerable.Repeat("🏑", 30)));

        var read = (await Read(Files.Utf8(IcsWriter.Write(A.Feed(written))))).Good.Single();

        Assert.Equal((written.Title, written.Uid.ToString(), written.Start), (read.Opponent, read.SourceKey, read.Date + read.Start!.Value));
    }

    [Fact]
    public async Task A_calendar_that_takes_too_long_is_refused() =>
        Assert.Equal("fixture-file.too-slow", Files.Said(await FixtureIcs.ReadAsync(Files.Entry(), Files.Lisbon, TimeSpan.Zero, TestContext.Current.CancellationToken)));

    [Fact]
    public async Task A_caller_who_cancels_gets_no_answer() =>
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => FixtureIcs.ReadAsync(Files.Entry(), Files.Lisbon, new CancellationToken(canceled: true)));

    private static async Task<FixtureFile> Read(byte[] bytes) => (await FixtureIcs.ReadAsync(bytes, Files.Lisbon, TestContext.Current.CancellationToken)).OrThrow();

    private static async Task<string> Said(byte[] bytes) => Files.Said(await FixtureIcs.ReadAsync(bytes, Files.Lisbon, TestContext.Current.CancellationToken));
}
