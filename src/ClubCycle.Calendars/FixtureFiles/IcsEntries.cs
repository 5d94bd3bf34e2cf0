using ClubCycle.Planning;

namespace ClubCycle.Calendars.FixtureFiles;

/// <summary>Cuts a calendar into its entries and refuses what is too big or too deep, before any library reads it.</summary>
internal static class IcsEntries
{
    public const int MostComponents = 5_000;
    public const int Deepest = 4;

    private const string NoEnd = "The entry has no end (END:VEVENT is missing); the file may have been cut off. Export it again.";

    public static Result<IReadOnlyList<IcsEntry>> Cut(IReadOnlyList<IcsLine> lines)
    {
        var entries = new List<IcsEntry>();
        var open = new Stack<string>();
        var components = 0;
        var (line, depth) = (0, 0);
        List<IcsLine>? properties = null;

        void Close(string? fault)
        {
            if (properties is not null)
            {
                entries.Add(new IcsEntry(line, properties, fault));
            }

            properties = null;
        }

        foreach (var one in lines)
        {
            if (one.Name == "BEGIN")
            {
                var name = one.Value.Trim().ToUpperInvariant();
                if (name == "VEVENT")
                {
                    // An entry never holds another one.
                    while (properties is not null && open.Count >= depth)
                    {
                        open.Pop();
                    }

                    Close(NoEnd);
                    (line, depth, properties) = (one.Number, open.Count + 1, []);
                }

                open.Push(name);
                if (++components > MostComponents)
                {
                    return new Problem("fixture-file.too-many-entries", $"The calendar has more than {MostComponents} entries. Export the squad's own matches of one season only.");
                }

                if (open.Count > Deepest)
                {
                    return new Problem("fixture-file.too-deep", $"Line {one.Number}: the calendar nests its parts more than {Deepest} deep, which no list of matches does. Export it again from another program.");
                }
            }
            else if (one.Name == "END")
            {
                var name = one.Value.Trim().ToUpperInvariant();
                while (open.Contains(name) && open.Pop() != name)
                {
                }

                if (properties is not null && open.Count < depth)
                {
                    Close(name == "VEVENT" ? null : NoEnd);
                }
            }
            else if (properties is not null && open.Count == depth)
            {
                properties.Add(one);
            }
        }

        Close(NoEnd);
        return lines.Any(l => l.Name == "BEGIN" && l.Value.Trim().Equals("VCARD", StringComparison.OrdinalIgnoreCase)) && entries.Count == 0
                ? new Problem("fixture-file.contacts", "These are contacts, not a calendar. Export the calendar as .ics.")
            : !lines.Any(l => l.Name == "BEGIN" && l.Value.Trim().Equals("VCALENDAR", StringComparison.OrdinalIgnoreCase))
                ? new Problem("fixture-file.no-calendar", "The file is no calendar (BEGIN:VCALENDAR is missing). Export the calendar as .ics; lists from a spreadsheet are read as CSV.")
            : entries.Count == 0 ? new Problem("fixture-file.no-entries", "The calendar holds no entries. Check that the right calendar and season were exported.")
            : new Result<IReadOnlyList<IcsEntry>>.Ok(entries);
    }
}
