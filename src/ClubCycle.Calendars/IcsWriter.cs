using System.Globalization;
using ClubCycle.Planning.Languages;
using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;
using NodaTime;

namespace ClubCycle.Calendars;

/// <summary>Writes a feed as iCalendar text (RFC 5545, with the names of RFC 7986). The same feed gives the same bytes.</summary>
/// <remarks>
/// Times are written in UTC and whole days as dates, so no zone definitions travel along and none can be wrong. There is no METHOD: a feed
/// is published, not sent, and then DTSTAMP means "last revised" (RFC 5545, 3.8.7.2).
/// </remarks>
public static class IcsWriter
{
    private const string ProductId = "-//ClubCycle//Squad calendar 1//EN";
    private const string PollEvery = "PT1H";

    public static string Write(FeedCalendar feed)
    {
        var calendar = new Ical.Net.Calendar { ProductId = ProductId, Version = "2.0", Scale = "GREGORIAN" };
        calendar.AddProperty(Text("NAME", feed.Name, feed.Language));
        calendar.AddProperty(Text("X-WR-CALNAME", feed.Name, language: null));
        var refresh = new CalendarProperty("REFRESH-INTERVAL", PollEvery);
        refresh.AddParameter("VALUE", "DURATION");
        calendar.AddProperty(refresh);
        calendar.AddProperty("X-PUBLISHED-TTL", PollEvery);
        var phrases = PhraseBook.For(LanguageNames.Find(feed.Language) ?? Language.English);
        foreach (var one in feed.Events)
        {
            calendar.Events.Add(Event(one, phrases));
        }

        // A serializer keeps state while it works and must not be shared between threads.
        return ContentLines.Refold(new CalendarSerializer().SerializeToString(calendar) ?? "");
    }

    private static CalendarEvent Event(FeedEvent one, PhraseBook phrases)
    {
        var changed = Utc(one.LastChanged);
        var entry = new CalendarEvent
        {
            Uid = one.Uid.ToString("D"),
            DtStamp = changed,
            LastModified = changed,
            Sequence = one.Sequence,
            // DTEND is the day or moment after.
            DtStart = one.DayOnly ? Day(one.Start.Date) : Utc(one.StartsAt),
            DtEnd = one.DayOnly ? Day(one.Start.Date.PlusDays(1)) : Utc(one.EndsAt),
            Summary = ContentLines.Clean(one.Title),
            Status = one.Cancelled ? EventStatus.Cancelled : EventStatus.Confirmed,
            Transparency = one.Cancelled || one.DayOnly ? TransparencyType.Transparent : TransparencyType.Opaque,
        };
        if (one.Description.Length > 0)
        {
            entry.Description = ContentLines.Clean(one.Description);
        }

        if (one.Place is { } place)
        {
            entry.Location = ContentLines.Clean(place);
        }

        if (one.ReminderMinutes is { } minutes)
        {
            entry.Alarms.Add(new Alarm
            {
                Action = AlarmAction.Display,
                Description = ContentLines.Clean(Reminder(one.Title, minutes, phrases)),
                Trigger = new Trigger(Ical.Net.DataTypes.Duration.FromMinutes(-minutes)),
            });
        }

        if (one.Categories.Count > 0)
        {
            entry.Categories = [.. one.Categories.Select(ContentLines.Clean)];
        }

        return entry;
    }

    private static CalendarProperty Text(string name, string value, string? language)
    {
        var property = new CalendarProperty(name, ContentLines.Clean(value));
        if (language is not null)
        {
            property.AddParameter("LANGUAGE", language);
        }

        return property;
    }

    private static string Reminder(string title, int minutes, PhraseBook phrases) => minutes switch
    {
        60 => phrases.Fill("{0} starts in 1 hour", title),
        1440 => phrases.Fill("{0} starts in 1 day", title),
        > 60 when minutes % 60 == 0 => phrases.Fill("{0} starts in {1} hours", title, (minutes / 60).ToString(CultureInfo.InvariantCulture)),
        _ => phrases.Fill("{0} starts in {1} minutes", title, minutes.ToString(CultureInfo.InvariantCulture)),
    };

    private static CalDateTime Day(LocalDate day) => new(day.Year, day.Month, day.Day);

    private static CalDateTime Utc(Instant instant) => new(instant.ToDateTimeUtc());
}
