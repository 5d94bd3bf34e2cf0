namespace ClubCycle.Planning.Phases;

/// <summary>A length that a coach gave one phase of one squad's cycle; it counts while that chain fills that gap.</summary>
/// <param name="Gap">Which gap between match dates, 0-based from the start of the cycle.</param>
/// <param name="Chain">Name of the chain that fills it.</param>
/// <param name="Phase">Which phase of the chain, 0-based.</param>
/// <param name="Weeks">Whole weeks, 0 or more.</param>
public sealed record PhaseLength(int Gap, string Chain, int Phase, int Weeks)
{
    public const int MostWeeks = 60;
}
