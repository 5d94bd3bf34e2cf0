using System.Text;

namespace ClubCycle.Calendars.Tests.FixtureFiles;

/// <summary>Files that are broken, by accident or on purpose: each gives a reason or the right matches, at once.</summary>
[Collection(nameof(Timed))]
public sealed class HostileCsvTests
{
    private const string Head = "Date;Start;Opponent\n";
    private const string Row = "2026-09-12;14:30;Delta\n";
    private const string Delta = "2026-09-12 14:30 Delta";
    private const string LoneQuote = "A quotation mark in this row has no partner. Remove it, or add the second one.";

    private static readonly Dictionary<string, (byte[] Bytes, string Said)> Cases = new()
    {
        ["empty"] = ([], "file.empty"),
        ["one byte"] = ("x"u8.ToArray(), "no-guess"),
        ["only a byte order mark"] = ([0xEF, 0xBB, 0xBF], "file.empty"),
        ["only a UTF-16 mark"] = ([0xFF, 0xFE], "file.empty"),
        ["only blanks"] = (Files.Utf8(" \n\t\n\r\n"), "file.empty"),
        ["only delimiters"] = (Files.Utf8(";;;\n;;;\n"), "file.empty"),
        ["only a separator line"] = (Files.Utf8("sep=;\n"), "file.empty"),
        ["UTF-16 little endian"] = ([0xFF, 0xFE, .. Encoding.Unicode.GetBytes(Head + Row)], Delta),
        ["UTF-16 big endian"] = ([0xFE, 0xFF, .. Encoding.BigEndianUnicode.GetBytes(Head + Row)], Delta),
        ["UTF-16 cut in the middle of a letter"] = ([0xFF, 0xFE, .. Encoding.Unicode.GetBytes(Head + Row), 0x41], "2026-09-12 14:30 Delta; 3: \"\uFFFD\" is not a date in numbers. Write it like 2026-09-12 or 12.09.2026."),
        ["UTF-16 without a mark"] = (Encoding.Unicode.GetBytes(Head + Row), "file.not-text"),
        ["UTF-32 little endian"] = ([0xFF, 0xFE, 0, 0, .. Encoding.UTF32.GetBytes(Head + Row)], Delta),
        ["UTF-32 big endian"] = ([0, 0, 0xFE, 0xFF, .. new UTF32Encoding(true, false).GetBytes(Head + Row)], Delta),
        ["Latin-1"] = (Encoding.Latin1.GetBytes(Head + "2026-09-12;;Évora\n"), "2026-09-12 Évora"),
        ["UTF-8 with one stray byte"] = ([.. Files.Utf8(Head + "2026-09-12;;Del"), 0xE9, .. Files.Utf8("ta\n")], "2026-09-12 Deléta"),
        ["overlong UTF-8"] = ([.. Files.Utf8(Head + "2026-09-12;;Del"), 0xC0, 0xAF, .. Files.Utf8("ta\n")], "2026-09-12 DelÀ¯ta"),
        ["a byte that Windows-1252 does not know"] = ([.. Files.Utf8(Head + Row + "2026-09-13;;Del"), 0x81, 0xE9, .. Files.Utf8("ta\n")], Delta + "; 3: The opponent holds a line break or an invisible control character. Type it again in one line."),
        ["a NUL in a name"] = (Files.Utf8(Head + Row + "2026-09-13;;Del\0ta\n"), Delta + "; 3: The opponent holds a line break or an invisible control character. Type it again in one line."),
        ["a NUL in a date"] = (Files.Utf8(Head + Row + "2026-09-\013;;Echo\n"), Delta + "; 3: \"2026-09-·13\" is not a date in numbers. Write it like 2026-09-12 or 12.09.2026."),
        ["nothing but NULs"] = (new byte[10_000], "file.not-text"),
        ["CR only"] = (Files.Utf8((Head + Row).Replace('\n', '\r')), Delta),
        ["mixed line ends"] = (Files.Utf8("Date;Start;Opponent\r2026-09-12;14:30;Delta\n2026-09-13;;Echo\r\n2026-09-14;;Foxtrot"), Delta + "; 2026-09-13 Echo; 2026-09-14 Foxtrot"),
        ["no last line end"] = (Files.Utf8((Head + Row).TrimEnd()), Delta),
        ["only headers"] = (Files.Utf8(Head), "no-guess"),
        ["10,000 columns"] = (Files.Utf8(string.Join(';', Enumerable.Repeat("Date", 10_000)) + "\n" + string.Join(';', Enumerable.Repeat("2026-09-12", 10_000))), "file.too-many-columns"),
        ["one line of 5 MB"] = (Encoding.ASCII.GetBytes(new string('x', 5_000_000)), "file.too-large"),
        ["one line of 1 MB"] = (Files.Utf8(Head + "2026-09-12;14:30;" + new string('x', 1_000_000)), "2: The opponent is longer than 100 characters. Shorten it."),
        ["one cell of 1 MB of combining marks"] = (Files.Utf8(Head + "2026-09-12;14:30;e" + new string('\u0301', 500_000)), "2: The opponent is longer than 100 characters. Shorten it."),
        ["a million delimiters"] = (Files.Utf8(new string(';', 1_000_000)), "file.empty"),
        ["a million quotation marks"] = (Files.Utf8(Head + Row + new string('"', 999_999)), Delta + "; 3: " + LoneQuote),
        ["500,000 blank lines"] = (Files.Utf8(Head + new string('\n', 500_000) + Row), Delta),
        ["6,000 rows"] = (Files.Utf8(Head + string.Concat(Enumerable.Repeat(Row, 6_000))), "file.too-many-rows"),
        ["a quotation mark that never closes"] = (Files.Utf8(Head + Row + "2026-09-13;;\"Echo\n2026-09-14;;Foxtrot\n"), Delta + "; 2026-09-14 Foxtrot; 3: " + LoneQuote),
        ["two quotation marks that never close"] = (Files.Utf8(Head + "2026-09-13;;\"Echo\n" + Row + "2026-09-14;;\"Foxtrot\n"), Delta + "; 2: " + LoneQuote + "; 4: " + LoneQuote),
        ["one that never closes behind one inside a name"] = (Files.Utf8("Date;Opponent;Start\n2026-09-13;Echo\" 5;\"\n2026-09-12;Delta;14:30\n"), "2026-09-13 Echo\" 5; " + Delta),
        ["a quotation mark inside a name"] = (Files.Utf8(Head + "2026-09-13;;Echo\" 5\n" + Row), "2026-09-13 Echo\" 5; " + Delta),
        ["a lone quotation mark in every line"] = (Files.Utf8(Head + string.Concat(Enumerable.Range(0, 4_001).Select(_ => "2026-09-13;;\"ab\n"))), "2: " + LoneQuote + "; 3: " + LoneQuote + "; 4: " + LoneQuote + "; 5: " + LoneQuote),
        ["120,000 lines of quotation marks that open again"] = (Files.Utf8(Head + string.Concat(Enumerable.Repeat("\"\"\"\n\"x\"\"\n", 60_000))), "file.too-many-rows"),
        ["duplicate headers"] = (Files.Utf8("Date;Date;Opponent;Opponent\n2026-09-12;2026-09-13;Delta;Echo\n"), "2026-09-12 Delta"),
        ["a zip named .csv"] = ([.. "PK"u8, 3, 4, .. new byte[100]], "file.workbook"),
        ["an old workbook"] = ([0xD0, 0xCF, 0x11, 0xE0, 0xA1, 0xB1, 0x1A, 0xE1, .. new byte[500]], "file.not-text"),
        ["a gzip"] = ([0x1F, 0x8B, 8, 0, 1, 2, 3, 4, 5, 6, 7, 9, 200, 201, 202, 203, 204, 205, 206, 207, 208, 209], "no-guess"),
        ["decimal comma"] = (Files.Utf8(Head + "2026-09-12;14,5;Delta\n"), "2: \"14,5\" is not a time of day. Write it like 19:30."),
        ["sep= with a strange delimiter"] = (Files.Utf8("sep=~\nDate~Start~Opponent\n2026-09-12~14:30~Delta\n"), Delta),
        ["sep= with a quotation mark"] = (Files.Utf8("sep=\"\n" + Head + Row), "3: \"2026-09-12;14:30;Delta\" is not a date in numbers. Write it like 2026-09-12 or 12.09.2026."),
        ["formulas"] = (Files.Utf8(Head + "2026-09-12;14:30;=cmd|' /C calc'!A0\n=1+1;;@SUM(A1)\n"), "2026-09-12 14:30 =cmd|' /C calc'!A0; 3: \"=1+1\" is not a date in numbers. Write it like 2026-09-12 or 12.09.2026."),
        ["direction override and zero width"] = (Files.Utf8(Head + "2026-09-12;;\u202Eatled\u200B\n"), "2026-09-12 \u202Eatled\u200B"),
        ["an emoji family"] = (Files.Utf8(Head + "2026-09-12;;👨‍👩‍👧\n"), "2026-09-12 👨‍👩‍👧"),
        ["a lone surrogate in UTF-16"] = ([0xFF, 0xFE, .. Encoding.Unicode.GetBytes(Head + "2026-09-12;;D"), 0x00, 0xD8, .. Encoding.Unicode.GetBytes("elta\n")], "2026-09-12 D\uFFFDelta"),
        ["a calendar named .csv"] = (Files.Entry(), "no-guess"),
        ["a web page"] = (Files.Utf8("<!DOCTYPE html>\n<html><body>Not found</body></html>\n"), "no-guess"),
    };

    public static TheoryData<string> Names => [.. Cases.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public Task Nothing_breaks_and_the_answer_is_clear(string name) => Timed.IsQuickAsync(() =>
    {
        Assert.Equal(Cases[name].Said, Files.Said(Files.ReadAsGuessed(Cases[name].Bytes)));
        return Task.CompletedTask;
    });
}
