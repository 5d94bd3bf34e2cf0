using System.Text;
using ClubCycle.Calendars.FixtureFiles;
using ClubCycle.Calendars.Sheets;
using NodaTime;

namespace ClubCycle.Calendars.Tests.FixtureFiles;

public sealed class FixtureCsvTests
{
    private const string Accented = "Date;Start;Opponent\n2026-09-12;14:30;Atlético Évora\n";

    public static TheoryData<string, byte[]> Encodings => new()
    {
        { "UTF-8", Encoding.UTF8.GetBytes(Accented) },
        { "UTF-8", [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(Accented)] },
        { "UTF-16", [0xFF, 0xFE, .. Encoding.Unicode.GetBytes(Accented)] },
        { "UTF-16", [0xFE, 0xFF, .. Encoding.BigEndianUnicode.GetBytes(Accented)] },
        { "UTF-32", [0xFF, 0xFE, 0, 0, .. Encoding.UTF32.GetBytes(Accented)] },
        { "Windows-1252", Encoding.Latin1.GetBytes(Accented) },
    };

    [Theory]
    [MemberData(nameof(Encodings))]
    public void The_encoding_is_found_and_accents_stay(string encoding, byte[] bytes)
    {
        Assert.Equal(encoding, FixtureCsv.Look(bytes).OrThrow().Encoding);
        Assert.Equal("2026-09-12 14:30 Atlético Évora", Files.Said(Files.ReadAsGuessed(bytes)));
    }

    [Theory]
    [InlineData("Date;Start;Opponent\n2026-09-12;14:30;Delta, Lower Town\n", ';')]
    [InlineData("Date,Start,Opponent\n2026-09-12,14:30,\"Delta, Lower Town\"\n", ',')]
    [InlineData("Date\tStart\tOpponent\n2026-09-12\t14:30\tDelta, Lower Town\n", '\t')]
    [InlineData("Date|Start|Opponent\n2026-09-12|14:30|Delta, Lower Town\n", '|')]
    [InlineData("sep=;\nDate;Start;Opponent\n2026-09-12;14:30;Delta, Lower Town\n", ';')]
    [InlineData("Women 1, season 2026, all matches\n\nDate;Start;Opponent\n2026-09-12;14:30;Delta, Lower Town\n", ';')]
    [InlineData("Date;Start;Opponent;Remarks\n2026-09-12;14:30;Delta, Lower Town;a, b, c, d, e\n", ';')]
    [InlineData("Date,Start,Opponent\n2026-09-12,14:30,\"Delta, Lower Town\",\"a; b; c; d\"\n", ',')]
    [InlineData("SEP=|\r\nDate|Start|Opponent\r\n2026-09-12|14:30|Delta, Lower Town\r\n", '|')]
    public void The_delimiter_is_found(string text, char delimiter)
    {
        Assert.Equal(delimiter, FixtureCsv.Look(Files.Utf8(text)).OrThrow().Delimiter);
        Assert.Equal("2026-09-12 14:30 Delta, Lower Town", Files.Said(Files.ReadAsGuessed(Files.Utf8(text))));
    }

    [Theory]
    [InlineData("Date;Push-back;Opponent;Home/Away")]
    [InlineData("Match date;Time;OPPONENTS;Venue")]
    [InlineData("Datum;Uhrzeit;Gegner;Heim/Auswärts")]
    [InlineData("Speeldatum;Aanvangstijd;Tegenstander;Thuis/uit")]
    [InlineData("Date;Heure;Adversaire;Domicile / extérieur")]
    [InlineData("Fecha;Hora;Rival;Casa")]
    public void Columns_are_found_by_their_headers_in_five_languages(string headers) =>
        Assert.Equal(new CsvMapping(0, 1, 2, 3, null, DateOrder.DayFirst, 2), FixtureCsv.Look(Files.Utf8(headers + "\n12.09.2026;14:30;Delta;H\n")).OrThrow().Guess);

