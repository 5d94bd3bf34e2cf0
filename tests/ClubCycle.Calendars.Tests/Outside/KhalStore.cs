namespace ClubCycle.Calendars.Tests.Outside;

/// <summary>A subscriber whose calendars are khal's: each a folder with a file an event, brought in line with its feed at each poll.</summary>
internal sealed class KhalStore : IDisposable
{
    private const long Room = 1L << 30;

    /// <summary>In memory where there is room: khal has the disk confirm every file that it looks at.</summary>
    private static readonly string Folders =
        OperatingSystem.IsLinux() && new DriveInfo("/dev/shm") is { IsReady: true, AvailableFreeSpace: > Room } memory ? memory.Name : Path.GetTempPath();

    private readonly DirectoryInfo _folder = Directory.CreateDirectory(Path.Combine(Folders, "clubcycle-khal-" + Path.GetRandomFileName()));
    private readonly DirectoryInfo[] _calendars;
    private readonly string _settings;

    public KhalStore(int calendars = 1)
    {
        _calendars = [.. Enumerable.Range(0, calendars).Select(n => _folder.CreateSubdirectory($"calendar{n}"))];
        _settings = Path.Combine(_folder.FullName, "khal.conf");
        // A calendar, a cache and settings of its own, so that nobody's real calendar is touched.
        File.WriteAllText(_settings, $"""
            [calendars]
            {string.Concat(_calendars.Select((calendar, n) => $"[[squad{n}]]\npath = {calendar.FullName}\n"))}
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
    }

    public void Dispose() => _folder.Delete(recursive: true);

    public void Import(string feed)
    {
        var path = Path.Combine(_folder.FullName, "feed.ics");
        File.WriteAllText(path, feed);
        FeedReaders.Khal("-c", _settings, "import", "--batch", "-a", "squad0", path);
    }

    /// <summary>Writes what the feed holds and removes the files of what it holds no more.</summary>
    public void Poll(string feed, int calendar = 0)
    {
        HashSet<string> kept = [];
        foreach (var part in feed.Split("BEGIN:VEVENT\r\n").Skip(1))
        {
            var one = part[..(part.IndexOf("END:VEVENT\r\n", StringComparison.Ordinal) + "END:VEVENT\r\n".Length)];
            var uid = one.Split("\r\n").Single(line => line.StartsWith("UID:", StringComparison.Ordinal))["UID:".Length..];
            var text = $"BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//subscriber//EN\r\nBEGIN:VEVENT\r\n{one}END:VCALENDAR\r\n";
            var path = Path.Combine(_calendars[calendar].FullName, uid + ".ics");
            Assert.True(kept.Add(path), $"{uid} comes twice.");
            if (!File.Exists(path) || File.ReadAllText(path) != text)
            {
                // A whole file at once, as the folder's format asks: khal looks again when the folder changed.
                var written = Path.Combine(_folder.FullName, "one.tmp");
                File.WriteAllText(written, text);
                File.Move(written, path, overwrite: true);
            }
        }

        foreach (var gone in _calendars[calendar].GetFiles("*.ics").Where(file => !kept.Contains(file.FullName)))
        {
            gone.Delete();
        }
    }

    /// <summary>Uid, start, end (khal's: the last day of an event that lasts whole days), place and title of each event, in order of the text.</summary>
    public IReadOnlyList<string> List(string first, string last) => ListAll(first, last)[0];

    /// <summary>The same for each calendar.</summary>
    public IReadOnlyList<IReadOnlyList<string>> ListAll(string first, string last)
    {
        var lines = FeedReaders.Khal("-c", _settings, "list", "--notstarted", "--day-format", "", "--format", "{calendar}\t{uid}\t{start-long}\t{end-long}\t{location}\t{title}", first, last)
            .Where(line => line.Length > 0).Select(line => line.Split('\t', 2)).ToLookup(pair => pair[0], pair => pair[1], StringComparer.Ordinal);
        return [.. _calendars.Select((_, n) => lines[$"squad{n}"].Order(StringComparer.Ordinal).ToList())];
    }

    /// <summary>An event as <see cref="List"/> must show it.</summary>
    public static string Line(FeedEvent one)
    {
        var pattern = NodaTime.Text.LocalDateTimePattern.CreateWithInvariantCulture(one.DayOnly ? "uuuu-MM-dd" : "uuuu-MM-dd HH:mm");
        return string.Join('\t', one.Uid, pattern.Format(one.DayOnly ? one.Start : one.StartsAt.InUtc().LocalDateTime), pattern.Format(one.DayOnly ? one.Start : one.EndsAt.InUtc().LocalDateTime), one.Place ?? "", one.Title);
    }
}
