using System.Text;
using ClubCycle.Calendars.Sheets;
using ClubCycle.Planning;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Evaluation;
using NodaTime;
using NodaTime.Text;

namespace ClubCycle.Calendars.FixtureFiles;

/// <summary>Turns one entry of a calendar into dates in the club's zone. Only checked lines reach the library.</summary>
internal static class EntryReader
{
    public const int MostDates = 1_000;
    public const int MostYears = 2;

    private static readonly LocalTimePattern KeyTime = LocalTimePattern.CreateWithInvariantCulture("'T'HH':'mm");

    /// <summary>The entry's dates, at least one.</summary>
    public static Result<EntryDates> Read(IcsEntry entry, DateTimeZone zone, CancellationToken cancel)
    {
        if (EntryCheck.Fault(entry) is { } fault)
        {
            return Bad(fault);
        }

        try
        {
            return Dates(entry, zone, cancel);
        }
        catch (Exception unreadable) when (unreadable is not (OperationCanceledException or OutOfMemoryException))
        {
            // The library throws many kinds; to the coach, who gets the entry's line and text, they are all the same.
            return Bad("The calendar reader could not make sense of this entry. Enter its match by hand.");
        }
    }

    private static Result<EntryDates> Dates(IcsEntry entry, DateTimeZone zone, CancellationToken cancel)
    {
        var read = Ical.Net.Calendar.Load(Trimmed(entry))?.Events.SingleOrDefault();
        if (read?.DtStart is not { } first)
        {
            return Bad("It has no start that can be read. Enter its match by hand.");
        }

        if (!CellText.Read(read.Summary, "The title").TryGet(out var title, out var problems))
        {
            return new Result<EntryDates>.Failed(problems);
        }

        // An address that is too long is no reason to lose the match.
        var placed = PlaceText.Read(read.Location).TryGet(out var place, out problems);

        // As written: the library makes one up where there is none.
        var uid = entry.Value("UID") is { Length: > 0 } written ? written : null;
        var cancelled = string.Equals(read.Status?.Trim(), "CANCELLED", StringComparison.OrdinalIgnoreCase);
        var repeats = entry.Named("RRULE").Any() || entry.Named("RDATE").Any();
        var (starts, cut) = repeats ? Repeats(read, first, cancel) : ([first], false);
        if (starts.Count == 0)
        {
            return Bad("The way it repeats gives no date at all. Enter its dates by hand.");
        }

        var instance = entry.Named("RECURRENCE-ID").Any() ? read.RecurrenceIdentifier?.StartTime : null;
        return new EntryDates(
            [.. starts.Select(start => Fixture(entry.Line, start, repeats ? start : instance, zone, title, place, uid, cancelled))],
            read.Sequence,
            IsChangeOfOne: instance is not null,
            cut,
            placed ? null : problems[0].Message);
    }

    private static (List<CalDateTime> Starts, bool Cut) Repeats(CalendarEvent read, CalDateTime first, CancellationToken cancel)
    {
        var starts = new List<CalDateTime>();
        var end = first.Value.AddYears(MostYears) is var last && last.Year > DateCell.LastYear ? new DateTime(DateCell.LastYear + 1, 1, 1) : last;
        try
        {
            foreach (var occurrence in read.GetOccurrences(null, new EvaluationOptions { MaxUnmatchedIncrementsLimit = StepsIn(MostYears, read) }))
            {
                cancel.ThrowIfCancellationRequested();
                if (starts.Count == MostDates || occurrence.Period.StartTime.Value >= end)
                {
                    return (starts, true);
                }

                starts.Add(occurrence.Period.StartTime);
            }
        }
        catch (EvaluationLimitExceededException)
        {
            return (starts, true);
        }

        return (starts, false);
    }

    /// <summary>How often the rule can step without a date before the years are over.</summary>
    private static int StepsIn(int years, CalendarEvent read) => years * (read.RecurrenceRule?.Frequency switch
    {
        Ical.Net.FrequencyType.Yearly => 1,
        Ical.Net.FrequencyType.Monthly => 12,
        Ical.Net.FrequencyType.Weekly => 53,
        _ => 366,
    });

    private static ReadFixture Fixture(int line, CalDateTime start, CalDateTime? instance, DateTimeZone zone, string? title, string? place, string? uid, bool cancelled)
    {
        var (date, time) = Local(start, zone);
        var key = uid is null || instance is null ? uid : $"{uid}#{KeyOf(Local(instance, zone))}";
        return new ReadFixture(line, date, time, title, Place: place, SourceKey: key, Cancelled: cancelled);
    }

    private static string KeyOf((LocalDate Date, LocalTime? Start) local) =>
        LocalDatePattern.Iso.Format(local.Date) + (local.Start is { } start ? KeyTime.Format(start) : "");

    /// <summary>All-day values have no start. Times without a zone are the club's own.</summary>
    private static (LocalDate Date, LocalTime? Start) Local(CalDateTime value, DateTimeZone zone)
    {
        var written = LocalDateTime.FromDateTime(value.Value);
        if (!value.HasTime)
        {
            return (written.Date, null);
        }

        var local = value.IsUtc ? written.InUtc().WithZone(zone).LocalDateTime
            : value.TzId is { } id && ZoneName.Find(id) is { } named ? written.InZoneLeniently(named).WithZone(zone).LocalDateTime
            : written;
        return (local.Date, new LocalTime(local.Hour, local.Minute));
    }

    /// <summary>A calendar with this entry alone: no alarms, attachments or zone definitions, and zones by their database names.</summary>
    private static string Trimmed(IcsEntry entry)
    {
        var text = new StringBuilder("BEGIN:VCALENDAR\r\nVERSION:2.0\r\nBEGIN:VEVENT\r\n");
        foreach (var line in EntryCheck.Needed(entry))
        {
            text.Append(EntryCheck.HeadWithKnownZone(line)).Append(':').Append(line.Value).Append("\r\n");
        }

        return text.Append("END:VEVENT\r\nEND:VCALENDAR\r\n").ToString();
    }

    private static Problem Bad(string reason) => new("fixture-file.entry", reason);
}