    [Fact]
    public void Columns_may_stand_in_any_order_below_a_title() =>
        Assert.Equal(
            new CsvMapping(2, 1, 0, null, null, DateOrder.DayFirst, 4),
            FixtureCsv.Look(Files.Utf8("Women 1\n\nOpponent;Time;Date\nDelta;14:30;12.09.2026\n")).OrThrow().Guess);

    [Fact]
    public void Without_headers_the_columns_are_found_by_what_they_hold()
    {
        var look = FixtureCsv.Look(Files.Utf8("Delta;12.09.2026;14:30\nEcho;19.09.2026;16:00\n")).OrThrow();

        Assert.Equal(new CsvMapping(1, 2, null, null, null, DateOrder.DayFirst, 1), look.Guess);
        Assert.Equal(["Column 1", "Column 2", "Column 3"], look.Headers);
    }

    [Fact]
    public void The_look_shows_ten_rows_as_wide_as_the_headers()
    {
        var look = FixtureCsv.Look(Files.Utf8("Date;Opponent;Note\n" + string.Concat(Enumerable.Range(10, 15).Select(day => $"2026-09-{day};Delta\n")))).OrThrow();

        Assert.Equal(10, look.FirstRows.Count);
        Assert.Equal(["2026-09-10", "Delta", ""], look.FirstRows[0]);
    }

    [Fact]
    public void A_weekday_column_is_not_taken_for_the_dates() =>
        Assert.Equal(1, FixtureCsv.Look(Files.Utf8("Day;Date;Opponent\nSat;12.09.2026;Delta\n")).OrThrow().Guess!.Date);

    [Fact]
    public void Two_columns_of_one_name_are_said() =>
        Assert.Contains("More than one column could be meant: \"Date\", \"Date\".", string.Join(' ', FixtureCsv.Look(Files.Utf8("Date;Date;Opponent\n12.09.2026;13.09.2026;Delta\n")).OrThrow().Remarks), StringComparison.Ordinal);

    [Theory]
    [InlineData("03/04/2026", "25/04/2026", DateOrder.DayFirst)]
    [InlineData("03/04/2026", "04/25/2026", DateOrder.MonthFirst)]
    [InlineData("2026-04-03", "2026-04-25", DateOrder.YearFirst)]
    [InlineData("03.04.2026", "04.05.2026", DateOrder.DayFirst)]
    public void The_order_of_day_and_month_follows_from_the_column(string one, string other, DateOrder order)
    {
        var look = FixtureCsv.Look(Files.Utf8($"Date;Opponent\n{one};Delta\n{other};Echo\n")).OrThrow();

        Assert.Equal(order, look.Guess!.Order);
        Assert.Empty(look.Remarks);
    }

    [Fact]
    public void Dates_that_could_be_either_are_read_day_first_and_it_is_said()
    {
        var look = FixtureCsv.Look(Files.Utf8("Date;Opponent\n03/04/2026;Delta\n")).OrThrow();

        Assert.Equal(DateOrder.DayFirst, look.Guess!.Order);
        Assert.Equal(["The dates do not show whether day or month comes first. 03/04/2026 is read as 3 Apr 2026, day first. Choose month first if that is wrong."], look.Remarks);
    }

    [Theory]
    [InlineData("2026-09-12")]
    [InlineData("2026-9-12")]
    [InlineData("12.9.2026")]
    [InlineData("12. 9. 2026")]
    [InlineData("12/09/2026")]
    [InlineData("12-09-2026")]
    [InlineData(" 12/9/2026\u00A0")]
    [InlineData("Sat 12.09.2026")]
    [InlineData("Sa., 12.09.2026")]
    public void A_date_reads_day_first(string cell) => Assert.Equal("2026-09-12", Read(cell));

    [Theory]
    [InlineData("9/12/2026")]
    [InlineData("12.9.2026")]
    [InlineData("2026-09-12")]
    public void A_date_reads_month_first_where_the_mapping_says_so(string cell) => Assert.Equal("2026-09-12", Read(cell, DateOrder.MonthFirst));

