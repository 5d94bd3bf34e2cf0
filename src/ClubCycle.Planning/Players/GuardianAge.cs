using ClubCycle.Planning.Squads;
using NodaTime;

namespace ClubCycle.Planning.Players;

/// <summary>Below which age a guardian is asked before a player has links or results. Each club sets its own within what countries ask for.</summary>
/// <remarks>13 to 16 are the ages at which Article 8 of the GDPR lets a country trust a child's own consent (from memory); 18 is for clubs that ask for every minor.</remarks>
public static class GuardianAge
{
    public const int Youngest = 13;
    public const int Oldest = 18;
    public const int Usual = 16;

    /// <summary>Whether a guardian is asked for this player.</summary>
    /// <param name="below">The club's age.</param>
    /// <param name="birthYear">Decides when it is given. A child counts as one until the end of the year in which it reaches the age: the birthday is not stored.</param>
    /// <param name="squad">Decides when no year is given, by its youngest.</param>
    public static bool Asks(int below, AgeGroup squad, int? birthYear, LocalDate today) =>
        birthYear is { } year ? today.Year - year <= below : squad.YoungestAge < below;
}
