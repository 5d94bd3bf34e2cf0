using System.Text;
using ClubCycle.Calendars.ClosedDayFiles;
using ClubCycle.Calendars.FixtureFiles;
using ClubCycle.Planning;
using ClubCycle.Planning.PlanFiles;
using ClubCycle.Planning.Templates;
using NodaTime;

namespace ClubCycle.Fuzz;

/// <summary>One reader of files that people bring.</summary>
/// <param name="Name">As the command line has it.</param>
/// <param name="Answer">Reads, checks what came out, and gives what kind of answer it was; throws for anything but a good value or problems.</param>
/// <param name="Words">Pieces that the format is made of.</param>
internal sealed record Reader(string Name, Func<byte[], Task<string>> Answer, IReadOnlyList<string> Words, Func<IEnumerable<byte[]>> Corpus)
{
    private static readonly string Root = RootAbove(AppContext.BaseDirectory);

    private static readonly DateTimeZone Zone = DateTimeZoneProviders.Tzdb["Europe/Lisbon"];

    private static readonly string[] AnyText = ["\0", "\r", "\n", "\r\n", "\t", " ", "\"", "\\", "\ufeff", "\u202e", "\u200b", "é", "e\u0301", "😀", "٢", "0", "-1", "1e9", "9999999999", "2147483648", "2026-02-30", "29.02.2100", "24:00", "=1+1"];

    private static readonly Reader[] All =
    [
        new("csv", AnswerSheet, [.. AnyText, ";", ",", "\"\"", "Date", "Datum", "Start", "Opponent", "From", "Until", "Why", "12.09.2026", "9/12/26", "7:30 pm", "2026-09-12T14:00:00Z", "2026-09-12T14:00+14:00"], () => Files("csv")),
        new(
            "ics",
            AnswerCalendar,
            [
                .. AnyText, "BEGIN:VEVENT\r\n", "END:VEVENT\r\n", "BEGIN:VCALENDAR\r\n", "END:VCALENDAR\r\n", "BEGIN:VALARM\r\n", "RRULE:FREQ=", "DAILY", "WEEKLY", "MONTHLY", "YEARLY", "SECONDLY", ";COUNT=", ";UNTIL=", ";INTERVAL=", ";BYDAY=", ";BYMONTHDAY=-31",
                ";BYSETPOS=366", ";BYWEEKNO=53", ";BYYEARDAY=366", ";WKST=SU", "EXDATE:", "RDATE;VALUE=PERIOD:", "RECURRENCE-ID", ";TZID=", "Europe/Berlin", "W. Europe Standard Time", ";VALUE=DATE:", "DTSTART:", "DTEND:", "DURATION:PT", "20260912T140000Z", "00010101", "\r\n ", ":", ";", "UID:",
            ],
            () => Files("ics").Concat(Directory.EnumerateFiles(Path.Combine(Root, "tests", "ClubCycle.Calendars.Tests", "Golden"), "*.ics").Select(File.ReadAllBytes))),
        new(
            "json",
            AnswerJson,
            [.. AnyText, "{", "}", "[", "]", ",", ":", "null", "true", "\"\\ud800\"", "\"\\u0000\"", "-0", "1.5", "1e400", "\"2026-10-10\"", "\"23:59\"", "\"Pacific/Apia\"", "\"monday\"", "\"U8\"", "\"break\"", "\"senior-standard\"", "{\"x\":1}", "[[]]"],
            Requests),
    ];

    public static Reader? Named(string name) => Array.Find(All, r => r.Name == name);

    private static Task<string> AnswerSheet(byte[] bytes)
    {
        var matches = FixtureCsv.Look(bytes).TryGet(out var look, out var problems) && look.Guess is { } guess ? Said(FixtureCsv.Read(bytes, guess, Zone), Kind) : Kind(problems);
        var closed = ClosedDayCsv.Look(bytes).TryGet(out var first, out problems) && first.Guess is { } days ? Said(ClosedDayCsv.Read(bytes, days), Kind) : Kind(problems);
        return Task.FromResult($"{matches} | {closed}");
    }

    private static async Task<string> AnswerCalendar(byte[] bytes) => Said(await FixtureIcs.ReadAsync(bytes, Zone), Kind);

