using System.Text.Json;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Templates;
using NodaTime;
using NodaTime.Text;
using NodaTime.TimeZones;

namespace ClubCycle.Planning.PlanFiles;

/// <summary>The request half of the plan file.</summary>
internal static class RequestFile
{
    private const int MostSessionsBefore = 200;

    private static readonly LocalTimePattern Minutes = LocalTimePattern.CreateWithInvariantCulture("HH:mm");

    public static PlanRequest? Read(Place root, List<Problem> problems)
    {
        if (!root.IsObject("club", "squad", "season", "fixtures", "closed", "template", "planFrom", "published", "pins", "lengths", "before"))
        {
            return null;
        }

        var (zone, firstWeekday) = root.Required("club") is { } club ? ClubOf(club) : default;
        var squad = root.Required("squad") is { } place ? SquadOf(place, problems) : null;
        var season = root.Required("season") is { } dates ? SeasonOf(dates, problems) : null;
        var fixtures = root.Optional("fixtures")?.Items(400).Select(FixtureOf).ToList();
        var closed = root.Optional("closed")?.Items(200).Select(ClosedOf).ToList() ?? [];
        var template = TemplateOf(root, squad?.AgeGroup, problems);
        var planFrom = root.Optional("planFrom")?.Date();
        var published = root.Optional("published") is { } earlier ? PlanReader.Read(earlier) : null;
        var pins = root.Optional("pins")?.Items(1000).Select(PinOf).ToList();
        var lengths = root.Optional("lengths")?.Items(200).Select(LengthOf).ToList();
        var before = root.Optional("before")?.Items(MostSessionsBefore).Select(PlanReader.SessionOf).ToList();
        if (problems.Count > 0)
        {
            return null;
        }

        return new PlanRequest(
            zone!, firstWeekday!.Value, squad!, season!, fixtures?.OfType<Fixture>().ToList(), [.. closed.OfType<ClosedDays>()], template!, planFrom, published,
            pins?.OfType<Pin>().ToList(), lengths?.OfType<PhaseLength>().ToList(), before?.OfType<PlannedSession>().ToList());
    }

