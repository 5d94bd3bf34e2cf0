using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Replanning;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Seasons;
using ClubCycle.Planning.Weeks;
using ClubCycle.Planning.Workouts;
using NodaTime;

namespace ClubCycle.Planning.PlanFiles;

/// <summary>Reads a plan file back. Every place that cannot be read adds a problem; null then.</summary>
internal static class PlanReader
{
    private const int MostSessions = 2000;

    public static SquadPlan? Read(Place root)
    {
        if (!root.IsObject("cycle", "phases", "weeks", "sessions", "leftOut", "findings", "changes"))
        {
            return null;
        }

        var cycle = root.Required("cycle") is { } days && days.IsObject("first", "last") ? (First: days.Required("first")?.Date(), Last: days.Required("last")?.Date()) : default;
        var phases = root.Required("phases")?.Items(60).Select(PhaseOf).ToList();
        var weeks = root.Required("weeks")?.Items(70).Select(WeekOf).ToList();
        var sessions = root.Required("sessions")?.Items(MostSessions).Select(SessionOf).ToList();
        var leftOut = root.Optional("leftOut")?.Items(MostSessions).Select(LeftOutOf).ToList() ?? [];
        var findings = root.Optional("findings")?.Items(2000).Select(FindingOf).ToList() ?? [];
        var changes = root.Optional("changes") is { } place ? ChangesOf(place) : PlanChanges.None;
        if (cycle.First is not { } first || cycle.Last is not { } last || phases is null || weeks is null || sessions is null || changes is null
            || phases.Contains(null) || weeks.Contains(null) || sessions.Contains(null) || leftOut.Contains(null) || findings.Contains(null))
        {
            return null;
        }

        if (last < first)
        {
            root.Refuse("published.cycle-reversed", "The published plan's cycle ends before it starts. Use a plan file as it was written.");
            return null;
        }

        if (sessions.DistinctBy(s => s!.Uid).Count() != sessions.Count)
        {
            root.Refuse("published.duplicate-uid", "Two sessions of the published plan have the same uid. Use a plan file as it was written.");
            return null;
        }

        return new SquadPlan(new DateInterval(first, last), phases!, weeks!, sessions!, findings!, changes) { LeftOut = [.. leftOut.Select(l => l!.Value)] };
    }

    private static Phase? PhaseOf(Place place)
    {
        if (!place.IsObject("kind", "first", "last", "weeks", "chain"))
        {
            return null;
        }

        var kind = place.Required("kind")?.Choice<PhaseKind>();
        var first = place.Required("first")?.Date();
        var last = place.Required("last")?.Date();
        var weeks = place.Required("weeks")?.Whole(0, 70);
        return kind is null || first is null || last is null || weeks is null ? null : new Phase(kind.Value, first.Value, last.Value, weeks.Value, place.Optional("chain")?.Text() ?? "");
    }

    private static PlanWeek? WeekOf(Place place)
    {
        if (!place.IsObject("week", "first", "phase", "weekInPhase", "loading", "plannedLoadAu"))
        {
            return null;
        }

        var name = place.Required("week")?.Text();
        var first = place.Required("first")?.Date();
        var phase = place.Required("phase")?.Choice<PhaseKind>();
        var number = place.Required("weekInPhase")?.Whole(1, 70);
        var loading = place.Required("loading")?.Choice<WeekLoading>();
        var load = place.Required("plannedLoadAu")?.Whole(0, 1_000_000);
        return name is null || first is null || phase is null || number is null || loading is null || load is null
            ? null
            : new PlanWeek(name, first.Value, phase.Value, number.Value, loading.Value, load.Value);
    }

    private static LeftOutSlot? LeftOutOf(Place place)
    {
        if (!place.IsObject("weekFirst", "slot"))
        {
            return null;
        }

        var week = place.Required("weekFirst")?.Date();
        var slot = place.Required("slot")?.Text();
        return week is null || slot is null ? null : new LeftOutSlot(week.Value, slot);
    }

