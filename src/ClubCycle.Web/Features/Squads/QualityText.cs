using System.Globalization;
using ClubCycle.Planning.Workouts;

namespace ClubCycle.Web.Features.Squads;

/// <summary>Qualities in words, and the class that draws them.</summary>
public static class QualityText
{
    public static string Name(Quality quality) => quality switch
    {
        Quality.AerobicEndurance => Say("aerobic endurance"),
        Quality.Speed => Say("speed"),
        Quality.Agility => Say("agility"),
        Quality.CoreStrength => Say("core strength"),
        Quality.MuscularEndurance => Say("muscular endurance"),
        _ => throw new ArgumentOutOfRangeException(nameof(quality), quality, "Unknown quality"),
    };

    /// <summary>As in files and style classes: <c>core-strength</c>.</summary>
    public static string Key(Quality quality) => Planning.FileName.Of(quality);

    /// <summary>As it begins a sentence.</summary>
    public static string List(IEnumerable<Quality> qualities) => string.Join(", ", qualities.Select(Name)) is { Length: > 0 } list ? char.ToUpper(list[0], CultureInfo.CurrentCulture) + list[1..] : "";
}
