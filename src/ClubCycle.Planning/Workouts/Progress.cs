using ClubCycle.Planning.Phases;
using ClubCycle.Planning.Weeks;

namespace ClubCycle.Planning.Workouts;

/// <summary>How much of a workout a week asks for. Volume steps back in lighter weeks; how hard each repetition is does not (Mujika and Padilla 2000).</summary>
internal static class Progress
{
    private const int MostStepsUp = 12;

    /// <summary>In phases that keep or restore rather than build.</summary>
    private const int MostStepsUpOutsideBuilding = 3;

    /// <summary>Steps up since the phase began: 0 in its first week (editorial).</summary>
    public static int Level(this DoseContext context) => Math.Clamp(
        context.WeekInPhase - 1,
        0,
        context.Phase is PhaseKind.AerobicBuild or PhaseKind.Mixed or PhaseKind.PreSeason ? MostStepsUp : MostStepsUpOutsideBuilding);

    public static bool StepsBack(this DoseContext context) => context.Loading is WeekLoading.Unloading or WeekLoading.Taper;

    /// <summary>Share of the loading week's volume (editorial, inside the published 40–80 % for light weeks and 41–60 % off for tapers).</summary>
    public static double Volume(this DoseContext context) => context.Loading switch
    {
        WeekLoading.Loading => 1,
        WeekLoading.Match => 0.75,
        WeekLoading.Unloading => 0.6,
        WeekLoading.Taper => 0.5,
        _ => throw new ArgumentOutOfRangeException(nameof(context), context.Loading, "No volume for this loading."),
    };

    public static int Scaled(this DoseContext context, int volume) => Math.Max(1, (int)Math.Round(volume * context.Volume()));
}