    public static PlannedSession? SessionOf(Place place)
    {
        if (!place.IsObject("uid", "slot", "date", "start", "minutes", "kind", "qualities", "hardness", "plannedEffort", "title", "why", "steps", "cautions", "workout", "insidePractice", "pinned", "note", "place"))
        {
            return null;
        }

        var uid = place.Required("uid")?.Id();
        var slot = place.Required("slot")?.Text(200);
        var date = place.Required("date")?.Date();
        var start = place.Required("start")?.Time();
        var minutes = place.Required("minutes")?.Whole(1, 24 * 60);
        var kind = place.Required("kind")?.Choice<SessionKind>();
        var qualities = place.Required("qualities")?.Items(10).Select(q => q.Choice<Quality>()).ToList();
        var hardness = place.Required("hardness")?.Choice<Hardness>();
        var effort = place.Required("plannedEffort")?.Whole(0, 10);
        var title = place.Required("title")?.Text(200);
        var why = Texts(place.Optional("why"));
        var steps = place.Optional("steps")?.Items(100).Select(StepOf).ToList() ?? [];
        var cautions = Texts(place.Optional("cautions"));
        var inside = place.Optional("insidePractice") is { } flag ? flag.Flag() : false;
        var note = place.Optional("note")?.Text(Pin.LongestNote, lines: true);
        var at = place.Optional("place")?.Text(Fixture.LongestPlace);
        var pinned = place.Optional("pinned") is { } fixedFlag ? fixedFlag.Flag() : false;
        return uid is null || slot is null || date is null || start is null || minutes is null || kind is null || qualities is null || qualities.Contains(null) || hardness is null
            || effort is null || title is null || why is null || steps.Contains(null) || cautions is null || inside is null || pinned is null
            ? null
            : new PlannedSession(
                uid.Value, slot, date.Value, start.Value, minutes.Value, kind.Value, place.Optional("workout")?.Text(), [.. qualities.OfType<Quality>()], hardness.Value,
                effort.Value, title, why, steps!, cautions, inside.Value, pinned.Value, note, at);
    }

    private static Step? StepOf(Place place)
    {
        if (!place.IsObject("part", "name", "sets", "reps", "seconds", "minutes", "metres", "restSeconds", "footContacts", "percentOfMaximum", "note"))
        {
            return null;
        }

        var part = place.Required("part")?.Text();
        var name = place.Required("name")?.Text(200);
        var note = place.Required("note")?.Text(2000);
        return part is null || name is null || note is null
            ? null
            : new Step(part, name, note, Number("sets"), Number("reps"), Number("seconds"), Number("minutes"), Number("metres"), Number("restSeconds"), Number("footContacts"), Number("percentOfMaximum"));

        int? Number(string property) => place.Optional(property)?.Whole(0, 100_000);
    }

    private static Finding? FindingOf(Place place)
    {
        if (!place.IsObject("rule", "strength", "week", "weekFirst", "message", "mend", "source", "forcedBy"))
        {
            return null;
        }

        var rule = place.Required("rule")?.Text();
        var strength = place.Required("strength")?.Choice<Strength>();
        var week = place.Optional("weekFirst")?.Date();
        var message = place.Required("message")?.Text(2000);
        var source = place.Required("source")?.Text(1000);
        var forcedBy = place.Optional("forcedBy") is { } cause ? cause.Choice<Cause>() : null;
        return rule is null || strength is null || message is null || source is null
            ? null
            : new Finding(rule, strength.Value, week, message, place.Optional("mend")?.Text(2000) ?? "", source) { ForcedBy = forcedBy };
    }

    private static PlanChanges? ChangesOf(Place place)
    {
        if (!place.IsObject("kept", "moved", "added", "dropped"))
        {
            return null;
        }

        var kept = place.Required("kept")?.Whole(0, MostSessions);
        var moved = place.Required("moved")?.Items(MostSessions).Select(MovedOf).ToList();
        var added = place.Required("added")?.Items(MostSessions).Select(AddedOf).ToList();
        var dropped = place.Required("dropped")?.Items(MostSessions).Select(DroppedOf).ToList();
        return kept is null || moved is null || added is null || dropped is null || moved.Contains(null) || added.Contains(null) || dropped.Contains(null)
            ? null
            : new PlanChanges(kept.Value, moved!, added!, dropped!);
    }

    private static Moved? MovedOf(Place place)
    {
        if (!place.IsObject("uid", "title", "from", "to", "why"))
        {
            return null;
        }

        var (uid, title, why) = (place.Required("uid")?.Id(), place.Required("title")?.Text(200), place.Required("why")?.Text(1000));
        var (from, to) = (place.Required("from")?.DateAndTime(), place.Required("to")?.DateAndTime());
        return uid is null || title is null || from is null || to is null || why is null ? null : new Moved(uid.Value, title, from.Value, to.Value, why);
    }

    private static Added? AddedOf(Place place)
    {
        if (!place.IsObject("uid", "title", "at"))
        {
            return null;
        }

        var (uid, title, at) = (place.Required("uid")?.Id(), place.Required("title")?.Text(200), place.Required("at")?.DateAndTime());
        return uid is null || title is null || at is null ? null : new Added(uid.Value, title, at.Value);
    }

    private static Dropped? DroppedOf(Place place)
    {
        if (!place.IsObject("uid", "title", "at", "why"))
        {
            return null;
        }

        var (uid, title, at, why) = (place.Required("uid")?.Id(), place.Required("title")?.Text(200), place.Required("at")?.DateAndTime(), place.Required("why")?.Text(1000));
        return uid is null || title is null || at is null || why is null ? null : new Dropped(uid.Value, title, at.Value, why);
    }

    private static List<string>? Texts(Place? place)
    {
        if (place is null)
        {
            return [];
        }

        var texts = place.Items(100).Select(t => t.Text(2000)).ToList();
        return texts.Contains(null) ? null : [.. texts.OfType<string>()];
    }
}
