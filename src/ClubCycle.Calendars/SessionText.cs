using System.Globalization;
using System.Text;
using ClubCycle.Planning;
using ClubCycle.Planning.Languages;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Calendars;

/// <summary>A session in plain words, short enough for a phone. Numbers of effort stay out: children read this too.</summary>
public static class SessionText
{
    private const string MatchAgainst = "Match: ";

    /// <summary>A session's title. Whom a match is against was typed by a person.</summary>
    public static string Title(SessionKind kind, string title, PhraseBook? phrases = null)
    {
        phrases ??= PhraseBook.English;
        return kind == SessionKind.Match && title.StartsWith(MatchAgainst, StringComparison.Ordinal) ? phrases.Fill("Match: {0}", title[MatchAgainst.Length..]) : phrases.Say(title);
    }

    public static string Describe(PlannedSession session, PhraseBook? phrases = null)
    {
        phrases ??= PhraseBook.English;
        var text = new StringBuilder();
        if (session.Note is { } note)
        {
            text.Append(note).Append("\n\n");
        }

        if (session.Kind == SessionKind.Session)
        {
            text.Append(phrases.Fill("How hard: {0}", HowHard(session.Hardness, phrases))).Append('\n');
        }

        if (session.InsidePractice)
        {
            text.Append(phrases.Say("Takes place during practice.")).Append('\n');
        }

        if (session.Why.Count > 0)
        {
            text.Append('\n').Append(phrases.Fill("Why here: {0}", string.Join(' ', session.Why.Select(phrases.Say)))).Append('\n');
        }

        // Practices and matches are led by the coach; their steps would only make the calendar heavy.
        string? part = null;
        foreach (var step in session.Kind == SessionKind.Session ? session.Steps : [])
        {
            if (step.Part != part)
            {
                part = step.Part;
                text.Append('\n').Append(PartTitle(part, phrases)).Append('\n');
            }

            text.Append("- ").Append(Line(step, phrases)).Append('\n');
        }

        if (session.Cautions.Count > 0)
        {
            text.Append('\n').Append(phrases.Say("Take care")).Append('\n');
            foreach (var caution in session.Cautions)
            {
                text.Append("- ").Append(phrases.Say(caution)).Append('\n');
            }
        }

        return text.ToString().Trim('\n');
    }

    /// <summary>Hardness by what the body notices (the talk test, common practice in coaching).</summary>
    public static string HowHard(Hardness hardness, PhraseBook? phrases = null) => (phrases ?? PhraseBook.English).Say(hardness switch
    {
        Hardness.Easy => "easy. You could chat all the way.",
        Hardness.Moderate => "moderate. You can talk, but only in short sentences.",
        Hardness.Hard => "hard. A few words at most while you work; rest fully when it says so.",
        _ => throw new ArgumentOutOfRangeException(nameof(hardness), hardness, "Not a hardness."),
    });

    public static string WordFor(Quality quality, PhraseBook? phrases = null) => (phrases ?? PhraseBook.English).Say(quality switch
    {
        Quality.AerobicEndurance => "Aerobic endurance",
        Quality.Speed => "Speed",
        Quality.Agility => "Agility",
        Quality.CoreStrength => "Core strength",
        Quality.MuscularEndurance => "Muscular endurance",
        _ => throw new ArgumentOutOfRangeException(nameof(quality), quality, "Not a quality."),
    });

    /// <summary><c>warm-up</c> becomes <c>Warm-up</c>.</summary>
    public static string PartTitle(string part, PhraseBook? phrases = null) =>
        part.Length == 0 ? part : (phrases ?? PhraseBook.English).Say(char.ToUpperInvariant(part[0]) + part[1..]);

    /// <summary>The amount of a step: <c>3 × 12, rest 30 s</c>. Empty when the step has no numbers.</summary>
    public static string Amount(Step step, PhraseBook? phrases = null)
    {
        phrases ??= PhraseBook.English;

        // One set is no set: nobody says "1 × 12".
        var sets = step.Sets is > 1 ? step.Sets : null;
        List<string> work = [];
        if (step.Reps is { } reps)
        {
            work.Add(sets is null && step.Metres is null && step.Seconds is null ? phrases.Fill("{0} times", Number(reps)) : Number(reps));
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
            amount = rounds == 1 ? phrases.Say("1 round") : phrases.Fill("{0} rounds", Number(rounds));
        }

        List<string> parts = amount.Length == 0 ? [] : [amount];
        if (step.PercentOfMaximum is { } percent)
        {
            parts.Add(phrases.Fill("{0} % of maximum", Number(percent)));
        }

        if (step.FootContacts is { } contacts)
        {
            parts.Add(phrases.Fill("{0} landings in all", Number(contacts)));
        }

        if (step.RestSeconds is { } rest and > 0)
        {
            parts.Add(rest >= 120 && rest % 60 == 0 ? phrases.Fill("rest {0} min", Number(rest / 60)) : phrases.Fill("rest {0} s", Number(rest)));
        }

        return string.Join(", ", parts);
    }

    private static string Line(Step step, PhraseBook phrases)
    {
        var line = phrases.Say(step.Name);
        if (Amount(step, phrases) is { Length: > 0 } amount)
        {
            line += ": " + amount;
        }

        return step.Note.Length == 0 ? line : $"{line}. {phrases.Say(step.Note)}";
    }

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);
}
