using ClubCycle.Planning.Phases;

namespace ClubCycle.Web.Features.Board;

/// <summary>Phases in a coach's words, and the class that draws them.</summary>
public static class PhaseText
{
    public static string Name(PhaseKind phase) => phase switch
    {
        PhaseKind.InSeason => Say("In season"),
        PhaseKind.Break => Say("Break"),
        PhaseKind.Recovery => Say("Recovery"),
        PhaseKind.AerobicBuild => Say("Aerobic build"),
        PhaseKind.Mixed => Say("Mixed"),
        PhaseKind.PreSeason => Say("Pre-season"),
        PhaseKind.Restore => Say("Restore"),
        _ => throw new ArgumentOutOfRangeException(nameof(phase), phase, "Unknown phase"),
    };

    public static string Weeks(int weeks) => weeks == 1 ? Say("1 week") : Say($"{weeks} weeks");

    /// <summary>As in files and style classes: <c>aerobic-build</c>.</summary>
    public static string Key(PhaseKind phase) => Planning.FileName.Of(phase);

    /// <summary>What the phase is for, in one plain sentence.</summary>
    public static string Purpose(PhaseKind phase) => phase switch
    {
        PhaseKind.InSeason => Say("Stay fresh and keep what was built; matches and practice hold the rest."),
        PhaseKind.Break => Say("Rest from matches, keep moving, come back ready."),
        PhaseKind.Recovery => Say("Recover from the season, mend weak spots, no hockey."),
        PhaseKind.AerobicBuild => Say("Build endurance with easy running and a strong trunk."),
        PhaseKind.Mixed => Say("Keep endurance while strength and speed come in."),
        PhaseKind.PreSeason => Say("Sharpen: speed, agility, plenty of rest between."),
        PhaseKind.Restore => Say("A short rest between two waves of building."),
        _ => throw new ArgumentOutOfRangeException(nameof(phase), phase, "Unknown phase"),
    };
}
