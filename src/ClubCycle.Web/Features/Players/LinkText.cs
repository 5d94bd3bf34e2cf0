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
        string[] kinds = [.. new[] { (options.Sessions, "sessions"), (options.Practices, "practices"), (options.Matches, "matches") }.Where(k => k.Item1).Select(k => k.Item2)];
        var shown = kinds.Length > 1 ? $"{string.Join(", ", kinds[..^1])} and {kinds[^1]}" : $"{kinds[0]} only";
        return shown
            + (options.Places ? ", with places" : "")
            + (options.DayOnly ? ", days without times" : "")
            + (options.ReminderMinutes is { } minutes ? $", reminder {Before(minutes)}" : "")
            + (options.Language == Language.English ? "" : $", in {options.Language.OwnName()}");
    }

    public const string LanguageHint = "Titles, reasons and exercises come in it. Names, opponents, places and notes stay as they were typed, and the player's page stays in English.";

    public static string Before(int minutes) => minutes switch
    {
        1440 => "a day before",
        60 => "1 hour before",
        > 60 when minutes % 60 == 0 => string.Create(CultureInfo.InvariantCulture, $"{minutes / 60} hours before"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{minutes} minutes before"),
    };

    /// <summary>First name and initial, for a sheet that lies about.</summary>
    public static string ShortName(string player)
    {
        var words = player.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return words.Length > 1 ? $"{words[0]} {StringInfo.GetNextTextElement(words[^1])}." : player.Trim();
    }
}
