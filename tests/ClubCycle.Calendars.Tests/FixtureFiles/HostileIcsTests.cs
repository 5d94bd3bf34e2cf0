using System.Text;
using ClubCycle.Calendars.FixtureFiles;

namespace ClubCycle.Calendars.Tests.FixtureFiles;

/// <summary>Calendars that are broken, by accident or on purpose: each gives a reason or the right matches, at once.</summary>
[Collection(nameof(Timed))]
public sealed class HostileIcsTests
{
    private const string Delta = "2026-09-12 14:00 HC Delta";
    private const string Correct = "Correct it in the calendar and export again.";
    private const string Unclear = "3: The way it repeats makes no sense or goes below a day. Enter its dates by hand.";
    private const string TooOften = "3: It repeats more often than daily, or not in a way we know. Enter its dates by hand.";
    private const string NoDate = "3: The way it repeats gives no date at all. Enter its dates by hand.";
    private const string NoEnd = "The entry has no end (END:VEVENT is missing); the file may have been cut off. Export it again.";
    private const string Weekly = "2026-09-12 14:00 HC Delta; 2026-09-19 14:00 HC Delta; 2026-09-26 14:00 HC Delta; 2026-10-03 14:00 HC Delta";
    private const string Daily = "2026-09-12 14:00 HC Delta; 2026-09-13 14:00 HC Delta; 2026-09-14 14:00 HC Delta; 2026-09-15 14:00 HC Delta";

    private static readonly string[] One = ["BEGIN:VEVENT", "UID:one", "SUMMARY:HC Delta", "DTSTART:20260912T140000", "END:VEVENT"];

