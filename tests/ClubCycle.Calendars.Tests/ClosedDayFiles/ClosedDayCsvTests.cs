using System.Globalization;
using System.Text;
using ClubCycle.Calendars.ClosedDayFiles;
using ClubCycle.Calendars.Sheets;
using ClubCycle.Planning;

namespace ClubCycle.Calendars.Tests.ClosedDayFiles;

public sealed class ClosedDayCsvTests
{
    private const string Head = "First day;Last day;Why\n";
    private const string Easter = "2027-03-22;2027-04-02;Easter holidays\n";
    private const string SaidEaster = "2027-03-22 2027-04-02 Easter holidays";
    private const string Control = "The reason holds a line break or an invisible control character. Type it again in one line.";
    private const string Lone = "A quotation mark in this row has no partner. Remove it, or add the second one.";

    private static readonly Dictionary<string, (byte[] Bytes, string Said)> Cases = new()
    {
        ["empty"] = ([], "file.empty"),
        ["one byte"] = ("x"u8.ToArray(), "no-guess"),
        ["only a byte order mark"] = ([0xEF, 0xBB, 0xBF], "file.empty"),
        ["UTF-8 with a mark"] = ([0xEF, 0xBB, 0xBF, .. Utf8(Head + Easter)], SaidEaster),
        ["UTF-16 little endian"] = ([0xFF, 0xFE, .. Encoding.Unicode.GetBytes(Head + Easter)], SaidEaster),
        ["UTF-16 without a mark"] = (Encoding.Unicode.GetBytes(Head + Easter), "file.not-text"),
        ["Windows-1252"] = (Encoding.Latin1.GetBytes("Von;Bis;Ferien\n01.08.2027;15.08.2027;Größte Hitze\n"), "2027-08-01 2027-08-15 Größte Hitze"),
        ["a NUL in the reason"] = (Utf8(Head + Easter + "2027-05-01;;La\0bour\n"), SaidEaster + "; 3: " + Control),
        ["a tab in the reason"] = (Utf8(Head + Easter + "2027-05-01;;\"La\tbour\"\n"), SaidEaster + "; 3: " + Control),
        ["a NUL in a date"] = (Utf8(Head + Easter + "2027-05-\001;;x\n"), SaidEaster + "; 3: \"2027-05-·01\" is not a date in numbers. Write it like 2026-09-12 or 12.09.2026."),
        ["CR only"] = (Utf8((Head + Easter).Replace('\n', '\r')), SaidEaster),
        ["no last line end"] = (Utf8((Head + Easter).TrimEnd()), SaidEaster),
        ["only headers"] = (Utf8(Head), "no-guess"),
        ["no headers"] = (Utf8(Easter), SaidEaster),
        ["commas and one column"] = (Utf8("date\n2027-05-01\n"), "2027-05-01 2027-05-01 closed"),
        ["tabs"] = (Utf8((Head + Easter).Replace(';', '\t')), SaidEaster),
        ["a separator line"] = (Utf8("sep=|\n" + (Head + Easter).Replace(';', '|')), SaidEaster),
        ["the last day before the first"] = (Utf8(Head + Easter + "2027-05-02;2027-05-01;x\n"), SaidEaster + "; 3: The closed days end before they start. Swap the two dates."),
        ["longer than a year"] = (Utf8(Head + Easter + "2027-05-02;2028-05-02;x\n"), SaidEaster + "; 3: The closed days are longer than a year. Check the year of both dates, or enter them in parts."),
        ["a year by one day less"] = (Utf8(Head + "2027-05-02;2028-05-01;x\n"), "2027-05-02 2028-05-01 x"),
        ["a day that does not exist"] = (Utf8(Head + Easter + "2027-02-29;;x\n"), SaidEaster + "; 3: 29 Feb 2027 does not exist. Correct the date."),
        ["29 February of a leap year"] = (Utf8(Head + "2028-02-29;;x\n"), "2028-02-29 2028-02-29 x"),
        ["a year of two digits"] = (Utf8(Head + Easter + "01.05.27;;x\n"), SaidEaster + "; 3: The year 27 is too short. Write all four digits, such as 2027."),
        ["a year of another calendar"] = (Utf8(Head + Easter + "2570-05-01;;x\n"), SaidEaster + "; 3: The year 2570 lies outside 2000 to 2099. Write the year of the common calendar."),
        ["Arabic digits"] = (Utf8(Head + Easter + "٢٠٢٧-٠٥-٠١;;x\n"), SaidEaster + "; 3: The date is not written with the digits 0 to 9. Write it like 2026-09-12."),
        ["no first day"] = (Utf8(Head + Easter + ";2027-05-01;x\n"), SaidEaster + "; 3: There is no date. Enter one, or delete the row."),
        ["a last day that is a word"] = (Utf8(Head + Easter + "2027-05-01;summer;x\n"), SaidEaster + "; 3: \"summer\" is not a date in numbers. Write it like 2026-09-12 or 12.09.2026."),
        ["100 letters"] = (Utf8(Head + "2027-05-01;;" + new string('x', 100) + "\n"), "2027-05-01 2027-05-01 " + new string('x', 100)),
        ["101 letters"] = (Utf8(Head + Easter + "2027-05-01;;" + new string('x', 101) + "\n"), SaidEaster + "; 3: The reason is longer than 100 characters. Shorten it."),
        ["a megabyte of one letter"] = (Utf8(Head + "2027-05-01;;" + new string('x', 1_000_000)), "2: The reason is longer than 100 characters. Shorten it."),
        ["5 MB"] = (Encoding.ASCII.GetBytes(new string('x', 5_000_000)), "file.too-large"),
        ["10,000 columns"] = (Utf8(string.Join(';', Enumerable.Repeat("2027-05-01", 10_000))), "file.too-many-columns"),
        ["6,000 rows"] = (Utf8(Head + string.Concat(Enumerable.Repeat(Easter, 6_000))), "file.too-many-rows"),
        ["the same row twice"] = (Utf8(Head + Easter + Easter), SaidEaster + "; 3: Line 2 says the same. Delete one of the two."),
        ["a quotation mark that never closes"] = (Utf8(Head + Easter + "2027-05-01;;\"x\n2027-05-02;;y\n"), SaidEaster + "; 2027-05-02 2027-05-02 y; 3: " + Lone),
        ["an emoji at the end of a long header"] = (Utf8("First day;Last day;" + new string('w', 99) + "👨‍👩‍👧\n" + Easter), SaidEaster),
        ["a formula"] = (Utf8(Head + "2027-05-01;;=cmd|' /C calc'!A0\n"), "2027-05-01 2027-05-01 =cmd|' /C calc'!A0"),
        ["a zip named .csv"] = ([.. "PK"u8, 3, 4, .. new byte[100]], "file.workbook"),
        ["month first"] = (Utf8("Start,End,Holiday\n12/20/2027,01/02/2028,Winter\n"), "2027-12-20 2028-01-02 Winter"),
        ["a web page"] = (Utf8("<!DOCTYPE html>\n<html><body>Not found</body></html>\n"), "no-guess"),
    };