    [Theory]
    [InlineData("2026-09-12 14:30", "2026-09-12 14:30")]
    [InlineData("2026-09-12T14:30:00", "2026-09-12 14:30")]
    [InlineData("12.09.2026, 2:30 pm", "2026-09-12 14:30")]
    [InlineData("2026-09-12T14:30:00Z", "2026-09-12 15:30")]
    [InlineData("2026-09-12T23:30:00Z", "2026-09-13 00:30")]
    [InlineData("2026-09-12T14:30+02:00", "2026-09-12 13:30")]
    public void A_date_may_carry_its_time(string cell, string said) => Assert.Equal(said, Read(cell));

    [Theory]
    [InlineData("31/06/2026", "31 Jun 2026 does not exist. Correct the date.")]
    [InlineData("29.02.2027", "29 Feb 2027 does not exist. Correct the date.")]
    [InlineData("12/13/2026", "There is no month 13. If this file writes the month first, choose that order; else correct the date.")]
    [InlineData("12.09.26", "The year 26 is too short. Write all four digits, such as 2026.")]
    [InlineData("1/2/026", "The year 026 is too short. Write all four digits.")]
    [InlineData("12.09.2569", "The year 2569 lies outside 2000 to 2099. Write the year of the common calendar.")]
    [InlineData("0000-01-01", "The year 0000 lies outside 2000 to 2099. Write the year of the common calendar.")]
    [InlineData("9999-12-31", "The year 9999 lies outside 2000 to 2099. Write the year of the common calendar.")]
    [InlineData("31 June", "\"31 June\" is not a date in numbers. Write it like 2026-09-12 or 12.09.2026.")]
    [InlineData("2026-W05-1", "\"2026-W05-1\" is not a date in numbers. Write it like 2026-09-12 or 12.09.2026.")]
    [InlineData("46277", "\"46277\" is not a date in numbers. Write it like 2026-09-12 or 12.09.2026.")]
    [InlineData("١٢/٠٩/٢٠٢٦", "The date is not written with the digits 0 to 9. Write it like 2026-09-12.")]
    [InlineData("๑๒.๐๙.๒๐๒๖", "The date is not written with the digits 0 to 9. Write it like 2026-09-12.")]
    [InlineData("12.09.2026\u0007", "\"12.09.2026·\" is not a date in numbers. Write it like 2026-09-12 or 12.09.2026.")]
    public void A_bad_date_says_why_and_what_to_do(string cell, string reason) => Assert.Equal($"2: {reason}", Read(cell));

    [Fact]
    public void A_date_of_another_order_than_the_years_first_is_refused() =>
        Assert.Equal("2: 12/09/2026 does not begin with the year as the other dates do. Write it as year-month-day, or choose another order of day and month.", Read("12/09/2026", DateOrder.YearFirst));

    [Fact]
    public void A_row_without_a_date_is_refused() => Assert.Equal("2: There is no date. Enter one, or delete the row.", ReadRow(" ;;Delta", DateOrder.DayFirst));

    [Fact]
    public void A_leap_day_reads() => Assert.Equal("2028-02-29", Read("29.02.2028"));

    [Theory]
    [InlineData("19:30", "19:30")]
    [InlineData("19.30", "19:30")]
    [InlineData("9:05", "09:05")]
    [InlineData("19:30:00", "19:30")]
    [InlineData("7:30 pm", "19:30")]
    [InlineData("7.30PM", "19:30")]
    [InlineData("12:15 a.m.", "00:15")]
    [InlineData("12 pm", "12:00")]
    [InlineData("19h30", "19:30")]
    [InlineData("19h", "19:00")]
    [InlineData("19 Uhr", "19:00")]
    [InlineData("19.30 uur", "19:30")]
    public void A_start_reads(string cell, string said) => Assert.Equal($"2026-09-12 {said}", ReadStart(cell));

    [Theory]
    [InlineData("")]
    [InlineData("-")]
    [InlineData("tbc")]
    public void A_start_may_be_unknown(string cell) => Assert.Equal("2026-09-12", ReadStart(cell));

