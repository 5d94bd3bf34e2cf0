namespace ClubCycle.Data.Accounts;

public enum ClubRole
{
    /// <summary>May do everything in the club.</summary>
    HeadCoach,

    /// <summary>May change the squads they coach.</summary>
    SquadCoach,
}
