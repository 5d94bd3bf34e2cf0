using System.Diagnostics;
using System.Globalization;
using NodaTime;
using NodaTime.Text;

namespace ClubCycle.Calendars.Tests.Outside;

/// <summary>
/// Programs that share no code with ours and read feeds: the libraries icalendar (Debian: python3-icalendar), libical (libical3) and ical.js (npm),
/// and the calendar program khal. <c>CLUBCYCLE_PYTHON</c>, <c>CLUBCYCLE_NODE</c> and <c>CLUBCYCLE_KHAL</c> name others than the system's.
/// </summary>
internal static class FeedReaders
{
    public const string Python = "icalendar";
    public const string Libical = "libical";
    public const string IcalJs = "ical.js";

    private static readonly string Folder = Find();

    private static string PythonProgram => Environment.GetEnvironmentVariable("CLUBCYCLE_PYTHON") ?? "/usr/bin/python3";

    private static string NodeProgram => Environment.GetEnvironmentVariable("CLUBCYCLE_NODE") ?? "node";

    private static string KhalProgram => Environment.GetEnvironmentVariable("CLUBCYCLE_KHAL") ?? "khal";

    /// <summary>The events of each file, as <see cref="Line"/> writes them.</summary>
    public static IReadOnlyList<IReadOnlyList<string>> Read(string reader, IReadOnlyList<string> files)
    {
        var lines = reader switch
        {
            Python => Run(Need(PythonProgram, "Install python3-icalendar.", "-c", "import icalendar"), [Path.Combine(Folder, "read_feed.py"), .. files]),
            Libical => Run(Need(PythonProgram, "Install libical3.", "-c", "import ctypes; ctypes.CDLL('libical.so.3')"), [Path.Combine(Folder, "read_feed_libical.py"), .. files]),
            IcalJs => Run(NeedIcalJs(), [Path.Combine(Folder, "read_feed.mjs"), .. files]),
            _ => throw new ArgumentOutOfRangeException(nameof(reader), reader, "Not a reader."),
        };
        return ByNumber(lines, files.Count);
    }

    /// <summary>What a calendar that keeps events by UID holds after each poll: uid, start, end, status, place, title. It fails when a stamp goes back or stays while its event changes.</summary>
    public static IReadOnlyList<IReadOnlyList<string>> Poll(IReadOnlyList<string> files) =>
        ByNumber(Run(NeedIcalJs(), [Path.Combine(Folder, "subscriber.mjs"), .. files]), files.Count);

    public static string[] Khal(params IReadOnlyList<string> arguments) => Run(Need(KhalProgram, "Install khal.", "--version"), arguments);

    /// <summary>An event as a reader must find it.</summary>
    public static string Line(FeedEvent one) => string.Join('\t',
        one.Uid,
        one.DayOnly ? Day(one.Start.Date) : InstantPattern.General.Format(one.StartsAt),
        one.DayOnly ? Day(one.Start.Date.PlusDays(1)) : InstantPattern.General.Format(one.EndsAt),
        one.Sequence.ToString(CultureInfo.InvariantCulture),
        InstantPattern.General.Format(one.LastChanged),
        one.Cancelled ? "CANCELLED" : "CONFIRMED",
        string.Join('|', one.Categories),
        one.ReminderMinutes?.ToString(CultureInfo.InvariantCulture) ?? "",
        one.Place ?? "",
        one.Title);

    private static string Day(LocalDate day) => LocalDatePattern.Iso.Format(day);

    private static string NeedIcalJs() => Directory.Exists(Path.Combine(Folder, "node_modules", "ical.js"))
        ? Need(NodeProgram, "Install nodejs.", "--version")
        : Need("", $"Run npm ci --prefix {Folder}.");

    /// <summary>Skips the test where the program is missing; with CI=true it fails.</summary>
    private static string Need(string program, string mend, params string[] arguments)
    {
        var available = program.Length > 0 && Works(program, arguments);
        if (!available && string.Equals(Environment.GetEnvironmentVariable("CI"), "true", StringComparison.OrdinalIgnoreCase))
        {
            Assert.Fail($"A calendar reader is missing. {mend} With CI=true this check must run.");
        }

        Assert.SkipUnless(available, $"A calendar reader is missing. {mend}");
        return program;
    }

    private static List<List<string>> ByNumber(IEnumerable<string> lines, int count)
    {
        var numbered = lines.Where(line => line.Length > 0).Select(line => line.Split('\t', 2)).ToLookup(line => int.Parse(line[0], CultureInfo.InvariantCulture), line => line[1]);
        return [.. Enumerable.Range(0, count).Select(n => numbered[n].ToList())];
    }

    private static bool Works(string program, string[] arguments)
    {
        try
        {
            using var process = Start(program, arguments);
            _ = process.StandardError.ReadToEndAsync();
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

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "ClubCycle.sln")))
            {
                return Path.Combine(folder.FullName, "tests", "ClubCycle.Calendars.Tests", "Outside");
            }
        }

        throw new InvalidOperationException($"ClubCycle.sln is not above {AppContext.BaseDirectory}.");
    }
}