    public static void Write(Utf8JsonWriter json, PlanRequest request)
    {
        json.WriteStartObject();
        json.WriteStartObject("club");
        json.WriteString("timeZone", request.Zone.Id);
        json.WriteString("firstWeekday", Day(request.FirstWeekday));
        json.WriteEndObject();
        WriteSquad(json, request.Squad);
        json.WriteStartObject("season");
        json.WriteString("previousLastDay", Iso(request.Season.PreviousLastDay));
        json.WriteStartArray("stints");
        foreach (var stint in request.Season.Stints)
        {
            json.WriteStartObject();
            json.WriteString("first", Iso(stint.First));
            json.WriteString("last", Iso(stint.Last));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
        if (request.Fixtures is { } fixtures)
        {
            json.WriteStartArray("fixtures");
            foreach (var fixture in fixtures)
            {
                json.WriteStartObject();
                json.WriteString("date", Iso(fixture.Date));
                WriteTime(json, "start", fixture.Start);
                WriteText(json, "opponent", fixture.Opponent);
                WriteText(json, "id", fixture.Key?.ToString("D"));
                WriteText(json, "place", fixture.Place);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        }

        json.WriteStartArray("closed");
        foreach (var closed in request.Closed)
        {
            json.WriteStartObject();
            json.WriteString("first", Iso(closed.First));
            json.WriteString("last", Iso(closed.Last));
            json.WriteString("why", closed.Why);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WritePropertyName("template");
        TemplateFile.Write(json, request.Template);
        WriteText(json, "planFrom", request.PlanFrom is { } from ? Iso(from) : null);
        if (request.Published is { } published)
        {
            json.WritePropertyName("published");
            PlanWriter.Write(json, published);
        }

        if (request.Pins is { } pins)
        {
            json.WriteStartArray("pins");
            foreach (var pin in pins)
            {
                json.WriteStartObject();
                json.WriteString("weekFirst", Iso(pin.WeekFirst));
                json.WriteString("slot", pin.Slot);
                WriteText(json, "date", pin.Date is { } date ? Iso(date) : null);
                WriteTime(json, "start", pin.Start);
                json.WriteBoolean("skipped", pin.Skipped);
                WriteText(json, "workout", pin.Workout);
                if (pin.Minutes is { } minutes)
                {
                    json.WriteNumber("minutes", minutes);
                }

                WriteText(json, "note", pin.Note);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        }

        if (request.Lengths is { } lengths)
        {
            json.WriteStartArray("lengths");
            foreach (var length in lengths)
            {
                json.WriteStartObject();
                json.WriteNumber("gap", length.Gap);
                json.WriteString("chain", length.Chain);
                json.WriteNumber("phase", length.Phase);
                json.WriteNumber("weeks", length.Weeks);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        }

        if (request.Before is { } before)
        {
            json.WriteStartArray("before");
            foreach (var session in before)
            {
                PlanWriter.Write(json, session);
            }

            json.WriteEndArray();
        }

        json.WriteEndObject();
    }

    private static void WriteSquad(Utf8JsonWriter json, Squad squad)
    {
        json.WriteStartObject("squad");
        json.WriteString("id", squad.Key.ToString("D"));
        json.WriteString("name", squad.Name);
        json.WriteString("ageGroup", squad.AgeGroup.Name);
        json.WriteString("trainingAge", FileName.Of(squad.TrainingAge));
        json.WriteStartArray("practices");
        foreach (var practice in squad.Practices)
        {
            json.WriteStartObject();
            json.WriteString("day", Day(practice.Day));
            WriteTime(json, "start", practice.Start);
            json.WriteNumber("minutes", practice.Minutes);
            json.WriteStartArray("phases");
            foreach (var phase in practice.Phases)
            {
                json.WriteStringValue(FileName.Of(phase));
            }

            json.WriteEndArray();
            WriteText(json, "place", practice.Place);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteString("matchDay", Day(squad.MatchDay));
        WriteTime(json, "matchStart", squad.MatchStart);
        json.WriteStartArray("windows");
        foreach (var window in squad.Windows)
        {
            json.WriteStartObject();
            json.WriteStartArray("days");
            foreach (var day in window.Days)
            {
                json.WriteStringValue(Day(day));
            }

            json.WriteEndArray();
            WriteTime(json, "from", window.From);
            WriteTime(json, "to", window.To);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static (DateTimeZone? Zone, IsoDayOfWeek? FirstWeekday) ClubOf(Place place)
    {
        if (!place.IsObject("timeZone", "firstWeekday"))
        {
            return default;
        }

        DateTimeZone? zone = null;
        if (place.Required("timeZone") is { } named && named.Text() is { } id)
        {
            zone = DateTimeZoneProviders.Tzdb.GetZoneOrNull(id);
            if (zone is null)
            {
                named.Refuse("club.time-zone-unknown", $"'{id}' is not a time zone. {ZoneHint(id)}");
            }
        }

        return (zone, place.Optional("firstWeekday") is { } day ? DayOf(day) : IsoDayOfWeek.Monday);
    }

    private static string ZoneHint(string id)
    {
        if (TzdbDateTimeZoneSource.Default.WindowsMapping.PrimaryMapping.TryGetValue(id, out var mapped))
        {
            return $"Write {mapped}.";
        }

        var city = id.Split('/', ' ')[^1];
        var near = DateTimeZoneProviders.Tzdb.Ids.FirstOrDefault(known => city.Length > 2 && known.EndsWith(city, StringComparison.OrdinalIgnoreCase));
        return near is null ? "Write area and city, such as Europe/Lisbon." : $"Do you mean {near}?";
    }

    private static Squad? SquadOf(Place place, List<Problem> problems)
    {
        if (!place.IsObject("id", "name", "ageGroup", "trainingAge", "practices", "matchDay", "matchStart", "windows"))
        {
            return null;
        }

        var name = place.Required("name")?.Text(1000);
        var ages = place.Required("ageGroup") is { } group ? TemplateFile.AgeGroupOf(group) : null;
        var training = place.Optional("trainingAge") is { } given ? given.Choice<TrainingAge>() : TrainingAge.Some;
        var practices = place.Optional("practices")?.Items(20).Select(PracticeOf).ToList() ?? [];
        var matchDay = place.Required("matchDay") is { } day ? DayOf(day) : null;
        var matchStart = place.Optional("matchStart")?.Time();
        var windows = place.Optional("windows")?.Items(20).Select(WindowOf).ToList() ?? [];
        var key = place.Optional("id")?.Id();
        if (name is null || ages is null || training is null || matchDay is null || practices.Contains(null) || windows.Contains(null))
        {
            return null;
        }

        var squad = new Squad(key ?? NamedId.From("squad", name), name, ages.Value, training.Value, practices!, matchDay.Value, matchStart, windows!);
        problems.AddRange(SquadCheck.Check(squad));
        return squad;
    }

    private static Practice? PracticeOf(Place place)
    {
        if (!place.IsObject("day", "start", "minutes", "phases", "place"))
        {
            return null;
        }

        var day = place.Required("day") is { } given ? DayOf(given) : null;
        var start = place.Required("start")?.Time();
        var minutes = place.Required("minutes")?.Whole(int.MinValue, int.MaxValue);
        var phases = place.Optional("phases")?.Items(10).Select(p => p.Choice<PhaseKind>()).ToList();
        var at = place.Optional("place")?.Text(Practice.LongestPlace);
        return day is null || start is null || minutes is null || phases?.Contains(null) == true
            ? null
            : new Practice(day.Value, start.Value, minutes.Value, phases?.OfType<PhaseKind>().ToList() ?? Practice.UsualPhases, at);
    }

    private static TimeWindow? WindowOf(Place place)
    {
        if (!place.IsObject("days", "from", "to"))
        {
            return null;
        }

        var days = place.Required("days")?.Items(7).Select(DayOf).ToList();
        var from = place.Required("from")?.Time();
        var to = place.Required("to")?.Time();
        return days is null || from is null || to is null || days.Contains(null) ? null : new TimeWindow([.. days.OfType<IsoDayOfWeek>()], from.Value, to.Value);
    }

    private static Season? SeasonOf(Place place, List<Problem> problems)
    {
        if (!place.IsObject("previousLastDay", "stints"))
        {
            return null;
        }

        var before = problems.Count;
        var previous = place.Optional("previousLastDay")?.Date();
        var stints = place.Required("stints")?.Items(50).Select(StintOf).ToList();
        if (stints is null || problems.Count > before)
        {
            return null;
        }

        switch (Season.Create(previous, [.. stints.OfType<Stint>()]))
        {
            case Result<Season>.Ok(var season):
                return season;
            case Result<Season>.Failed failed:
                problems.AddRange(failed.Problems);
                return null;
            default:
                throw new InvalidOperationException("Unknown result");
        }
    }

    private static Stint? StintOf(Place place)
    {
        if (!place.IsObject("first", "last"))
        {
            return null;
        }

        var first = place.Required("first")?.Date();
        var last = place.Required("last")?.Date();
        return first is null || last is null ? null : new Stint(first.Value, last.Value);
    }

    private static Fixture? FixtureOf(Place place)
    {
        if (!place.IsObject("date", "start", "opponent", "id", "place"))
        {
            return null;
        }

        var date = place.Required("date")?.Date();
        var start = place.Optional("start")?.Time();
        var opponent = place.Optional("opponent")?.Text();
        var key = place.Optional("id")?.Id();
        var at = place.Optional("place")?.Text(Fixture.LongestPlace);
        return date is null ? null : new Fixture(date.Value, start, opponent, key, at);
    }

    private static ClosedDays? ClosedOf(Place place)
    {
        if (!place.IsObject("first", "last", "why"))
        {
            return null;
        }

        var first = place.Required("first")?.Date();
        var last = place.Required("last")?.Date();
        var why = place.Optional("why") is { } given ? given.Text() : "closed";
        return first is null || last is null || why is null ? null : new ClosedDays(first.Value, last.Value, why);
    }

    private static Pin? PinOf(Place place)
    {
        if (!place.IsObject("weekFirst", "slot", "date", "start", "skipped", "workout", "minutes", "note"))
        {
            return null;
        }

        var week = place.Required("weekFirst")?.Date();
        var slot = place.Required("slot")?.Text(200);
        var date = place.Optional("date")?.Date();
        var start = place.Optional("start")?.Time();
        var skipped = place.Optional("skipped") is { } given ? given.Flag() : false;
        var workout = place.Optional("workout")?.Text();
        var minutes = place.Optional("minutes")?.Whole(PinCheck.ShortestMinutes, PinCheck.LongestMinutes);
        var note = place.Optional("note")?.Text(Pin.LongestNote, lines: true);
        return week is null || slot is null || skipped is null ? null : new Pin(week.Value, slot, date, start, skipped.Value, workout, minutes, note);
    }

    private static PhaseLength? LengthOf(Place place)
    {
        if (!place.IsObject("gap", "chain", "phase", "weeks"))
        {
            return null;
        }

        var gap = place.Required("gap")?.Whole(0, 100);
        var chain = place.Required("chain")?.Text();
        var phase = place.Required("phase")?.Whole(0, 100);
        var weeks = place.Required("weeks")?.Whole(0, PhaseLength.MostWeeks);
        return gap is null || chain is null || phase is null || weeks is null ? null : new PhaseLength(gap.Value, chain, phase.Value, weeks.Value);
    }

    private static Template? TemplateOf(Place root, AgeGroup? ages, List<Problem> problems)
    {
        if (root.Optional("template") is not { } place)
        {
            return ages is { } group ? BuiltInTemplates.For(group) : null;
        }

        if (place.Kind == JsonValueKind.String)
        {
            if (place.Text() is not { } name)
            {
                return null;
            }

            if (BuiltInTemplates.Find(name) is { } builtIn)
            {
                return builtIn;
            }

            place.Refuse("template.unknown", $"There is no built-in template '{name}'. Known: {string.Join(", ", BuiltInTemplates.All.Select(t => t.Name))}. Or give a whole template object.");
            return null;
        }

        var before = problems.Count;
        var template = TemplateFile.Read(place);
        if (template is not null && problems.Count == before)
        {
            problems.AddRange(TemplateCheck.Check(template));
        }

        return template;
    }

    private static IsoDayOfWeek? DayOf(Place place)
    {
        if (place.Text() is not { } text)
        {
            return null;
        }

        for (var day = IsoDayOfWeek.Monday; day <= IsoDayOfWeek.Sunday; day++)
        {
            if (Day(day) == text)
            {
                return day;
            }
        }

        place.Refuse("request.unknown-value", $"'{text}' is not a weekday. Write monday, tuesday, wednesday, thursday, friday, saturday or sunday.");
        return null;
    }

    private static string Day(IsoDayOfWeek day) => day.ToString().ToLowerInvariant();

    private static string Iso(LocalDate date) => LocalDatePattern.Iso.Format(date);

    private static void WriteTime(Utf8JsonWriter json, string name, LocalTime? time) => WriteText(json, name, time is { } at ? Minutes.Format(at) : null);

    private static void WriteText(Utf8JsonWriter json, string name, string? text)
    {
        if (text is not null)
        {
            json.WriteString(name, text);
        }
    }
}
