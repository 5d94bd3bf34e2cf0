namespace ClubCycle.Planning.Phases;

/// <summary>The purpose of a part of the cycle. In files: <c>in-season</c>, <c>break</c>, <c>recovery</c>, <c>aerobic-build</c>, <c>mixed</c>, <c>pre-season</c>, <c>restore</c>.</summary>
public enum PhaseKind
{
    InSeason,
    Break,
    Recovery,
    AerobicBuild,
    Mixed,
    PreSeason,

    /// <summary>A short recovery between two waves of building.</summary>
    Restore,
}