    [Theory]
    [InlineData("24:00")]
    [InlineData("19:60")]
    [InlineData("13 pm")]
    [InlineData("0:30 am")]
    [InlineData("19")]
    [InlineData("19,30")]
    [InlineData("0.8125")]
    [InlineData("noon")]
    public void A_bad_start_says_what_to_do(string cell) => Assert.Equal($"2: \"{cell}\" is not a time of day. Write it like 19:30.", ReadStart(cell));

    [Fact]
    public void A_start_in_other_digits_is_refused() => Assert.Equal("2: The start is not written with the digits 0 to 9. Write it like 19:30.", ReadStart("١٩:٣٠"));

    [Theory]
    [InlineData("  Delta \u00A0", "Delta")]
    [InlineData("Atle\u0301tico", "Atlético")]
    [InlineData("=HYPERLINK(\"\"x\"\")", "=HYPERLINK(\"x\")")]
    [InlineData("O'Neil's XI <b>", "O'Neil's XI <b>")]
    [InlineData("محمد", "محمد")]
    [InlineData("🏑 HC", "🏑 HC")]
    public void An_opponent_stays_as_written(string cell, string opponent) => Assert.Equal($"2026-09-12 {opponent}", ReadOpponent(cell));

    [Theory]
    [InlineData("Del\u0000ta")]
    [InlineData("Del\u001Bta")]
    [InlineData("Del\u0085ta")]
    [InlineData("Del\nta")]
    public void An_opponent_with_a_control_character_is_refused(string cell) =>
        Assert.Equal("2: The opponent holds a line break or an invisible control character. Type it again in one line.", ReadOpponent(cell));

    [Fact]
    public void An_opponent_has_100_characters_at_most()
    {
        Assert.Equal($"2026-09-12 {new string('x', 100)}", ReadOpponent(new string('x', 100)));
        Assert.Equal("2: The opponent is longer than 100 characters. Shorten it.", ReadOpponent(new string('x', 101)));
    }

    [Fact]
    public void Good_rows_stay_beside_bad_ones_and_each_names_its_line()
    {
        var file = Files.ReadAsGuessed(Files.Utf8("Date;Opponent;H/A\n\n12.09.2026;Delta;Home\n31.06.2026;Echo;away\n26.09.2026;Foxtrot\n")).OrThrow();

        Assert.Equal([new ReadFixture(3, new LocalDate(2026, 9, 12), Opponent: "Delta", Note: "Home"), new ReadFixture(5, new LocalDate(2026, 9, 26), Opponent: "Foxtrot")], file.Good);
        Assert.Equal([new BadRow(4, "31.06.2026;Echo;away", "31 Jun 2026 does not exist. Correct the date.")], file.Bad);
    }

    [Fact]
    public void Rows_that_a_quoted_line_break_joins_are_said()
    {
        var file = Files.ReadAsGuessed(Files.Utf8("Date;Opponent;Remarks\n12.09.2026;Delta;\"bring\nshirts\"\n19.09.2026;Echo;\n")).OrThrow();

        Assert.Equal([2, 4], file.Good.Select(fixture => fixture.Line));
        Assert.Equal(["Lines 2 to 3 were read as one row because a cell in quotation marks holds line breaks. Check that no match is missing."], file.Remarks);
    }

    [Fact]
    public void A_column_that_does_not_exist_is_refused() =>
        Assert.Equal("file.no-such-column", Files.Said(FixtureCsv.Read(Files.Utf8(Accented), new CsvMapping(0, 3, null, null, null, DateOrder.DayFirst, 2), Files.Lisbon)));

    private static string Read(string date, DateOrder order = DateOrder.DayFirst) => ReadRow($"\"{date}\";;", order);

    private static string ReadStart(string start) => ReadRow($"2026-09-12;\"{start}\";", DateOrder.DayFirst);

    private static string ReadOpponent(string opponent) => ReadRow($"2026-09-12;;\"{opponent}\"", DateOrder.DayFirst);

    private static string ReadRow(string row, DateOrder order) =>
        Files.Said(FixtureCsv.Read(Files.Utf8($"Date;Start;Opponent\n{row}\n"), new CsvMapping(0, 1, 2, null, null, order, 2), Files.Lisbon));
}