    private static readonly Dictionary<string, (byte[] Bytes, string Said)> Cases = new()
    {
        ["empty"] = ([], "file.empty"),
        ["one byte"] = ("x"u8.ToArray(), "fixture-file.no-calendar"),
        ["only a byte order mark"] = ([0xEF, 0xBB, 0xBF], "file.empty"),
        ["nothing but NULs"] = (new byte[10_000], "file.not-text"),
        ["a zip named .ics"] = ([.. "PK"u8, 3, 4, .. new byte[100]], "file.workbook"),
        ["2 MB"] = (Encoding.ASCII.GetBytes(new string('x', 2_000_000)), "file.too-large"),
        ["UTF-16"] = ([0xFF, 0xFE, .. Encoding.Unicode.GetBytes(Encoding.UTF8.GetString(Files.Entry()))], Delta),
        ["Latin-1"] = (Encoding.Latin1.GetBytes("BEGIN:VCALENDAR\nBEGIN:VEVENT\nSUMMARY:Évora\nDTSTART:20260912T140000\nEND:VEVENT\nEND:VCALENDAR\n"), "2026-09-12 14:00 Évora"),
        ["CR only"] = (Files.Utf8(Encoding.UTF8.GetString(Files.Entry()).Replace("\r\n", "\r", StringComparison.Ordinal)), Delta),
        ["LF only"] = (Files.Utf8(Encoding.UTF8.GetString(Files.Entry()).Replace("\r\n", "\n", StringComparison.Ordinal)), Delta),
        ["blank lines between"] = (Files.Utf8(Encoding.UTF8.GetString(Files.Entry()).Replace("\r\n", "\r\n\r\n", StringComparison.Ordinal)), "2026-09-12 14:00 HC Delta"),
        ["CR inside a value"] = (Files.Entry("STATUS:CONFIRMED\rSTATUS:CANCELLED"), $"3: Its STATUS holds an invisible control character. {Correct}"),
        ["NUL inside a title"] = (Files.Calendar("BEGIN:VEVENT", "SUMMARY:Del\0ta", "DTSTART:20260912T140000", "END:VEVENT"), $"3: Its SUMMARY holds an invisible control character. {Correct}"),
        ["line break inside a title"] = (Files.Calendar("BEGIN:VEVENT", "SUMMARY:Del\\nta", "DTSTART:20260912T140000", "END:VEVENT"), "3: The title holds a line break or an invisible control character. Type it again in one line."),
        ["title of 300 letters"] = (Files.Calendar("BEGIN:VEVENT", "SUMMARY:" + new string('x', 300), "DTSTART:20260912T140000", "END:VEVENT"), "3: The title is longer than 100 characters. Shorten it."),
        ["title of 70,000 letters"] = (Files.Calendar("BEGIN:VEVENT", "SUMMARY:" + new string('x', 70_000), "DTSTART:20260912T140000", "END:VEVENT"), $"3: Its SUMMARY is far too long. {Correct}"),
        ["fold inside a character"] = ([.. Files.Utf8("BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\nSUMMARY:"), 0xC3, .. Files.Utf8("\r\n "), 0x89, .. Files.Utf8("vora\r\nDTSTART:20260912T140000\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n")], "2026-09-12 14:00 Évora"),
        ["secondly"] = (Files.Entry("RRULE:FREQ=SECONDLY"), TooOften),
        ["minutely"] = (Files.Entry("RRULE:FREQ=MINUTELY;UNTIL=20990101T000000Z"), TooOften),
        ["hourly"] = (Files.Entry("RRULE:FREQ=HOURLY;COUNT=10"), TooOften),
        ["every second of a day"] = (Files.Entry("RRULE:FREQ=DAILY;BYSECOND=0,1,2;BYMINUTE=0,1,2"), Unclear),
        ["no frequency"] = (Files.Entry("RRULE:COUNT=3"), TooOften),
        ["endless weekly"] = (Files.Entry("RRULE:FREQ=WEEKLY"), Weekly + "; 105 in all"),
        ["a billion times"] = (Files.Entry("RRULE:FREQ=DAILY;COUNT=1000000000"), Daily + "; 731 in all"),
        ["more than an integer"] = (Files.Entry("RRULE:FREQ=DAILY;COUNT=100000000000000"), Unclear),
        ["interval 0"] = (Files.Entry("RRULE:FREQ=DAILY;INTERVAL=0"), Unclear),
        ["negative interval"] = (Files.Entry("RRULE:FREQ=DAILY;INTERVAL=-1"), Unclear),
        ["interval 2^31"] = (Files.Entry("RRULE:FREQ=DAILY;INTERVAL=2147483648"), Unclear),
        ["ends before it starts"] = (Files.Entry("RRULE:FREQ=DAILY;UNTIL=20200101T000000Z"), $"3: It stops repeating before its first date. {Correct}"),
        ["ends on a day, starts at a time"] = (Files.Entry("RRULE:FREQ=DAILY;UNTIL=20260913"), "2026-09-12 14:00 HC Delta"),
        ["30 February every year"] = (Files.Entry("RRULE:FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=30"), NoDate),
        ["first of the month and second Sunday"] = (Files.Entry("RRULE:FREQ=MONTHLY;BYMONTHDAY=1;BYDAY=2SU"), NoDate),
        ["day in other digits"] = (Files.Entry("RRULE:FREQ=MONTHLY;BYDAY=٢SU"), $"3: Its RRULE uses digits or letters that dates do not have. {Correct}"),
        ["nonsense in a day"] = (Files.Entry("RRULE:FREQ=MONTHLY;BYDAY=XX,99SU"), "3: The calendar reader could not make sense of this entry. Enter its match by hand."),
        ["two rules"] = (Files.Entry("RRULE:FREQ=DAILY;COUNT=2", "RRULE:FREQ=WEEKLY;COUNT=2"), $"3: It says RRULE more than once. {Correct}"),
        ["rule and the same exception rule"] = (Files.Entry("RRULE:FREQ=DAILY", "EXRULE:FREQ=DAILY"), "3: It uses a rule for exceptions (EXRULE) that is no longer allowed. Enter its dates by hand."),
        ["50,000 exceptions"] = (Files.Entry([.. Enumerable.Repeat("EXDATE:20260913", 50_000)]), $"3: It lists more than 1000 dates. {Correct}"),
        ["200 entries that repeat"] = (Files.Calendar([.. Enumerable.Range(0, 200).SelectMany(i => new[] { "BEGIN:VEVENT", $"UID:{i}", "DTSTART:20260912T140000", "RRULE:FREQ=DAILY", "END:VEVENT" })]), "fixture-file.too-many-repeats"),
        ["90 entries that repeat daily"] = (Files.Calendar([.. Enumerable.Range(0, 90).SelectMany(i => new[] { "BEGIN:VEVENT", $"UID:{i}", "DTSTART:20260912T140000", "RRULE:FREQ=DAILY", "END:VEVENT" })]), "file.too-many-rows"),
        ["90 versions of one entry that repeats daily"] = (Files.Calendar([.. Enumerable.Range(0, 90).SelectMany(i => new[] { "BEGIN:VEVENT", "UID:1", $"SEQUENCE:{i}", "DTSTART:20260912T140000", "RRULE:FREQ=DAILY", "END:VEVENT" })]), "file.too-many-rows"),
        ["90 rules without any date"] = (Files.Calendar([.. Enumerable.Range(0, 90).SelectMany(i => new[] { "BEGIN:VEVENT", $"UID:{i}", "DTSTART:20260912T140000", "RRULE:FREQ=DAILY;BYMONTH=2;BYMONTHDAY=30", "END:VEVENT" })]), "3: The way it repeats gives no date at all. Enter its dates by hand.; 8: The way it repeats gives no date at all. Enter its dates by hand.; 13: The way it repeats gives no date at all. Enter its dates by hand.; 18: The way it repeats gives no date at all. Enter its dates by hand."),
        ["100 rules that look through years for nothing"] = (Files.Calendar([.. Enumerable.Range(0, 100).SelectMany(i => new[] { "BEGIN:VEVENT", $"UID:{i}", "DTSTART:20260912T140000", "RRULE:FREQ=YEARLY;BYDAY=MO,TU,WE,TH,FR,SA;BYSETPOS=366", "END:VEVENT" })]), NoDate + "; 8: The way it repeats gives no date at all. Enter its dates by hand.; 13: The way it repeats gives no date at all. Enter its dates by hand.; 18: The way it repeats gives no date at all. Enter its dates by hand."),
        ["29 February every year"] = (Files.Entry("DTSTART;VALUE=DATE:20280229", "RRULE:FREQ=YEARLY"), "2028-02-29 HC Delta"),
        ["every third year"] = (Files.Entry("RRULE:FREQ=YEARLY;INTERVAL=3;COUNT=2"), Delta),
        ["31st of every month"] = (Files.Entry("DTSTART;VALUE=DATE:20260731", "RRULE:FREQ=MONTHLY;COUNT=4"), "2026-07-31 HC Delta; 2026-08-31 HC Delta; 2026-10-31 HC Delta; 2026-12-31 HC Delta"),
        ["10,000 deep"] = (Files.Calendar([.. Enumerable.Repeat("BEGIN:VEVENTS", 10_000)]), "fixture-file.too-deep"),
        ["10,000 entries one inside the other"] = (Files.Calendar([.. Enumerable.Repeat("BEGIN:VEVENT", 10_000)]), "fixture-file.too-many-entries"),
        ["10,000 entries"] = (Files.Calendar([.. Enumerable.Range(0, 10_000).SelectMany(_ => One)]), "fixture-file.too-many-entries"),
        ["4,900 entries"] = (Files.Large, $"{Delta}; {Delta}; {Delta}; {Delta}; 4900 in all"),
        ["4,900 entries in another zone"] = (Files.Calendar([.. Enumerable.Range(0, 4_900).SelectMany(i => new[] { "BEGIN:VEVENT", $"UID:{i}", "SUMMARY:HC Delta", "DTSTART;TZID=/example.org/1/America/New_York:20260912T090000", "END:VEVENT" })]), $"{Delta}; {Delta}; {Delta}; {Delta}; 4900 in all"),
        ["10,000 properties"] = (Files.Entry([.. Enumerable.Range(0, 10_000).Select(i => $"X-P{i}:1")]), Delta),
        ["10,000 parameters"] = (Files.Entry("DTSTART" + string.Concat(Enumerable.Range(0, 5_000).Select(i => $";X-P{i}=1")) + ":20260912T140000"), $"3: Its DTSTART is far too long. {Correct}"),
        ["a parameter that never closes its quotation mark"] = (Files.Entry("DTSTART;TZID=\"Europe/London:20260912T140000"), $"3: \"\" is not a date between 2000 and 2099. {Correct}"),
        ["UID of 1 MB"] = (Files.Calendar("BEGIN:VEVENT", "UID:" + new string('u', 1_000_000), "SUMMARY:HC Delta", "DTSTART:20260912T140000", "END:VEVENT"), $"3: Its UID is far too long. {Correct}"),
        ["UID of 256 bytes"] = (Files.Calendar("BEGIN:VEVENT", "UID:" + new string('é', 128), "SUMMARY:HC Delta", "DTSTART:20260912T140000", "END:VEVENT"), $"3: Its identifier (UID) is longer than 255 bytes. {Correct}"),
        ["empty UID"] = (Files.Calendar("BEGIN:VEVENT", "UID:", "SUMMARY:HC Delta", "DTSTART:20260912T140000", "END:VEVENT"), Delta),
        ["no start"] = (Files.Calendar("BEGIN:VEVENT", "UID:one", "SUMMARY:HC Delta", "END:VEVENT"), $"3: It has no start (DTSTART). {Correct}"),
        ["two starts"] = (Files.Entry("DTSTART:20260912T140000", "DTSTART:20260913T140000"), $"3: It says DTSTART more than once. {Correct}"),
        ["missing END of the entry"] = (Files.Calendar(["BEGIN:VEVENT", "SUMMARY:Echo", "DTSTART:20260913T140000", .. One]), $"{Delta}; 3: {NoEnd}"),
        ["cut off in the middle"] = (Files.Lines(["BEGIN:VCALENDAR", .. One, "BEGIN:VEVENT", "SUMMARY:Echo", "DTST"]), $"{Delta}; 7: {NoEnd}"),
        ["missing END of the calendar"] = (Files.Lines(["BEGIN:VCALENDAR", .. One]), Delta),
        ["an alarm without its END"] = (Files.Entry("BEGIN:VALARM", "TRIGGER:-PT15M"), Delta),
        ["ENDs without BEGIN"] = (Files.Lines(["END:VEVENT", "END:VCALENDAR", "BEGIN:VCALENDAR", .. One, "END:VEVENT", "END:VCALENDAR"]), Delta),
        ["two calendars"] = (Files.Lines(["BEGIN:VCALENDAR", .. One, "END:VCALENDAR", "BEGIN:VCALENDAR", "BEGIN:VEVENT", "UID:two", "SUMMARY:Echo", "DTSTART;VALUE=DATE:20260913", "END:VEVENT", "END:VCALENDAR"]), Delta + "; 2026-09-13 Echo"),
        ["unknown zone"] = (Files.Entry("DTSTART;TZID=Middle Earth:20260912T140000"), "3: Its time zone \"Middle Earth\" is not known, so its start would be a guess. Export with a named zone such as Europe/London, or enter it by hand."),
        ["path as a zone"] = (Files.Entry("DTSTART;TZID=/../../etc/passwd:20260912T140000"), "3: Its time zone \"/../../etc/passwd\" is not known, so its start would be a guess. Export with a named zone such as Europe/London, or enter it by hand."),
        ["zone that redefines London"] = (Files.Calendar(["BEGIN:VTIMEZONE", "TZID:Europe/London", "BEGIN:STANDARD", "DTSTART:19700101T000000", "TZOFFSETFROM:+0900", "TZOFFSETTO:+0900", "RRULE:FREQ=SECONDLY", "END:STANDARD", "END:VTIMEZONE", "BEGIN:VEVENT", "SUMMARY:HC Delta", "DTSTART;TZID=Europe/London:20260912T140000", "END:VEVENT"]), Delta),
        ["alarm that rings two billion times"] = (Files.Entry("BEGIN:VALARM", "ACTION:PROCEDURE", "TRIGGER:-PT1S", "REPEAT:2000000000", "DURATION:PT1S", "END:VALARM"), Delta),
        ["attachment of 700 KB"] = (Files.Entry("ATTACH;ENCODING=BASE64;VALUE=BINARY:" + new string('A', 700_000)), Delta),
        ["end before start"] = (Files.Entry("DTEND:20260911T140000"), Delta),
        ["negative duration"] = (Files.Entry("DURATION:-PT2H"), Delta),
        ["year 0000"] = (Files.Entry("DTSTART:00000101T140000"), $"3: \"00000101T140000\" is not a date between 2000 and 2099. {Correct}"),
        ["year 9999"] = (Files.Entry("DTSTART:99991231T235959Z"), $"3: \"99991231T235959Z\" is not a date between 2000 and 2099. {Correct}"),
        ["year 0001 every day"] = (Files.Entry("DTSTART:00010101T000000Z", "RRULE:FREQ=DAILY"), $"3: \"00010101T000000Z\" is not a date between 2000 and 2099. {Correct}"),
        ["start in other digits"] = (Files.Entry("DTSTART:٢٠٢٦٠٩١٢"), $"3: Its DTSTART uses digits or letters that dates do not have. {Correct}"),
        ["start at second 60"] = (Files.Entry("DTSTART:20260912T146060"), $"3: \"20260912T146060\" is not a date between 2000 and 2099. {Correct}"),
        ["sequence beyond an integer"] = (Files.Entry("SEQUENCE:99999999999999999999"), Delta),
        ["an extra date in the year 1"] = (Files.Entry("RDATE:20260919T140000,00010101T140000"), $"3: \"00010101T140000\" is not a date between 2000 and 2099. {Correct}"),
        ["an extra date in a hundred years"] = (Files.Entry("RDATE:20260919T140000,20980101T140000"), Delta + "; 2026-09-19 14:00 HC Delta"),
        ["change of a date without its series"] = (Files.Entry("RECURRENCE-ID:20260919T140000"), Delta),
        ["change of all later dates"] = (Files.Entry("RECURRENCE-ID;RANGE=THISANDFUTURE:20260919T140000"), "3: It changes all later dates at once. Enter them by hand."),
        ["a line without a colon"] = (Files.Entry("GARBAGE"), Delta),
        ["a contact"] = (Files.Lines("BEGIN:VCARD", "VERSION:4.0", "FN:Nobody", "END:VCARD"), "fixture-file.contacts"),
        ["JSON"] = (Files.Utf8("[\"vcalendar\",[],[[\"vevent\",[],[]]]]"), "fixture-file.no-calendar"),
        ["XML"] = (Files.Utf8("<icalendar><vcalendar/></icalendar>"), "fixture-file.no-calendar"),
        ["no entries"] = (Files.Calendar(), "fixture-file.no-entries"),
        ["only tasks"] = (Files.Calendar("BEGIN:VTODO", "SUMMARY:Book the bus", "END:VTODO"), "fixture-file.no-entries"),
        ["a CSV file"] = (Files.Utf8("Date;Opponent\n2026-09-12;Delta\n"), "fixture-file.no-calendar"),
        ["lower case"] = (Files.Lines("begin:vcalendar", "begin:vevent", "summary:HC Delta", "dtstart:20260912T140000", "end:vevent", "end:vcalendar"), Delta),
    };

    public static TheoryData<string> Names => [.. Cases.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public Task Nothing_breaks_and_the_answer_is_clear(string name) => Timed.IsQuickAsync(async () =>
    {
        var said = Files.Said(await FixtureIcs.ReadAsync(Cases[name].Bytes, A.Zone("Europe/London"), TimeSpan.FromMinutes(1), TestContext.Current.CancellationToken));

        Assert.Equal(Cases[name].Said, said);
    });
}
