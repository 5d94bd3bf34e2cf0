using ClubCycle.Planning.Squads;

namespace ClubCycle.Planning.Workouts;

/// <summary>What to watch out for: two to four a session, the most pressing first.</summary>
/// <remarks>
/// Lightning: Walsh et al. 2013. Heat limits: Armstrong et al. 2007; the stricter row for under-14s is editorial. Head injury: Patricios et al. 2023.
/// Growth: Parry et al. 2024.
/// </remarks>
internal static class SessionCautions
{
    private const int Most = 4;
    private const string Deference = " Local rules and licensed professionals come first.";

    private const string Lifting = "Lift with a spotter or safety bars and good technique; never try for a maximum." + Deference;
    private const string YouthLifting = "A qualified adult supervises all lifting; technique before load, never a maximum." + Deference;
    private const string Jumping = "Jump on grass, a sprung floor or firm mats, never on concrete; stop when a knee, heel or shin hurts." + Deference;
    private const string Sprinting = "Sprint only when fully warm and on even ground; a sudden pull in the leg ends the session." + Deference;
    private const string Weather =
        "Thunder heard, or within 30 s of a flash: indoors at once, back no sooner than 30 min after the last. In heat, shade and drinks; no session above 32 °C wet-bulb globe temperature, above 30 °C when not used to heat." + Deference;
    private const string ChildWeather = "First thunder: everybody indoors, and back no sooner than 30 min after the last. In heat, shade and drinks; no session above 30 °C wet-bulb globe temperature." + Deference;
    private const string Head = "A knock to the head with any odd sign: off at once, no return the same day, not left alone, seen by a doctor." + Deference;
    private const string Growth = "Growing fast, or a sore knee or heel: fewer jumps and sprints, and a check if it lasts." + Deference;
    private const string Screening = "Health questions answered this year? Chest pain, dizziness or unusual breathlessness: stop and see a doctor before training on." + Deference;
    private const string Pain = "Pain that changes how you move, swelling or fever: stop, and get it looked at." + Deference;
    private const string Space = "A dry, even area with nothing lying about; an adult watches minors." + Deference;

    public static IReadOnlyList<string> For(Workout workout, DoseContext context)
    {
        var group = context.AgeGroup;
        var child = group.YoungestAge < 9;
        var lifts = workout.HeavyLift || workout.Name is "strength-circuit" or "core-and-circuit" or "strength-upkeep" or "technique-lifting";
        return Take(
            (group.IsMasters, Screening),
            (lifts && group.IsYouth, YouthLifting),
            (lifts && !group.IsYouth, Lifting),
            (workout.Jumps is not JumpClass.None, Jumping),
            (workout.Sprint || workout.Name is "strides", Sprinting),
            (workout.Outdoor, group.YoungestAge < 14 ? ChildWeather : Weather),
            (workout.Qualities.Contains(Quality.Agility) && !child, Head),
            (group.IsYouth && !child, Growth),
            (child || !(lifts || workout.Outdoor), Space),
            (true, Pain));
    }

    public static IReadOnlyList<string> ForContact(AgeGroup group) => Take(
        (group.IsMasters, Screening),
        (true, Head),
        (true, group.YoungestAge < 14 ? ChildWeather : Weather),
        (true, Pain));

    public static IReadOnlyList<string> ForActiveRecovery(AgeGroup group) => Take((group.IsMasters, Screening), (true, group.YoungestAge < 14 ? ChildWeather : Weather), (true, Pain));

    private static string[] Take(params ReadOnlySpan<(bool Applies, string Words)> cautions)
    {
        List<string> taken = new(Most);
        foreach (var (applies, words) in cautions)
        {
            if (applies && taken.Count < Most)
            {
                taken.Add(words);
            }
        }

        return [.. taken];
    }
}
