using System.Globalization;
using System.Text;
using ClubCycle.Planning;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Calendars;

/// <summary>A session in plain words, short enough for a phone. Numbers of effort stay out: children read this too.</summary>
public static class SessionText
{
    public static string Describe(PlannedSession session)
    {
        var text = new StringBuilder();
        if (session.Note is { } note)
        {
            text.Append(note).Append("\n\n");
        }

        if (session.Kind == SessionKind.Session)
        {
            text.Append("How hard: ").Append(HowHard(session.Hardness)).Append('\n');
        }

        if (session.InsidePractice)
        {
            text.Append("Takes place during practice.\n");
        }

        if (session.Why.Count > 0)
        {
            text.Append("\nWhy here: ").AppendJoin(' ', session.Why).Append('\n');
        }

        // Practices and matches are led by the coach; their steps would only make the calendar heavy.
        string? part = null;
        foreach (var step in session.Kind == SessionKind.Session ? session.Steps : [])
        {
            if (step.Part != part)
            {
                part = step.Part;
                text.Append('\n').Append(PartTitle(part)).Append('\n');
            }

            text.Append("- ").Append(Line(step)).Append('\n');
        }

        if (session.Cautions.Count > 0)
        {
            text.Append("\nTake care\n");
            foreach (var caution in session.Cautions)
            {
                text.Append("- ").Append(caution).Append('\n');
            }
        }

        return text.ToString().Trim('\n');
    }

    /// <summary>Hardness by what the body notices (the talk test, common practice in coaching).</summary>
    public static string HowHard(Hardness hardness) => hardness switch
    {
        Hardness.Easy => "easy. You could chat all the way.",
        Hardness.Moderate => "moderate. You can talk, but only in short sentences.",
        Hardness.Hard => "hard. A few words at most while you work; rest fully when it says so.",
        _ => throw new ArgumentOutOfRangeException(nameof(hardness), hardness, "Not a hardness."),
    };

    public static string WordFor(Quality quality) => quality switch
    {
        Quality.AerobicEndurance => "Aerobic endurance",
        Quality.Speed => "Speed",
        Quality.Agility => "Agility",
        Quality.CoreStrength => "Core strength",
        Quality.MuscularEndurance => "Muscular endurance",
        _ => throw new ArgumentOutOfRangeException(nameof(quality), quality, "Not a quality."),
    };

    /// <summary><c>warm-up</c> becomes <c>Warm-up</c>.</summary>
    public static string PartTitle(string part) =>
        part.Length == 0 ? part : char.ToUpperInvariant(part[0]) + part[1..];

    /// <summary>The amount of a step: <c>3 × 12, rest 30 s</c>. Empty when the step has no numbers.</summary>
    public static string Amount(Step step)
    {
        // One set is no set: nobody says "1 × 12".
        var sets = step.Sets is > 1 ? step.Sets : null;
        List<string> work = [];
        if (step.Reps is { } reps)
        {
            work.Add(sets is null && step.Metres is null && step.Seconds is null ? $"{Number(reps)} times" : Number(reps));
        }

        if (step.Metres is { } metres)
        {
            work.Add($"{Number(metres)} m");
        }

        if (step.Seconds is { } seconds)
        {
            work.Add($"{Number(seconds)} s");
        }

        // Beside repetitions the minutes are the time the whole step takes, which nobody needs to read.
        if (work.Count == 0 && step.Minutes is { } minutes)
        {
            work.Add($"{Number(minutes)} min");
        }

        var amount = string.Join(" × ", sets is { } n && work.Count > 0 ? [Number(n), .. work] : work);
        if (amount.Length == 0 && step.Sets is { } rounds)
        {
            amount = rounds == 1 ? "1 round" : $"{Number(rounds)} rounds";
        }

        List<string> parts = amount.Length == 0 ? [] : [amount];
        if (step.PercentOfMaximum is { } percent)
        {
            parts.Add($"{Number(percent)} % of maximum");
        }

        if (step.FootContacts is { } contacts)
        {
            parts.Add($"{Number(contacts)} landings in all");
        }

        if (step.RestSeconds is { } rest and > 0)
        {
            parts.Add($"rest {Pause(rest)}");
        }

        return string.Join(", ", parts);
    }

    private static string Line(Step step)
    {
        var line = step.Name;
        if (Amount(step) is { Length: > 0 } amount)
        {
            line += ": " + amount;
        }

        return step.Note.Length == 0 ? line : $"{line}. {step.Note}";
    }

    private static string Pause(int seconds) =>
        seconds >= 120 && seconds % 60 == 0 ? $"{Number(seconds / 60)} min" : $"{Number(seconds)} s";

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);
}