    public static TheoryData<string> Names => [.. Cases.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Whatever_the_file_holds_the_answer_is_clear(string name) => Assert.Equal(Cases[name].Said, Said(ReadAsGuessed(Cases[name].Bytes)));

    [Fact]
    public void Columns_are_found_by_their_heads_in_any_order()
    {
        var look = ClosedDayCsv.Look(Utf8("Vakantie;Regio;Einde;Eerste dag\nHerfst;noord;2027-10-24;2027-10-16\n")).OrThrow();

        Assert.Equal(new ClosedDayMapping(3, 2, 0, DateOrder.YearFirst, 2), look.Guess);
    }

    [Fact]
    public void A_guess_between_day_and_month_is_said()
    {
        var look = ClosedDayCsv.Look(Utf8("From,To,Why\n01/02/2027,03/02/2027,Carnival\n")).OrThrow();

        Assert.Equal("The dates do not show whether day or month comes first. 01/02/2027 is read as 1 Feb 2027, day first. Choose month first if that is wrong.", Assert.Single(look.Remarks));
    }

    [Fact]
    public void A_column_that_is_not_there_is_a_problem() => Assert.Equal("file.no-such-column", Said(ClosedDayCsv.Read(Utf8(Head + Easter), new ClosedDayMapping(0, 7, null, DateOrder.DayFirst, 2))));

    private static byte[] Utf8(string text) => Encoding.UTF8.GetBytes(text);

    private static Result<ClosedDayFile> ReadAsGuessed(byte[] bytes) =>
        !ClosedDayCsv.Look(bytes).TryGet(out var look, out var problems) ? new Result<ClosedDayFile>.Failed(problems)
        : look.Guess is { } guess ? ClosedDayCsv.Read(bytes, guess)
        : new Problem("no-guess", look.Remarks[^1]);

    /// <summary>The problem's code, or "first last why" for each good row, then "line: reason" for each bad one.</summary>
    private static string Said(Result<ClosedDayFile> result) => result.TryGet(out var file, out var problems)
        ? string.Join("; ", file.Good.Select(g => string.Create(CultureInfo.InvariantCulture, $"{g.Days.First:uuuu-MM-dd} {g.Days.Last:uuuu-MM-dd} {g.Days.Why}")).Concat(file.Bad.Select(b => $"{b.Line}: {b.Reason}")))
        : problems[0].Code;
}
