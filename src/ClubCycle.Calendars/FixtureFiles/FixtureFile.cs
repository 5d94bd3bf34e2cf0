using ClubCycle.Calendars.Sheets;
using NodaTime;

namespace ClubCycle.Calendars.FixtureFiles;

/// <summary>What a file of matches says. Every row of the file is either good or bad.</summary>
/// <param name="Good">In the order of the file.</param>
/// <param name="Bad">Rows that were left out, each with its reason, in the order of the file.</param>
/// <param name="Remarks">What a reader should know although nothing was left out by mistake; empty as a rule.</param>
public sealed record FixtureFile(IReadOnlyList<ReadFixture> Good, IReadOnlyList<BadRow> Bad, IReadOnlyList<string> Remarks)
{
    /// <summary>Most rows, entries or dates that are taken from one file.</summary>
    public const int MostRows = Sheets.CsvSheet.MostRows;
}

/// <summary>One match as the file gives it.</summary>
/// <param name="Line">Line of the file on which it starts, from 1.</param>
/// <param name="Date">In the club's zone; the file writes a year between 2000 and 2099.</param>
/// <param name="Start">In the club's zone, to the minute; null when the file does not say.</param>
/// <param name="Opponent">Trimmed, NFC, at most 100 UTF-16 units, without control characters; null when the file does not say.</param>
/// <param name="Note">What the column for home and away says, as the opponent is read.</param>
/// <param name="Place">Trimmed, NFC, as <see cref="Planning.TypedText"/> lets a place of a match pass; null when the file does not say.</param>
/// <param name="SourceKey">The same in every export of the same match, at most 272 bytes of UTF-8; null in a CSV file.</param>
/// <param name="Cancelled">The file says that the match does not take place.</param>
public sealed record ReadFixture(
    int Line,
    LocalDate Date,
    LocalTime? Start = null,
    string? Opponent = null,
    string? Note = null,
    string? Place = null,
    string? SourceKey = null,
    bool Cancelled = false);
