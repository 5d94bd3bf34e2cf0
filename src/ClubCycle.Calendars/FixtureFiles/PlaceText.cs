using ClubCycle.Planning;
using ClubCycle.Planning.Seasons;

namespace ClubCycle.Calendars.FixtureFiles;

/// <summary>Where a match is played, out of a file.</summary>
internal static class PlaceText
{
    /// <summary>As it is kept; null when blank. An address over several lines becomes one line.</summary>
    public static Result<string?> Read(string? text)
    {
        if (text?.Length > 10 * Fixture.LongestPlace)
        {
            return new Problem("fixture.place-too-long", $"The place is far too long; use {Fixture.LongestPlace} characters at most.");
        }

        var line = string.Join(", ", (text ?? "").ReplaceLineEndings("\n").Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries));
        return TypedText.LineProblem(line, Fixture.LongestPlace, "fixture.place", "place", "fixtures.place") is { } unreadable ? unreadable
            : new Result<string?>.Ok(line.Length == 0 ? null : TypedText.Tidy(line));
    }
}
