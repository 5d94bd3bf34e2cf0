using System.Diagnostics;
using NodaTime;
using NodaTime.Text;

namespace ClubCycle.Calendars.Tests.Outside;

/// <summary>
/// Two programs that share no code with ours read the feed: the Python library icalendar (Debian: python3-icalendar)
/// and the calendar program khal. Set <c>CLUBCYCLE_PYTHON</c> or <c>CLUBCYCLE_KHAL</c> to use others than the system's.
/// </summary>
public sealed class ForeignReaderTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("clubcycle-feed-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void The_icalendar_library_reads_the_same_events()
    {
        var python = Environment.GetEnvironmentVariable("CLUBCYCLE_PYTHON") ?? "/usr/bin/python3";
        SkipUnless(Works(python, "-c", "import icalendar"), "python3-icalendar is not installed (Debian: apt-get install python3-icalendar).");
        var feed = YearOfEvents();

        var lines = Run(python, [Path.Combine(SourceFolder.Path, "Outside", "read_feed.py"), Write(feed)]);

        Assert.Equal(
            feed.Events.Select(e => string.Join('\t', e.Uid, Utc(e.StartsAt), Utc(e.EndsAt), e.Sequence, e.Cancelled ? "CANCELLED" : "CONFIRMED", e.Title)),
            lines);
    }

    [Fact]
    public void Khal_imports_the_feed_and_lists_the_same_events()
    {
        var khal = Environment.GetEnvironmentVariable("CLUBCYCLE_KHAL") ?? "khal";
        SkipUnless(Works(khal, "--version"), "khal is not installed (Debian: apt-get install khal).");
        var feed = YearOfEvents();
        var settings = PrivateKhal();

        Run(khal, ["-c", settings, "import", "--batch", "-a", "squad", Write(feed)]);
        var lines = Run(khal, ["-c", settings, "list", "--notstarted", "--day-format", "", "--format", "{uid}\t{start-long}\t{end-long}\t{title}", "2026-01-01", "2027-12-31"]);

        Assert.Equal(
            feed.Events.Select(e => string.Join('\t', e.Uid, Minute(e.StartsAt), Minute(e.EndsAt), e.Title)).Order(StringComparer.Ordinal),
            lines.Where(line => line.Length > 0).Order(StringComparer.Ordinal));
    }

    private static FeedCalendar YearOfEvents()
    {
        string[] zones = ["Europe/Dublin", "Africa/Casablanca", "Australia/Lord_Howe", "Pacific/Auckland", "Asia/Kolkata"];
        var first = new LocalDateTime(2026, 3, 1, 18, 30);
        return FeedBuilder.Calendar("Women 1 — Ü, ;", Enumerable.Range(0, 180).Select(n => A.Event(
            uid: $"event {n}",
            start: first.PlusDays(2 * n),
            minutes: 45 + (n % 4 * 15),
            zone: zones[n % zones.Length],
            title: $"Easy run {n}, again; \\ 🏑 {new string('é', n % 60)}",
            description: $"How hard: easy.\n- Step {n}: 3 × 12, rest 30 s 🏑🏑🏑🏑🏑🏑🏑🏑🏑🏑🏑🏑🏑🏑🏑🏑🏑🏑🏑🏑",
            sequence: n % 5,
            cancelled: n % 17 == 16)));
    }

    private string Write(FeedCalendar feed)
    {
        var path = Path.Combine(_folder.FullName, "feed.ics");
        File.WriteAllText(path, IcsWriter.Write(feed));
        return path;
    }

    /// <summary>A calendar, a cache and settings of its own, so that nobody's real calendar is touched.</summary>
    private string PrivateKhal()
    {
        var calendar = _folder.CreateSubdirectory("calendar");
        var path = Path.Combine(_folder.FullName, "khal.conf");
        File.WriteAllText(path, $"""
            [calendars]
            [[squad]]
            path = {calendar.FullName}

            [sqlite]
            path = {Path.Combine(_folder.FullName, "khal.db")}

            [locale]
            local_timezone = UTC
            default_timezone = UTC
            timeformat = %H:%M
            dateformat = %Y-%m-%d
            longdateformat = %Y-%m-%d
            datetimeformat = %Y-%m-%d %H:%M
            longdatetimeformat = %Y-%m-%d %H:%M

            """);
        return path;
    }

    private static void SkipUnless(bool available, string reason)
    {
        if (!available && string.Equals(Environment.GetEnvironmentVariable("CI"), "true", StringComparison.OrdinalIgnoreCase))
        {
            Assert.Fail($"{reason} With CI=true this check must run.");
        }

        Assert.SkipUnless(available, reason);
    }

    private static bool Works(string program, params string[] arguments)
    {
        try
        {
            using var process = Start(program, arguments);
            process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return process.ExitCode == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            // The program is not there.
            return false;
        }
    }

    private static string[] Run(string program, IReadOnlyList<string> arguments)
    {
        using var process = Start(program, arguments);
        var errors = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, $"{program} ended with {process.ExitCode}: {errors.Result}");
        return output.TrimEnd('\n').Split('\n');
    }

    private static Process Start(string program, IReadOnlyList<string> arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["LC_ALL"] = "C.UTF-8";
        return Process.Start(start)!;
    }

    private static string Utc(Instant instant) => InstantPattern.General.Format(instant);

    private static string Minute(Instant instant) => LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mm").Format(instant.InUtc().LocalDateTime);
}
