using System.Globalization;
using ClubCycle.Planning.Replanning;
using NodaTime;

namespace ClubCycle.Data.Edits;

/// <summary>How the buttons name what an edit was about.</summary>
internal static class EditWords
{
    public static string Day(LocalDate date) => date.ToString("d MMM uuuu", CultureInfo.InvariantCulture);

    /// <summary><c>muscular endurance 1, week of 5 Oct 2026</c> of the slot <c>recovery.muscular-endurance.1</c>; <c>added session 1, …</c> of <c>added.1</c>.</summary>
    public static string Slot(string slot, LocalDate weekFirst)
    {
        var name = slot.StartsWith(Pin.AddedSlot, StringComparison.Ordinal) ? $"added session {slot[Pin.AddedSlot.Length..]}" : slot[(slot.IndexOf('.', StringComparison.Ordinal) + 1)..].Replace('.', ' ').Replace('-', ' ');
        return $"{name}, week of {Day(weekFirst)}";
    }
}
