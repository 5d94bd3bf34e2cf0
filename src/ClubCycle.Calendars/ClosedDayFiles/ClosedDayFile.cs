using ClubCycle.Calendars.Sheets;
using ClubCycle.Planning.Seasons;

namespace ClubCycle.Calendars.ClosedDayFiles;

/// <summary>What a file of closed days says. Every row of the file is either good or bad.</summary>
/// <param name="Good">In the order of the file.</param>
/// <param name="Bad">Rows that were left out, each with its reason, in the order of the file.</param>
/// <param name="Remarks">What a reader should know although nothing was left out by mistake; empty as a rule.</param>
public sealed record ClosedDayFile(IReadOnlyList<ReadClosedDays> Good, IReadOnlyList<BadRow> Bad, IReadOnlyList<string> Remarks);

/// <param name="Line">Line of the file on which it starts, from 1.</param>
public sealed record ReadClosedDays(int Line, ClosedDays Days);

/// <summary>A first look at the file, for a person to confirm.</summary>
/// <param name="Headers">One for each column, shortened to be shown.</param>
/// <param name="FirstRows">At most ten, each with as many cells as there are headers. Shortened to be shown.</param>
/// <param name="Guess">Null when no column looks like dates.</param>
/// <param name="Remarks">What was guessed without being sure; empty as a rule.</param>
public sealed record ClosedDayLook(
    string Encoding, char Delimiter, IReadOnlyList<string> Headers, IReadOnlyList<IReadOnlyList<string>> FirstRows, ClosedDayMapping? Guess, IReadOnlyList<string> Remarks);
