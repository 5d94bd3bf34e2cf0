using System.Text.Json;
using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Templates;

namespace ClubCycle.Planning.PlanFiles;

/// <summary>A template as JSON: the same text in export, import, plan requests and the database.</summary>
public static class TemplateFile
{
    /// <summary>A template that can be planned with, or every problem with its place.</summary>
    public static Result<Template> Read(string json) => JsonText.Read(json, (root, problems) =>
    {
        var template = Read(root);
        if (template is not null && problems.Count == 0)
        {
            // In a file of its own the template is the root.
            problems.AddRange(TemplateCheck.Check(template).Select(p => p with { At = p.At["template.".Length..] }));
        }

        return template;
    });

    public static string Write(Template template) => JsonText.Write(json => Write(json, template));

    internal static Template? Read(Place place)
    {
        if (!place.IsObject("name", "title", "ageGroups", "chains", "mixes", "loading"))
        {
            return null;
        }

        var name = place.Required("name")?.Text();
        var title = place.Required("title")?.Text();
        var ages = place.Required("ageGroups")?.Items(20).Select(AgeGroupOf).ToList();
        var chains = place.Required("chains")?.Items(TemplateCheck.MostChains).Select(ChainOf).ToList();
        var mixes = place.Required("mixes")?.Items(10).Select(MixOf).ToList();
        var loading = place.Required("loading") is { } pattern ? LoadingOf(pattern) : null;
        return name is null || title is null || ages is null || chains is null || mixes is null || loading is null || chains.Contains(null) || mixes.Contains(null) || ages.Contains(null)
            ? null
            : new Template(name, title, [.. ages.OfType<AgeGroup>()], chains!, mixes!, loading);
    }

    internal static AgeGroup? AgeGroupOf(Place place)
    {
        if (place.Text() is not { } text)
        {
            return null;
        }

        if (AgeGroup.Find(text) is { } ages)
        {
            return ages;
        }

        place.Refuse("squad.age-group-unknown", $"'{text}' is not an age group. Known: {string.Join(", ", AgeGroup.All)}.");
        return null;
    }

