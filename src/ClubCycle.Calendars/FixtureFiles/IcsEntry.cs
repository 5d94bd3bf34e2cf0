namespace ClubCycle.Calendars.FixtureFiles;

/// <summary>One VEVENT as lines, without the components inside it.</summary>
/// <param name="Fault">Why its lines cannot be trusted; null when they can.</param>
internal sealed record IcsEntry(int Line, IReadOnlyList<IcsLine> Properties, string? Fault)
{
    public string Raw => Properties.FirstOrDefault(line => line.Name == "SUMMARY")?.Text ?? (Properties.Count > 0 ? Properties[0].Text : "BEGIN:VEVENT");

    public IEnumerable<IcsLine> Named(string name) => Properties.Where(line => line.Name == name);

    public string? Value(string name) => Named(name).FirstOrDefault()?.Value.Trim();
}
