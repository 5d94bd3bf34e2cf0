using ClubCycle.Calendars.FixtureFiles;
using ClubCycle.Planning;
using CsCheck;

namespace ClubCycle.Calendars.Tests.FixtureFiles;

/// <summary>Good files with a few bytes changed: nothing throws, and what is good keeps its promises.</summary>
public sealed class AnyBytesTests
{
    private static readonly byte[] Sheet = Files.Utf8("Date;Start;Opponent;H/A;Venue\r\n12.09.2026;14:30;\"Delta; Lower Town\";Home;\"Pitch 1; north\"\r\n2026-09-19;7:30 pm;Évora;away;ملعب\r\n\"26.09.2026\";;Echo;\r\n");

    private static readonly byte[] Calendar = Files.Calendar(
        "BEGIN:VEVENT", "UID:one", "SUMMARY:Delta", "DTSTART;TZID=Europe/Berlin:20260912T140000", "RRULE:FREQ=WEEKLY;COUNT=3;BYDAY=SA", "EXDATE;TZID=Europe/Berlin:20260919T140000", "END:VEVENT",
        "BEGIN:VEVENT", "UID:one", "SUMMARY:Delta", "RECURRENCE-ID;TZID=Europe/Berlin:20260926T140000", "DTSTART:20260926T150000Z", "STATUS:CANCELLED", "END:VEVENT",
        "BEGIN:VEVENT", "UID:two", "SUMMARY:Évora", "LOCATION:Pitch 1\\, north\\nUpper Street 2", "DTSTART;VALUE=DATE:20260913", "RDATE;VALUE=DATE:20260920,20260927", "SEQUENCE:3", "END:VEVENT");

    [Fact]
    public void A_sheet_never_throws() => Changed(Sheet).Sample(bytes => Files.ReadAsGuessed(bytes) is not Result<FixtureFile>.Ok ok || ok.Value.Good.All(Holds));

    [Fact]
    public Task A_calendar_never_throws() => Changed(Calendar).SampleAsync(async bytes =>
        await FixtureIcs.ReadAsync(bytes, Files.Lisbon, TimeSpan.FromMinutes(1), TestContext.Current.CancellationToken) is not Result<FixtureFile>.Ok ok || ok.Value.Good.All(Holds));

    private static bool Holds(ReadFixture read) =>
        read.Line >= 1
        && read.Date.Year is >= 2000 and <= 2100
        && read.Opponent is not { Length: 0 or > 100 }
        && !(read.Opponent + read.Note + read.SourceKey + read.Place).Any(char.IsControl)
        && TypedText.LineProblem(read.Place, Planning.Seasons.Fixture.LongestPlace, "place", "place", "") is null
        && (read.Opponent is null || (read.Opponent.IsNormalized() && read.Opponent == read.Opponent.Trim()));

    /// <summary>Up to eight bytes replaced, doubled or taken out.</summary>
    private static Gen<byte[]> Changed(byte[] file) => Gen.Select(Gen.Int[0, file.Length - 1], Gen.Byte, Gen.Int[0, 2]).Array[0, 8].Select(changes =>
    {
        var bytes = file.ToList();
        foreach (var (at, value, how) in changes)
        {
            var here = Math.Min(at, bytes.Count - 1);
            switch (how)
            {
                case 0:
                    bytes[here] = value;
                    break;
                case 1:
                    bytes.Insert(here, bytes[here]);
                    break;
                default:
                    bytes.RemoveAt(here);
                    break;
            }
        }

        return bytes.ToArray();
    });
}
