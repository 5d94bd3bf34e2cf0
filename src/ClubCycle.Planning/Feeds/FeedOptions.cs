using System.Globalization;
using ClubCycle.Planning.Languages;

namespace ClubCycle.Planning.Feeds;

/// <summary>What one link's calendar shows of a squad's plan.</summary>
/// <param name="Sessions">Training sessions of the plan.</param>
/// <param name="Places">Where practices and matches take place. Off unless asked for when the players are under 18.</param>
/// <param name="DayOnly">Entries last the whole day and tell no time.</param>
/// <param name="ReminderMinutes">So long before the start the calendar may remind; null for never. Many calendar programs ignore it in calendars that are subscribed to.</param>
/// <param name="Language">What the texts are written in. What people typed stays as it is.</param>
public sealed record FeedOptions(bool Sessions = true, bool Practices = true, bool Matches = true, bool Places = false, bool DayOnly = false, int? ReminderMinutes = null, Language Language = Language.English)
{
    public static IReadOnlyList<int> Reminders { get; } = [15, 30, 60, 120, 1440];

    public static FeedOptions UsualFor(Squads.AgeGroup ages) => new(Places: ages.YoungestAge >= 18);

    /// <summary>A short name that options share exactly when they are equal: <c>spm</c>, <c>sml-r60-nl</c>.</summary>
    public string Code =>
        (Sessions ? "s" : "") + (Practices ? "p" : "") + (Matches ? "m" : "") + (Places ? "l" : "") + (DayOnly ? "d" : "")
        + (ReminderMinutes is { } minutes ? $"-r{minutes.ToString(CultureInfo.InvariantCulture)}" : "")
        + (Language == Language.English ? "" : $"-{Language.Code()}");

    /// <summary>Options of a <see cref="Code"/>; null for any other text.</summary>
    public static FeedOptions? Of(string code)
    {
        var parts = code.Split('-');
        var options = new FeedOptions(
            parts[0].Contains('s'), parts[0].Contains('p'), parts[0].Contains('m'), parts[0].Contains('l'), parts[0].Contains('d'),
            parts.Skip(1).Select(ReminderOf).FirstOrDefault(), LanguageNames.Find(parts[^1]) ?? Language.English);
        return options.Code == code ? options : null;
    }

    private static int? ReminderOf(string part) =>
        part.StartsWith('r') && int.TryParse(part.AsSpan(1), NumberStyles.None, CultureInfo.InvariantCulture, out var minutes) && Reminders.Contains(minutes) ? minutes : null;
}
