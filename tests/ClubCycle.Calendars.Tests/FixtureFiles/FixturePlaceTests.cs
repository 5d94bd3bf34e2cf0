using ClubCycle.Calendars.FixtureFiles;

namespace ClubCycle.Calendars.Tests.FixtureFiles;

/// <summary>Where matches are played, as files say it.</summary>
[Collection(nameof(Timed))]
public sealed class FixturePlaceTests
{
    private const string Long = "Sports park by the old mill, gate 3, second pitch behind the hall, Lower Town, 1234 Northern Riverside";

    [Theory]
    [InlineData("Date;Opponent;Home/Away;Venue", 2, 3)]
    [InlineData("Datum;Gegner;Spielort;Heim/Auswärts", 3, 2)]
    [InlineData("Speeldatum;Tegenstander;Thuis/uit;Veld", 2, 3)]
    [InlineData("Date;Adversaire;Lieu;Domicile", 3, 2)]
    [InlineData("Fecha;Rival;Casa;Campo", 2, 3)]
    public void The_column_of_places_is_found_beside_that_of_home_and_away(string headers, int note, int place)
    {
        var cells = note < place ? "H;Pitch 1" : "Pitch 1;H";

        var guess = FixtureCsv.Look(Files.Utf8($"{headers}\n12.09.2026;Delta;{cells}\n")).OrThrow().Guess!;

        Assert.Equal((note, place), (guess.Note, guess.Place));
    }

    [Theory]
    [InlineData("Home")]
    [InlineData("auswärts")]
    [InlineData("U")]
    public void A_column_that_says_only_whose_ground_it_is_holds_no_places(string cell)
    {
        var file = Files.ReadAsGuessed(Files.Utf8($"Date;Opponent;Venue\n12.09.2026;Delta;{cell}\n")).OrThrow();

        Assert.Equal((cell, null), (file.Good.Single().Note, file.Good.Single().Place));
    }

    [Theory]
    [InlineData(" Pitch 1 ", "Pitch 1")]
    [InlineData("", null)]
    [InlineData("Away", null)]
    [InlineData("Home ground", "Home ground")]
    [InlineData("ملعب 🏑", "ملعب 🏑")]
    [InlineData("E\u0301vora", "\u00C9vora")]
    public void A_place_is_kept_as_people_type_it(string cell, string? place) =>
        Assert.Equal(place, Sheet(cell).Good.Single(read => read.Line == 2).Place);

    [Theory]
    [InlineData("Pitch \0", "control character")]
    [InlineData("Pitch\u0007", "control character")]
    [InlineData("Pitch \u202Eeno", "direction")]
    [InlineData("Pitch \u2066one", "direction")]
    [InlineData("\u200B\u200B", "empty")]
    [InlineData(Long, "use 100 at most")]
    public void A_row_whose_place_cannot_be_kept_is_named(string cell, string reason)
    {
        var bad = Sheet(cell).Bad.Single();

        Assert.Equal(2, bad.Line);
        Assert.Contains(reason, bad.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_place_of_one_megabyte_of_marks_is_refused_at_once()
    {
        var marks = "Pitch e" + new string('\u0301', 400_000);

        await Timed.IsQuickAsync(async () =>
        {
            Assert.Contains("far too long", Sheet(marks).Bad.Single().Reason, StringComparison.Ordinal);
            Assert.Equal("3: Its LOCATION is far too long. Correct it in the calendar and export again.", Files.Said(await Read("LOCATION:" + marks)));
        });
    }

    [Theory]
    [InlineData(@"LOCATION:Pitch 1\, north\; left \\ door", @"Pitch 1, north; left \ door")]
    [InlineData("LOCATION;LANGUAGE=en: Évora 🏑 ", "Évora 🏑")]
    [InlineData(@"LOCATION:Sports park\n\nUpper Street 2\N", "Sports park, Upper Street 2")]
    [InlineData("LOCATION:", null)]
    [InlineData("X-LOCATION:Elsewhere", null)]
    public async Task The_location_of_an_entry_is_the_place(string line, string? place) =>
        Assert.Equal(place, (await Read(line)).OrThrow().Good.Single().Place);

    [Theory]
    [InlineData("LOCATION:" + Long, "use 100 at most")]
    [InlineData("LOCATION:Pitch \u202Eeno", "direction")]
    public async Task A_match_with_an_address_that_cannot_be_kept_comes_without_it_and_the_file_says_so(string line, string reason)
    {
        var file = (await Read(line)).OrThrow();

        Assert.Null(file.Good.Single().Place);
        Assert.Contains(reason, Assert.Single(file.Remarks), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Each_date_of_a_series_has_its_place_and_a_changed_one_its_own()
    {
        var file = (await FixtureIcs.ReadAsync(
            Files.Calendar(
                "BEGIN:VEVENT", "UID:one", "SUMMARY:Delta", "LOCATION:North", "DTSTART:20260912T140000", "RRULE:FREQ=WEEKLY;COUNT=3", "END:VEVENT",
                "BEGIN:VEVENT", "UID:one", "SUMMARY:Delta", "LOCATION:South", "RECURRENCE-ID:20260919T140000", "DTSTART:20260919T140000", "END:VEVENT"),
            Files.Lisbon, TestContext.Current.CancellationToken)).OrThrow();

        Assert.Equal(["North", "South", "North"], file.Good.OrderBy(read => read.Date).Select(read => read.Place));
    }

    /// <summary>A match with this place, and one with another, so that the column is known by its header.</summary>
    private static FixtureFile Sheet(string place) =>
        Files.ReadAsGuessed(Files.Utf8($"Date;Opponent;Venue\n12.09.2026;Delta;{place}\n19.09.2026;Echo;Pitch 9\n")).OrThrow();

    private static Task<Planning.Result<FixtureFile>> Read(string line) => FixtureIcs.ReadAsync(Files.Entry(line), Files.Lisbon, TimeSpan.FromMinutes(1), TestContext.Current.CancellationToken);
}
