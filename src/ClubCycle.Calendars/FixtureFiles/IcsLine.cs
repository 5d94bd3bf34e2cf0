namespace ClubCycle.Calendars.FixtureFiles;

/// <summary>A content line of RFC 5545, 3.1, with its folds undone.</summary>
/// <param name="Number">Line of the file on which it starts, from 1.</param>
internal sealed record IcsLine(int Number, string Text)
{
    private readonly int colon = ColonAt(Text);

    /// <summary>Upper case, without parameters.</summary>
    public string Name { get; } = Text[..EndOfName(Text)].ToUpperInvariant();

    /// <summary>Name and parameters: up to the first colon outside quotation marks.</summary>
    public string Head => Text[..colon];

    public string Value => Text[Math.Min(colon + 1, Text.Length)..];

    private static int EndOfName(string text) => text.AsSpan().IndexOfAny(':', ';') is var at and >= 0 ? at : text.Length;

    private static int ColonAt(string text)
    {
        var quoted = false;
        for (var at = 0; at < text.Length; at++)
        {
            quoted ^= text[at] == '"';
            if (text[at] == ':' && !quoted)
            {
                return at;
            }
        }

        return text.Length;
    }
}