    internal static void Write(Utf8JsonWriter json, Template template)
    {
        json.WriteStartObject();
        json.WriteString("name", template.Name);
        json.WriteString("title", template.Title);
        json.WriteStartArray("ageGroups");
        foreach (var ages in template.AgeGroups)
        {
            json.WriteStringValue(ages.Name);
        }

        json.WriteEndArray();
        json.WriteStartArray("chains");
        foreach (var chain in template.Chains)
        {
            json.WriteStartObject();
            json.WriteString("name", chain.Name);
            json.WriteNumber("minWeeks", chain.MinWeeks);
            json.WriteNumber("maxWeeks", chain.MaxWeeks);
            json.WriteStartArray("phases");
            foreach (var phase in chain.Phases)
            {
                json.WriteStartObject();
                json.WriteString("kind", FileName.Of(phase.Kind));
                json.WriteNumber("minWeeks", phase.MinWeeks);
                json.WriteNumber("idealShare", phase.IdealShare);
                json.WriteNumber("maxWeeks", phase.MaxWeeks);
                if (phase.FixedWeeks is { } weeks)
                {
                    json.WriteNumber("fixedWeeks", weeks);
                }

                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("mixes");
        foreach (var mix in template.Mixes)
        {
            Write(json, mix);
        }

        json.WriteEndArray();
        json.WriteStartObject("loading");
        json.WriteNumber("unloadEvery", template.Loading.UnloadEvery);
        json.WriteNumber("unloadVolume", template.Loading.UnloadVolume);
        json.WriteNumber("firstWeekVolume", template.Loading.FirstWeekVolume);
        json.WriteNumber("weeklyRise", template.Loading.WeeklyRise);
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, WeeklyMix mix)
    {
        json.WriteStartObject();
        json.WriteString("phase", FileName.Of(mix.Phase));
        json.WriteNumber("activeDaysAtMost", mix.ActiveDaysAtMost);
        json.WriteNumber("hoursBetweenHard", mix.HoursBetweenHard);
        json.WriteNumber("sessionsPerContactDay", mix.SessionsPerContactDay);
        json.WriteStartArray("slots");
        foreach (var slot in mix.Slots)
        {
            json.WriteStartObject();
            json.WriteString("name", slot.Name);
            json.WriteStartArray("workouts");
            foreach (var workout in slot.Workouts)
            {
                json.WriteStringValue(workout);
            }

            json.WriteEndArray();
            json.WriteNumber("minutes", slot.Minutes);
            if (slot.WhenContactsAtMost is { } most)
            {
                json.WriteNumber("whenContactsAtMost", most);
            }

            if (slot.WhenContactsAtLeast is { } least)
            {
                json.WriteNumber("whenContactsAtLeast", least);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static Chain? ChainOf(Place place)
    {
        if (!place.IsObject("name", "minWeeks", "maxWeeks", "phases"))
        {
            return null;
        }

        var name = place.Required("name")?.Text();
        var least = place.Required("minWeeks")?.Whole(1, 60);
        var most = place.Required("maxWeeks")?.Whole(1, 60);
        var phases = place.Required("phases")?.Items(TemplateCheck.MostPhases).Select(ChainPhaseOf).ToList();
        return name is null || least is null || most is null || phases is null || phases.Contains(null) ? null : new Chain(name, least.Value, most.Value, phases!);
    }

    private static ChainPhase? ChainPhaseOf(Place place)
    {
        if (!place.IsObject("kind", "minWeeks", "idealShare", "maxWeeks", "fixedWeeks"))
        {
            return null;
        }

        var kind = place.Required("kind")?.Choice<PhaseKind>();
        var least = place.Required("minWeeks")?.Whole(0, 60);
        var share = place.Required("idealShare")?.Number();
        var most = place.Required("maxWeeks")?.Whole(0, 60);
        var given = place.Optional("fixedWeeks");
        var weeks = given?.Whole(0, 60);
        return kind is null || least is null || share is null || most is null || (given is not null && weeks is null)
            ? null
            : new ChainPhase(kind.Value, least.Value, share.Value, most.Value, weeks);
    }

    private static WeeklyMix? MixOf(Place place)
    {
        if (!place.IsObject("phase", "activeDaysAtMost", "hoursBetweenHard", "sessionsPerContactDay", "slots"))
        {
            return null;
        }

        var phase = place.Required("phase")?.Choice<PhaseKind>();
        var days = place.Required("activeDaysAtMost")?.Whole(0, 6);
        var hours = place.Optional("hoursBetweenHard") is { } given ? given.Whole(48, 168) : 48;
        var pairing = place.Optional("sessionsPerContactDay") is { } sessions ? sessions.Whole(0, 1) : 0;
        var slots = place.Required("slots")?.Items(TemplateCheck.MostSlots).Select(SlotOf).ToList();
        return phase is null || days is null || hours is null || pairing is null || slots is null || slots.Contains(null)
            ? null
            : new WeeklyMix(phase.Value, slots!, days.Value, hours.Value, pairing.Value);
    }

    private static Slot? SlotOf(Place place)
    {
        if (!place.IsObject("name", "workouts", "minutes", "whenContactsAtMost", "whenContactsAtLeast"))
        {
            return null;
        }

        var name = place.Required("name")?.Text();
        var workouts = place.Required("workouts")?.Items(6).Select(w => w.Text()).ToList();
        var minutes = place.Required("minutes")?.Whole(10, 120);
        var most = place.Optional("whenContactsAtMost")?.Whole(0, TemplateCheck.MostContacts);
        var least = place.Optional("whenContactsAtLeast")?.Whole(0, TemplateCheck.MostContacts);
        return name is null || workouts is null || minutes is null || workouts.Contains(null) ? null : new Slot(name, workouts!, minutes.Value, most, least);
    }

    private static LoadingPattern? LoadingOf(Place place)
    {
        if (!place.IsObject("unloadEvery", "unloadVolume", "firstWeekVolume", "weeklyRise"))
        {
            return null;
        }

        var every = place.Required("unloadEvery")?.Whole(2, 4);
        var volume = place.Required("unloadVolume")?.Number();
        var first = place.Required("firstWeekVolume")?.Number();
        var rise = place.Required("weeklyRise")?.Number();
        return every is null || volume is null || first is null || rise is null ? null : new LoadingPattern(every.Value, volume.Value, first.Value, rise.Value);
    }
}
