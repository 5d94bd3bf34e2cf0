namespace ClubCycle.Calendars;

/// <summary>What a subscriber sees, free of any file format.</summary>
/// <param name="Name">As the calendar client lists it; never a person's name.</param>
/// <param name="Language">BCP 47 tag of the texts; null leaves it out.</param>
/// <param name="Events">In date order.</param>
public sealed record FeedCalendar(string Name, string? Language, IReadOnlyList<FeedEvent> Events);
