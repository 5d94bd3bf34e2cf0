using ClubCycle.Planning.Workouts;

namespace ClubCycle.Web.Features.Squads;

/// <summary>Qualities and hardness in words, and the class that draws them.</summary>
public static class QualityText
{
    public static string Name(Quality quality) => quality switch
    {
        Quality.AerobicEndurance => "aerobic endurance",
        Quality.Speed => "speed",
        Quality.Agility => "agility",
        Quality.CoreStrength => "core strength",
        Quality.MuscularEndurance => "muscular endurance",
        _ => throw new ArgumentOutOfRangeException(nameof(quality), quality, "Unknown quality"),
    };

    /// <summary>As in files and style classes: <c>core-strength</c>.</summary>
    public static string Key(Quality quality) => Planning.FileName.Of(quality);

    public static string Hardness(Hardness hardness) => Planning.FileName.Of(hardness);
}
