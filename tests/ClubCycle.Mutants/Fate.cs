namespace ClubCycle.Mutants;

internal enum Fate
{
    Survived,
    Killed,

    /// <summary>Counts as killed: someone would notice.</summary>
    TimedOut,
}
