using System.Text;
using ClubCycle.Calendars.FixtureFiles;
using ClubCycle.Planning;
using NodaTime;

namespace ClubCycle.Calendars.Tests.FixtureFiles;

/// <summary>Files as clubs upload them, and short words for what was read.</summary>
internal static class Files
{
    public static readonly DateTimeZone Lisbon = A.Zone("Europe/Lisbon");

    /// <summary>A calendar with 4,900 plain entries, about the largest that is read.</summary>
    public static readonly byte[] Large = Calendar([.. Enumerable.Range(0, 4_900).SelectMany(i => new[] { "BEGIN:VEVENT", $"UID:{i}", "SUMMARY:HC Delta", "DTSTART:20260912T140000", "END:VEVENT" })]);

    public static byte[] Utf8(string text) => Encoding.UTF8.GetBytes(text);

    /// <summary>A calendar with one entry that has these lines, starting on 12 September 2026 unless they say otherwise.</summary>
    public static byte[] Entry(params string[] lines) => Calendar(
    [
        "BEGIN:VEVENT", "UID:one", "SUMMARY:HC Delta",
        .. lines.Any(line => line.StartsWith("DTSTART", StringComparison.Ordinal)) ? Array.Empty<string>() : ["DTSTART:20260912T140000"],
        .. lines,
        "END:VEVENT",
    ]);

    public static byte[] Calendar(params string[] lines) => Lines(["BEGIN:VCALENDAR", "VERSION:2.0", .. lines, "END:VCALENDAR"]);

    public static byte[] Lines(params string[] lines) => Utf8(string.Join("\r\n", lines) + "\r\n");

    /// <summary>Reads with the mapping that the look guesses.</summary>
    public static Result<FixtureFile> ReadAsGuessed(byte[] bytes) =>
        !FixtureCsv.Look(bytes).TryGet(out var look, out var problems) ? new Result<FixtureFile>.Failed(problems)
        : look.Guess is { } guess ? FixtureCsv.Read(bytes, guess, Lisbon)
        : new Problem("no-guess", look.Remarks[^1]);

    /// <summary>The problem's code, or "date start opponent" for each match, then "line: reason" for each bad row.</summary>
    public static string Said(Result<FixtureFile> result) => result.TryGet(out var file, out var problems)
        ? string.Join("; ", [.. file.Good.Take(4).Select(Said), .. file.Good.Count > 4 ? [$"{file.Good.Count} in all"] : Array.Empty<string>(), .. file.Bad.Take(4).Select(bad => $"{bad.Line}: {bad.Reason}")])
        : problems[0].Code;

    public static string Said(ReadFixture fixture) => string.Join(
        ' ',
        new[] { fixture.Date.ToString("uuuu-MM-dd", null), fixture.Start?.ToString("HH:mm", null), fixture.Opponent, fixture.Cancelled ? "cancelled" : null }.Where(word => word is not null));
}
