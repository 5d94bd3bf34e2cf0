using System.Globalization;
using ClubCycle.Planning.Feeds;
using ClubCycle.Planning.Languages;

namespace ClubCycle.Web.Features.Players;

/// <summary>Words for links.</summary>
public static class LinkText
{
    /// <summary>What a link's calendar shows, such as "sessions, practices and matches, with places, reminder 1 hour before, in Nederlands".</summary>
    public static string Shows(FeedOptions options)
    {
        string?[] parts =
        [
            Kinds(options),
            options.Places ? Say("with places") : null,
            options.DayOnly ? Say("days without times") : null,
            options.ReminderMinutes is { } minutes ? Say($"reminder {Before(minutes)}") : null,
            options.Language == Language.English ? null : Say($"in {options.Language.OwnName()}"),
        ];
        return string.Join(", ", parts.OfType<string>());
    }

    public static string LanguageHint => Say("Titles, reasons and exercises come in it, and so does the player's page. Names, opponents, places and notes stay as they were typed.");

    public static string Before(int minutes) => minutes switch
    {
        1440 => Say("a day before"),
        60 => Say("1 hour before"),
        > 60 when minutes % 60 == 0 => Say($"{minutes / 60} hours before"),
        _ => Say($"{minutes} minutes before"),
    };

    /// <summary>First name and initial, for a sheet that lies about.</summary>
    public static string ShortName(string player)
    {
        var words = player.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return words.Length > 1 ? $"{words[0]} {StringInfo.GetNextTextElement(words[^1])}." : player.Trim();
    }

    private static string Kinds(FeedOptions options) => Say((options.Sessions, options.Practices, options.Matches) switch
    {
        (true, true, true) => "sessions, practices and matches",
        (true, true, false) => "sessions and practices",
        (true, false, true) => "sessions and matches",
        (false, true, true) => "practices and matches",
        (true, false, false) => "sessions only",
        (false, true, false) => "practices only",
        (false, false, true) => "matches only",
        _ => throw new ArgumentException("A calendar that shows nothing", nameof(options)),
    });
}
