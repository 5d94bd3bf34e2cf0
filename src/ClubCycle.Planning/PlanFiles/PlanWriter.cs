using System.Text.Json;
using ClubCycle.Planning.Rules;
using ClubCycle.Planning.Workouts;
using NodaTime;
using NodaTime.Text;

namespace ClubCycle.Planning.PlanFiles;

/// <summary>The reply half of the plan file.</summary>
internal static class PlanWriter
{
    internal static readonly LocalTimePattern Minutes = LocalTimePattern.CreateWithInvariantCulture("HH:mm");
    internal static readonly LocalDateTimePattern DateMinutes = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm");

    public static void Write(Utf8JsonWriter json, SquadPlan plan)
    {
        json.WriteStartObject();
        json.WriteStartObject("cycle");
        json.WriteString("first", Iso(plan.Cycle.Start));
        json.WriteString("last", Iso(plan.Cycle.End));
        json.WriteEndObject();
        json.WriteStartArray("phases");
        foreach (var phase in plan.Phases)
        {
            json.WriteStartObject();
            json.WriteString("kind", FileName.Of(phase.Kind));
            json.WriteString("first", Iso(phase.First));
            json.WriteString("last", Iso(phase.Last));
            json.WriteNumber("weeks", phase.Weeks);
            if (phase.Chain.Length > 0)
            {
                json.WriteString("chain", phase.Chain);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("weeks");
        foreach (var week in plan.Weeks)
        {
            json.WriteStartObject();
            json.WriteString("week", week.Name);
            json.WriteString("first", Iso(week.First));
            json.WriteString("phase", FileName.Of(week.Phase));
            json.WriteNumber("weekInPhase", week.WeekInPhase);
            json.WriteString("loading", FileName.Of(week.Loading));
            json.WriteNumber("plannedLoadAu", week.PlannedLoadAu);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("sessions");
        foreach (var session in plan.Sessions)
        {
            Write(json, session);
        }

        json.WriteEndArray();
        if (plan.LeftOut.Count > 0)
        {
            json.WriteStartArray("leftOut");
            foreach (var (week, slot) in plan.LeftOut)
            {
                json.WriteStartObject();
                json.WriteString("weekFirst", Iso(week));
                json.WriteString("slot", slot);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        }

        json.WriteStartArray("findings");
        foreach (var finding in plan.Findings)
        {
            Write(json, finding, plan);
        }

        json.WriteEndArray();
        WriteChanges(json, plan);
        json.WriteEndObject();
    }

    internal static void Write(Utf8JsonWriter json, PlannedSession session)
    {
        json.WriteStartObject();
        json.WriteString("uid", session.Uid.ToString("D"));
        json.WriteString("slot", session.Slot);
        json.WriteString("date", Iso(session.Date));
        json.WriteString("start", Minutes.Format(session.Start));
        json.WriteNumber("minutes", session.Minutes);
        json.WriteString("kind", FileName.Of(session.Kind));
        WriteTexts(json, "qualities", session.Qualities.Select(FileName.Of));
        json.WriteString("hardness", FileName.Of(session.Hardness));
        json.WriteNumber("plannedEffort", session.PlannedEffort);
        json.WriteString("title", session.Title);
        WriteTexts(json, "why", session.Why);
        json.WriteStartArray("steps");
        foreach (var step in session.Steps)
        {
            Write(json, step);
        }

        json.WriteEndArray();
        WriteTexts(json, "cautions", session.Cautions);
        if (session.Workout is { } workout)
        {
            json.WriteString("workout", workout);
        }

        if (session.InsidePractice)
        {
            json.WriteBoolean("insidePractice", true);
        }

        if (session.Pinned)
        {
            json.WriteBoolean("pinned", true);
        }

        if (session.Note is { } note)
        {
            json.WriteString("note", note);
        }

        if (session.Place is { } place)
        {
            json.WriteString("place", place);
        }

        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, Step step)
    {
        json.WriteStartObject();
        json.WriteString("part", step.Part);
        json.WriteString("name", step.Name);
        WriteNumber(json, "sets", step.Sets);
        WriteNumber(json, "reps", step.Reps);
        WriteNumber(json, "seconds", step.Seconds);
        WriteNumber(json, "minutes", step.Minutes);
        WriteNumber(json, "metres", step.Metres);
        WriteNumber(json, "restSeconds", step.RestSeconds);
        WriteNumber(json, "footContacts", step.FootContacts);
        WriteNumber(json, "percentOfMaximum", step.PercentOfMaximum);
        json.WriteString("note", step.Note);
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, Finding finding, SquadPlan plan)
    {
        json.WriteStartObject();
        json.WriteString("rule", finding.Rule);
        json.WriteString("strength", FileName.Of(finding.Strength));
        if (finding.Week is { } first)
        {
            if (plan.Weeks.FirstOrDefault(w => w.First == first) is { } week)
            {
                json.WriteString("week", week.Name);
            }

            json.WriteString("weekFirst", Iso(first));
        }

        json.WriteString("message", finding.Message);
        json.WriteString("mend", finding.Mend);
        json.WriteString("source", finding.Source);
        if (finding.ForcedBy is { } cause)
        {
            json.WriteString("forcedBy", FileName.Of(cause));
        }

        json.WriteEndObject();
    }

    private static void WriteChanges(Utf8JsonWriter json, SquadPlan plan)
    {
        json.WriteStartObject("changes");
        json.WriteNumber("kept", plan.Changes.Kept);
        json.WriteStartArray("moved");
        foreach (var moved in plan.Changes.Moved)
        {
            json.WriteStartObject();
            json.WriteString("uid", moved.Uid.ToString("D"));
            json.WriteString("title", moved.Title);
            json.WriteString("from", DateMinutes.Format(moved.From));
            json.WriteString("to", DateMinutes.Format(moved.To));
            json.WriteString("why", moved.Why);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("added");
        foreach (var added in plan.Changes.Added)
        {
            json.WriteStartObject();
            json.WriteString("uid", added.Uid.ToString("D"));
            json.WriteString("title", added.Title);
            json.WriteString("at", DateMinutes.Format(added.At));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("dropped");
        foreach (var dropped in plan.Changes.Dropped)
        {
            json.WriteStartObject();
            json.WriteString("uid", dropped.Uid.ToString("D"));
            json.WriteString("title", dropped.Title);
            json.WriteString("at", DateMinutes.Format(dropped.At));
            json.WriteString("why", dropped.Why);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteNumber(Utf8JsonWriter json, string name, int? number)
    {
        if (number is { } value)
        {
            json.WriteNumber(name, value);
        }
    }

    private static void WriteTexts(Utf8JsonWriter json, string name, IEnumerable<string> texts)
    {
        json.WriteStartArray(name);
        foreach (var text in texts)
        {
            json.WriteStringValue(text);
        }

        json.WriteEndArray();
    }

    private static string Iso(LocalDate date) => LocalDatePattern.Iso.Format(date);
}