    private static Task<string> AnswerJson(byte[] bytes)
    {
        var text = Encoding.UTF8.GetString(bytes);
        return Task.FromResult(string.Join(
            " | ",
            Again(PlanFile.ReadRequest(text), PlanFile.WriteRequest, PlanFile.ReadRequest),
            Again(PlanFile.ReadPlan(text), PlanFile.WritePlan, PlanFile.ReadPlan),
            Again(TemplateFile.Read(text), TemplateFile.Write, TemplateFile.Read)));

        static string Again<T>(Result<T> read, Func<T, string> write, Func<string, Result<T>> reader) => Said(read, value =>
        {
            var written = write(value);
            return write(reader(written).OrThrow()) == written ? "read" : throw new InvalidOperationException("What was read and written reads as something else.");
        });
    }

    private static string Kind(FixtureFile file)
    {
        foreach (var match in file.Good)
        {
            Must(match.Line >= 1 && match.Date.Year is >= 2000 and <= 2100, $"a match on line {match.Line} on {match.Date}");
            Must(match.Opponent is not { Length: 0 or > 100 } && !(match.Opponent + match.Note + match.Place + match.SourceKey).Any(char.IsControl), $"the text of the match on line {match.Line}");
        }

        return Kind(file.Good.Count, file.Bad.Select(b => (b.Line, b.Reason)), file.Remarks);
    }

    private static string Kind(ClosedDayFile file)
    {
        foreach (var days in file.Good)
        {
            Must(days.Line >= 1 && days.Days.Problems().Count == 0, $"closed days on line {days.Line} that no store takes");
        }

        return Kind(file.Good.Count, file.Bad.Select(b => (b.Line, b.Reason)), file.Remarks);
    }

    /// <summary>Numbers apart, the words of the reasons are what a file of another kind gives.</summary>
    private static string Kind(int good, IEnumerable<(int Line, string Why)> bad, IReadOnlyList<string> remarks)
    {
        var reasons = bad.ToList();
        Must(reasons.All(r => r.Line >= 1 && r.Why.Length > 0), "a row that was left out without its line or reason");
        return $"{Math.Min(good, 5)} {string.Join('+', reasons.Select(r => Shape(r.Why)).Distinct().Order(StringComparer.Ordinal).Take(4))} {string.Join('+', remarks.Select(Shape).Distinct().Order(StringComparer.Ordinal).Take(3))}";
    }

    private static string Kind(IReadOnlyList<Problem> problems)
    {
        Must(problems.All(p => p.Code.Contains('.') && p.Message.Length > 0), "a problem without code or message");
        return string.Join('+', problems.Select(p => p.Code).Distinct().Order(StringComparer.Ordinal).Take(4));
    }

    private static string Said<T>(Result<T> result, Func<T, string> kind)
    {
        if (result.TryGet(out var value, out var problems))
        {
            return kind(value);
        }

        Must(problems.Count > 0, "neither a value nor a problem");
        return Kind(problems);
    }

    private static string Shape(string sentence) => string.Concat(sentence.TakeWhile(c => c is not ('"' or ':')).Where(c => !char.IsDigit(c)).Take(40));

    private static void Must(bool holds, string what)
    {
        if (!holds)
        {
            throw new InvalidOperationException($"The answer holds {what}.");
        }
    }

    private static IEnumerable<byte[]> Files(string folder) => Directory.EnumerateFiles(Path.Combine(Root, "tests", "ClubCycle.Fuzz", "Corpus", folder)).Order(StringComparer.Ordinal).Select(File.ReadAllBytes);

    /// <summary>The golden requests, one with a template and the start of a published plan, the built-in templates, and the start of a plan.</summary>
    private static IEnumerable<byte[]> Requests()
    {
        foreach (var file in Directory.EnumerateFiles(Path.Combine(Root, "tests", "ClubCycle.Planning.Tests", "PlanFiles", "Golden"), "*.request.json").Order(StringComparer.Ordinal))
        {
            var request = PlanFile.ReadRequest(File.ReadAllText(file)).OrThrow();
            var plan = AnnualPlanner.Plan(request).OrThrow();
            var start = plan with { Weeks = [.. plan.Weeks.Take(2)], Sessions = [.. plan.Sessions.Take(6)], Findings = [.. plan.Findings.Take(2)] };
            yield return File.ReadAllBytes(file);
            yield return Encoding.UTF8.GetBytes(PlanFile.WritePlan(start));
            yield return Encoding.UTF8.GetBytes(PlanFile.WriteRequest(request with { Published = start, PlanFrom = plan.Cycle.Start.PlusDays(7) }));
        }

        foreach (var template in BuiltInTemplates.All.Take(2))
        {
            yield return Encoding.UTF8.GetBytes(TemplateFile.Write(template));
        }
    }

    private static string RootAbove(string folder) =>
        File.Exists(Path.Combine(folder, "ClubCycle.sln")) ? folder : RootAbove(Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("This does not run below ClubCycle.sln."));
}
