using ClubCycle.Planning.Workouts;

namespace ClubCycle.Web.Parts;

/// <summary>Hardness in a word.</summary>
internal static class HardnessText
{
    public static string Of(Hardness hardness) => hardness switch
    {
        Hardness.Easy => Say("easy"),
        Hardness.Moderate => Say("moderate"),
        Hardness.Hard => Say("hard"),
        _ => throw new ArgumentOutOfRangeException(nameof(hardness), hardness, "Unknown hardness"),
    };
}
