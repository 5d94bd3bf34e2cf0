using ClubCycle.Data.Links;
using ClubCycle.Planning.Feeds;
using ClubCycle.Planning.Languages;

namespace ClubCycle.Web.Features.Players;

/// <summary>A link's name and what its calendar shows, while a coach edits them.</summary>
public sealed class LinkForm(string name, FeedOptions options)
{
    public string Name { get; set; } = name;

    public bool Sessions { get; set; } = options.Sessions;

    public bool Practices { get; set; } = options.Practices;

    public bool Matches { get; set; } = options.Matches;

    public bool Places { get; set; } = options.Places;

    public bool DayOnly { get; set; } = options.DayOnly;

    public int? ReminderMinutes { get; set; } = options.ReminderMinutes;

    public Language Language { get; set; } = options.Language;

    public FeedOptions Options => new(Sessions, Practices, Matches, Places, DayOnly, ReminderMinutes, Language);

    public static LinkForm Of(StoredLink link) => new(link.Name, link.Options);
}
