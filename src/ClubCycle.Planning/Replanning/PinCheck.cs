using System.Globalization;
using ClubCycle.Planning.Squads;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Planning.Replanning;

/// <summary>What a decision about a session must keep to, whoever makes it.</summary>
public static class PinCheck
{
    public const int ShortestMinutes = 10;
    public const int LongestMinutes = 120;

    /// <summary>Sessions that coaches may add to one week.</summary>
    public const int MostAdded = 7;

    private const int MostNumber = 999;

    /// <param name="at">Place of the pin: <c>pins[2]</c>.</param>
    public static IEnumerable<Problem> Check(Pin pin, AgeGroup ages, string at)
    {
        if (pin.Workout is { } name && WorkoutCatalogue.Find(name)?.AllowedFor(ages) != true)
        {
            yield return new Problem(
                "pin.workout",
                $"'{name}' is no workout for {ages.Name}. These are: {string.Join(", ", WorkoutCatalogue.All.Where(w => w.AllowedFor(ages)).Select(w => w.Name))}.",
                at + ".workout");
        }

        if (pin.Minutes is < ShortestMinutes or > LongestMinutes)
        {
            yield return new Problem("pin.minutes", $"A session lasts {ShortestMinutes} to {LongestMinutes} minutes. Choose a length between.", at + ".minutes");
        }

        if (TypedText.NoteProblem(pin.Note, Pin.LongestNote, "pin.note", "note", at + ".note") is { } bad)
        {
            yield return bad with { Code = "pin.note" };
        }

        foreach (var problem in pin.IsAdded ? AddedProblems(pin, at) : [])
        {
            yield return problem;
        }
    }

    /// <summary>A note as it is kept: without blank ends, line breaks as the one character; null when nothing is left.</summary>
    public static string? Trimmed(string? note) => note?.ReplaceLineEndings("\n").Trim() is { Length: > 0 } text ? text : null;

    /// <summary>A session that a coach adds says all by itself; no template fills in what is missing.</summary>
    private static IEnumerable<Problem> AddedProblems(Pin pin, string at)
    {
        if (!IsNumbered(pin.Slot))
        {
            yield return new Problem("pin.slot", $"A session that a coach adds is called '{Pin.AddedSlot}' and a number from 1, such as '{Pin.AddedSlot}1'.", at + ".slot");
        }

        if (pin.Skipped)
        {
            yield break;
        }

        if (pin.Workout is null)
        {
            yield return new Problem("pin.workout", "Say what the added session is: choose a workout.", at + ".workout");
        }

        if (pin.Minutes is null)
        {
            yield return new Problem("pin.minutes", $"Say how long the added session lasts, {ShortestMinutes} to {LongestMinutes} minutes.", at + ".minutes");
        }

        if (pin.Date is not { } date)
        {
            yield return new Problem("pin.date", "Say on which day the added session takes place.", at + ".date");
        }
        else if (date < pin.WeekFirst || date > pin.WeekFirst.PlusDays(6))
        {
            yield return new Problem("pin.outside-week", "The day of the added session lies outside its week. Choose a day of the week, or add it to the other one.", at + ".date");
        }
    }

    private static bool IsNumbered(string slot) =>
        int.TryParse(slot.AsSpan(Pin.AddedSlot.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number is >= 1 and <= MostNumber
        && slot == Pin.AddedSlotOf(number);
}
