using System.Globalization;
using System.Text;
using CsCheck;
using NodaTime;
using Calendar = Ical.Net.Calendar;

namespace ClubCycle.Calendars.Tests;

public sealed class IcsWriterTests
{
    [Fact]
    public void What_is_written_reads_back_the_same()
    {
        var written = A.Event(sequence: 4, categories: ["Speed", "Core strength"], description: "One\nTwo, three; four\\five");

        var read = Calendar.Load(IcsWriter.Write(A.Feed(written)))!.Events.Single();

        Assert.Equal(written.Uid.ToString(), read.Uid);
        Assert.Equal(4, read.Sequence);
        Assert.Equal("Easy run", read.Summary);
        Assert.Equal("One\nTwo, three; four\\five", read.Description);
        Assert.Equal(["Speed", "Core strength"], read.Categories);
        Assert.Equal("CONFIRMED", read.Status);
        Assert.Equal("OPAQUE", read.Transparency);
        Assert.Equal(A.Changed, Instant.FromDateTimeUtc(read.DtStamp!.AsUtc));
        Assert.Equal(A.Changed, Instant.FromDateTimeUtc(read.LastModified!.AsUtc));
    }

    [Fact]
    public void A_called_off_event_is_cancelled_and_leaves_the_time_free()
    {
        var read = Calendar.Load(IcsWriter.Write(A.Feed(A.Event(cancelled: true))))!.Events.Single();

        Assert.Equal(("CANCELLED", "TRANSPARENT"), (read.Status, read.Transparency));
    }

    [Fact]
    public void The_calendar_names_itself_and_asks_for_an_hourly_poll()
    {
        var lines = Lines(IcsWriter.Write(new FeedCalendar("Women 1, first; \\ x", "en", [])));

        Assert.Contains(@"NAME;LANGUAGE=en:Women 1\, first\; \\ x", lines);
        Assert.Contains(@"X-WR-CALNAME:Women 1\, first\; \\ x", lines);
        Assert.Contains("REFRESH-INTERVAL;VALUE=DURATION:PT1H", lines);
        Assert.Contains("X-PUBLISHED-TTL:PT1H", lines);
        Assert.Contains("PRODID:-//ClubCycle//Squad calendar 1//EN", lines);
        Assert.DoesNotContain(lines, line => line.StartsWith("METHOD", StringComparison.Ordinal));
    }

    [Fact]
    public void Times_are_in_UTC_and_no_zone_is_defined()
    {
        var text = IcsWriter.Write(A.Feed(A.Event(zone: "Europe/Dublin")));

        Assert.Contains("DTSTART:20260804T173000Z\r\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain("TZID", text, StringComparison.Ordinal);
        Assert.DoesNotContain("VTIMEZONE", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("a\r\nb", "a\nb")]
    [InlineData("a\rb", "a\nb")]
    [InlineData("a\u2028b\u0085c", "a\nb\nc")]
    [InlineData("a\0b\u0007c\u007F", "abc")]
    [InlineData("BEGIN:VEVENT\r\nEND:VCALENDAR", "BEGIN:VEVENT\nEND:VCALENDAR")]
    public void Line_ends_and_control_characters_in_a_text_cannot_break_the_calendar(string title, string read) =>
        Assert.Equal(read, Calendar.Load(IcsWriter.Write(A.Feed(A.Event(title: title))))!.Events.Single().Summary);

    [Fact]
    public void Half_a_surrogate_pair_becomes_the_replacement_character()
    {
        var title = "half " + '\uD83C' + " pair";

        Assert.Equal("half \uFFFD pair", Calendar.Load(IcsWriter.Write(A.Feed(A.Event(title: title))))!.Events.Single().Summary);
    }

    [Theory]
    [InlineData("\U0001F3D1")] // four octets
    [InlineData("क")] // three
    [InlineData("é")] // two
    [InlineData("x")]
    public void Long_lines_fold_between_whole_characters_wherever_they_start(string character)
    {
        for (var prefix = 0; prefix <= 80; prefix++)
        {
            var title = new string('p', prefix) + string.Concat(Enumerable.Repeat(character, 90));

            var text = IcsWriter.Write(A.Feed(A.Event(title: title)));

            AssertGoodLines(text);
            Assert.Equal(title, Calendar.Load(text)!.Events.Single().Summary);
        }
    }

    [Fact]
    public void Any_text_survives_the_way_there_and_back() => Gen.String.Sample(text =>
    {
        var ics = IcsWriter.Write(A.Feed(A.Event(description: "." + text + ".")));

        AssertGoodLines(ics);
        var read = Calendar.Load(ics)!.Events.Single().Description;
        return read == ContentLines.Clean("." + text + ".");
    }, iter: 2_000, seed: "0000KrO8sBq1");

    [Theory]
    [InlineData("tr-TR")]
    [InlineData("ar-SA")]
    public void The_bytes_do_not_depend_on_the_culture(string culture)
    {
        var expected = IcsWriter.Write(FeedGoldenTests.SquadWeek());
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);

            Assert.Equal(expected, IcsWriter.Write(FeedGoldenTests.SquadWeek()));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static void AssertGoodLines(string text)
    {
        Assert.EndsWith("\r\n", text, StringComparison.Ordinal);
        var lines = Lines(text);
        var strict = new UTF8Encoding(false, throwOnInvalidBytes: true);
        Assert.All(lines, line => Assert.InRange(strict.GetByteCount(line), 1, 75));
        Assert.All(lines, line => Assert.DoesNotContain('\n', line));
        Assert.All(lines, line => Assert.DoesNotContain('\r', line));
    }

    private static string[] Lines(string text) => text[..^2].Split("\r\n");
}
